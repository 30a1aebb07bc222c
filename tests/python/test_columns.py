"""Lists of a plan in columns, against the same lists row by row."""

import json
from itertools import repeat
from pathlib import Path
from typing import Any

import numpy
import pandas
import polars
import pytest
from conftest import ROOT

import deck_py


def rows(columns: dict[str, list[Any]]) -> list[dict[str, Any]]:
    return [dict(zip(columns, row, strict=True)) for row in zip(*columns.values(), strict=True)]


def test_columns_are_the_plans_lists(demo: Path) -> None:
    plan = deck_py.plan(demo)
    asked = ["old_holes", "fitting_holes", "opening_clearances", "patches"]
    always = ["panels", "seams", "fasteners", "sheets", "takeoff", "span"]
    assert plan.frames == [*always, "tolerance", "arrangements", "blocks", "quote", "labour", *asked]
    frames = {name: rows(plan.frame(name)) for name in plan.frames}
    fittings = plan.fittings.holes if plan.fittings else ()
    checked = plan.opening_checks.openings if plan.opening_checks else ()
    patches = plan.patch.patches if plan.patch else ()
    counts = [len(plan.old_holes), len(fittings), sum(len(opening.clearances) for opening in checked), len(patches)]
    assert [len(frames.pop(name)) for name in asked] == counts
    assert [row["label"] for row in frames["panels"]] == [panel.label for panel in plan.panels]
    for row, panel in zip(frames["panels"], plan.panels, strict=True):
        assert (row["length"], row["area"], row["weight_lb"]) == (panel.length, panel.area, panel.weight_lb)
        assert (row["fore"], row["starboard"]) == (panel.bounds.fore, panel.bounds.starboard)
        assert row["openings"] == len(panel.openings)
    for seam, given in zip(frames["seams"], plan.seams, strict=True):
        assert seam == {name: getattr(given, name) for name in seam}
    held = plan.fasteners.rows if plan.fasteners else ()
    places = [(row.panel, row.member, x, y) for row in held for x, y in zip(row.stations or repeat(row.station), row.positions)]
    assert [(row["panel"], row["member"], row["x"], row["y"]) for row in frames["fasteners"]] == places
    sheets = plan.sheets.sheets if plan.sheets else ()
    parts = [(n + 1, s.stock, p.part, p.x, p.turned) for n, s in enumerate(sheets) for p in s.placements]
    assert [(r["sheet"], r["stock"], r["part"], r["x"], r["turned"]) for r in frames["sheets"]] == parts
    lines = plan.takeoff.lines if plan.takeoff else ()
    assert [(row["item"], row["needed"], row["buy"]) for row in frames["takeoff"]] == [
        (line.item, line.needed.amount, line.buy) for line in lines
    ]
    held_against = [(panel.panel, panel.axis, len(panel.bays)) for panel in plan.span.panels]
    assert [(row["panel"], row["axis"], row["bays"]) for row in frames.pop("span")] == held_against
    ranked = [(row.rank, row.kind, row.built) for row in plan.arrangements]
    assert [(row["rank"], row["kind"], row["built"]) for row in frames.pop("arrangements")] == ranked
    blocks = plan.division.blocks if plan.division else ()
    assert [(row["label"], row["fore"], row["width"]) for row in frames.pop("blocks")] == [
        (block.label, block.fore, block.width) for block in blocks
    ]
    # What a job may leave out, its plan leaves out.
    spread = plan.tolerance.seams if plan.tolerance else ()
    assert [(row["seam"], row["fore_worst"]) for row in frames.pop("tolerance")] == [(s.seam, s.fore.worst) for s in spread]
    quoted = [] if plan.quote is None else plan.quote.lines
    assert [(row["description"], row["amount"]) for row in frames.pop("quote")] == [
        (line.description, line.amount) for line in quoted
    ]
    assert bool(frames.pop("labour")) == bool(quoted)
    assert bool(plan.layouts) == bool(frames.pop("seams"))
    assert bool(plan.panels) == all(frames.values()) == any(frames.values())


