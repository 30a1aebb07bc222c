#!/usr/bin/python3
"""Builds the quoting workbook, an .ods, in a headless office with the add-in installed.

    /usr/bin/python3 examples/spreadsheet/build_workbook.py --addin target/spreadsheet/deck.oxt --out target/spreadsheet/quote.ods

Needs the office's own Python (Debian: /usr/bin/python3 with python3-uno).
"""

import argparse
import json
import pathlib
import sys
import tempfile
import zipfile

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(HERE)]

from office import Office, save  # noqa: E402


def schema(addin):
    """The schema of a job, from the library in the add-in; and the add-in's own modules made importable."""
    with tempfile.TemporaryDirectory(prefix="deck-addin-") as folder:
        with zipfile.ZipFile(addin) as package:
            package.extractall(folder)
        sys.path.insert(0, str(pathlib.Path(folder) / "pythonpath"))
        from deck_sheet import cells, fields, library  # noqa: F401  (imported while they are there)

        from workbook.schema import Schema

        return Schema(json.loads(library.beside_the_add_in().job_schema()))


def build(office, addin):
    """The workbook, open in the office."""
    found = schema(addin)
    from workbook import drawing_sheet, measurements, pages, quote, results, shop, styles, work

    book = office.new()
    book.lockControllers()
    styles.make(book)
    pages.make(book)
    first = book.Sheets.getByIndex(0).Name
    measurements.make(book, found)
    shop.make(book, found)
    # The sheet behind comes before those that show it, so that its names are known to them.
    work.make(book)
    results.make(book)
    quote.make(book)
    drawing_sheet.make(book)
    book.Sheets.removeByName(first)
    book.Sheets.moveByName(work.NAME, book.Sheets.getCount())
    book.unlockControllers()
    book.calculateAll()
    return book


def main():
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--addin", type=pathlib.Path, default=ROOT / "target/spreadsheet/deck.oxt")
    asked.add_argument("--out", type=pathlib.Path, default=ROOT / "target/spreadsheet/quote.ods")
    arguments = asked.parse_args()
    arguments.out.parent.mkdir(parents=True, exist_ok=True)
    with Office() as office:
        office.install(arguments.addin)
        save(build(office, arguments.addin), arguments.out)
    print(arguments.out)


if __name__ == "__main__":
    main()
