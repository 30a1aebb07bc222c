"""Studies: the same rows on every executor, rows that failed, streams, and files that go on where they were torn."""

import itertools
import json
import os
import pickle
import signal
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from fractions import Fraction
from pathlib import Path
from typing import Any

import pandas
import polars
import pytest
import study_usage
from conftest import DEMO_JOBS
from dask.distributed import Client, LocalCluster

import deck_py

CHANGES = {
    "/frame/regular/spacing": [16, Fraction(96, 5), 24, 60],
    "/gap": [0, "1/8", "wide"],
    ("/stock/0/width", "/stock/0/price"): [(48, 62.5), (60, 84)],
}


def plain(jobs: Any, take: Any = deck_py.summary) -> list[dict[str, Any]]:
    """The rows of a study, by a loop that knows nothing of studies."""
    rows = []
    for number, job in enumerate(jobs):
        changes, job = (job.changes, job.job) if isinstance(job, deck_py.Variant) else ({}, job)
        try:
            figures, error = take(deck_py.plan(job)), None
        except deck_py.DeckError as fault:
            figures, error = {}, str(fault)
        rows.append({"job": number, **changes, "error": error, **figures})
    return rows


def bare(row: dict[str, Any]) -> dict[str, Any]:
    """A row without what it does not have."""
    return {name: value for name, value in row.items() if value is not None}


def same(rows: Any, expected: Any) -> bool:
    return [bare(row) for row in rows] == [bare(row) for row in expected]


@pytest.fixture
def tried(small: dict[str, Any]) -> deck_py.Variants:
    """24 variants: 8 that cannot be read, 2 of the others without a layout."""
    return deck_py.variants(small, CHANGES)


@pytest.mark.parametrize("pool", [None, ThreadPoolExecutor, ProcessPoolExecutor])
def test_rows_and_order_are_the_same(tried: deck_py.Variants, pool: Any) -> None:
    expected = plain(tried)
    assert sum(row["error"] is not None for row in expected) == 8
    assert sum(row.get("no_layout") is not None for row in expected) == 2
    if pool is None:
        assert same(deck_py.study(tried), expected)
        return
    with pool(2) as executor:
        assert same(deck_py.study(tried, executor=executor), expected)
        # Taken up twice, and with less handed out at once than there are workers.
        assert same(deck_py.study(tried, executor=executor, ahead=1), expected)


class Backwards(Executor):
    """Ends what it is handed in the opposite order, in threes."""

    def __init__(self) -> None:
        self.held: list[tuple[Future[Any], Any]] = []
        self.most = 0

    def submit(self, call: Any, /, *args: Any, **named: Any) -> Future[Any]:
        future: Future[Any] = Future()
        self.held.append((future, lambda: call(*args, **named)))
        self.most = max(self.most, len(self.held))
        if len(self.held) == 3:
            while self.held:
                waiting, work = self.held.pop()
                waiting.set_result(work())
        return future


