"""The quote: its printed lines add up to its printed total, and what is missing is said."""

from decimal import ROUND_HALF_UP, Decimal

import pytest
import sheet

PRICES = {"Fastener": 41.37, "Seam tape": 12.05, "Edge sealer": 23.333}
RATES = {"LabourRate": 87.35, "Markup": 17.5, "Overhead": 8, "Tax": 6.625, "ValidDays": 30}
OTHERS = (("Vinyl covering, 8 ft 6 wide", 23, "ft", 14.995), ("Glue", 2, "can", 61.2))
# Hours low, likely, high of the tasks that are filled in: their sums are counted by hand.
HOURS = (17.5, 33.0, 66.0)


@pytest.fixture
def quoted(filled):
    """The uneven boat with prices, rates and two other materials; all figures are made up."""
    book = filled("uneven-22")
    items, prices = sheet.named(book, "PriceItems"), sheet.named(book, "PriceOf")
    for row, (item,) in enumerate(items.getDataArray()):
        if item:
            prices.getCellByPosition(0, row).setValue(PRICES[item])
    for name, rate in RATES.items():
        sheet.named(book, name).getCellByPosition(0, 0).setValue(rate)
    other(book, OTHERS)
    book.calculateAll()
    return book


def other(book, lines):
    from workbook import shop

    area = book.Sheets.getByName("Shop")
    for row, (text, quantity, unit, price) in enumerate(lines, shop.PRICES_ROW + 1):
        area.getCellByPosition(shop.RIGHT, row).setString(text)
        area.getCellByPosition(shop.RIGHT + 2, row).setValue(quantity)
        area.getCellByPosition(shop.RIGHT + 3, row).setString(unit)
        area.getCellByPosition(shop.RIGHT + 4, row).setValue(price)


def cents(text):
    return Decimal(text.replace(",", ""))


def rounded(value):
    return value.quantize(Decimal("0.01"), ROUND_HALF_UP)


def printed(book, column, first, rows):
    """What is printed in a column, without the blanks."""
    area = book.Sheets.getByName("Quote")
    found = [area.getCellByPosition(column, row).getString() for row in range(first, first + rows)]
    return [text for text in found if text]


def test_what_is_printed_adds_up(quoted):
    from workbook import quote, shop, work

    lines = work.COST_ROWS + shop.OTHER_ROWS
    materials = [cents(text) for text in printed(quoted, quote.AMOUNT, quote.MATERIALS_ROW + 2, lines)]
    labour = [cents(text) for text in printed(quoted, quote.AMOUNT, quote.LABOUR_ROW + 2, len(shop.LABOUR))]
    sums = [cents(text) for text in printed(quoted, quote.AMOUNT, quote.SUMS_ROW, 7)]
    assert (len(materials), len(labour), len(sums)) == (6, 15, 7)
    total_materials, markup, total_labour, overhead, before_tax, tax, total = sums
    assert total_materials == sum(materials) and total_labour == sum(labour)
    assert markup == rounded(total_materials * Decimal("0.175"))
    assert overhead == rounded((total_materials + markup + total_labour) * Decimal("0.08"))
    assert before_tax == total_materials + markup + total_labour + overhead
    assert tax == rounded(before_tax * Decimal("0.06625"))
    assert total == before_tax + tax
    assert sheet.errors(quoted) == [] and sheet.messages(quoted) == []


def test_materials_are_the_take_off_at_the_shop_s_prices(quoted):
    rows = sheet.cells(quoted, "Quote", "A14:G27")
    found = {row[0] if row[0] != "Other" else row[1]: (row[2], row[5], row[6]) for row in rows}
    # Six sheets, three boxes, one roll, four cans: the take-off; each amount is reckoned here in decimals.
    counts = {"Sheet": (6, 118.5), "Fastener": (3, 41.37), "Seam tape": (1, 12.05), "Edge sealer": (4, 23.333)}
    counts |= {text: (quantity, price) for text, quantity, _, price in OTHERS}
    for item, (count, price) in counts.items():
        amount = rounded(Decimal(str(price)) * Decimal(str(count)))
        assert found[item] == (count, price, float(amount)), item


def test_hours_are_three_point_means(quoted):
    from workbook import quote, shop

    rows = quoted.Sheets.getByName("Quote").getCellRangeByPosition(0, quote.LABOUR_ROW + 2, 6, quote.LABOUR_ROW + 2 + len(shop.LABOUR)).getDataArray()
    for _, _, low, likely, high, mean, amount in rows[:-1]:
        exact = (Decimal(str(low)) + 4 * Decimal(str(likely)) + Decimal(str(high))) / 6
        assert Decimal(str(mean)) == rounded(exact)
        assert Decimal(str(amount)) == rounded(Decimal(str(mean)) * Decimal("87.35"))
    assert rows[-1][2:5] == HOURS
    assert abs(rows[-1][5] - 35.9) < 0.05


def test_what_lacks_a_price_is_left_out_and_said(quoted):
    before = sheet.named(quoted, "QuoteTotal").getCellByPosition(0, 0).getValue()
    sheet.named(quoted, "PriceOf").getCellByPosition(0, 0).setString("")
    sheet.named(quoted, "LabourRate").getCellByPosition(0, 0).setString("")
    said = sheet.messages(quoted)[-1]
    assert "Lines without a price, not in the total: 1." in said and "There is no labour rate" in said
    assert 0 < sheet.named(quoted, "QuoteTotal").getCellByPosition(0, 0).getValue() < before


def test_an_item_with_two_prices_is_named(quoted):
    sheet.named(quoted, "PriceItems").getCellByPosition(0, 4).setString("Seam tape")
    assert "Seam tape has two prices" in sheet.messages(quoted)[-1]


def test_hours_out_of_order_are_named(quoted):
    from workbook import shop

    hours = quoted.Sheets.getByName("Shop")
    hours.getCellByPosition(shop.LEFT + 1, shop.LABOUR_ROW + 1).setValue(5)
    assert "Measure, photograph, label: hours are not in order" in sheet.messages(quoted)[-1]
    hours.getCellByPosition(shop.LEFT + 1, shop.LABOUR_ROW + 1).setString("")
    assert "Measure, photograph, label: low, likely and high hours are needed" in sheet.messages(quoted)[-1]
