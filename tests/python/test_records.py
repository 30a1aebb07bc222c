"""Parts of results as objects: read, compared, kept whole, shown, and handed on."""

import copy
import json
import pickle
from pathlib import Path
from typing import Any

import pytest
from conftest import ROOT
from test_types import BEYOND, JOBS, full_job

import deck_py
from deck_py import types
from deck_py.types import Record, Records, Seam

SEAM = {"number": 1, "member": 3, "fore": 48, "fore_text": '48"', "length": None}


def every(value: Any) -> list[Any]:
    """A record or a list of them, and all parts inside it."""
    if isinstance(value, Record):
        names = [name for name in type(value)._hints if name.removesuffix("_") in value.to_dict()]
        return [value] + [part for name in names for part in every(getattr(value, name))]
    return ([value] if isinstance(value, Records) else []) + [p for item in value for p in every(item)] if isinstance(value, tuple) else []


def parts(plan: deck_py.Plan) -> list[Any]:
    """Every record of a plan."""
    tops: list[Any] = [plan.basis, plan.assumed, plan.rounded, plan.checks, plan.members, plan.openings, plan.span]
    tops += [plan.seams, plan.no_layout, plan.takeoff, plan.cautions, plan.outline.shape]
    tops += [each for layout in plan.layouts for each in (layout.boards, layout.seams, layout.cost)]
    tops += [each for panel in plan.panels for each in (panel.bounds, panel.shape, panel.openings)]
    tops += [plan.fasteners.rows] if plan.fasteners else []
    tops += [plan.sheets.sheets, plan.sheets.unplaced, plan.sheets.cost_by_boat] if plan.sheets else []
    return [part for top in tops for part in every(top)]


def jobs() -> list[Any]:
    return [*JOBS, full_job(), BEYOND]


