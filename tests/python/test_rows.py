"""The verification rows through the JSON door, the text door and the functions."""

import json

import pytest

import beamcraft
from rows import Row, at, read_all
from schemas import CALCULATIONS, arguments, build

ROWS = read_all()


def compare(row: Row, output: dict[str, object]) -> None:
    for expected in row.expected:
        found = at(output, expected.path)
        if isinstance(expected.value, str):
            assert found == expected.value, expected.path
        else:
            assert isinstance(found, (int, float)) and not isinstance(found, bool), expected.path
            assert abs(found - expected.value) <= expected.allowed, (expected.path, found, expected)


def holds_shop_length(value: object, name: str = "") -> bool:
    if isinstance(value, dict):
        return any(holds_shop_length(inner, key) for key, inner in value.items())
    if isinstance(value, list):
        return any(holds_shop_length(inner, name) for inner in value)
    return isinstance(value, str) and name.endswith("_mm")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_row_holds_through_every_door(row: Row) -> None:
    by_name = beamcraft.call(row.calculation, row.input)
    compare(row, by_name)
    text = beamcraft.call_json(row.calculation, json.dumps(row.input))
    assert json.loads(text) == by_name
    # A length as text is for the JSON and dict doors only; the functions take numbers.
    if not holds_shop_length(row.input):
        title = CALCULATIONS[row.calculation]["input_schema"]["title"]
        # A plan takes its whole input as one argument.
        if row.calculation == "plan":
            found = beamcraft.plan(build(title, row.input))
        else:
            found = getattr(beamcraft, row.calculation)(**arguments(title, row.input))
        assert found.to_json() == text, "the function and the JSON door give the same bytes"
        compare(row, found.to_dict())


def test_rows_have_unique_ids() -> None:
    assert len({row.id for row in ROWS}) == len(ROWS)


def test_a_wrong_value_does_not_pass() -> None:
    row = next(row for row in ROWS if isinstance(row.expected[0].value, float))
    output = beamcraft.call(row.calculation, row.input)
    first = row.expected[0]
    moved = type(first)(first.path, first.value + 2 * first.allowed + abs(first.value), first.allowed)
    with pytest.raises(AssertionError):
        compare(Row(row.id, row.calculation, row.input, (moved,)), output)
