"""What Python costs: importing the package, one plan beside Rust's, and a study on one worker and on two.

    python benches/python/cost.py [--jobs 10000] [--on threads processes]

Times of one process are processor time, medians; a busy machine changes them little. Those of the study are wall clock, and
mean something only on a quiet machine: processor time and the load are printed beside them. Rust's own figure for a plan of the same boat is
`cargo bench -p deck-benches --bench plan`, `whole_plan_standard` and `step_read_job`.
"""

import argparse
import json
import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from concurrent.futures import Executor, ProcessPoolExecutor, ThreadPoolExecutor
from pathlib import Path

import deck_py

JOB = Path(__file__).resolve().parents[2] / "examples" / "jobs" / "uneven-22.json"
POOLS: dict[str, Callable[[int], Executor]] = {"threads": ThreadPoolExecutor, "processes": ProcessPoolExecutor}
IMPORT = "import time; begin = time.process_time(); import deck_py; print(time.process_time() - begin)"


def milliseconds(work: Callable[[], object], times: int = 200) -> str:
    """Median and least of processor milliseconds."""
    taken = []
    for _ in range(times):
        begin = time.thread_time()
        work()
        taken.append(1000 * (time.thread_time() - begin))
    return f"{statistics.median(taken):.3f} ms, least {min(taken):.3f}"


def imported() -> str:
    """The same for an import, in new processes."""
    runs = [subprocess.run([sys.executable, "-c", IMPORT], capture_output=True, text=True, check=True) for _ in range(21)]
    taken = [1000 * float(run.stdout) for run in runs]
    return f"{statistics.median(taken):.1f} ms, least {min(taken):.1f}"


def processor() -> float:
    """Processor seconds of this process and of those that it has ended."""
    return sum(os.times()[:4])


def study(tried: deck_py.Variants, pool: Executor) -> tuple[float, float, int]:
    """Wall clock and processor seconds of a study, and how many plans it made."""
    begin, busy = time.perf_counter(), processor()
    with pool:
        count = sum(row["error"] is None for row in deck_py.study(tried, executor=pool))
    return time.perf_counter() - begin, processor() - busy, count


def main() -> None:
    parser = argparse.ArgumentParser(description="What Python costs.")
    parser.add_argument("--jobs", type=int, default=10_000)
    parser.add_argument("--on", nargs="+", choices=POOLS, default=list(POOLS))
    asked = parser.parse_args()
    job = json.loads(JOB.read_text())
    # As in Rust's bench: figures of strength cost many times the plan.
    job.pop("span", None)
    text, plan = json.dumps(job), deck_py.plan(job)
    print("import deck_py:", imported())
    print("plan of a dict:", milliseconds(lambda: deck_py.plan(job)))
    print("plan of JSON text:", milliseconds(lambda: deck_py.plan(text)))
    print("summary:", milliseconds(lambda: deck_py.summary(plan)))
    print("to_json:", milliseconds(plan.to_json))
    prices = [round(100 + n / 100, 2) for n in range(asked.jobs // 4)]
    tried = deck_py.variants(job, {"/stock/0/price": prices, "/gap": ["1/16", "3/32", "1/8", "5/32"]})
    for kind in asked.on:
        one = 0.0
        for workers in (1, 2):
            taken, busy, count = study(tried, POOLS[kind](workers))
            one = one or taken
            speed = f"{taken:.1f} s, {one / taken:.2f} times one; processor {busy:.1f} s; load {os.getloadavg()[0]:.1f}"
            print(f"{count} plans, {workers} {kind}: {speed}", flush=True)


if __name__ == "__main__":
    main()
