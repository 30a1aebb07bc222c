"""Records for people: a line for the prompt, tables for a notebook."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from ._record import Record, Records

_MOST = 100
"""A line is no longer than this."""
_LEFT = ' style="text-align: left"'


def line(name: str, parts: list[str]) -> str:
    """A line of text, cut where it is too long."""
    shown, room = list[str](), _MOST - len(name)
    for part in parts:
        room -= len(part) + 2
        if shown and room < 0:
            shown.append(f"… {len(parts)} in all" if name == "Records" else "…")
            break
        shown.append(part)
    return f"{name}({', '.join(shown)})"


def said(record: Record) -> list[str]:
    """Its fields as `name=value`; of its lists, how many there are."""
    names = record._says or tuple(name for name in record._hints if not name.endswith("_text"))
    parts = []
    for name in names:
        value = getattr(record, name, None)
        text = record._fields.get(f"{name}_text")
        if isinstance(text, str) and text.isprintable():
            parts.append(f"{name}={text}")
        elif isinstance(value, tuple):
            parts.append(f"{len(value)} {name}")
        elif value is not None and not hasattr(value, "_fields"):
            parts.append(f"{name}={_cut(value)}")
    return parts


def _cut(value: Any) -> str:
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:58]}…{text[-1]}"


def page(record: Record) -> str:
    """A table of its own figures, and one for each list of parts."""
    names = [name for name in record._hints if not name.endswith("_text")]
    cells = [(name, brief(record, name)) for name in names if not _listed(getattr(record, name, None))]
    html = "".join(f"<tr><th{_LEFT}>{_words(name)}</th><td{_LEFT}>{safe(text)}</td></tr>" for name, text in cells if text)
    tables = [f"<table>{html}</table>"] if html else []
    for name in names:
        value = getattr(record, name, None)
        if _listed(value) and value:
            tables.append(f"<p>{_words(name)}</p>{table(value)}")
    return "".join(tables)


def table(records: Records[Any]) -> str:
    """A row for each record; columns without a value are left out."""
    kinds = list(dict.fromkeys(type(each) for each in records if each is not None))
    if not kinds:
        return "<table><tr><td>none</td></tr></table>"
    names = list(dict.fromkeys(name for kind in kinds for name in _columns(kind)))
    rows = [[brief(each, name) for name in names] for each in records]
    kept = [n for n in range(len(names)) if any(row[n] for row in rows)]
    # A notebook puts figures and words to the right alike; words are read from the left.
    sides = {n: _LEFT if any(_is_words(each, names[n]) for each in records) else "" for n in kept}
    head = "".join(f"<th{sides[n]}>{_words(names[n])}</th>" for n in kept)
    body = ("".join(f"<td{sides[n]}>{safe(row[n])}</td>" for n in kept) for row in rows)
    return f"<table><tr>{head}</tr>{''.join(f'<tr>{row}</tr>' for row in body)}</table>"


def _columns(kind: Any) -> tuple[str, ...]:
    if not hasattr(kind, "_hints"):
        return ()
    return kind._columns or tuple(name for name in kind._hints if not name.endswith("_text"))


def brief(record: Any, name: str) -> str:
    """A field in a cell, as the shop writes it; empty where there is none."""
    whole, _, part = name.partition(".")
    value = getattr(record, whole, None)
    if part:
        return brief(value, part)
    text = record._fields.get(f"{name}_text") if hasattr(record, "_fields") else None
    return text if isinstance(text, str) else _brief(value)


def _brief(value: Any) -> str:
    if isinstance(value, bool) or value is None:
        return "yes" if value else ""
    if isinstance(value, float):
        return f"{value:.6g}"
    if isinstance(value, tuple):
        some = value[:1]
        short = len(value) <= 8 and not any(hasattr(item, "_fields") or isinstance(item, tuple) for item in some)
        between = "; " if some and isinstance(some[0], str) else ", "
        return between.join(map(_brief, value)) if short else str(len(value))
    return _in_words(value) if hasattr(value, "_fields") else str(value)


def _in_words(record: Record) -> str:
    """A part in one cell: its columns, or the fields that its line names."""
    if record._columns:
        return " ".join(filter(None, (brief(record, name) for name in record._columns)))
    names = record._says or _columns(type(record))
    cells = [(_words(name), brief(record, name)) for name in names]
    return ", ".join(f"{name} {text}" for name, text in cells if text)


def _is_words(record: Any, name: str) -> bool:
    whole, _, part = name.partition(".")
    value = getattr(record, whole, None)
    if part:
        return _is_words(value, part)
    return isinstance(value[0] if isinstance(value, tuple) and value else value, str) and not name.endswith("_text")


def _listed(value: Any) -> bool:
    return isinstance(value, tuple) and any(hasattr(item, "_fields") for item in value[:1])


def _words(name: str) -> str:
    return safe(name.removesuffix("_text").removesuffix("_").replace(".", " ").replace("_", " "))


def safe(text: str) -> str:
    """Text as HTML."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
