"""The rows of a study in a file, so that a study can go on where it was stopped.

JSON lines, only ever appended to: a first line that names the format, then one line for each row, with a digest of what it
was made from. A machine that dies leaves at most a torn last line, and that is cut off.
"""

import json
import os
import time
from collections.abc import Mapping
from decimal import Decimal
from numbers import Number
from types import CodeType, TracebackType
from typing import Any, Protocol, Self

FIRST = b'{"deck_study": 1}\n'
# A row is on the disk after so many seconds at the latest; asking the disk for each would cost more than the plan.
SECONDS = 1.0


class Taker(Protocol):
    """What makes a row of a plan, as far as it can be told from another."""

    def __call__(self, plan: Any, /) -> Mapping[str, Any]: ...


def digest(job: Any, maker: str) -> bytes | None:
    """Names a job and what a row is made of it by; None for what cannot be told from another."""
    try:
        text = json.dumps([maker, job], sort_keys=True, default=_plain)
    except (TypeError, ValueError, RecursionError):
        return None
    return _hash(text)[:16]


def maker(version: str, take: Taker) -> str:
    """Names what rows are made by: the library's version, and the function with its code."""
    code = getattr(take, "__code__", None)
    if not isinstance(code, CodeType):
        raise TypeError("with a file, take is a function written in Python: others cannot be told apart")
    return f"{version} {take.__module__}.{getattr(take, '__qualname__', '')} {_code(code)}"


def _code(code: CodeType) -> str:
    inner = [_code(each) if isinstance(each, CodeType) else repr(each) for each in code.co_consts]
    return _hash(repr((code.co_code, code.co_names, inner))).hex()


def _hash(text: str) -> bytes:
    # Imported where it is used: it loads a library that nothing else here needs.
    from hashlib import sha256

    return sha256(text.encode("utf-8", "surrogatepass")).digest()


def _plain(value: Any) -> Any:
    if isinstance(value, Mapping):
        return dict(value)
    if isinstance(value, (Number, Decimal)):
        return {"number": repr(value)}
    raise TypeError


class Kept:
    """A study's file, open to read what is there and to append."""

    def __init__(self, path: str | os.PathLike[str]) -> None:
        self._file = open(path, "a+b")
        self._at: dict[bytes, int] = {}
        self._synced = time.monotonic()
        try:
            self._read(os.fspath(path))
        except BaseException:
            self._file.close()
            raise

    def _read(self, path: str) -> None:
        """Finds every row, and cuts off a torn end; a file that is no study's is left as it is."""
        self._file.seek(0)
        first = self._file.readline()
        if first != FIRST:
            if not FIRST.startswith(first):
                raise ValueError(f"{path} is no study's file: its first line is not {FIRST.decode().strip()}")
            self._file.truncate(0)
            self._file.write(FIRST)
            self._file.flush()
            return
        good, number, torn = self._file.tell(), 1, 0
        for line in iter(self._file.readline, b""):
            number += 1
            key = _key(line)
            if key is None:
                torn = torn or number
            elif torn:
                raise ValueError(f"{path}, line {torn} cannot be read, and rows follow it; nothing was changed")
            else:
                self._at[key] = good
                good = self._file.tell()
        self._file.truncate(good)

    def get(self, key: bytes) -> dict[str, Any] | None:
        """What was kept under a key."""
        at = self._at.get(key)
        if at is None:
            return None
        self._file.seek(at)
        kept: dict[str, Any] = json.loads(self._file.readline())
        return kept

    def put(self, key: bytes, figures: Mapping[str, Any], error: str | None) -> dict[str, Any]:
        """Appends a row, and gives its figures as they would be read from here."""
        try:
            text = json.dumps({"key": key.hex(), "figures": figures, "error": error})
        except TypeError as reason:
            raise TypeError(f"with a file, take gives what JSON can hold: {reason}") from None
        self._file.write(text.encode("utf-8", "surrogatepass") + b"\n")
        read: dict[str, Any] = json.loads(text)["figures"]
        return read

    def flush(self) -> None:
        """Hands what was appended to the system, and now and then to the disk."""
        self._file.flush()
        if time.monotonic() - self._synced > SECONDS:
            os.fsync(self._file.fileno())
            self._synced = time.monotonic()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self._file.flush()
        os.fsync(self._file.fileno())
        self._file.close()


def _key(line: bytes) -> bytes | None:
    """The key of a whole line."""
    try:
        row: Any = json.loads(line)
        whole = line.endswith(b"\n") and "figures" in row and "error" in row
        return bytes.fromhex(row["key"]) if whole else None
    except (ValueError, TypeError, KeyError):
        return None
