"""What the tests share: the demo jobs, and a small job to bend."""

import copy
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
DEMO_JOBS = sorted((ROOT / "examples" / "jobs").glob("*.json"))

SMALL = {
    "schema": 1,
    "name": "Sandpiper",
    "unit": "in",
    "deck": {"length": "20 ft", "beam": 96},
    "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
    "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
    "gap": 0,
}


@pytest.fixture
def small() -> dict[str, Any]:
    """A job of its own for each test: 20 ft by 96 in, seams at 48, 96, 144 and 192 in."""
    return copy.deepcopy(SMALL)


@pytest.fixture(params=DEMO_JOBS, ids=lambda path: path.stem)
def demo(request: pytest.FixtureRequest) -> Path:
    """Each of the demo jobs in turn."""
    return request.param
