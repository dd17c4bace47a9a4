"""Columns: arrays in, arrays out, the bits of single calls, nothing copied that need not be."""

from __future__ import annotations

import math
import typing

import numpy
import pytest

import beamcraft

ABSENT = 4294967295
RANDOM = numpy.random.default_rng(7)
ROWS = 9000
SHEAR = {
    "yield_diameter_mm": RANDOM.uniform(3.0, 12.0, ROWS),
    "bending_yield_mpa": 550.0,
    "main_bearing_mpa": RANDOM.uniform(20.0, 60.0, ROWS),
    "side_bearing_mpa": RANDOM.uniform(20.0, 60.0, ROWS),
    "main_length_mm": RANDOM.uniform(20.0, 100.0, ROWS),
    "side_length_mm": 19,
    "gap_mm": RANDOM.uniform(0.0, 25.0, ROWS),
    "max_angle_to_grain_deg": RANDOM.uniform(0.0, 90.0, ROWS),
}


def row(inputs: dict[str, typing.Any], k: int) -> dict[str, float]:
    return {name: float(value[k]) if isinstance(value, numpy.ndarray) else value for name, value in inputs.items()}


@pytest.mark.parametrize("threads", [1, 2, 5])
def test_a_row_has_the_bits_of_a_single_call(threads: int) -> None:
    found = beamcraft.columns("dowel_shear", SHEAR, threads=threads)
    modes = typing.get_args(beamcraft.choices.YieldMode)
    for k in [*range(200), 4095, 4096, ROWS - 1]:
        single = beamcraft.dowel_shear(**row(SHEAR, k)).to_dict()
        assert modes[found["governing_mode"][k]] == single["governing_mode"]
        for name, column in found.items():
            if column.dtype == numpy.float64:
                assert column[k] == single[name], (name, k)
    assert found["reference_n"].shape == (ROWS,) and found["governing_mode"].dtype == numpy.uint32


def test_only_the_wanted_outputs_come_back_in_their_order() -> None:
    found = beamcraft.columns("dowel_shear", SHEAR, ("reference_n", "governing_mode"))
    assert list(found) == ["reference_n", "governing_mode"]


def test_arrays_of_any_form_give_the_same() -> None:
    wide = RANDOM.uniform(10.0, 90.0, 300)
    wanted = beamcraft.columns("equilibrium_moisture", {"temperature_c": 20, "relative_humidity_pct": wide})
    every_other = numpy.repeat(wide, 2)[::2]
    misplaced = numpy.frombuffer(b"x" + wide.tobytes(), dtype=numpy.uint8)[1:].view(numpy.float64)
    assert not misplaced.flags.aligned or misplaced.ctypes.data % 8 == 0
    forms = [every_other, wide[::-1][::-1], wide.astype(">f8"), wide.tolist(), tuple(wide), misplaced]
    for form in forms:
        found = beamcraft.columns("equilibrium_moisture", {"temperature_c": numpy.int64(20), "relative_humidity_pct": form})
        assert all(numpy.array_equal(found[name], column) for name, column in wanted.items())
    single = beamcraft.columns("equilibrium_moisture", {"temperature_c": 20, "relative_humidity_pct": 50})
    assert single["moisture_pct"].shape == (1,)
    none = beamcraft.columns("equilibrium_moisture", {"temperature_c": 20, "relative_humidity_pct": []})
    assert none["moisture_pct"].shape == (0,)


def test_inputs_are_read_where_they_lie_and_left_as_they_are() -> None:
    locked = numpy.linspace(10.0, 90.0, 50)
    locked.setflags(write=False)
    before = locked.copy()
    beamcraft.columns("equilibrium_moisture", {"temperature_c": 20, "relative_humidity_pct": locked})
    assert numpy.array_equal(locked, before)


def test_choices_are_texts_or_codes() -> None:
    bearing = {"specific_gravity": 0.5, "diameter_mm": 12.7, "angle_to_grain_deg": 0.0}
    texts = ["side_grain", "end_grain", "side_grain"]
    found = [
        beamcraft.columns("dowel_bearing", {**bearing, "direction": direction})["at_angle_mpa"]
        for direction in (texts, numpy.array(texts), numpy.array(texts, dtype=object), [0, 1, 0], numpy.array([0, 1, 0], "u1"))
    ]
    assert found[0][0] == found[0][2] != found[0][1]
    assert all(numpy.array_equal(found[0], other) for other in found)
    one = beamcraft.columns("dowel_bearing", {**bearing, "direction": "end_grain"})
    assert one["at_angle_mpa"] == [found[0][1]]
    with pytest.raises(beamcraft.BeamcraftError, match="did you mean end_grain"):
        beamcraft.columns("dowel_bearing", {**bearing, "direction": ["end_grian"]})


