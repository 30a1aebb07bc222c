"""Many plans, on any executor: rows in the order of the jobs, streamed, and kept in a file."""

from __future__ import annotations

import importlib
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import ExitStack
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, cast

from ._deck import __version__
from ._show import safe
from ._study_file import Kept, maker
from ._study_run import Job, Run, Slot, Take
from ._summary import SUMMARY, summary
from ._variants import Variant

if TYPE_CHECKING:
    from concurrent.futures import Executor

Row = dict[str, Any]

# How many rows a notebook shows.
SHOWN = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyProgress:
    """How far a study has come.

    Examples
    --------
    >>> import deck_py
    >>> told = []
    >>> study = deck_py.study([{"schema": 1}], progress=told.append)
    >>> [row["job"] for row in study], told[-1].done, told[-1].of, told[-1].failed
    ([0], 1, 1, 1)
    """

    done: int
    """Rows that are there, in order."""
    of: int | None
    """Rows in all; None where the jobs do not say how many they are."""
    failed: int
    """Rows with an error among them."""
    kept: int
    """Rows among them that were in the file already."""


class Study:
    """The rows of a study: planned while they are walked through, or all at once as columns.

    Walking through it plans and hands out row after row, in the order of the jobs, and holds on to none. `columns` plans
    everything and holds on to it; what is asked for after that is answered from there.

    Examples
    --------
    >>> import deck_py
    >>> study = deck_py.study([{"schema": 1}, "{}"])
    >>> study
    Study(2 jobs, not held)
    >>> [error is None for error in study.columns()["error"]], study
    ([False, False], Study(2 rows, 2 failed))
    """

    def __init__(
        self,
        jobs: Iterable[Job | Variant],
        executor: Executor | None,
        progress: Callable[[StudyProgress], object] | bool | None,
        take: Take,
        file: str | os.PathLike[str] | None,
        ahead: int,
    ) -> None:
        if isinstance(jobs, (str, Mapping)) or not isinstance(jobs, Iterable):
            raise TypeError(f"study() takes many jobs, such as a list of them, not {type(jobs).__name__}")
        if ahead < 1:
            raise ValueError(f"ahead is at least 1, not {ahead}")
        self._jobs, self._executor, self._progress = jobs, executor, progress
        self._take, self._file, self._ahead = take, file, ahead
        self._maker = "" if file is None else maker(__version__, take)
        self._started = False
        self._columns: dict[str, list[Any]] | None = None

    def __len__(self) -> int:
        if self._columns is not None:
            return len(self._columns["job"])
        return len(cast(Any, self._jobs))

    def __iter__(self) -> Iterator[Row]:
        if self._columns is not None:
            names = list(self._columns)
            return (dict(zip(names, row, strict=True)) for row in zip(*self._columns.values(), strict=True))
        return self._run()

    def columns(self) -> dict[str, list[Any]]:
        """The rows as columns, as pandas and polars take them: a list of equal length for each name.

        Plans everything the first time. A figure that a row does not have is None. Where one number of a column is a float,
        all are. A change whose values are texts and numbers stays so: pandas takes it as objects, polars with
        ``strict=False``.
        """
        if self._columns is None:
            columns: dict[str, list[Any]] = {"job": []}
            for count, row in enumerate(self._run()):
                for name in row:
                    columns.setdefault(name, [None] * count)
                for name, values in columns.items():
                    values.append(row.get(name))
            self._columns = {name: _even(values) for name, values in columns.items()}
        return self._columns

    def _run(self) -> Iterator[Row]:
        if self._started and iter(self._jobs) is self._jobs:
            raise RuntimeError("the jobs can be walked through only once: hand in a list or variants(), or use columns()")
        self._started = True
        with ExitStack() as stack:
            kept = None if self._file is None else stack.enter_context(Kept(self._file))
            tell = _teller(self._progress, stack)
            of = len(cast(Any, self._jobs)) if hasattr(self._jobs, "__len__") else None
            run = Run(self._jobs, self._executor, self._take, self._ahead, kept, self._maker)
            stack.callback(run.stop)
            done = failed = old = 0
            for batch in run.batches():
                done += len(batch.slots)
                failed += sum(slot.error is not None for slot in batch.slots)
                old += sum(slot.kept for slot in batch.slots)
                goes_on = tell(StudyProgress(done=done, of=of, failed=failed, kept=old)) is not False
                yield from (self._row(slot) for slot in batch.slots)
                if not goes_on:
                    return

    def _row(self, slot: Slot) -> Row:
        names = dict.fromkeys(SUMMARY) if self._take is summary else {}
        return {"job": slot.number, **slot.changes, "error": slot.error, **names, **slot.figures}

    def __repr__(self) -> str:
        if self._columns is not None:
            failed = sum(error is not None for error in self._columns.get("error", []))
            return f"Study({len(self)} rows, {failed} failed)"
        return f"Study({len(self)} jobs, not held)" if hasattr(self._jobs, "__len__") else "Study(not held)"

    def _repr_html_(self) -> str:
        if self._columns is None:
            return f"<p>{safe(repr(self))}: <code>columns()</code> plans all of it.</p>"
        columns = {name: values for name, values in self._columns.items() if any(value is not None for value in values)}
        head = "".join(f"<th>{safe(name)}</th>" for name in columns)
        body = "".join(
            "<tr>" + "".join(f"<td>{safe('' if value is None else str(value))}</td>" for value in row) + "</tr>"
            for row in zip(*(values[:SHOWN] for values in columns.values()), strict=True)
        )
        rest = f"<p>… {len(self)} rows in all</p>" if len(self) > SHOWN else ""
        return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{rest}"

    def __reduce__(self) -> tuple[Any, ...]:
        return _held, (self.columns(),)


