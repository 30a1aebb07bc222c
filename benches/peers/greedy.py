"""The general-purpose package `rectpack` in its guillotine settings.

One pass places the rectangles in a sorted order, once. Merging of free rectangles is off: with it, layouts can come
out that no saw cuts edge to edge. Each layout is checked for that all the same.
"""

import itertools
import time
from dataclasses import dataclass

import rectpack

FITS = ("Bssf", "Blsf", "Baf")
SPLITS = ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
BINS = {"first": rectpack.PackingBin.BFF, "best": rectpack.PackingBin.BBF}
SORTS = {"area": rectpack.SORT_AREA, "longer": rectpack.SORT_LSIDE, "shorter": rectpack.SORT_SSIDE}

Rect = tuple[int, int, int, int]


def unmerged(name: str) -> type:
    base = getattr(rectpack, name)

    class Unmerged(base):
        def __init__(self, width, height, rot=True, merge=False, *args, **kwargs):
            super().__init__(width, height, rot=rot, merge=False, *args, **kwargs)

    return Unmerged


ALGORITHMS = {fit + split: unmerged(f"Guillotine{fit}{split}") for fit, split in itertools.product(FITS, SPLITS)}
SETTINGS = list(itertools.product(ALGORITHMS, BINS, SORTS))


@dataclass
class Pass:
    setting: tuple[str, str, str]
    sheets: int
    left: int
    placed: list[int]
    seconds: float


def one_pass(setting: tuple[str, str, str], pieces: list, sheet: tuple, turned: bool, sheets: int) -> Pass:
    algorithm, bins, sort = setting
    start = time.process_time()
    packer = rectpack.newPacker(
        bin_algo=BINS[bins], pack_algo=ALGORITHMS[algorithm], sort_algo=SORTS[sort], rotation=turned
    )
    for index, (width, height) in enumerate(pieces):
        packer.add_rect(width, height, rid=index)
    packer.add_bin(*sheet, count=sheets)
    packer.pack()
    seconds = time.process_time() - start
    placed = packer.rect_list()
    check(placed, pieces, sheet, turned)
    return Pass(setting, len(packer), len(pieces) - len(placed), [rect[5] for rect in placed], seconds)


def all_passes(pieces: list, sheet: tuple, turned: bool, sheets: int | None = None) -> list[Pass]:
    """Every setting once; `sheets` none means enough for all."""
    count = len(pieces) if sheets is None else sheets
    return [one_pass(setting, pieces, sheet, turned, count) for setting in SETTINGS]


def check(placed: list, pieces: list, sheet: tuple, turned: bool) -> None:
    """Right sizes, inside, and cut apart edge to edge; a layout that is not is a fault of the peer, and said."""
    by_sheet: dict[int, list[Rect]] = {}
    for number, x, y, width, height, piece in placed:
        sizes = {pieces[piece]} | ({pieces[piece][::-1]} if turned else set())
        if (width, height) not in sizes or min(x, y) < 0 or x + width > sheet[0] or y + height > sheet[1]:
            raise RuntimeError("rectpack: a rectangle of the wrong size or outside its sheet")
        by_sheet.setdefault(number, []).append((x, y, x + width, y + height))
    if not all(cuttable(rects) for rects in by_sheet.values()):
        raise RuntimeError("rectpack: a layout that cannot be cut edge to edge")


def cuttable(rects: list[Rect]) -> bool:
    """Cuts at every line that crosses no rectangle; each group that is left must be a single one in the end."""
    if len(rects) <= 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        groups: list[list[Rect]] = []
        reach = None
        for rect in sorted(rects, key=lambda rect: rect[low]):
            if reach is None or rect[low] >= reach:
                groups.append([])
            groups[-1].append(rect)
            reach = rect[high] if reach is None else max(reach, rect[high])
        if len(groups) > 1:
            return all(cuttable(group) for group in groups)
    return False
