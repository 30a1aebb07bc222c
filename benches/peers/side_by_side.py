"""Ours, `rectpack` and an integer programme under HiGHS on the same instances, in one run, on one core.

Seconds are of the processor, so that other work on the machine counts for none of the three.
"""

import argparse
from pathlib import Path

import greedy
import instances
import plates
from ours import Ours

BINS = {False: "bins_fixed", True: "bins_rotated"}
WAY = {False: "fixed", True: "turned"}
FILL = ("ngcut.json", "cgcut.json", "gcut.json")


def main() -> None:
    args = arguments()
    with Ours(args.program, args.effort) as ours:
        for section in args.sections:
            SECTIONS[section](args, ours)


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("sections", nargs="*", default=list(SECTIONS), help=", ".join(SECTIONS))
    parser.add_argument("--program", type=Path, required=True, help="the bench program `nest`")
    parser.add_argument("--data", type=Path, required=True, help="folder of the instances")
    parser.add_argument("--effort", default="standard", help="ours")
    parser.add_argument("--every", type=int, default=50, help="one instance in so many, for the classes")
    parser.add_argument("--small", type=int, default=4, help="how many small orders and fills of each file go to HiGHS")
    parser.add_argument("--limit", type=float, default=10.0, help="seconds that HiGHS may take for one instance")
    return parser.parse_args()


def table(head: list[str], rows: list[list[object]]) -> None:
    print("| " + " | ".join(head) + " |")
    print("| --- |" + " ---: |" * (len(head) - 1))
    for row in rows:
        print("| " + " | ".join(cell(value) for value in row) + " |")
    print()


def cell(value: object) -> str:
    if value is None:
        return "–"
    if isinstance(value, float):
        return f"{value:.2g}" if value < 0.1 else f"{value:.2f}" if value < 10 else f"{value:.0f}"
    return str(value)


def classes(args: argparse.Namespace, ours: Ours) -> None:
    chosen = instances.read(args.data, "bp_class.json")[:: args.every]
    for turned in (False, True) if chosen else ():
        print(f"Sums of sheets, {WAY[turned]}, ours at {args.effort}, one order in {args.every}:\n")
        runs = [(instance, *both(instance, ours, turned)) for instance in chosen]
        setting = best_setting([passes for *_, passes in runs])
        groups: dict[str, list] = {}
        for run in runs:
            groups.setdefault(run[0]["name"].split("_")[0].removeprefix("CLASS"), []).append(run)
        rows = [class_row(name, group, setting, turned) for name, group in groups.items()]
        rows.append(class_row("all", runs, setting, turned))
        one = f"rectpack, {' '.join(setting)}"
        best = f"rectpack, best of {len(greedy.SETTINGS)}"
        table(["class", "orders", "ours", "s", one, "s", best, "s", "best known", "known bound"], rows)


def both(instance: dict, ours: Ours, turned: bool) -> tuple[dict, list[greedy.Pass]]:
    passes = greedy.all_passes(instances.pieces(instance), tuple(instance["bin"]), turned)
    return ours.ask("nest", instance, turned), passes


def best_setting(runs: list[list[greedy.Pass]]) -> tuple[str, str, str]:
    """The setting with the fewest sheets over all; seen afterwards, so to the peer's advantage."""
    sums: dict[tuple[str, str, str], int] = {}
    for one in (one for passes in runs for one in passes):
        sums[one.setting] = sums.get(one.setting, 0) + one.sheets
    return min(sums, key=lambda setting: (sums[setting], setting))


def class_row(name: str, runs: list, setting: tuple[str, str, str], turned: bool) -> list[object]:
    fixed = [one for *_, passes in runs for one in passes if one.setting == setting]
    known = [instances.bounds(instance, BINS[turned]) for instance, *_ in runs]
    return [
        name,
        len(runs),
        sum(answer["sheets"] for _, answer, _ in runs),
        sum(answer["seconds"] for _, answer, _ in runs),
        sum(one.sheets for one in fixed),
        sum(one.seconds for one in fixed),
        sum(min(one.sheets for one in passes) for *_, passes in runs),
        sum(one.seconds for *_, passes in runs for one in passes),
        sum(most for _, most in known),
        sum(least for least, _ in known),
    ]


def small(args: argparse.Namespace, ours: Ours) -> None:
    """Orders of twenty parts on the smallest sheets, where the integer programme is small enough."""
    found = instances.read(args.data, "bp_class.json")
    chosen = [one for one in found if one["name"].startswith("CLASS01_020")][: args.small]
    rows = []
    for instance in chosen:
        for turned in (False, True):
            answer, passes = both(instance, ours, turned)
            solved = plates.solve(instance, turned, False, args.limit)
            expect(instance, BINS[turned], solved, answer["sheets"], least=True)
            best = min(one.sheets for one in passes)
            mine = [answer["sheets"], yes(answer["proven"]), answer["seconds"]]
            peer = [best, sum(one.seconds for one in passes)]
            rows.append(
                [f"{instance['name']} {WAY[turned]}", *mine, *peer, solved.value, yes(solved.proven), solved.seconds]
            )
    if rows:
        print(f"Small orders, sheets; HiGHS has {args.limit:.0f} s each:\n")
        table(["order", "ours", "proven", "s", "rectpack, best", "s", "HiGHS", "proven", "s"], rows)


def fill(args: argparse.Namespace, ours: Ours) -> None:
    """One sheet, most value, limited copies, fixed orientation."""
    rows = []
    for file in FILL:
        for instance in instances.read(args.data, file)[: args.small]:
            answer = ours.ask("fill", instance, False) or {}
            solved = plates.solve(instance, False, True, args.limit)
            values = [item["value"] for item in instance["items"] for _ in range(item["demand"])]
            passes = greedy.all_passes(instances.pieces(instance), tuple(instance["bin"]), False, 1)
            best = max(sum(values[piece] for piece in one.placed) for one in passes)
            expect(instance, "limited_fixed", solved, answer.get("value"), least=False)
            mine = [answer.get("value"), yes(answer.get("proven")), answer.get("seconds")]
            peer = [best, sum(one.seconds for one in passes)]
            _, most = instances.bounds(instance, "limited_fixed")
            rows.append([instance["name"], *mine, *peer, solved.value, yes(solved.proven), solved.seconds, most])
    if rows:
        print(
            f"One sheet, most value, copies limited, fixed; HiGHS has {args.limit:.0f} s each; "
            "rectpack places by size and knows of no values:\n"
        )
        head = ["sheet", "ours", "proven", "s", "rectpack, best", "s", "HiGHS", "proven", "s", "published"]
        table(head, rows)


def expect(instance: dict, key: str, solved: plates.Solved, mine: int | None, *, least: bool) -> None:
    """A proof of HiGHS, the literature and our answer must agree."""
    low, high = instances.bounds(instance, key)
    if not solved.proven:
        return
    if not (low or 0) <= solved.value <= (high or solved.value):
        raise RuntimeError(f"{instance['name']}: HiGHS proves {solved.value}, published is {low} to {high}")
    if mine is not None and (mine < solved.value if least else mine > solved.value):
        raise RuntimeError(f"{instance['name']}: ours is {mine}, better than the best, {solved.value}")


def yes(proven: bool | None) -> str | None:
    return None if proven is None else ("yes" if proven else "no")


SECTIONS = {"classes": classes, "small": small, "fill": fill}

if __name__ == "__main__":
    main()
