"""A job with each of many changes: every combination of the values that are to be tried."""

import itertools
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Variant:
    """A job, and what was changed to make it.

    Examples
    --------
    >>> import deck_py
    >>> variant = next(iter(deck_py.variants({"gap": 0}, {"/gap": ["1/8", "1/16"]})))
    >>> variant.changes, variant.job
    ({'/gap': '1/8'}, {'gap': '1/8'})
    """

    job: dict[str, Any]
    """The job, as `plan` takes it. What was not changed is shared with the others: read it, do not write to it."""
    changes: dict[str, Any]
    """The new value by JSON pointer."""


class Variants:
    """Every combination of some changes to a job, made one by one when they are asked for.

    Examples
    --------
    >>> import deck_py
    >>> tried = deck_py.variants({"gap": 0, "name": "a"}, {"/gap": [0, "1/8"], "/name": ["a", "b", "c"]})
    >>> len(tried), [variant.job["name"] for variant in tried][:3]
    (6, ['a', 'b', 'c'])
    """

    def __init__(self, base: Mapping[str, Any], changes: Mapping[str | tuple[str, ...], Sequence[Any]]) -> None:
        self._base = base
        self._changes = [(_pointers(key), list(values)) for key, values in changes.items()]
        for pointers, values in self._changes:
            # The first value of each, so that a pointer to nowhere is told before the study starts.
            for pointer, value in _pairs(pointers, values[0]) if values else ():
                _changed(base, pointer, value)
            for value in values:
                _pairs(pointers, value)

    def __len__(self) -> int:
        return math.prod(len(values) for _, values in self._changes)

    def __iter__(self) -> Iterator[Variant]:
        pointers = [pointers for pointers, _ in self._changes]
        for values in itertools.product(*(values for _, values in self._changes)):
            yield self._variant([pair for at, value in zip(pointers, values, strict=True) for pair in _pairs(at, value)])

    def _variant(self, pairs: list[tuple[str, Any]]) -> Variant:
        job: Any = self._base
        for pointer, value in pairs:
            job = _changed(job, pointer, value)
        return Variant(dict(job), dict(pairs))

    def __repr__(self) -> str:
        changes = ", ".join(f"{' + '.join(pointers)}: {len(values)}" for pointers, values in self._changes)
        return f"Variants({len(self)}; {changes})"


def variants(base: Mapping[str, Any], changes: Mapping[str | tuple[str, ...], Sequence[Any]]) -> Variants:
    """Every combination of some changes to a job, for `study`.

    Parameters
    ----------
    base : dict
        The job as `plan` takes it. It is not changed.
    changes : dict
        By JSON pointer (RFC 6901), the values to try, shape (values,). The place must be there, or be a name that a dict could
        take. A tuple of pointers changes several fields together; its values are tuples as long.

    Returns
    -------
    Variants
        The variants, the last change varying fastest. It may be walked through again and again, and has a length.

    Raises
    ------
    KeyError, IndexError
        A pointer leads nowhere in the job.
    ValueError
        A pointer does not start with a slash, or a tuple of values is not as long as its pointers.

    Examples
    --------
    >>> import deck_py
    >>> base = {"deck": {"length": 240, "beam": 96}, "stock": [{"label": "ply", "length": 96, "price": 62}]}
    >>> tried = deck_py.variants(base, {"/gap": [0, "1/8"], ("/stock/0/length", "/stock/0/price"): [(96, 62), (120, 84)]})
    >>> tried
    Variants(4; /gap: 2, /stock/0/length + /stock/0/price: 2)
    >>> [variant.changes for variant in tried][1]
    {'/gap': 0, '/stock/0/length': 120, '/stock/0/price': 84}

    A place that the job does not have:

    >>> deck_py.variants(base, {"/stock/1/length": [96]})
    Traceback (most recent call last):
      ...
    IndexError: /stock/1/length: there is no item 1 in a list of 1
    """
    return Variants(base, changes)


def _pointers(key: str | tuple[str, ...]) -> tuple[str, ...]:
    pointers = (key,) if isinstance(key, str) else tuple(key)
    for pointer in pointers:
        if not pointer.startswith("/"):
            raise ValueError(f"{pointer!r} is no JSON pointer to a field: it starts with a slash, such as /stock/0/length")
    return pointers


def _pairs(pointers: tuple[str, ...], value: Any) -> list[tuple[str, Any]]:
    values = (value,) if len(pointers) == 1 else value
    if not isinstance(values, (tuple, list)) or len(values) != len(pointers):
        raise ValueError(f"{value!r} is not one value for each of {', '.join(pointers)}")
    return list(zip(pointers, values, strict=True))


def _changed(whole: Any, pointer: str, value: Any) -> Any:
    """The whole with one place changed: only the lists and dicts on the way are copied."""
    steps = [step.replace("~1", "/").replace("~0", "~") for step in pointer.split("/")[1:]]
    return _put(whole, steps, value, pointer)


def _put(whole: Any, steps: list[str], value: Any, pointer: str) -> Any:
    if not steps:
        return value
    step, rest = steps[0], steps[1:]
    if isinstance(whole, Mapping):
        if rest and step not in whole:
            raise KeyError(f"{pointer}: there is no {step!r} in {', '.join(map(str, whole)) or 'an empty dict'}")
        return {**whole, step: _put(whole.get(step), rest, value, pointer)}
    if isinstance(whole, (list, tuple)):
        if not step.isdecimal() or int(step) >= len(whole):
            raise IndexError(f"{pointer}: there is no item {step} in a list of {len(whole)}")
        at = int(step)
        return [*whole[:at], _put(whole[at], rest, value, pointer), *whole[at + 1 :]]
    raise KeyError(f"{pointer}: {whole!r} has no fields")


# Known by their public name, in tracebacks and in pickles.
Variant.__module__ = Variants.__module__ = variants.__module__ = "deck_py"
