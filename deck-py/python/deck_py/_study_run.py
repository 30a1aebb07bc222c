"""One walk through the jobs of a study: batches go out to an executor, and come back in order.

Executors are imported when a study runs: they would be a fifth of what `import deck_py` takes.
"""

from __future__ import annotations

import os
import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from ._deck import Plan, plan
from ._error import DeckError
from ._study_file import Kept, digest
from ._variants import Variant

if TYPE_CHECKING:
    from concurrent.futures import Executor, Future

Job = Mapping[str, Any] | str | os.PathLike[str]
Take = Callable[[Plan], Mapping[str, Any]]

# Jobs go to a worker by the batch, as each handing over costs about a millisecond on a cluster: as many as take so long, and
# not more than so many. It changes when rows arrive, never what is in them.
BATCH_SECONDS = 0.1
BATCH_JOBS = 64
# Rows that came from the file are handed on by the batch, too.
BATCH_ROWS = 1024


@dataclass(slots=True)
class Slot:
    """A row's place in the order, and what comes to stand there."""

    number: int
    changes: Mapping[str, Any]
    key: bytes | None
    figures: Mapping[str, Any] = field(default_factory=dict)
    error: str | None = None
    kept: bool = False


@dataclass(slots=True)
class Batch:
    """Neighbouring rows, and the work that some of them wait for."""

    slots: list[Slot] = field(default_factory=list)
    waiting: list[Slot] = field(default_factory=list)
    future: Future[_Done] | None = None


# Figures, error, and whether the same job would always end so.
_Outcome = tuple[Mapping[str, Any], str | None, bool]
# Seconds, and an outcome for each job.
_Done = tuple[float, list[_Outcome]]


class Run:
    """One walk through the jobs."""

    def __init__(
        self,
        jobs: Iterable[Job | Variant],
        executor: Executor | None,
        take: Take,
        ahead: int,
        kept: Kept | None,
        maker: str,
    ) -> None:
        self._jobs, self._take, self._ahead = enumerate(jobs), take, ahead
        self._kept, self._maker = kept, maker
        self._executor, self._is_own = executor or _threads(), executor is None
        self._queue: deque[Batch] = deque()
        self._seconds, self._planned = 0.0, 0

    def batches(self) -> Iterator[Batch]:
        """The batches in order, each when all its rows are there."""
        more = True
        while True:
            while more and len(self._queue) < self._ahead and not self._is_ready():
                batch, more = self._next()
                if batch.slots:
                    self._queue.append(batch)
            if not self._queue:
                return
            if not self._is_ready():
                self._gather()
            while self._is_ready():
                yield self._queue.popleft()

    def _is_ready(self) -> bool:
        return bool(self._queue) and not self._queue[0].waiting

    def _next(self) -> tuple[Batch, bool]:
        """The next batch, handed out; and whether there may be more."""
        batch = Batch()
        work: list[Job] = []
        size = 1 if not self._seconds else max(1, min(BATCH_JOBS, int(BATCH_SECONDS * self._planned / self._seconds)))
        more = True
        while len(work) < size and len(batch.slots) < BATCH_ROWS:
            step = next(self._jobs, None)
            if step is None:
                more = False
                break
            number, given = step
            changes, job = (given.changes, given.job) if isinstance(given, Variant) else ({}, given)
            job, here = _loaded(job)
            key = None if self._kept is None or here else digest(job, self._maker)
            slot = Slot(number, changes, key)
            batch.slots.append(slot)
            before = self._kept.get(key) if self._kept is not None and key is not None else None
            if before is not None:
                slot.figures, slot.error, slot.kept = before["figures"], before["error"], True
            elif here:
                slot.figures, slot.error, _ = _one(job, self._take)
            else:
                batch.waiting.append(slot)
                work.append(job)
        if work:
            batch.future = self._executor.submit(_work, work, self._take)
        return batch, more

    def _gather(self) -> None:
        """Takes in what is ready, waiting for something where nothing is; keeps it before it is handed on."""
        from concurrent.futures import wait

        flying = {batch.future: batch for batch in self._queue if batch.future is not None}
        broken: Exception | None = None
        for future in wait(flying, return_when="FIRST_COMPLETED").done:
            batch = flying[future]
            try:
                seconds, outcomes = _result(future, len(batch.waiting))
            except Exception as reason:
                # What breaks the executor comes out of the walk, when the rows that are there are kept.
                broken = reason
                continue
            self._seconds, self._planned = self._seconds + seconds, self._planned + len(outcomes)
            for slot, (figures, error, settled) in zip(batch.waiting, outcomes, strict=True):
                slot.figures, slot.error = figures, error
                if self._kept is not None and slot.key is not None and settled:
                    slot.figures = self._kept.put(slot.key, figures, error)
            batch.waiting, batch.future = [], None
        if self._kept is not None:
            self._kept.flush()
        if broken is not None:
            raise broken

    def stop(self) -> None:
        """Takes back what was handed out and is not begun."""
        for batch in self._queue:
            if batch.future is not None:
                batch.future.cancel()
        if self._is_own:
            self._executor.shutdown(cancel_futures=True)


def _threads() -> Executor:
    from concurrent.futures import ThreadPoolExecutor

    return ThreadPoolExecutor(os.cpu_count(), "deck-study")


def _loaded(job: Any) -> tuple[Any, bool]:
    """A job as it is sent, a file's text in place of its path; and whether to plan it here, for it fails or is no job."""
    if isinstance(job, Mapping) or isinstance(job, str) and _is_json(job):
        return job, False
    if isinstance(job, (str, os.PathLike)):
        try:
            with open(job, "rb") as file:
                text = file.read().decode("utf-8")
        except (OSError, ValueError):
            return job, True
        return (text, False) if _is_json(text) else (job, True)
    return job, True


def _is_json(text: str) -> bool:
    """Whether `plan` takes a text for a job, and not for a path."""
    return text.lstrip().lstrip("\ufeff").lstrip().startswith("{")


def _work(jobs: list[Any], take: Take) -> _Done:
    """What runs on a worker."""
    begin = time.perf_counter()
    outcomes = [_one(job, take) for job in jobs]
    return time.perf_counter() - begin, outcomes


def _one(job: Any, take: Take) -> _Outcome:
    try:
        made = plan(job)
    except (DeckError, TypeError) as error:
        return {}, str(error), True
    except Exception as error:
        return {}, f"{type(error).__name__}: {error}", False
    try:
        return dict(take(made)), None, True
    except Exception as error:
        # A mistake in take, which may be mended, or a machine short of memory: not to be kept.
        return {}, f"{type(error).__name__}: {error}", False


def _result(future: Future[_Done], jobs: int) -> _Done:
    """What a worker made. What breaks the executor is raised; a batch that Dask gives up is its own rows' error."""
    try:
        return future.result()
    except Exception as error:
        if type(error).__name__ != "KilledWorker":
            raise
        return 0.0, [({}, f"KilledWorker: {error}", False)] * jobs
