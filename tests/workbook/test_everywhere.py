"""The demo jobs through Rust, C, Python and the spreadsheet: the same plan everywhere."""

import json

import boats
import expected
import pytest
import sheet
from conftest import printed

EVERY = (*boats.PLANNED, boats.NOT_LAID_OUT)


@pytest.mark.parametrize("name", EVERY)
def test_c_and_python_give_the_bytes_of_rust(plans, other_ways, name):
    for way, command in other_ways.items():
        assert printed(command, boats.JOBS / f"{name}.json").rstrip(b"\n") == plans[name].rstrip(b"\n"), way


@pytest.mark.parametrize("name", EVERY)
def test_the_cells_make_the_same_plan_byte_for_byte(filled, plans, name):
    """What is typed into the workbook, read off its ranges as the add-in reads it, planned by the add-in's library."""
    from deck_sheet import answers, drawing

    book = filled(name)
    plan = answers.desk().plan(drawing.contents(book, one) for one in drawing.RANGES)
    assert plan.json().encode().rstrip(b"\n") == plans[name].rstrip(b"\n")


@pytest.mark.parametrize("name", boats.PLANNED)
def test_the_cells_show_that_plan(filled, plans, name):
    book, plan = filled(name), json.loads(plans[name])
    assert sheet.below(book, "Results", "Seams, from", 8) == expected.seams(plan)
    assert sheet.below(book, "Results", "To buy", 8) == expected.to_buy(plan)
    assert sheet.beside(book, "Results", "New boards weigh, lb, dry") == plan["takeoff"]["deck_weight_lb"]
