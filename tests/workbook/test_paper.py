"""The workbook on paper: it is exported, and what stands on the pages is read back."""

import subprocess

import office as offices
import pytest
import sheet
from test_buttons import DRAW, press
from test_quote import quoted  # noqa: F401  (a fixture)


def pages(path):
    text = subprocess.run(["pdftotext", "-layout", path, "-"], check=True, capture_output=True, text=True).stdout
    return text.split("\f")[:-1]


@pytest.fixture
def paper(office, quoted, tmp_path):  # noqa: F811
    offices.save_as(quoted, tmp_path / "Kestrel.ods")
    press(office, quoted, DRAW)
    offices.save(quoted, tmp_path / "Kestrel.pdf", "calc_pdf_Export")
    return quoted, pages(tmp_path / "Kestrel.pdf")


def test_each_sheet_is_on_paper_and_nothing_is_cut_to_hashes(paper):
    _, found = paper
    assert not any("###" in page for page in found)
    feet = [page.split("\n")[-2].split() for page in found]
    assert [foot[0] for foot in feet] == ["Measurements"] * 2 + ["Shop"] + ["Results"] * 3 + ["Quote", "Drawing"]
    assert ["".join(foot[1:]) for foot in feet] == [f"{number}/8" for number in range(1, 9)]


def test_the_quote_is_one_page_with_its_total(paper):
    book, found = paper
    page = next(page for page in found if page.split("\n")[-2].split()[0] == "Quote")
    total = sheet.named(book, "QuoteTotal").getCellByPosition(0, 0).getString()
    assert any(line.split() == ["Total", total] for line in page.split("\n"))
    assert "Vinyl covering, 8 ft 6 wide" in page and "New plywood deck, 270\" by 102\"" in page


def test_the_drawing_is_on_its_page(paper):
    _, found = paper
    # Words of the drawing itself, kept as text.
    assert "port" in found[-1].lower() and "bow" in found[-1].lower()
