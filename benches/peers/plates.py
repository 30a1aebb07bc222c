"""An integer programme of plates and cuts, handed to the open solver HiGHS.

A plate is a size of piece that can come about. An integer variable says how often a plate is cut at a place, another
how often an item is taken from a plate of nearly its size. Of each plate no more can be used up than come about, of
the sheet itself one (fill) or as few as possible (sheets). The idea is that of Furini, Malaguti and Thomopulos (2016);
the formulation here is our own:

- a cut lies at a sum of item sides and in the first half of the plate: whatever is cut with both halves in use can be
  pushed together and mirrored until it is so;
- what a cut leaves is trimmed down to the largest sum of item sides that fits, in both directions, until it stays;
- an item is taken from a plate where it is longer and wider than half of it: from larger plates it is cut off first.
"""

import time
from dataclasses import dataclass

import highspy

Plate = tuple[int, int]


@dataclass
class Solved:
    value: int | None
    bound: float
    proven: bool
    seconds: float = 0.0


@dataclass
class Item:
    sizes: list[Plate]
    copies: int
    value: int


def items_of(instance: dict, turned: bool) -> list[Item]:
    items = []
    for item in instance["items"]:
        size = (item["w"], item["h"])
        sizes = sorted({size, size[::-1]} if turned else {size})
        items.append(Item(sizes, item.get("demand", 1), item.get("value", 0)))
    return items


class Sums:
    """Sums of item sides along one axis, by what fits the plate across it; kept once computed."""

    def __init__(self, items: list[Item], axis: int):
        self.items, self.axis, self.known = items, axis, {}

    def upto(self, plate: Plate) -> list[int]:
        if plate not in self.known:
            self.known[plate] = self.compute(plate)
        return self.known[plate]

    def compute(self, plate: Plate) -> list[int]:
        most, reached = plate[self.axis], 1
        for item in self.items:
            sides = {size[self.axis] for size in item.sizes if size[0] <= plate[0] and size[1] <= plate[1]}
            for _ in range(item.copies if sides else 0):
                before = reached
                for side in sides:
                    reached |= before << side
                reached &= (1 << (most + 1)) - 1
                if reached == before:
                    break
        return [at for at in range(1, most + 1) if reached >> at & 1]


class Model:
    """Plates, the ways to use each, and the programme built of them."""

    def __init__(self, instance: dict, turned: bool):
        self.items = items_of(instance, turned)
        self.sums = (Sums(self.items, 0), Sums(self.items, 1))
        self.sheet = self.trimmed(tuple(instance["bin"]))
        self.plates: dict[Plate, int] = {}
        self.cuts: list[tuple[Plate, list[Plate]]] = []
        self.takes: list[tuple[Plate, int]] = []
        waiting = [self.sheet] if self.sheet else []
        while waiting:
            plate = waiting.pop()
            if plate not in self.plates:
                self.plates[plate] = len(self.plates)
                waiting.extend(self.open(plate))

    def trimmed(self, plate: Plate) -> Plate | None:
        """The plate without what no sum of sides can use; none where no item fits."""
        while True:
            sums = [axis.upto(plate) for axis in self.sums]
            if not all(sums):
                return None
            least = (sums[0][-1], sums[1][-1])
            if least == plate:
                return plate
            plate = least

    def open(self, plate: Plate) -> list[Plate]:
        """Every use of a plate; hands back the plates that come about."""
        found = []
        for axis in (0, 1):
            for at in self.sums[axis].upto(plate):
                if 2 * at > plate[axis]:
                    break
                halves = [self.trimmed(resized(plate, axis, side)) for side in (at, plate[axis] - at)]
                halves = [half for half in halves if half]
                self.cuts.append((plate, halves))
                found.extend(halves)
        for index, item in enumerate(self.items):
            if any(fills(size, plate) for size in item.sizes):
                self.takes.append((plate, index))
        return found

    def solve(self, fill: bool, limit: float) -> Solved:
        highs = highspy.Highs()
        for option, setting in (("output_flag", False), ("threads", 1), ("time_limit", limit), ("mip_rel_gap", 0.0)):
            highs.setOptionValue(option, setting)
        count = len(self.plates)
        inf = highspy.kHighsInf
        # Rows: each plate comes about at least as often as it is used up; the copies of each item.
        for plate in self.plates:
            highs.addRow(-1.0 if fill and plate == self.sheet else 0.0, inf, 0, [], [])
        for item in self.items:
            low, high = (0, item.copies) if fill else (item.copies, inf)
            highs.addRow(low, high, 0, [], [])
        for plate, halves in self.cuts:
            column(highs, 0.0, {self.plates[plate]: -1.0}, [self.plates[half] for half in halves])
        for plate, item in self.takes:
            cost = -float(self.items[item].value) if fill else 0.0
            column(highs, cost, {self.plates[plate]: -1.0}, [count + item])
        if not fill:
            column(highs, 1.0, {}, [self.plates[self.sheet]])
        highs.run()
        info = highs.getInfo()
        sign = -1 if fill else 1
        proven = highs.getModelStatus() == highspy.HighsModelStatus.kOptimal
        found = info.primal_solution_status == 2
        value = sign * round(info.objective_function_value) if found else None
        return Solved(value, sign * info.mip_dual_bound, proven)


def column(highs: highspy.Highs, cost: float, entries: dict[int, float], more: list[int]) -> None:
    """An integer variable; `more` are rows that each use of it adds one to."""
    for row in more:
        entries[row] = entries.get(row, 0.0) + 1.0
    entries = {row: value for row, value in entries.items() if value}
    highs.addCol(cost, 0.0, highspy.kHighsInf, len(entries), list(entries), list(entries.values()))
    highs.changeColIntegrality(highs.getNumCol() - 1, highspy.HighsVarType.kInteger)


def resized(plate: Plate, axis: int, side: int) -> Plate:
    return (side, plate[1]) if axis == 0 else (plate[0], side)


def fills(size: Plate, plate: Plate) -> bool:
    """The item fits and is more than half as long and as wide as the plate."""
    return all(side <= room < 2 * side for side, room in zip(size, plate, strict=True))


def solve(instance: dict, turned: bool, fill: bool, limit: float) -> Solved:
    """Fill: most value from one sheet. Otherwise: fewest sheets for all items. Seconds include building the model."""
    start = time.process_time()
    model = Model(instance, turned)
    solved = model.solve(fill, limit)
    solved.seconds = time.process_time() - start
    return solved
