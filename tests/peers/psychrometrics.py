"""Moist air against psychrolib, a general-purpose library of psychrometric functions.

    python psychrometrics.py           compares every value of ../verification/psychrometrics.toml with the library
    python psychrometrics.py --write   writes that file anew from the library

The rows hold the library's numbers, not ours; the runners of the rows compare ours with them. `run-psychrometrics` makes an
environment with the library and calls this.
"""

import sys
import tomllib
from importlib.metadata import version
from pathlib import Path

import psychrolib

TOPIC = Path(__file__).parent.parent / "verification" / "psychrometrics.toml"
PRESSURE_PA = 101325.0
LIBRARY = f"psychrolib {version('psychrolib')}"
INTRO = f"""\
# Moist air: saturation pressure, dew point, outdoor air heated in a room, air at a warm face, the months of a year.
# Every value was computed with {LIBRARY}, a general-purpose library from PyPI, by `tests/peers/psychrometrics.py --write`;
# without `--write` the script compares the rows with the library. Below freezing the library saturates over ice.
"""
SAME = "the same published equation, evaluated in another order"

psychrolib.SetUnitSystem(psychrolib.SI)


def saturation(temperature_c):
    return psychrolib.GetSatVapPres(temperature_c)


def humidity(vapour_pa, temperature_c):
    """Relative humidity in percent, by way of the humidity ratio, which heating does not change."""
    ratio = psychrolib.GetHumRatioFromVapPres(vapour_pa, PRESSURE_PA)
    return 100.0 * psychrolib.GetRelHumFromHumRatio(temperature_c, ratio, PRESSURE_PA)


def rows():
    for temperature in (-40.0, -20.0, -10.0, -1.0, 0.0, 5.0, 10.0, 15.6, 20.0, 21.1, 25.0, 32.2, 40.0, 60.0, 80.0, 100.0):
        for percent in (5.0, 30.0, 65.0, 95.0):
            dew = psychrolib.GetTDewPointFromRelHum(temperature, percent / 100.0)
            given = {"temperature_c": temperature, "relative_humidity_pct": percent, "surface": "ice"}
            vapour = psychrolib.GetVapPresFromRelHum(temperature, percent / 100.0)
            exact = {"saturation_pressure_pa": saturation(temperature), "vapour_pressure_pa": vapour}
            name = f"{temperature:g}c-{percent:g}pct".replace(".", "-")
            name = f"minus{name}" if temperature < 0 else name
            yield f"moist-air-{name}", "moist_air", given, exact, {"rel": 1e-9, "why": SAME}
            if dew > -90.0:
                tolerance = {"abs": 0.002, "why": "the library stops its search at 0.001 degrees"}
                yield f"dew-point-{name}", "moist_air", given, {"dew_point_c": dew}, tolerance
    heated = [(-5, -8, 21, 0), (5, 2, 21, 0), (15, 10, 21, 0), (0, -3, 20, 300), (-15, -18, 20, 150), (-25, -29, 21, 0), (28, 18, 21, 0)]
    for number, (outdoor, dew, room, gain) in enumerate(heated, 1):
        given = {
            "outdoor_temperature_c": float(outdoor),
            "outdoor_dew_point_c": float(dew),
            "room_temperature_c": float(room),
            "vapour_gain_pa": float(gain),
            "surface": "ice",
        }
        expected = {
            "outdoor_vapour_pressure_pa": saturation(dew),
            "outdoor_relative_humidity_pct": 100.0 * psychrolib.GetRelHumFromTDewPoint(outdoor, dew),
            "relative_humidity_pct": humidity(saturation(dew) + gain, max(room, outdoor)),
        }
        yield f"heated-air-{number}", "heated_air_humidity", given, expected, {"rel": 1e-9, "why": SAME}
    for room, percent, face in ((21.0, 40.0, 50.0), (21.0, 40.0, 35.0), (18.0, 60.0, 70.0), (24.0, 30.0, 90.0), (20.0, 50.0, 15.0)):
        given = {"room_temperature_c": room, "room_relative_humidity_pct": percent, "face_temperature_c": face}
        expected = {"face_relative_humidity_pct": humidity(percent / 100.0 * saturation(room), face)}
        yield f"warm-face-{face:g}c-in-{room:g}c", "warm_face_moisture", given, expected, {"rel": 1e-9, "why": SAME}
    outside = [-9.0, -8.0, -3.0, 4.0, 10.0, 15.0, 17.0, 16.0, 11.0, 6.0, 0.0, -6.0]
    months = [{"temperature_c": t, "dew_point_c": t - 4.0} for t in outside]
    year = {"months": months, "room_temperature_c": 20.0, "vapour_gain_pa": 120.0, "surface": "ice"}
    expected = {
        f"months[{k}].relative_humidity_pct": humidity(saturation(t - 4.0) + 120.0, 20.0) for k, t in enumerate(outside)
    }
    expected |= {"driest_month": 1, "wettest_month": 7}
    yield "heated-year", "seasonal_moisture", {"climate": {"outdoor": year}}, expected, {"rel": 1e-9, "why": SAME}


def toml(value):
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key if key.isidentifier() else repr(key)} = {toml(item)}" for key, item in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(toml(item) for item in value) + "]"
    return f'"{value}"' if isinstance(value, str) else repr(value)


def write():
    parts = [INTRO]
    for name, calculation, given, expected, tolerance in rows():
        parts.append(
            f'\n[[row]]\nid = "{name}"\ncalculation = "{calculation}"\ninput = {toml(given)}\nexpect = {toml(expected)}\n'
            f'tolerance = {toml(tolerance)}\nsource = "{LIBRARY}"\nevidence = "seen"\n'
        )
    TOPIC.write_text("".join(parts), encoding="utf-8")


def compare():
    written = {row["id"]: row for row in tomllib.loads(TOPIC.read_text(encoding="utf-8"))["row"]}
    faults, values = [], 0
    for name, calculation, given, expected, tolerance in rows():
        row = written.pop(name, None)
        if row is None or (row["calculation"], row["input"]) != (calculation, given):
            faults.append(f"{name}: not the row of this script")
            continue
        for key, value in expected.items():
            values += 1
            room = tolerance.get("abs", abs(value) * tolerance.get("rel", 0.0))
            if key not in row["expect"] or abs(row["expect"][key] - value) > room:
                faults.append(f"{name}: {key} is {row['expect'].get(key)}, {LIBRARY} says {value}")
    faults += [f"{name}: not a row of this script" for name in written]
    print("\n".join(faults) if faults else f"{values} values agree with {LIBRARY}")
    return 1 if faults else 0


if __name__ == "__main__":
    if sys.argv[1:] == ["--write"]:
        write()
    sys.exit(compare())
