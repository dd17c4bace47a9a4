"""Every class: built from its fields, compared, copied, pickled, shown and read back."""

import copy
import inspect
import json
import pickle
from typing import Any

import pytest

import beamcraft
from schemas import HOSTILE, MADE_BY_FUNCTION, STRUCTS, argument, build, numbers, objects, sample

OBJECTS = objects()
every_class = pytest.mark.parametrize("name", sorted(OBJECTS))
constructed = pytest.mark.parametrize("name", sorted(OBJECTS.keys() - MADE_BY_FUNCTION.keys()))


def fields_of(name: str) -> dict[str, dict[str, Any]]:
    fields: dict[str, dict[str, Any]] = STRUCTS[name][0].get("properties", {})
    return fields


def test_no_class_is_left_out() -> None:
    classes = {
        name
        for name in beamcraft.__all__
        if inspect.isclass(kind := getattr(beamcraft, name)) and hasattr(kind, "to_json")
    }
    assert classes == set(OBJECTS)
    assert len(classes) > 50


@every_class
def test_repr_evaluates_back(name: str) -> None:
    thing = OBJECTS[name]
    again = eval(repr(thing), vars(beamcraft))
    assert again == thing
    assert repr(again) == repr(thing)


@every_class
def test_fields_are_what_was_given(name: str) -> None:
    thing = sample(name, numbers())
    for field in fields_of(name):
        given = getattr(OBJECTS[name], argument(field))
        assert getattr(thing, argument(field)) == given
        assert type(getattr(thing, argument(field))) is type(given)


@every_class
def test_pickle_and_copy_give_an_equal_object(name: str) -> None:
    thing = OBJECTS[name]
    for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
        assert pickle.loads(pickle.dumps(thing, protocol)) == thing
    assert copy.copy(thing) is thing, "what cannot change needs no copy"
    assert copy.deepcopy(thing) is thing
    assert type(thing).__module__ == "beamcraft"


@constructed
def test_equality_sees_every_field(name: str) -> None:
    thing = OBJECTS[name]
    assert thing == sample(name, numbers())
    assert thing != object() and not thing == "text"
    schema, root = STRUCTS[name]
    shifted = (number + 1000 for number in numbers())
    other = sample(name, shifted)
    for field, inner in fields_of(name).items():
        key = argument(field)
        value = getattr(other, key)
        if isinstance(value, str) and value == HOSTILE:
            value = "another text"
        changed = thing.replace(**{key: value})
        assert (changed == thing) == (value == getattr(thing, key))
        assert getattr(changed, key) == value
    with pytest.raises(TypeError, match="unhashable"):
        hash(thing)


@every_class
def test_dict_is_what_the_json_reads_as(name: str) -> None:
    thing = OBJECTS[name]
    assert thing.to_dict() == json.loads(thing.to_json())
    names = list(thing.to_dict())
    assert names == [field for field in fields_of(name) if field in names], "fields in the order of the schema"
    if name not in MADE_BY_FUNCTION:
        assert names == list(fields_of(name))
        assert build(name, thing.to_dict()) == thing


@every_class
def test_cannot_be_changed(name: str) -> None:
    thing = OBJECTS[name]
    for field in [*fields_of(name), "anything"]:
        with pytest.raises(AttributeError):
            setattr(thing, argument(field), 1.0)


@every_class
def test_shown_to_people(name: str) -> None:
    thing = OBJECTS[name]
    assert str(thing).startswith(name)
    table = thing._repr_html_()
    assert table.startswith("<table>") and table.count("<table>") == table.count("</table>")
    assert "<script" not in table, "texts are escaped"
    assert len(table) < 200_000


@constructed
def test_arguments_are_keywords(name: str) -> None:
    kind = type(OBJECTS[name])
    with pytest.raises(TypeError):
        kind(1.0)
    with pytest.raises(TypeError, match="unexpected keyword"):
        kind(no_such_field=1.0)
    for parameter in inspect.signature(kind).parameters.values():
        assert parameter.kind is inspect.Parameter.KEYWORD_ONLY


@constructed
def test_a_wrong_type_names_the_field(name: str) -> None:
    thing = OBJECTS[name]
    for field in fields_of(name):
        for wrong in (object(), {"a": 1}, b"bytes"):
            with pytest.raises(TypeError, match=rf"^{argument(field)}: .* is needed, got "):
                thing.replace(**{argument(field): wrong})


@every_class
def test_docs_say_every_field(name: str) -> None:
    kind = type(OBJECTS[name])
    doc = kind.__doc__ or ""
    assert doc
    for field in fields_of(name):
        assert f"\n{argument(field)} : " in doc
        assert getattr(kind, argument(field)).__doc__


def test_absent_values_are_left_out_of_the_dict() -> None:
    found = beamcraft.CleatSeatInput(weight_n=1, centre_out_mm=2, foot_below_mm=3, bevel_deg=45)
    assert found.top_above_mm is None
    assert "top_above_mm" not in found.to_dict()
    assert "top_above_mm=None" in repr(found)