@pytest.mark.parametrize("job", jobs(), ids=lambda job: job.stem if isinstance(job, Path) else job["name"])
def test_every_part_is_an_object_to_rely_on(job: Any) -> None:
    found = parts(deck_py.plan(job))
    assert len(found) > 50
    again = parts(deck_py.plan(job))
    for part, other in zip(found, again, strict=True):
        assert part == other and hash(part) == hash(other) and part is not other
        assert len(repr(part)) <= 200 and "\n" not in repr(part)
        assert part._repr_html_().count("<table>") == part._repr_html_().count("</table>")
    for part in found[:: len(found) // 50]:
        for same in (pickle.loads(pickle.dumps(part)), copy.copy(part), copy.deepcopy(part)):
            assert type(same) is type(part) and same == part and repr(same) == repr(part)
        if isinstance(part, Record):
            fields = part.to_dict()
            assert type(part)(fields) == part and json.loads(part.to_json()) == fields
            assert part != fields and part != type("Other", (Record,), {})(fields)


def test_fields_are_attributes_and_stay() -> None:
    seam = Seam(SEAM)
    assert (seam.number, seam.fore, seam.fore_text, seam.length) == (1, 48, '48"', None)
    assert repr(seam) == 'Seam(number=1, fore=48", member=3)'
    assert {"number", "fore", "to_dict"} <= set(dir(seam))
    for change in (lambda: setattr(seam, "fore", 1), lambda: setattr(seam, "new", 1), lambda: delattr(seam, "fore")):
        with pytest.raises(AttributeError):
            change()
    with pytest.raises(AttributeError, match="this Seam was made without 'aft'"):
        seam.aft  # noqa: B018
    with pytest.raises(AttributeError):
        seam.breadth  # type: ignore[attr-defined]  # noqa: B018
    assert len({seam, Seam(SEAM), Seam(SEAM | {"fore": 48.0}), Seam(SEAM | {"fore": 49})}) == 2


def test_what_is_not_known_is_kept() -> None:
    later = SEAM | {"glue": {"kind": "none", "beads": [1, 2.5]}}
    seam = Seam(later)
    assert seam.to_dict() == later and pickle.loads(pickle.dumps(seam)).to_dict() == later
    assert json.loads(seam.to_json()) == later and seam != Seam(SEAM)
    board = types.NoLayout({"reason": "x", "bay": later, "mend": []})
    assert board.to_dict()["bay"] == later


def test_nothing_handed_in_or_out_is_shared() -> None:
    given: dict[str, Any] = {"number": 1, "supports": [1, 2]}
    board = types.Board(given)
    given["supports"].append(3)
    board.to_dict()["supports"].append(3)
    assert board.supports == (1, 2) and board.to_dict() == {"number": 1, "supports": [1, 2]}


def test_json_is_written_as_in_every_language() -> None:
    peak = types.Peak({"at": 1e-7, "value": 1e16})
    assert peak.to_json() == '{\n  "at": 1e-7,\n  "value": 1e+16\n}'
    plan = deck_py.plan(ROOT / "examples" / "jobs" / "uneven-22.json")
    assert plan.takeoff is not None
    inside = "\n".join("  " + line for line in plan.takeoff.to_json().splitlines())
    assert f'"takeoff": {inside.lstrip()}' in plan.to_json()


def test_a_word_of_pythons_own_has_an_underscore() -> None:
    bay = types.Bay({"from": 1, "to": 2, "clear": 1})
    assert (bay.from_, bay.to) == (1, 2)


def test_a_saws_tree_is_walked() -> None:
    nest = deck_py.nest([{"label": "lid", "length": 40, "width": 20, "count": 4}], [{"label": "ply", "length": 96, "width": 48}])

    def labels(piece: types.Tree | None) -> list[str]:
        if isinstance(piece, types.Cut):
            return [label for child in piece.children for label in labels(child)]
        return [piece.part] if piece and piece.part else []

    assert labels(nest.sheets[0].cuts) == ["lid"] * 4
    alone = deck_py.fill({"label": "a", "length": 9, "width": 9}, [{"label": "b", "length": 9, "width": 9}])
    assert alone.cuts == types.Leaf({"part": "b"}) and repr(alone.cuts) == "Leaf(part='b')"


def test_records_go_into_the_next_call() -> None:
    nest = deck_py.nest(
        [{"label": "a", "length": 60, "width": 40}], [{"label": "ply", "length": 96, "width": 48}], keep=(12, 12)
    )
    offcut = nest.sheets[0].offcuts[0]
    part = {"label": "b", "length": 98, "width": 50, "inside": [offcut]}
    plain = part | {"inside": [offcut.to_dict()]}
    stock = [{"label": "ply", "length": 96, "width": 48}]
    assert deck_py.nest([part], stock) == deck_py.nest([plain], stock)  # type: ignore[list-item]
    plan = deck_py.plan(ROOT / "examples" / "jobs" / "plain-20.json")
    assert len(deck_py.panels(plan.outline, plan.seams)) == len(plan.panels)


def test_tables_are_safe_and_say_what_the_shop_writes() -> None:
    plan = deck_py.plan(ROOT / "examples" / "jobs" / "uneven-22.json")
    assert "<td>46-15/16\"</td>" in plan.seams._repr_html_()
    assert plan.seams._repr_html_().count("<tr>") == len(plan.seams) + 1
    assert Records()._repr_html_() == "<table><tr><td>none</td></tr></table>"
    line = types.TakeoffLine({"item": "sheet", "description": "<a&b>", "buy": 1, "unit": "sheet", "price": None})
    html = Records([line])._repr_html_()
    assert "left\">&lt;a&amp;b&gt;</td>" in html and "<a&b>" not in html and "price" not in html


def test_kinds_are_known_by_their_public_name() -> None:
    kinds = [getattr(types, name) for name in types.__all__]
    records = [kind for kind in kinds if isinstance(kind, type) and issubclass(kind, Record) and kind is not Record]
    assert len(records) >= 45
    for kind in records:
        assert kind.__module__ == "deck_py.types" and getattr(types, kind.__name__) is kind and kind.__doc__