def test_an_optional_field_has_no_value_where_it_is_nan() -> None:
    small = {**SHEAR, "yield_diameter_mm": 5.0, "nominal_diameter_mm": numpy.array([math.nan, 7.0])}
    small = {name: value[:2] if isinstance(value, numpy.ndarray) else value for name, value in small.items()}
    rules = beamcraft.columns("dowel_shear", small, ["reduction_rule"])["reduction_rule"]
    names = typing.get_args(beamcraft.choices.ReductionRule)
    assert [names[rule] for rule in rules] == ["below_quarter_inch", "small_root_of_large_thread"]
    assert beamcraft.columns("dowel_shear", {**small, "nominal_diameter_mm": None}, ["k_d"])["k_d"].shape == (2,)


def test_a_refused_row_raises_or_leaves_nan_in_itself_alone() -> None:
    air = {"temperature_c": 20.0, "relative_humidity_pct": numpy.array([50.0, 120.0, math.nan, 60.0])}
    with pytest.raises(beamcraft.InputError) as refused:
        beamcraft.columns("equilibrium_moisture", air)
    assert refused.value.field == "row[1].relative_humidity_pct"
    assert "2 rows are refused" in str(refused.value)
    found = beamcraft.columns("equilibrium_moisture", air, errors="nan")
    assert numpy.isnan(found["moisture_pct"]).tolist() == [False, True, True, False]
    assert found["table"].tolist() == [0, ABSENT, ABSENT, 0]
    codes = {name: number for number, name, _ in beamcraft.error_codes()}
    assert found["row_status"].tolist() == [0, codes["out_of_range"], codes["not_finite"], 0]
    assert found["row_fault_field"].tolist() == [ABSENT, 1, 1, ABSENT]


def test_what_does_not_fit_is_named_all_at_once() -> None:
    with pytest.raises(beamcraft.BeamcraftError) as refused:
        beamcraft.columns(
            "equilibrium_moisture",
            {"temperature_c": numpy.zeros(2), "relative_humidity_pct": numpy.zeros(3), "wind": 1},
            ["moisture"],
            threads=0,
        )
    text = str(refused.value)
    for part in ("threads: got 0", "got 3 values, allowed 1 or 2", "wind", 'got "moisture"', "did you mean moisture_pct"):
        assert part in text
    with pytest.raises(beamcraft.BeamcraftError, match="did you mean dowel_shear"):
        beamcraft.columns("dowel_sheer", {})
    with pytest.raises(beamcraft.BeamcraftError, match="numbers and choices"):
        beamcraft.columns("plan", {})


@pytest.mark.parametrize(
    "value",
    [
        True,
        "20",
        numpy.array([True]),
        numpy.zeros((2, 2)),
        numpy.array(["20"]),
        numpy.array([1j]),
        numpy.array(["2026-01-01"], dtype="M8[D]"),
        numpy.ma.masked_array([20.0, 21.0], mask=[False, True]),
        [[1.0]],
        object(),
        b"20",
    ],
    ids=repr,
)
def test_what_is_no_column_of_numbers_is_a_type_error(value: object) -> None:
    with pytest.raises(TypeError, match="temperature_c"):
        beamcraft.columns("equilibrium_moisture", {"temperature_c": value, "relative_humidity_pct": 50.0})


@pytest.mark.parametrize("value", [True, -1, 2**32, 0.5, numpy.array([0.0]), [-1, 0], [None, 1]], ids=repr)
def test_what_is_no_column_of_choices_is_a_type_error(value: object) -> None:
    bearing = {"specific_gravity": 0.5, "diameter_mm": 12.7, "angle_to_grain_deg": 0.0}
    with pytest.raises(TypeError, match="direction"):
        beamcraft.columns("dowel_bearing", {**bearing, "direction": value})


def test_arguments_of_the_wrong_form_are_refused() -> None:
    with pytest.raises(TypeError, match="inputs"):
        beamcraft.columns("equilibrium_moisture", [1.0])  # type: ignore[arg-type]
    with pytest.raises(TypeError, match="outputs"):
        beamcraft.columns("equilibrium_moisture", {}, "moisture_pct")
    with pytest.raises(ValueError, match="errors"):
        beamcraft.columns("equilibrium_moisture", {}, errors="ignore")  # type: ignore[arg-type]


def test_numpy_is_imported_on_the_first_call_only() -> None:
    import subprocess
    import sys

    code = "import sys, beamcraft; assert 'numpy' not in sys.modules; beamcraft.plan"
    subprocess.run([sys.executable, "-c", code], check=True)
