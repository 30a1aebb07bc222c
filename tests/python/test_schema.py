"""The job file's schema, read by a validator that is not ours."""

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import deck_py


@pytest.fixture(scope="module")
def validator() -> jsonschema.Draft202012Validator:
    schema = deck_py.job_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def test_demo_jobs_follow_the_schema(demo: Path, validator: jsonschema.Draft202012Validator) -> None:
    validator.validate(json.loads(demo.read_text(encoding="utf-8")))


def test_the_job_in_a_plan_follows_the_schema(demo: Path, validator: jsonschema.Draft202012Validator) -> None:
    validator.validate(deck_py.plan(demo).job)


def test_what_the_schema_refuses_the_reader_refuses(
    small: dict[str, Any], validator: jsonschema.Draft202012Validator
) -> None:
    bent: list[dict[str, Any]] = [
        small | {"lenght": 1},
        small | {"schema": 2},
        small | {"unit": "furlong"},
        small | {"stock": []},
        small | {"stock": [{"label": "ply", "length": 96, "width": 48}]},
        small | {"deck": {"length": 240}},
        small | {"gap": ["1/8"]},
        {name: value for name, value in small.items() if name != "frame"},
    ]
    assert validator.is_valid(small) and deck_py.plan(small)
    for job in bent:
        assert not validator.is_valid(job)
        with pytest.raises(deck_py.DeckError):
            deck_py.plan(job)
