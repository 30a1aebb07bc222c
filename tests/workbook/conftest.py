"""A real office with the add-in installed, and the workbook that the script builds; plans as the library gives them."""

import os
import pathlib
import subprocess
import sys
import zipfile

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]
HERE = ROOT / "tests/workbook"
BUILT = pathlib.Path(os.environ.get("DECK_WORKBOOK", ROOT / "target/spreadsheet"))
SPREADSHEET = ROOT / "examples/spreadsheet"
UNPACKED = BUILT / "unpacked"

with zipfile.ZipFile(BUILT / "deck.oxt") as package:
    package.extractall(UNPACKED)
sys.path[:0] = [str(SPREADSHEET), str(UNPACKED / "pythonpath"), str(HERE)]

import boats  # noqa: E402
import office as offices  # noqa: E402


@pytest.fixture(scope="session")
def office():
    """An office of its own, with the add-in."""
    with offices.Office() as running:
        running.install(BUILT / "deck.oxt")
        yield running


@pytest.fixture
def empty(office):
    """The workbook as it is built."""
    book = office.open(BUILT / "quote.ods")
    yield book
    book.close(True)


@pytest.fixture
def filled(office):
    """Opens workbooks with a boat typed in."""
    opened = []

    def fill(name):
        book = office.open(BUILT / "quote.ods")
        opened.append(book)
        boats.type_in(book, boats.job(name))
        book.calculateAll()
        return book

    yield fill
    for book in opened:
        book.close(True)


@pytest.fixture
def scratch(office):
    """A new sheet for single formulas."""
    book = office.new()
    yield book.Sheets.getByIndex(0)
    book.close(True)


@pytest.fixture(scope="session")
def plans():
    """Plans from the library's main example in Rust: the bytes, and what they say."""
    return {path.parent.name: path.read_bytes() for path in sorted((BUILT / "rust").glob("*/plan.json"))}


@pytest.fixture(scope="session")
def other_ways():
    """Programs that print a job's plan: in C, and in Python."""
    return {"C": [str(BUILT / "plan_json")], "Python": [os.environ["DECK_PYTHON"], str(HERE / "plan_json.py")]}


def printed(command, job):
    return subprocess.run([*command, str(job)], check=True, capture_output=True).stdout
