#!/usr/bin/python3
"""How long a recalculation of the whole workbook takes on the uneven demo. Run it by `tests/workbook/run.sh speed`.

One measurement is changed, so that no plan is known, and every formula of every sheet is worked out anew (a hard
recalculation). The time is that of the call, the way over the pipe included.
"""

import statistics
import sys
import time

from conftest import BUILT
import boats
import office as offices
import sheet

RUNS = 40
NAME = "uneven-22"


def changed(member, run):
    """Moves the last member by a sixteenth for each run: each run has a boat of its own."""
    member.setString(f"{268 * 16 - 1 - run}/16")


def typing(book, member, run):
    """What a person waits for: the cell is typed, and what depends on it follows."""
    changed(member, run)
    book.calculate()


def milliseconds(work):
    start = time.perf_counter()
    work()
    return (time.perf_counter() - start) * 1000


def main():
    with offices.Office() as office:
        office.install(BUILT / "deck.oxt")
        book = office.open(BUILT / "quote.ods")
        boats.type_in(book, boats.job(NAME))
        book.calculateAll()
        member = sheet.named(book, "Members").getCellByPosition(0, 13)
        cold, warm, typed = [], [], []
        for run in range(RUNS):
            book.enableAutomaticCalculation(False)
            changed(member, run)
            cold.append(milliseconds(book.calculateAll))
            warm.append(milliseconds(book.calculateAll))
            book.enableAutomaticCalculation(True)
        for run in range(RUNS, 2 * RUNS):
            typed.append(milliseconds(lambda: typing(book, member, run)))
        assert sheet.errors(book) == [] and sheet.beside(book, "Results", "Boards") == 6
        for name, times in (("new plan, every formula", cold), ("known plan, every formula", warm), ("a cell typed, what depends on it", typed)):
            print(f"{name}: median {statistics.median(times):.0f} ms, fastest {min(times):.0f} ms, slowest {max(times):.0f} ms")
        book.close(True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