def test_columns_of_numbers_are_arrays_of_numbers(small: dict[str, Any]) -> None:
    plan = deck_py.plan(small)
    fasteners = plan.frame("fasteners")
    assert numpy.array([fasteners["x"], fasteners["y"]]).dtype == float
    assert numpy.array(plan.frame("panels")["weight_lb"]).sum() == 368
    small["frame"]["regular"]["spacing"] = 60
    assert set(map(len, deck_py.plan(small).frame("seams").values())) == {0}


def test_strength_stands_in_columns(small: dict[str, Any]) -> None:
    small["span"] = {"panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}}
    plan = deck_py.plan(small)
    columns = plan.frame("span")
    assert columns["panel"] == ["1", "2", "3", "4", "5"] and columns["bays"] == [2] * 5
    assert columns["beam_allowable_psf"] == [panel.beam and panel.beam.allowable_psf for panel in plan.span.panels]
    assert all(allowable > 0 for allowable in columns["table_allowable_psf"])


def test_an_unknown_list_is_refused(small: dict[str, Any]) -> None:
    with pytest.raises(deck_py.DeckError, match="It is panels, seams, fasteners, sheets, takeoff, span, tolerance, quote, labour."):
        deck_py.plan(small).frame("panel")


TEXTS = {"label", "strength_axis", "panel", "kind", "stock", "part", "item", "description", "measure", "unit", "axis"}
TEXTS |= {"table_governing", "beam_governing"}
COUNTS = {"board", "openings", "number", "member", "seam", "sheet", "buy", "bays"}


def dtypes(name: str) -> tuple[str, polars.DataType | type[polars.DataType]]:
    """What a column is in pandas and in polars."""
    if name in TEXTS:
        return "str", polars.String
    if name in COUNTS:
        return "int64", polars.Int64
    return ("bool", polars.Boolean) if name == "turned" else ("float64", polars.Float64)


@pytest.mark.parametrize("name", ["panels", "seams", "fasteners", "sheets", "takeoff", "span"])
def test_frames_are_made_of_columns_of_one_type(demo: Path, name: str) -> None:
    columns = deck_py.plan(demo).frame(name)
    ours, theirs = pandas.DataFrame(columns), polars.DataFrame(columns)
    assert list(ours.columns) == theirs.columns == list(columns)
    assert len(ours) == theirs.height == len(next(iter(columns.values())))
    for column, values in columns.items():
        there = [value for value in values if value is not None]
        assert theirs[column].to_list() == values
        assert ours[column].dropna().tolist() == there
        if len(there) == len(values) and values:
            assert (str(ours[column].dtype), theirs[column].dtype) == dtypes(column), column
        elif there:
            # Where some rows have none, pandas has no whole numbers.
            assert str(ours[column].dtype) in (dtypes(column)[0], "float64") and theirs[column].dtype == dtypes(column)[1]


def test_a_studys_columns_are_of_one_type() -> None:
    base = json.loads((ROOT / "examples" / "jobs" / "uneven-22.json").read_text(encoding="utf-8"))
    base.pop("span")
    study = deck_py.study(deck_py.variants(base, {"/gap": [0, 0.125], "/stock/0/width": [48, 20]}))
    columns = study.columns()
    ours, theirs = pandas.DataFrame(columns), polars.DataFrame(columns)
    assert columns["no_layout"][:1] == [None] and columns["no_layout"][1] is not None
    kinds = {"/gap": polars.Float64, "/stock/0/width": polars.Int64, "job": polars.Int64, "name": polars.String}
    kinds |= dict.fromkeys(("boards", "panels", "fasteners", "sheets", "cautions"), polars.Int64)
    kinds |= dict.fromkeys(("seam_length", "unevenness", "cost", "weight_lb"), polars.Float64)
    kinds |= {"proven": polars.Boolean, "no_layout": polars.String}
    for name, kind in kinds.items():
        assert theirs[name].dtype == kind and theirs[name].to_list() == columns[name], name
    assert [str(ours[name].dtype) for name in ("/gap", "seam_length", "/stock/0/width")] == ["float64", "float64", "int64"]
    assert theirs.filter(polars.col("no_layout").is_null()).height == 2
