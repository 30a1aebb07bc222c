"""Drawings: what is handed out, and what is written."""

from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

import deck_py


def test_every_view_is_svg(demo: Path) -> None:
    plan = deck_py.plan(demo)
    assert {"cover", "plan"} <= set(plan.views) and len(set(plan.views)) == len(plan.views)
    for view in plan.views:
        assert ElementTree.fromstring(plan.svg(view)).tag == "{http://www.w3.org/2000/svg}svg"
    assert plan._repr_svg_() == plan.svg("plan")


def test_an_unknown_view_is_told_with_those_there_are(small: dict[str, Any]) -> None:
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.plan(small).svg("saw")
    assert (caught.value.errors[0].kind, caught.value.errors[0].value) == ("UnknownView", "saw")
    assert "saw-1" in caught.value.errors[0].accepted


def test_a_drawing_is_written_by_its_suffix(small: dict[str, Any], tmp_path: Path) -> None:
    plan = deck_py.plan(small)
    plan.write_drawing(tmp_path / "deck.svg")
    plan.write_drawing(str(tmp_path / "saw.SVG"), view="saw-1")
    assert (tmp_path / "deck.svg").read_text(encoding="utf-8") == plan.svg("plan")
    assert (tmp_path / "saw.SVG").read_text(encoding="utf-8") == plan.svg("saw-1")
    for name in ("deck", "deck.png"):
        with pytest.raises(deck_py.DeckError):
            plan.write_drawing(tmp_path / name)
        assert not (tmp_path / name).exists()
    with pytest.raises(FileNotFoundError):
        plan.write_drawing(tmp_path / "nowhere" / "deck.svg")


def test_the_packet_is_a_pdf_and_the_same_every_time(demo: Path, tmp_path: Path) -> None:
    plan = deck_py.plan(demo)
    one, other, european = (tmp_path / name for name in ("1.pdf", "2.pdf", "a4.pdf"))
    plan.write_packet(one)
    plan.write_packet(str(other))
    plan.write_packet(european, paper="a4")
    assert one.read_bytes()[:5] == b"%PDF-" and one.read_bytes() == other.read_bytes()
    assert european.read_bytes() != one.read_bytes()
    # A4 is 210 mm wide, 595 points; Letter 8-1/2 in, 612 points.
    assert b"595" in european.read_bytes() and b"[0 0 612 792]" in one.read_bytes()
    with pytest.raises(deck_py.DeckError):
        plan.write_packet(one, paper="a5")  # type: ignore[arg-type]
