"""A body open at the back, over three studs, as shells of PyNiteFEA, a general-purpose frame library; its section as finite elements.

The turn of the end under a push on the front edge must lie below the bound that restrained warping alone gives, and not far below.
The rows on warping that name finite elements are computed again by sectionproperties, a general-purpose section library.
"""

import math
import pathlib
import sys
import tomllib

from Pynite import FEModel3D
from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry
from shapely import LineString

ROWS = pathlib.Path(__file__).resolve().parent.parent / "verification" / "warping.toml"

# The ash body by its midlines, mm: flanges, web, thickness, length, studs; a push on the end, N.
FLANGE, WEB, THICK, LENGTH, STUDS, PUSH = 205.0, 165.0, 20.0, 1830.0, [315.0, 915.0, 1515.0], 200.0
MODULUS, POISSON = 12_000.0, 0.3
ACROSS = 4


def bound():
    """Turn of the end with the stiffness against warping alone, and the shear of the boards: formulas of the handbooks."""
    whole = WEB + 6.0 * FLANGE
    arm = 3.0 * FLANGE**2 / whole
    constant = THICK * FLANGE**3 * WEB**2 / 12.0 * (3.0 * FLANGE + 2.0 * WEB) / whole
    torque, over, span = PUSH * arm, STUDS[0], STUDS[1] - STUDS[0]
    # A beam over three supports with a moment at the first: a quarter of it comes back over the second.
    moment = torque * over
    slope = (moment * span / 3.0 - moment / 4.0 * span / 6.0) / (MODULUS * constant)
    return slope * over + torque * over**3 / (3.0 * MODULUS * constant)


def shells():
    """Turn of the end by shells: front and back edges, which must tell the same."""
    stations = sorted({round(45.0 * k, 3) for k in range(41)} | {LENGTH, *STUDS})
    steps = [k / ACROSS for k in range(ACROSS + 1)]
    path = [(FLANGE * (1 - u), 0.0) for u in steps] + [(0.0, WEB * u) for u in steps[1:]] + [(FLANGE * u, WEB) for u in steps[1:]]
    model = FEModel3D()
    shear = MODULUS / (2 * (1 + POISSON))
    model.add_material("wood", MODULUS, shear, POISSON, 0.0)
    # Bulkheads: stiff in their plane, limp out of it, so that they hold the shape and nothing else.
    model.add_material("stiff", 100 * MODULUS, 100 * shear, POISSON, 0.0)
    for i, x in enumerate(stations):
        for k, (y, z) in enumerate(path):
            model.add_node(f"n{i}_{k}", x, y, z)
    quads = 0
    for i in range(len(stations) - 1):
        for k in range(len(path) - 1):
            corners = [f"n{i}_{k}", f"n{i + 1}_{k}", f"n{i + 1}_{k + 1}", f"n{i}_{k + 1}"]
            model.add_quad(f"q{quads}", *corners, THICK, "wood")
            quads += 1
    held = [stations.index(stud) for stud in STUDS]
    for i in [0, len(stations) - 1, *held]:
        names = {point: f"n{i}_{k}" for k, point in enumerate(path)}
        for u in steps:
            for v in steps:
                point = (FLANGE * u, WEB * v)
                if point not in names:
                    names[point] = f"b{i}_{u}_{v}"
                    model.add_node(names[point], stations[i], *point)
        for u, further in zip(steps, steps[1:]):
            for v, higher in zip(steps, steps[1:]):
                around = [(u, v), (further, v), (further, higher), (u, higher)]
                corners = [names[FLANGE * a, WEB * b] for a, b in around]
                model.add_quad(f"q{quads}", *corners, 2.0, "stiff")
                quads += 1
    back_low, front_low, front_high, back_high = 0, ACROSS, 2 * ACROSS, 3 * ACROSS
    for i in held:
        # The seat holds up and in, the foot lies on the wall.
        model.def_support(f"n{i}_{back_high}", i == held[0], True, True, False, False, False)
        model.def_support(f"n{i}_{back_low}", False, True, False, False, False, False)
    model.add_node_load(f"n0_{front_high}", "FZ", -PUSH)
    model.analyze(sparse=True)
    place = lambda k: (model.nodes[f"n0_{k}"].DY["Combo 1"], model.nodes[f"n0_{k}"].DZ["Combo 1"])
    (high_out, high_up), (low_out, _), (_, back_up) = place(front_high), place(front_low), place(back_high)
    return (high_out - low_out) / WEB, (high_up - back_up) / FLANGE


def section(given):
    """Warping constant, shear centre and torsion constant of a row's chain of walls, by finite elements."""
    points = [(corner["x_mm"], corner["y_mm"]) for corner in given["corners"]]
    thick = given["thicknesses_mm"][0]
    outline = LineString(points).buffer(0.5 * thick, cap_style="flat", join_style="mitre")
    mesh = Section(Geometry(outline).create_mesh(mesh_sizes=[4.0]))
    mesh.calculate_geometric_properties()
    mesh.calculate_warping_properties()
    x, y = mesh.get_sc()
    found = {"warping_constant_mm6": mesh.get_gamma(), "torsion_constant_mm4": mesh.get_j()}
    return found | {"shear_centre.x_mm": x, "shear_centre.y_mm": y}


def main():
    """Compares the turn of the end, and every row that rests on finite elements."""
    most = bound()
    by_front, by_top = shells()
    if not math.isclose(by_front, by_top, rel_tol=0.05):
        sys.exit(f"the section does not keep its shape: {by_front} and {by_top}")
    if not 0.4 * most < by_front < most:
        sys.exit(f"the end turns {by_front} by shells, at most {most} by restrained warping")
    compared = 0
    for row in tomllib.loads(ROWS.read_text())["row"]:
        if "finite elements" not in row["source"]:
            continue
        found = section(row["input"])
        for name, expected in row["expect"].items():
            if not math.isclose(found[name], expected, rel_tol=2e-3):
                sys.exit(f"{row['id']}: {name} is {found[name]} by finite elements, {expected} in the row")
            compared += 1
    if compared < 8:
        sys.exit(f"only {compared} figures were compared")
    print(f"the end turns {by_front / most:.2f} of the bound by shells; {compared} figures of the rows agree with the section library")


if __name__ == "__main__":
    main()
