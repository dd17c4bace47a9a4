"""The JSON door, the dict door and the names of the module."""

import json
import re
import typing
from pathlib import Path
from xml.etree import ElementTree

import pytest

import beamcraft
import rows
from schemas import CALCULATIONS, MADE_BY_FUNCTION, STRUCTS

TOP = Path(__file__).resolve().parents[2]


def test_every_calculation_has_a_function_and_its_classes() -> None:
    assert CALCULATIONS
    for name, row in CALCULATIONS.items():
        assert name in beamcraft.__all__
        for schema in (row["input_schema"], row["output_schema"]):
            assert schema["title"] in beamcraft.__all__
        assert row["purpose"] in (getattr(beamcraft, name).__doc__ or "")


def test_names_are_there_and_listed_once() -> None:
    assert len(set(beamcraft.__all__)) == len(beamcraft.__all__)
    for name in beamcraft.__all__:
        assert getattr(beamcraft, name) is not None


def test_choices_name_what_the_schemas_name() -> None:
    found = 0
    for row in CALCULATIONS.values():
        for root in (row["input_schema"], row["output_schema"]):
            for name, schema in root.get("$defs", {}).items():
                choices = schema.get("oneOf", [])
                if choices and all("const" in choice for choice in choices):
                    found += 1
                    texts = typing.get_args(getattr(beamcraft.choices, name))
                    assert texts == tuple(choice["const"] for choice in choices)
    assert found > 10


def test_version_is_that_of_the_workspace() -> None:
    stated = re.search(r'^version = "(.*)"', (TOP / "Cargo.toml").read_text(encoding="utf-8"), re.MULTILINE)
    assert stated is not None and beamcraft.__version__ == stated.group(1)


def test_dicts_texts_and_objects_are_the_same_input() -> None:
    given = {"thickness_a_mm": 20, "thickness_b_mm": 19.5, "corner_deg": 91}
    found = beamcraft.call("mitre_pair", given)
    assert beamcraft.call("mitre_pair", json.dumps(given)) == found
    assert beamcraft.call("mitre_pair", beamcraft.MitrePairInput(**given)) == found
    assert json.loads(beamcraft.call_json("mitre_pair", json.dumps(given))) == found
    assert beamcraft.mitre_pair(**given).to_dict() == found


def test_objects_may_stand_inside_dicts() -> None:
    halves = beamcraft.CleatHalvesInput(strip_width_mm=120, thickness_mm=20, bevel_deg=45, kerf_mm=3.2)
    outer = {"name": "no_such_calculation", "halves": halves, "list": (halves, 1, None, "x", True)}
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.call("cleat_marks", outer)
    assert {fault.field for fault in caught.value.details} >= {"list", "name", "wall"}
    assert "halves" not in {fault.field for fault in caught.value.details}, "the object was read"


def test_shop_lengths_are_read_at_this_door() -> None:
    a = beamcraft.call("mitre_pair", {"thickness_a_mm": '13/16"', "thickness_b_mm": "20 mm"})
    assert a == beamcraft.mitre_pair(thickness_a_mm=20.6375, thickness_b_mm=20).to_dict()
    assert beamcraft.parse_length('13/16"') == 20.6375
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.call("mitre_pair", {"thickness_a_mm": "13/16", "thickness_b_mm": 20})
    assert (caught.value.name, caught.value.field) == ("malformed", "thickness_a_mm")
    with pytest.raises(beamcraft.InputError):
        beamcraft.parse_length("27.5")


def test_every_fault_is_named_at_once() -> None:
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.call("mitre_pair", {"thickness_a": 20, "thickness_b_mm": [], "corner_deg": True})
    faults = [(fault.name, fault.field) for fault in caught.value.details]
    assert faults == [
        ("unknown_field", "thickness_a"),
        ("wrong_type", "thickness_b_mm"),
        ("wrong_type", "corner_deg"),
        ("missing_field", "thickness_a_mm"),
    ]
    assert "did you mean thickness_a_mm?" in str(caught.value)


def test_an_unknown_calculation_names_the_closest() -> None:
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.call("mitre_pear", {})
    assert caught.value.name == "unknown_name" and caught.value.cure == "did you mean mitre_pair?"


@pytest.mark.parametrize("text", ["", "{", "nul", '{"thickness_a_mm": 1e999}', "[" * 100_000, "\0", '{"a":' * 10_000])
def test_what_is_not_json_is_malformed(text: str) -> None:
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.call_json("mitre_pair", text)
    assert caught.value.name == "malformed"


