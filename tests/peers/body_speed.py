"""Panels of the same bodies, timed in the library, in a B-rep kernel and in a mesh boolean library; medians of one run.

    body_speed.py PROGRAM

PROGRAM is the example `hollow_bodies` of the core, built for release. The B-rep kernel gets corners that are worked out
already, as does the mesh library, which cuts the inner solid out of the outer one and takes from what is left the part
within the corners of each panel. The volumes of all three are compared first.
"""

import json
import statistics
import subprocess
import sys
import time

import numpy as np
from bodies import mitred_panels, volume_of
from body_shapes import legs_of
from manifold3d import Manifold


def rectangular(count):
    """A body of as many panels, and a return at each end where there are more than three."""
    end = {"kind": "return_panel", "thickness_mm": 20.0} if count > 3 else {"kind": "open"}
    sides = ["front", "top", "bottom", "back"][: count - 2 if count > 3 else count]
    return {
        "section": {"rectangular": {"height_mm": 185.0, "depth_mm": 215.0}},
        "legs": [{"length_mm": 1830.0}],
        "boards": [{"face": face, "thickness_mm": 20.0} for face in sides],
        "left_end": end,
        "right_end": end,
    }


def octagon():
    body = rectangular(5)
    body["section"] = {"regular": {"sides": 8, "across_flats_mm": 300.0}}
    body["boards"] = [{"face": f"side{k + 1}", "thickness_mm": 20.0} for k in range(8)]
    return body


def three_legs():
    body = rectangular(5)
    body["legs"] = [{"length_mm": 600.0, "corner_deg": 90.0}, {"length_mm": 1800.0, "corner_deg": 90.0}, {"length_mm": 600.0}]
    return body


BODIES = {
    "3 panels": rectangular(3),
    "5 panels": rectangular(5),
    "6 panels": rectangular(6),
    "octagon, 10 panels": octagon(),
    "3 legs, 11 panels": three_legs(),
}


def hull(points):
    return Manifold.hull_points(np.asarray(points, np.float64))


def mesh_panels(prepared):
    """The wood of each leg, and of it what lies within the outer and the inner corners of each panel."""
    panels = []
    for outer, inner, boards in prepared:
        wood = hull(outer) - hull(inner)
        panels += [wood ^ hull(board) for board in boards]
    # Work is put off until something is asked.
    return [panel.volume() for panel in panels]


def mesh_corners(legs):
    out = []
    for leg in legs:
        outer, inner = leg.polygons({}), leg.polygons(leg.thickness)
        flat = lambda faces: [point for points in faces.values() for point in points]
        out.append((flat(outer), flat(inner), [[*outer[name], *inner[name]] for name in leg.boards()]))
    return out


def median_s(call, runs):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def main():
    (program,) = sys.argv[1:]
    text = "\n".join(map(json.dumps, BODIES.values())) + "\n"
    run = lambda *flags: subprocess.run([program, *flags], input=text, capture_output=True, text=True, check=True).stdout
    results = [json.loads(line) for line in run().splitlines()]
    ours_s = [int(line) * 1e-9 for line in run("--time").splitlines()]
    print(f"{'body':20} {'library':>10} {'B-rep':>11} {'ratio':>8} {'mesh':>11} {'ratio':>8}")
    for (name, body), result, ours in zip(BODIES.items(), results, ours_s, strict=True):
        wanted = [panel["mass"]["volume_mm3"] for leg in result["legs"] for panel in leg["panels"]]
        legs = legs_of(body)
        kernel = lambda: [solid for leg in legs for solid in mitred_panels(leg)]
        assert np.allclose(sorted(map(volume_of, kernel())), sorted(wanted), rtol=1e-9), name
        prepared = mesh_corners(legs)
        # The mesh library merges corners that lie within its own tolerance.
        assert np.allclose(sorted(mesh_panels(prepared)), sorted(wanted), rtol=1e-6), name
        brep, mesh = median_s(kernel, 15), median_s(lambda: mesh_panels(prepared), 101)
        print(
            f"{name:20} {ours * 1e6:7.1f} µs {brep * 1e3:8.2f} ms {brep / ours:8.0f} {mesh * 1e3:8.3f} ms {mesh / ours:8.0f}"
        )


if __name__ == "__main__":
    main()