def test_numbers_that_json_has_no_text_for() -> None:
    odd = beamcraft.MitrePairInput(thickness_a_mm=float("nan"), thickness_b_mm=float("-inf"))
    again = eval(repr(odd), vars(beamcraft))
    assert again.thickness_a_mm != again.thickness_a_mm and again.thickness_b_mm == float("-inf")
    assert odd != odd, "as with any number that is not a number"
    with pytest.raises(beamcraft.InputError) as caught:
        odd.to_json()
    assert (caught.value.name, caught.value.field) == ("not_finite", "thickness_a_mm")


def test_numbers_of_any_kind_are_taken() -> None:
    from decimal import Decimal
    from fractions import Fraction

    for twenty in (20, 20.0, Decimal(20), Fraction(20)):
        assert beamcraft.MitrePairInput(thickness_a_mm=twenty, thickness_b_mm=1).thickness_a_mm == 20.0
    for wrong in (True, "20", None, 20j, [20]):
        with pytest.raises(TypeError, match="^thickness_a_mm: a number is needed"):
            beamcraft.MitrePairInput(thickness_a_mm=wrong, thickness_b_mm=1)
    with pytest.raises(TypeError, match="parse_length"):
        beamcraft.MitrePairInput(thickness_a_mm="13/16 in", thickness_b_mm=1)
    with pytest.raises(OverflowError):
        beamcraft.MitrePairInput(thickness_a_mm=10**400, thickness_b_mm=1)


def test_whole_numbers_are_whole() -> None:
    def written(**changes: Any) -> Any:
        return beamcraft.WriteLengthInput(**{"length_mm": 1.0, "style": "metre", **changes})

    assert written(decimals=3).decimals == 3
    for wrong in (True, 1.5, 2.0, "3"):
        with pytest.raises(TypeError, match="^decimals: a whole number is needed"):
            written(decimals=wrong)
    for beyond in (-1, 2**32, 10**400):
        with pytest.raises(beamcraft.InputError) as caught:
            written(decimals=beyond)
        assert (caught.value.name, caught.value.field) == ("out_of_range", "decimals")


def test_a_wrong_choice_names_the_closest() -> None:
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.WriteLengthInput(length_mm=1.0, style="feet_inches")
    fault = caught.value
    assert (fault.name, fault.field, fault.value) == ("unknown_name", "style", '"feet_inches"')
    assert "feet_inch" in fault.allowed and fault.cure == "did you mean feet_inch?"
    with pytest.raises(beamcraft.InputError, match="lone|surrogate|UTF-8"):
        beamcraft.ReadLengthInput(text="\ud800")


def test_lists_and_their_items() -> None:
    given = (number for number in (1, 2.5))
    assert beamcraft.MeasuredStuds(centres_mm=given).centres_mm == [1.0, 2.5]
    with pytest.raises(TypeError, match=r"^centres_mm\[1\]: a number is needed, got str 'x'"):
        beamcraft.MeasuredStuds(centres_mm=[1, "x"])
    for wrong in ("text", b"bytes", {"a": 1}, 1.0, None):
        with pytest.raises(TypeError, match="^centres_mm: a list is needed"):
            beamcraft.MeasuredStuds(centres_mm=wrong)
    studs = beamcraft.MeasuredStuds(centres_mm=[1.0])
    studs.centres_mm.append(2.0)
    assert studs.centres_mm == [1.0], "a list that is handed out is a copy"


def test_choices_with_data_are_classes() -> None:
    spaced = beamcraft.SpacedStuds(first_mm=100, spacing_mm=600)
    wall = beamcraft.Wall(studs=spaced, stud_width_mm=45, stud_depth_mm=95, lining_thickness_mm=12.5)
    assert wall.studs == spaced
    assert wall.to_dict()["studs"] == {"spaced": {"first_mm": 100.0, "spacing_mm": 600.0}}
    with pytest.raises(TypeError, match="^studs: one of the classes MeasuredStuds, SpacedStuds is needed, got float"):
        wall.replace(studs=1.0)


def test_a_list_that_may_be_left_out() -> None:
    leg = OBJECTS["Leg"]
    plain = leg.replace(butts=[])
    assert plain.butts == [] and "butts=[]" in repr(plain)
    assert eval(repr(plain), vars(beamcraft)) == plain != leg
    assert build("Leg", {k: v for k, v in plain.to_dict().items() if k != "butts"}) == plain


def test_long_lists_are_cut_in_tables() -> None:
    many = beamcraft.call("list_wood_screws", {})
    assert many
    listed = beamcraft.list_wood_screws()
    again = listed.replace(rows=listed.rows * 20)
    assert "more</td>" in again._repr_html_()
    assert len(again._repr_html_()) < 100_000
