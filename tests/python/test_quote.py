"""The strip-out, the weight ledger and the quote, from the user's side."""

import csv
import io
import json
import pickle
from decimal import Decimal
from pathlib import Path
from typing import Any

import deck_py

ROOT = Path(__file__).parents[2]
REFIT = ROOT / "examples/jobs/refit-24.json"


def test_a_quote_adds_up_in_python_and_in_csv() -> None:
    quote = deck_py.plan(REFIT).quote
    assert quote is not None
    amounts = [Decimal(str(line.amount)) for line in quote.lines if line.amount is not None]
    total = Decimal(str(quote.total))
    assert sum(amounts) == total == sum(Decimal(str(each.amount)) for each in quote.sums)
    rows = list(csv.DictReader(io.StringIO(quote.to_csv(), newline="")))
    assert len(rows) == len(quote.lines) + 1
    assert Decimal(rows[-1]["amount"]) == total == sum(Decimal(row["amount"]) for row in rows[:-1])
    assert quote.unpriced == []
    assert pickle.loads(pickle.dumps(quote)) == quote
    assert json.loads(quote.to_json()) == quote.to_dict()
    assert repr(quote).startswith("Quote(") and "<table>" in quote._repr_html_()


def test_a_job_without_these_sections_has_none_of_them(small: dict[str, Any]) -> None:
    plan = deck_py.plan(small)
    assert (plan.quote, plan.strip_out, plan.weights, plan.covering) == (None, None, None, None)
    assert not {"quote", "strip_out", "weights", "covering"} & plan.to_dict().keys()


def test_the_ledger_is_mass_only() -> None:
    weights = deck_py.plan(REFIT).weights
    assert weights is not None
    removed = sum(line.pounds for line in weights.lines if line.side == "removed")
    added = sum(line.pounds for line in weights.lines if line.side == "added")
    assert abs(removed - weights.removed_lb) < 0.06 and abs(added - weights.added_lb) < 0.06
    assert "capacity label is not recomputed" in weights.caution
    assert not any("capacity" in key for key in weights.to_dict())


def test_the_covering_is_in_the_takeoff_and_in_the_quote() -> None:
    plan = deck_py.plan(REFIT)
    assert plan.covering is not None and plan.takeoff is not None and plan.quote is not None
    laid = plan.covering.laid
    assert laid is not None and plan.covering.glue is not None
    line = next(line for line in plan.takeoff.lines if line.item == "covering")
    assert (line.buy, line.needed.amount, line.unit) == (laid.buy, laid.length, "foot")
    quoted = next(each for each in plan.quote.lines if each.description == laid.roll)
    assert quoted.amount == line.cost
    glue = next(line for line in plan.takeoff.lines if line.item == "adhesive")
    assert glue.needed.measure == "gallons" and glue.buy == plan.covering.glue.cans
