"""Every error code as an exception: class, attributes, text, pickle, copy."""

import copy
import pickle

import pytest

import beamcraft
from beamcraft import _errors

CODES = beamcraft.error_codes()
PAGES = {
    0x01: beamcraft.InputError,
    0x02: beamcraft.GeometryError,
    0x03: beamcraft.WoodError,
    0x04: beamcraft.FasteningError,
    0x05: beamcraft.StaticsError,
    0x0E: beamcraft.DoorError,
    0x0F: beamcraft.InternalError,
}


def test_codes_are_listed_once_and_say_something() -> None:
    assert len(CODES) > 10
    assert len({code for code, _, _ in CODES}) == len({name for _, name, _ in CODES}) == len(CODES)
    assert all(name and describe for _, name, describe in CODES)
    assert {code >> 8 for code, _, _ in CODES} == set(PAGES), "a class for each page, and a page for each class"


@pytest.mark.parametrize(("code", "name", "describe"), CODES, ids=[name for _, name, _ in CODES])
def test_every_code_has_its_class(code: int, name: str, describe: str) -> None:
    detail = (code, name, "body.legs[0].length_mm", "0 mm", "10 mm to 20000 mm", "make it longer", describe)
    error = _errors.error_of([detail, (*detail[:2], "other", "", "", "", "second")])
    assert type(error) is PAGES[code >> 8]
    assert isinstance(error, beamcraft.BeamcraftError) and isinstance(error, ValueError)
    assert (error.code, error.name, error.field) == detail[:3]
    assert (error.value, error.allowed, error.cure) == detail[3:6]
    assert str(error) == f"{describe}\nsecond"
    assert len(error.details) == 2 and error.details[0] == detail
    for again in (
        *(pickle.loads(pickle.dumps(error, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)),
        copy.copy(error),
        copy.deepcopy(error),
        eval(repr(error), vars(beamcraft)),
    ):
        assert type(again) is type(error) and again.details == error.details and str(again) == str(error)


def test_an_unknown_page_is_still_an_error_of_this_library() -> None:
    assert type(_errors.error_of([(0xAB01, "later", "", "", "", "", "x")])) is beamcraft.BeamcraftError


def test_an_error_holds_at_least_one_fault() -> None:
    with pytest.raises(TypeError):
        beamcraft.BeamcraftError(())


def test_a_refused_number_says_field_value_range_and_cure() -> None:
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.mitre_pair(thickness_a_mm=0, thickness_b_mm=20)
    error = caught.value
    assert (error.code, error.name, error.field) == (0x0101, "out_of_range", "thickness_a_mm")
    assert (error.value, error.allowed) == ("0 mm", "1 mm to 150 mm")
    assert error.cure and str(error) == error.details[0].message
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.mitre_pair(thickness_a_mm=float("inf"), thickness_b_mm=20)
    assert caught.value.name == "not_finite"


def test_the_functions_and_the_json_door_raise_the_same() -> None:
    given = {"thickness_a_mm": 20, "thickness_b_mm": 19, "corner_deg": 180}
    with pytest.raises(beamcraft.BeamcraftError) as by_name:
        beamcraft.call("mitre_pair", given)
    with pytest.raises(beamcraft.BeamcraftError) as by_function:
        beamcraft.mitre_pair(**given)
    assert by_name.value.details == by_function.value.details


def test_errors_cross_processes() -> None:
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as pool:
        assert pool.submit(beamcraft.parse_length, "1 in").result() == 25.4
        with pytest.raises(beamcraft.InputError) as caught:
            pool.submit(beamcraft.parse_length, "1").result()
        assert caught.value.name == "malformed"
