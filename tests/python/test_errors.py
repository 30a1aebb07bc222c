"""What is raised, and what it says."""

import pickle
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

import deck_py


def refused(job: object) -> deck_py.DeckError:
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.plan(job)  # type: ignore[arg-type]
    return caught.value


def test_everything_that_is_wrong_is_told_at_once(small: dict[str, Any]) -> None:
    small["stock"][0]["lenght"] = small["stock"][0].pop("length")
    small["deck"]["beam"] = "8' 6 mm"
    error = refused(small)
    assert isinstance(error, ValueError)
    assert [fault.pointer for fault in error.errors] == ["/deck/beam", "/stock/0/lenght"]
    assert (error.pointer, error.message) == (error.errors[0].pointer, error.errors[0].message)
    first = error.errors[0]
    assert (first.value, first.kind, first.code) == ("8' 6 mm", "LengthTwoUnits", 103)
    assert error.errors[1].accepted == 'Did you mean "length"?'
    assert str(error).splitlines()[0] == f"/deck/beam: {first.message} {first.accepted}"
    assert len(str(error).splitlines()) == 2


def test_errors_are_pickled_whole() -> None:
    error = refused({"schema": 1})
    again = pickle.loads(pickle.dumps(error))
    assert type(again) is deck_py.DeckError
    assert (str(again), again.errors, again.pointer, again.message) == (
        str(error),
        error.errors,
        error.pointer,
        error.message,
    )


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf"), Decimal("NaN"), Decimal("-Infinity")])
def test_what_is_no_number_is_told_at_its_place(small: dict[str, Any], number: object) -> None:
    small["frame"]["regular"]["spacing"] = number
    small["gap"] = "x"
    error = refused(small)
    assert [(fault.pointer, fault.kind) for fault in error.errors] == [
        ("/frame/regular/spacing", "LengthNotFinite"),
        ("/gap", "LengthUnreadable"),
    ]


def test_nan_is_refused_where_text_would_do(small: dict[str, Any]) -> None:
    # A table's empty cell is NaN; it is no name of a boat.
    small["name"] = float("nan")
    assert [(fault.pointer, fault.kind) for fault in refused(small).errors] == [("/name", "LengthNotFinite")]


@pytest.mark.parametrize("number", [10**30, 10**400, -(10**5000), Decimal("1E+25"), 1e300], ids=range(5))
def test_huge_numbers_are_too_large(small: dict[str, Any], number: object) -> None:
    small["deck"]["length"] = number
    assert [fault.kind for fault in refused(small).errors if fault.pointer == "/deck/length"] == ["LengthTooLarge"]


def test_a_job_that_holds_itself_is_refused(small: dict[str, Any]) -> None:
    small["deck"]["taper"] = small["deck"]
    assert refused(small).errors[0].kind == "NotJson"


def test_text_that_is_not_json_names_the_line() -> None:
    error = refused('{\n  "schema": 1,\n  "name" "x"\n}')
    assert error.errors[0].kind == "NotJson" and "Line 3" in error.message


def test_files_raise_pythons_own_errors(tmp_path: Path) -> None:
    missing = tmp_path / "no such job.json"
    for path in (missing, str(missing)):
        with pytest.raises(FileNotFoundError) as caught:
            deck_py.plan(path)
        assert Path(caught.value.filename) == missing
    with pytest.raises(OSError):
        deck_py.plan(tmp_path)
    latin = tmp_path / "latin.json"
    latin.write_bytes('{"name": "Bjørn"}'.encode("latin-1"))
    assert "UTF-8" in refused(latin).message


@pytest.mark.parametrize("job", [None, 7, 1.5, ["{}"], b"{}", object(), True], ids=repr)
def test_other_types_are_type_errors(job: object) -> None:
    with pytest.raises(TypeError, match=r"plan\(\) takes a dict, JSON text or a path, not "):
        deck_py.plan(job)  # type: ignore[arg-type]


@pytest.mark.parametrize("value", [{1, 2}, b"96", 1j, object(), range(3)], ids=repr)
def test_what_json_has_no_word_for_is_a_type_error(small: dict[str, Any], value: object) -> None:
    small["deck"]["beam"] = value
    with pytest.raises(TypeError, match="^/deck/beam: "):
        deck_py.plan(small)


def test_names_of_fields_are_texts(small: dict[str, Any]) -> None:
    small["deck"][7] = 1
    with pytest.raises(TypeError, match="^/deck: "):
        deck_py.plan(small)


def test_text_that_is_no_plan_is_refused() -> None:
    for text in ("", "{}", "[]", '{"job": {"schema": 1}}'):
        with pytest.raises(deck_py.DeckError):
            deck_py.Plan.from_json(text)
