"""Parts of a result as objects: each holds the JSON that it was made of, and is read by attribute.

A kind of part is a class of `Record` whose annotations name its fields; everything else is here, once. A field whose key is
a word of Python's own has an underscore behind it.
"""

import sys
from collections.abc import Callable, Mapping
from types import UnionType
from typing import Any, ClassVar, Self, TypeVar, Union, get_args, get_origin, get_type_hints

from . import _deck, _show

_T = TypeVar("_T")
_Read = Callable[[Any], Any]


class Records(tuple[_T, ...]):
    """Parts of one kind in their order: a tuple that a notebook shows as a table.

    Examples
    --------
    >>> from deck_py.types import Peak, Records
    >>> Records([Peak({"at": 8, "value": 104}), Peak({"at": 24, "value": -96})])
    Records(Peak(at=8, value=104), Peak(at=24, value=-96))
    """

    __slots__ = ()

    def __repr__(self) -> str:
        return _show.line("Records", [repr(item) for item in self])

    def _repr_html_(self) -> str:
        return _show.table(self)


class Record:
    """A part of a result: its fields are attributes, and nothing of it can be changed.

    Lengths are numbers in the unit of the result that it is of; a ``..._text`` beside one is how the shop writes it. Where
    a field may be missing, it is None, or empty where it is a list. Two records are equal when they are of one kind and
    their JSON is the same.

    Parameters
    ----------
    fields : mapping
        The part as `to_dict` gives it. Fields that this version does not know are kept, and `to_dict` hands them out.

    Examples
    --------
    >>> from deck_py.types import Seam
    >>> seam = Seam({"number": 1, "member": 3, "fore": 48, "fore_text": '48"'})
    >>> seam
    Seam(number=1, fore=48", member=3)
    >>> seam.fore, seam.length, seam == Seam(seam.to_dict())
    (48, None, True)
    """

    _says: ClassVar[tuple[str, ...]] = ()
    """The fields that its line of text names, where it is not all of them."""
    _columns: ClassVar[tuple[str, ...]] = ()
    """The fields that are columns of a table, where it is not all of them; `a.b` is a field of a part."""
    _hints: ClassVar[dict[str, Any]] = {}
    _home: ClassVar[str]
    _fields: dict[str, Any]

    def __init_subclass__(cls) -> None:
        # Known by its public name, also in pickles; its annotations are those of its own file.
        cls._home, cls.__module__ = cls.__module__, "deck_py.types"
        own = {name: hint for name, hint in cls.__annotations__.items() if not name.startswith("_")}
        cls._hints = cls._hints | own
        for name in own:
            setattr(cls, name, _field(cls, name))

    def __init__(self, fields: Mapping[str, Any]) -> None:
        object.__setattr__(self, "_fields", plain(dict(fields)))

    @classmethod
    def _of(cls, fields: dict[str, Any]) -> Self:
        """Of a dict that nobody else holds."""
        record = cls.__new__(cls)
        object.__setattr__(record, "_fields", fields)
        return record

    def to_dict(self) -> dict[str, Any]:
        """The part as a dict, as `json.loads` makes it of its JSON."""
        fields: dict[str, Any] = plain(self._fields)
        return fields

    def to_json(self) -> str:
        """The part's JSON, as it stands in the result's."""
        return _deck._json(self._fields)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a {type(self).__name__} cannot be changed")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"a {type(self).__name__} cannot be changed")

    def __eq__(self, other: object) -> bool:
        return self._fields == other._fields if isinstance(other, Record) and type(other) is type(self) else NotImplemented

    def __hash__(self) -> int:
        return hash((type(self), _frozen(self._fields)))

    def __reduce__(self) -> tuple[type[Self], tuple[dict[str, Any]]]:
        return type(self), (self._fields,)

    def __repr__(self) -> str:
        return _show.line(type(self).__name__, _show.said(self))

    def _repr_html_(self) -> str:
        return _show.page(self)


def plain(value: Any) -> Any:
    """A copy of dicts, lists and what is in them, records as dicts."""
    if isinstance(value, Record):
        value = value._fields
    if isinstance(value, Mapping):
        return {key: plain(item) for key, item in value.items()}
    return [plain(item) for item in value] if isinstance(value, (list, tuple)) else value


def made(name: str, value: Any) -> Any:
    """The part of that kind, or all of a list; None for None."""
    read = _READERS.get(name)
    if read is None:
        kind: Any = getattr(sys.modules["deck_py.types"], name)
        read = _READERS[name] = _reader(Union[kind, Records.__class_getitem__(Union[kind, None]), None])
    return read(value)


_READERS: dict[str, _Read] = {}


def _field(owner: type[Record], name: str) -> property:
    """An attribute; what its annotation means is found out when it is first asked for."""
    key, found = name.removesuffix("_"), list[_Read]()

    def read(record: Record) -> Any:
        if not found:
            hint = owner._hints[name]
            if isinstance(hint, str):
                hint = get_type_hints(owner, vars(sys.modules[owner._home]))[name]
            found.append(_reader(hint))
        try:
            return found[0](record._fields.get(key))
        except LookupError:
            raise AttributeError(f"this {type(record).__name__} was made without {key!r}") from None

    return property(read)


def _options(hint: Any) -> tuple[Any, ...]:
    return get_args(hint) if get_origin(hint) in (Union, UnionType) else (hint,)


def _reader(hint: Any) -> _Read:
    """What makes the value that an annotation asks for out of JSON's."""
    options = _options(hint)
    kinds = [kind for kind in options if isinstance(kind, type) and issubclass(kind, Record)]
    items = [_reader(get_args(kind)[0]) for kind in options if get_origin(kind) in (tuple, Records)]
    gather = Records if any(get_origin(kind) is Records for kind in options) else tuple
    optional = type(None) in options or Any in options

    def read(value: Any) -> Any:
        if isinstance(value, dict) and kinds:
            return next((kind for kind in kinds if _needs(kind) <= value.keys()), kinds[-1])._of(value)
        if isinstance(value, list) and items:
            return gather(map(items[0], value))
        if value is None and not optional:
            if items:
                return gather()
            raise LookupError
        return plain(value)

    return read


def _needs(kind: type[Record]) -> set[str]:
    """The keys without which it is none of that kind."""
    empty = (None, type(None), tuple, Records)
    return {
        name.removesuffix("_")
        for name, hint in kind._hints.items()
        if not any(option in empty or get_origin(option) in empty[2:] for option in _options(hint))
    }


def _frozen(value: Any) -> Any:
    if isinstance(value, dict):
        return frozenset((key, _frozen(item)) for key, item in value.items())
    return tuple(map(_frozen, value)) if isinstance(value, list) else value