def test_rows_keep_their_order_where_work_ends_in_another(
    tried: deck_py.Variants, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(deck_py._study_run, "BATCH_JOBS", 1)
    executor = Backwards()
    assert same(deck_py.study(itertools.islice(tried, 12), executor=executor, ahead=3), plain(itertools.islice(tried, 12)))
    assert executor.most == 3


def test_dask_gives_every_row_though_a_worker_is_killed(small: dict[str, Any]) -> None:
    tried = deck_py.variants(small, {"/deck/beam": [90 + n / 64 for n in range(300)], "/gap": [0, "1/8"]})
    two = {"n_workers": 2, "threads_per_worker": 1, "processes": True, "dashboard_address": None}
    with LocalCluster(**two) as cluster, Client(cluster) as client:
        workers = list(client.run(os.getpid).values())
        assert len(set(workers)) == 2
        rows = []
        for row in deck_py.study(tried, executor=client.get_executor(), ahead=4):
            rows.append(row)
            if len(rows) == 100:
                os.kill(workers[0], signal.SIGKILL)
        left = set(client.run(os.getpid).values())
    assert workers[0] not in left
    assert same(rows, plain(tried))


def test_jobs_are_dicts_texts_and_paths(small: dict[str, Any], tmp_path: Path) -> None:
    (tmp_path / "job.json").write_text("\ufeff" + json.dumps(small), encoding="utf-8")
    (tmp_path / "latin.json").write_bytes(b'{"name": "\xe9"}')
    jobs = [small, json.dumps(small), tmp_path / "job.json", str(tmp_path / "job.json"), tmp_path / "none.json"]
    jobs += [tmp_path / "latin.json", 7, None, *DEMO_JOBS]
    with ProcessPoolExecutor(1) as executor:
        columns = deck_py.study(jobs, executor=executor).columns()
    assert columns["boards"][:8] == [5, 5, 5, 5, None, None, None, None]
    assert columns["error"][:4] == [None] * 4 and columns["error"][8:] == [None] * len(DEMO_JOBS)
    missing, latin, number, nothing = columns["error"][4:8]
    assert "FileNotFoundError" in missing and "none.json" in missing and "not UTF-8" in latin
    assert "takes a dict, JSON text or a path" in number and "NoneType" in nothing
    assert columns["boards"][8:] == [len(plan.seams) + 1 if plan.seams else None for plan in map(deck_py.plan, DEMO_JOBS)]


def bad_luck(plan: deck_py.Plan) -> dict[str, Any]:
    """Figures that some plans do not have."""
    return {"third": deck_py.summary(plan)["seam_length"] // (len(plan.seams) - 4), "seams": len(plan.seams)}


def test_a_mistake_in_take_is_an_error_row(small: dict[str, Any]) -> None:
    study = deck_py.study(deck_py.variants(small, {"/frame/regular/spacing": [24, 20]}), take=bad_luck)
    assert list(study.columns()) == ["job", "/frame/regular/spacing", "error", "third", "seams"]
    assert study.columns()["third"][0] is None and "ZeroDivisionError" in study.columns()["error"][0]
    assert study.columns()["error"][1] is None and repr(study) == "Study(2 rows, 1 failed)"


def test_a_broken_executor_is_raised(small: dict[str, Any], tmp_path: Path) -> None:
    study = deck_py.study([small] * 100, take=lambda plan: {}, executor=ProcessPoolExecutor(1))
    with pytest.raises((pickle.PicklingError, AttributeError)):
        study.columns()
    pool = ProcessPoolExecutor(1)
    file = tmp_path / "rows"
    rows = iter(deck_py.study(deck_py.variants(small, {"/deck/beam": list(range(60, 96))}), executor=pool, ahead=1, file=file))
    first = next(rows)
    for process in pool._processes.values():
        process.kill()
    with pytest.raises(BrokenProcessPool):
        list(rows)
    pool.shutdown()
    # What was there is kept.
    again = iter(deck_py.study(deck_py.variants(small, {"/deck/beam": [60]}), file=file, progress=lambda told: told.kept == 1))
    assert next(again) == first


class KilledWorker(Exception):
    """As Dask names what it gives up after it has killed worker after worker."""


class Deadly(ThreadPoolExecutor):
    """Gives up the batch with a boat that is 90 in wide."""

    def submit(self, call: Any, /, *args: Any, **named: Any) -> Future[Any]:
        if any(job["deck"]["beam"] == 90 for job in args[0]):
            future: Future[Any] = Future()
            future.set_exception(KilledWorker("lost"))
            return future
        return super().submit(call, *args, **named)


def test_a_batch_that_dask_gives_up_is_error_rows_for_this_once(
    small: dict[str, Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(deck_py._study_run, "BATCH_JOBS", 1)
    tried = deck_py.variants(small, {"/deck/beam": [88, 90, 92]})
    with Deadly(1) as executor:
        rows = list(deck_py.study(tried, executor=executor, file=tmp_path / "rows"))
    assert [row["error"] for row in rows] == [None, "KilledWorker: lost", None]
    assert planned(tried, tmp_path / "rows") == (1, list(deck_py.study(tried)))


def test_a_million_jobs_are_no_burden(small: dict[str, Any]) -> None:
    made = 0

    def endless() -> Iterator[deck_py.Variant]:
        nonlocal made
        for beam in itertools.count(1):
            made += 1
            yield deck_py.Variant(small | {"deck": {"length": 240, "beam": 60 + beam % 32}}, {"beam": beam})

    rows = deck_py.study(endless(), ahead=2)
    assert [row["beam"] for row in itertools.islice(rows, 50)] == list(range(1, 51))
    assert made <= 50 + 4 * 64
    grid = deck_py.variants(small, {f"/name/{n}": range(0) for n in ()} | {"/name": ["a"] * 1000, "/unit": ["in"] * 1000})
    assert len(grid) == 1_000_000 and repr(deck_py.study(grid)) == "Study(1000000 jobs, not held)"
    assert [row["job"] for row in itertools.islice(deck_py.study(grid), 3)] == [0, 1, 2]


def test_jobs_that_are_used_up_are_told(tried: deck_py.Variants) -> None:
    study = deck_py.study(iter(tried))
    with pytest.raises(TypeError):
        len(study)
    assert len(list(study)) == 24
    with pytest.raises(RuntimeError, match="only once"):
        list(study)
    # Held as columns, they may be walked through again.
    held = deck_py.study(iter(tried))
    held.columns()
    assert len(held) == 24 and list(held) == list(held) == list(deck_py.study(tried))
    again = pickle.loads(pickle.dumps(held))
    assert again.columns() == held.columns() and list(again) == list(held) and repr(again) == repr(held)


def test_columns_go_into_frames(tried: deck_py.Variants) -> None:
    study = deck_py.study(itertools.islice(tried, 2))
    frame = pandas.DataFrame(study.columns())
    assert frame["cost"].tolist() == [row["cost"] for row in study]
    assert polars.DataFrame(study.columns())["seam_length"].to_list() == frame["seam_length"].tolist()
    assert "<th>/stock/0/width</th>" in study._repr_html_() and "not held" in deck_py.study(tried)._repr_html_()


def test_progress_is_told_and_may_stop(tried: deck_py.Variants, capsys: pytest.CaptureFixture[str]) -> None:
    told: list[deck_py.StudyProgress] = []
    rows = list(deck_py.study(tried, progress=told.append))
    assert told[-1] == deck_py.StudyProgress(done=24, of=24, failed=8, kept=0)
    assert [each.done for each in told] == sorted(each.done for each in told)
    few = list(deck_py.study(tried, progress=lambda progress: progress.done < 4))
    assert 4 <= len(few) < 24 + 1 and few == rows[: len(few)]
    list(deck_py.study(tried, progress=True))
    assert "24/24" in capsys.readouterr().err
    with pytest.raises(ZeroDivisionError):
        list(deck_py.study(tried, progress=lambda progress: 1 // 0))


class Counting(ThreadPoolExecutor):
    """Knows how many jobs it was handed."""

    jobs = 0

    def submit(self, call: Any, /, *args: Any, **named: Any) -> Future[Any]:
        self.jobs += len(args[0])
        return super().submit(call, *args, **named)


def planned(tried: Any, file: Path, take: Any = deck_py.summary) -> tuple[int, list[dict[str, Any]]]:
    """How many jobs had to be planned, and the rows."""
    with Counting(2) as executor:
        rows = list(deck_py.study(tried, executor=executor, file=file, take=take))
    return executor.jobs, rows


def test_a_study_goes_on_from_its_file(tried: deck_py.Variants, tmp_path: Path) -> None:
    file = tmp_path / "rows.jsonl"
    expected = list(deck_py.study(tried))
    assert planned(itertools.islice(tried, 10), file) == (10, expected[:10])
    assert planned(tried, file) == (14, expected)
    whole = file.read_bytes()
    assert len(whole.splitlines()) == 25
    assert planned(tried, file) == (0, expected) and file.read_bytes() == whole
    # Rows are made of the job and of take, not of their place.
    assert planned(reversed(list(tried)), file)[0] == 0
    assert planned(itertools.islice(tried, 4), file, study_usage.seam_cost)[0] == 4
    assert planned(itertools.islice(tried, 4), file, lambda plan: {"a": 1})[0] == 4
    assert planned(itertools.islice(tried, 4), file, lambda plan: {"a": 2})[1][0]["a"] == 2


def test_a_torn_end_is_cut_off(tried: deck_py.Variants, tmp_path: Path) -> None:
    whole, file = tmp_path / "whole", tmp_path / "torn"
    expected = planned(tried, whole)[1]
    text = whole.read_bytes()
    lines = text.splitlines(keepends=True)
    start = len(text) - len(lines[-1])
    for cut in [0, 1, len(lines[0]) - 1, len(lines[0]), len(lines[0]) + 1, start - 1, start, start + 1, len(text) - 1]:
        left = max(0, text[:cut].count(b"\n") - 1)
        file.write_bytes(text[:cut])
        assert planned(tried, file) == (24 - left, expected), cut
        assert sorted(file.read_bytes().splitlines()) == sorted(text.splitlines()), cut
    # As some file systems leave it: the length is there, the bytes are not.
    file.write_bytes(text[:start] + bytes(len(lines[-1])))
    assert planned(tried, file) == (1, expected)


def test_a_file_that_is_no_studys_is_left_as_it_is(tried: deck_py.Variants, tmp_path: Path) -> None:
    file = tmp_path / "job.json"
    lines = b'{"deck_study": 1}\n{"key": "00", "figures": {}, "error": null}\n'
    for text in (b'{"name": "Kestrel"}\n', b'{"deck_study": 2}\n', lines + b"torn\n" + lines.splitlines(True)[1]):
        file.write_bytes(text)
        with pytest.raises(ValueError, match="job.json"):
            list(deck_py.study(tried, file=file))
        assert file.read_bytes() == text


def test_what_may_end_otherwise_is_not_kept(small: dict[str, Any], tmp_path: Path) -> None:
    file, job = tmp_path / "rows", tmp_path / "job.json"
    assert "FileNotFoundError" in planned([job], file)[1][0]["error"]
    job.write_text(json.dumps(small))
    assert planned([job], file)[1][0]["boards"] == 5
    job.write_text(json.dumps(small | {"gap": "1/8"}))
    assert planned([job], file)[0] == 1
    assert "ZeroDivisionError" in planned([small], file, bad_luck)[1][0]["error"] and planned([small], file, bad_luck)[0] == 1
    with pytest.raises(TypeError, match="JSON can hold"):
        planned([small], file, lambda plan: {"a": {1, 2}})
    # A tuple comes back as JSON has it, from the first time on.
    assert planned([small], file, lambda plan: {"a": (1, 2)})[1][0]["a"] == [1, 2]
    with pytest.raises(TypeError, match="a function written in Python"):
        deck_py.study([small], file=file, take=dict)


DIES = """
import os, sys, deck_py, json
job = json.loads(sys.argv[1])
for row in deck_py.study(deck_py.variants(job, {"/deck/beam": list(range(40, 96))}), file=sys.argv[2], ahead=2):
    if row["job"] == 20:
        os.kill(os.getpid(), 9)
"""


def test_rows_outlive_the_process(small: dict[str, Any], tmp_path: Path) -> None:
    file = tmp_path / "rows"
    done = subprocess.run([sys.executable, "-c", DIES, json.dumps(small), str(file)], check=False)
    assert done.returncode == -signal.SIGKILL
    tried = deck_py.variants(small, {"/deck/beam": list(range(40, 96))})
    count, rows = planned(tried, file)
    assert count <= 56 - 21 and same(rows, plain(tried))


def test_variants_change_what_they_say(small: dict[str, Any]) -> None:
    before = json.dumps(small)
    tried = deck_py.variants(small, {"/stock/0/length": [96, 102], "/saw/kerf": []} | {})
    assert len(tried) == 0 and list(tried) == []
    tried = deck_py.variants(small, {"/stock/0/length": [96, 102], "/gap": [0, 1], "/stock/0/a~1b": ["x"]})
    jobs = [variant.job for variant in tried]
    assert [(job["stock"][0]["length"], job["gap"]) for job in jobs] == [(96, 0), (96, 1), (102, 0), (102, 1)]
    assert jobs[0]["stock"][0]["a/b"] == "x" and json.dumps(small) == before
    assert repr(tried) == "Variants(4; /stock/0/length: 2, /gap: 2, /stock/0/a~1b: 1)"
    assert pickle.loads(pickle.dumps(list(tried))) == list(tried)


@pytest.mark.parametrize(
    ("changes", "error", "says"),
    [
        ({"/stock/1/length": [1]}, IndexError, "no item 1 in a list of 1"),
        ({"/stok/0": [1]}, KeyError, "'stok'"),
        ({"/name/first": [1]}, KeyError, "has no fields"),
        ({"gap": [1]}, ValueError, "starts with a slash"),
        ({("/gap", "/unit"): [(0, "in"), 0]}, ValueError, "one value for each"),
    ],
)
def test_pointers_to_nowhere_are_told_at_once(small: dict[str, Any], changes: Any, error: type[Exception], says: str) -> None:
    with pytest.raises(error, match=says):
        deck_py.variants(small, changes)


def test_what_is_no_list_of_jobs_is_told(small: dict[str, Any]) -> None:
    for jobs in (small, "job.json", 7):
        with pytest.raises(TypeError, match="many jobs"):
            deck_py.study(jobs)  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="at least 1"):
        deck_py.study([small], ahead=0)


def test_the_import_brings_no_heavy_package_with_it() -> None:
    heavy = {"asyncio", "concurrent.futures", "dask", "hashlib", "logging", "multiprocessing", "numpy", "pandas", "polars", "tqdm"}
    code = f"import sys, deck_py; print(sorted(set({sorted(heavy)}) & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_typed_program_passes_mypy_and_runs(small: dict[str, Any], tmp_path: Path) -> None:
    best, told = study_usage.cheapest(small, tmp_path / "rows")
    # Five boards either way; sheets of 48 are the cheaper.
    assert (best["/stock/0/width"], best["cost"], best["seam_feet"]) == (48, 310, 32) and told[-1] == 4
    assert study_usage.boards(iter(deck_py.variants(small, {"/gap": [0]}))) == [5]
    done = subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "study_usage.py"], capture_output=True, text=True, cwd=Path(__file__).parent
    )
    assert done.returncode == 0, done.stdout + done.stderr
