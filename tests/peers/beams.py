"""Beams of the verification rows, solved again by PyNiteFEA, a general-purpose frame library.

The rows' inputs are built as plane frames; what the rows expect is compared with what the frame gives.
"""

import math
import pathlib
import sys
import tomllib

from Pynite import FEModel3D

ROWS = pathlib.Path(__file__).resolve().parent.parent / "verification" / "beams.toml"


def frame(beam):
    """Reactions from left to right and the deflection at the stations asked for, of a row's input."""
    length = beam["length_mm"]
    supports = sorted(beam["supports"], key=lambda one: one["at_mm"])
    places = {0.0, length, *(one["at_mm"] for one in supports), *beam.get("stations_mm", [])}
    places = sorted(places)
    model = FEModel3D()
    model.add_material("wood", beam["modulus_mpa"], beam["modulus_mpa"] / 16, 0.3, 0.0)
    inertia = beam["second_moment_mm4"]
    model.add_section("section", 1.0e4, inertia, inertia, inertia)
    for at in places:
        model.add_node(f"n{at}", at, 0.0, 0.0)
        model.def_support(f"n{at}", support_DZ=True, support_RX=True, support_RY=True, support_DX=at == supports[0]["at_mm"])
    for one in supports:
        name = f"n{one['at_mm']}"
        clamped = one.get("hold") == "clamped"
        first = one is supports[0]
        stiffness = one.get("stiffness_n_per_mm")
        model.def_support(name, first, stiffness is None, True, True, True, clamped)
        if stiffness is not None:
            model.def_support_spring(name, "DY", stiffness)
    spans = list(zip(places, places[1:]))
    for a, b in spans:
        model.add_member(f"m{a}", f"n{a}", f"n{b}", "wood", "section")
    for load in beam.get("point_loads", []):
        a, b = next(span for span in reversed(spans) if span[0] <= load["at_mm"])
        model.add_member_pt_load(f"m{a}", "Fy", -load["load_n"], load["at_mm"] - a)
    for load in beam.get("line_loads", []):
        for a, b in spans:
            low, high = max(a, load["from_mm"]), min(b, load["to_mm"])
            if high > low:
                w = -load["load_n_per_mm"]
                model.add_member_dist_load(f"m{a}", "Fy", w, w, low - a, high - a)
    model.analyze(check_statics=False)
    case = "Combo 1"

    def reaction(one):
        node = model.nodes[f"n{one['at_mm']}"]
        if "stiffness_n_per_mm" in one:
            return -one["stiffness_n_per_mm"] * node.DY[case]
        return node.RxnFY[case]

    stations = [-model.nodes[f"n{at}"].DY[case] for at in beam.get("stations_mm", [])]
    deepest = max(
        (abs(model.members[f"m{a}"].deflection("dy", (b - a) * k / 200, case)) for a, b in spans for k in range(201)),
    )
    return [reaction(one) for one in supports], stations, deepest


def main():
    """Compares every row; a row that no comparison reaches is an error too."""
    compared = 0
    for row in tomllib.loads(ROWS.read_text())["row"]:
        reactions, stations, deepest = frame(row["input"])
        found = {f"reactions[{k}].reaction_n": value for k, value in enumerate(reactions)}
        found |= {f"stations[{k}].deflection_mm": value for k, value in enumerate(stations)}
        found["greatest_deflection_mm"] = deepest
        for path, expected in row["expect"].items():
            if path not in found:
                continue
            tolerance = row["tolerance"]
            allowed = tolerance.get("abs", 0.0) + tolerance.get("rel", 0.0) * abs(expected)
            # The frame's own rounding, beside the row's tolerance.
            if not math.isclose(found[path], expected, rel_tol=1e-6, abs_tol=allowed):
                sys.exit(f"{row['id']}: {path} is {found[path]} in the frame, {expected} in the row")
            compared += 1
    if compared < 15:
        sys.exit(f"only {compared} figures were compared")
    print(f"{compared} figures of the rows agree with the frame library")


if __name__ == "__main__":
    main()