def study(
    jobs: Iterable[Job | Variant],
    *,
    executor: Executor | None = None,
    progress: Callable[[StudyProgress], object] | bool | None = None,
    take: Take = summary,
    file: str | os.PathLike[str] | None = None,
    ahead: int = 128,
) -> Study:
    """Plan many jobs, and make a row of figures of each.

    The rows are the same, and in the order of the jobs, on every executor. A job that cannot be planned is a row with its
    ``error``, and the others go on. Nothing is planned before rows or columns are asked for.

    Parameters
    ----------
    jobs : iterable of jobs
        Each a dict, JSON text or a path, as `plan` takes it, or what `variants` makes. They are taken as they are needed, so
        that a generator of a million is no burden. Files are read here and need not be on the workers.
    executor : concurrent.futures.Executor, optional
        Where plans are made: threads, processes, or a cluster by Dask's ``client.get_executor()``; the workers need this
        package. It is left running. None: a thread for each processor, as a plan does not hold the interpreter.
    progress : callable or bool, optional
        Is handed a `StudyProgress` with each batch of rows; where it returns False the study ends with the rows so far. True:
        a bar of tqdm's where that is installed, otherwise a line on standard error.
    take : callable, optional
        Makes the figures of a row, a dict, from a plan, on the worker. `summary` unless given.
    file : path, optional
        Keeps rows as they arrive, as lines of JSON, and has those that it holds already from there: a study that was stopped,
        by whatever, goes on where it was. A row is known by its job, the library's version and the code of ``take``, whichever
        study it comes from. What `take` gives is then what JSON can hold. One study at a time writes to a file.
    ahead : int, default 128
        Batches handed out at once. A batch is up to 64 jobs, about a tenth of a second of work. On a cluster, at least
        twice the number of workers.

    Returns
    -------
    Study
        To be walked through row by row, or asked for its `columns`. A row has ``job`` (its place among the jobs, from 0), the
        changes by pointer where it is a variant, ``error`` (None where there is none), and the figures.

    Raises
    ------
    TypeError
        An argument is of the wrong type.
    ValueError
        The file is not a study's; it is left as it was. Raised when rows are asked for, as is what breaks the executor itself.

    Examples
    --------
    >>> import deck_py
    >>> base = {
    ...     "schema": 1, "name": "Sandpiper", "unit": "in",
    ...     "deck": {"length": "20 ft", "beam": 96},
    ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
    ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4", "price": 62.5}],
    ...     "gap": 0,
    ... }
    >>> study = deck_py.study(deck_py.variants(base, {"/stock/0/width": [48, 60], "/frame/regular/spacing": [20, 24]}))
    >>> for row in study:
    ...     print(row["/stock/0/width"], row["/frame/regular/spacing"], row["boards"], row["seam_length"])
    48 20 6 480.0
    48 24 5 384.0
    60 20 4 288.0
    60 24 5 384.0

    What fails is told in its row:

    >>> broken = deck_py.study(deck_py.variants(base, {"/deck/beam": [96, "wide"]}))
    >>> [error and error[:10] for error in broken.columns()["error"]]
    [None, '/deck/beam']
    """
    return Study(jobs, executor, progress, take, file, ahead)


def _even(values: list[Any]) -> list[Any]:
    """Numbers as floats where one of them is: polars takes a column of one type alone."""
    kinds = {type(value) for value in values} - {type(None)}
    return [None if value is None else float(value) for value in values] if kinds == {int, float} else values


def _held(columns: dict[str, list[Any]]) -> Study:
    study = Study([], None, None, summary, None, 1)
    study._columns = columns
    return study


def _teller(
    progress: Callable[[StudyProgress], object] | bool | None,
    stack: ExitStack,
) -> Callable[[StudyProgress], object]:
    """Whom to tell how far the study has come."""
    if progress is None or progress is False:
        return lambda told: None
    if progress is not True:
        return progress
    try:
        tqdm = importlib.import_module("tqdm").tqdm
    except ImportError:
        return lambda told: print(f"\r{told.done} of {told.of or '?'} planned", end="", file=sys.stderr, flush=True)
    bar = stack.enter_context(tqdm(unit=" plans"))

    def show(told: StudyProgress) -> None:
        bar.total = told.of
        bar.update(told.done - bar.n)

    return show


# Known by their public name, in tracebacks and in pickles.
Study.__module__ = StudyProgress.__module__ = study.__module__ = "deck_py"