def test_dicts_that_cannot_be_json() -> None:
    def refused(value: object) -> tuple[str, str]:
        with pytest.raises(beamcraft.InputError) as caught:
            beamcraft.call("mitre_pair", {"thickness_a_mm": value, "thickness_b_mm": 20})
        return caught.value.name, caught.value.field

    assert refused(float("nan")) == ("not_finite", "thickness_a_mm")
    assert refused([1, float("inf")]) == ("not_finite", "thickness_a_mm[1]")
    assert refused(object()) == ("wrong_type", "thickness_a_mm")
    assert refused(b"20") == ("wrong_type", "thickness_a_mm")
    assert refused("\ud800") == ("malformed", "thickness_a_mm")
    assert refused({1: 2}) == ("unknown_field", "thickness_a_mm")
    assert refused(10**400) == ("out_of_range", "thickness_a_mm")
    assert refused(10**30) == ("out_of_range", "thickness_a_mm"), "a large whole number is a number"
    itself: dict[str, object] = {}
    itself["again"] = itself
    assert refused(itself)[0] == "malformed"


def test_an_int_with_a_text_of_its_own_stays_a_number() -> None:
    class Odd(int):
        def __str__(self) -> str:
            return '20, "thickness_b_mm": 1'

        __repr__ = __str__

    given = {"thickness_a_mm": Odd(20), "thickness_b_mm": 20}
    assert beamcraft.call("mitre_pair", given) == beamcraft.call("mitre_pair", {**given, "thickness_a_mm": 20})


def test_wrong_arguments_of_the_door_are_type_errors() -> None:
    with pytest.raises(TypeError):
        beamcraft.call(1, {})  # type: ignore[arg-type]
    with pytest.raises(TypeError):
        beamcraft.call_json("mitre_pair", {})  # type: ignore[arg-type]
    with pytest.raises(beamcraft.InputError):
        beamcraft.call("mitre_pair", 1)  # type: ignore[arg-type]


def test_functions_take_keywords_only() -> None:
    with pytest.raises(TypeError):
        beamcraft.mitre_pair(20, 20)  # type: ignore[misc]
    with pytest.raises(TypeError, match="thickness_b_mm"):
        beamcraft.mitre_pair(thickness_a_mm=20)  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="^corner_deg: a number is needed, got NoneType"):
        beamcraft.mitre_pair(thickness_a_mm=20, thickness_b_mm=20, corner_deg=None)  # type: ignore[arg-type]


def test_defaults_are_those_of_the_schema() -> None:
    flat = beamcraft.mitre_pair(thickness_a_mm=20, thickness_b_mm=20)
    assert flat == beamcraft.mitre_pair(thickness_a_mm=20, thickness_b_mm=20, corner_deg=90)
    checked = 0
    for name, (schema, _) in STRUCTS.items():
        if name in MADE_BY_FUNCTION:
            continue
        signature = getattr(beamcraft, name).__text_signature__
        for field, inner in schema.get("properties", {}).items():
            if isinstance(inner.get("default"), (int, float)):
                checked += 1
                assert re.search(rf"\b{field}={re.escape(str(inner['default']))}", signature), (name, field)
    assert checked > 5


def test_the_same_input_gives_the_same_bytes() -> None:
    text = '{"thickness_a_mm": 20.1, "thickness_b_mm": 19.7, "corner_deg": 93.3}'
    assert len({beamcraft.call_json("mitre_pair", text) for _ in range(100)}) == 1


@pytest.mark.parametrize("name", ["yearly_movement", "tolerance_stack", "fastener_group"])
@pytest.mark.parametrize("lengths", ["metric", "inches"])
def test_drawings_of_calculations(name: str, lengths: beamcraft.choices.ReportLengths) -> None:
    row = next(row for row in rows.read_all() if row.calculation == name)
    drawing = ElementTree.fromstring(beamcraft.drawing_svg(name, row.input, lengths=lengths))
    assert drawing.tag == "{http://www.w3.org/2000/svg}svg" and len(drawing) > 0


def test_drawings_that_are_refused() -> None:
    spec = {"beamcraft_spec": 1, "body": {"legs": []}, "wood": {"species": "white ash"}}
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.drawing_svg("plan", spec)
    assert caught.value.details
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.drawing_svg("mitre_pair", {})
    assert (caught.value.name, caught.value.field) == ("unknown_name", "name")
    with pytest.raises(ValueError, match="lengths"):
        beamcraft.drawing_svg("plan", spec, lengths="cubits")  # type: ignore[arg-type]
