"""Hollow bodies built in a B-rep kernel by another route, compared with the library's panel by panel.

    bodies.py PROGRAM [--count N] [--record FILE] [--against FILE]

PROGRAM is the example `hollow_bodies` of the core. The kernel gets the outer solid and the inner one, cuts the second out
of the first, and parts what is left: mitred bodies along the quadrilaterals between outer and inner arrises; butted and
rabbeted ones by peeling, board by board in the order in which they run past one another. Volume, centroid, number of faces
and face normals are compared. `--record` writes what the kernel found as verification rows; `--against` compares it with
rows recorded before.
"""

import argparse
import importlib.metadata
import itertools
import json
import math
import subprocess
import sys
import tomllib

import numpy as np
from body_shapes import legs_of, random_bodies
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut, BRepAlgoAPI_Splitter
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_MakeSolid,
    BRepBuilderAPI_Sewing,
)
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.gp import gp_Pnt
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS
from OCP.collections import List_TopoDS_Shape

SEED = 20_026
# Both sides work in doubles on sizes up to some metres; the kernel sews and splits at 1e-7 mm.
VOLUME_REL = 1e-9
CENTROID_MM = 1e-6
NORMAL = 1e-9


def explored(shape, kind, cast):
    found, explorer = [], TopExp_Explorer(shape, kind)
    while explorer.More():
        found.append(cast(explorer.Current()))
        explorer.Next()
    return found


def face_of(points):
    polygon = BRepBuilderAPI_MakePolygon()
    for point in points:
        polygon.Add(gp_Pnt(*map(float, point)))
    polygon.Close()
    return BRepBuilderAPI_MakeFace(polygon.Wire(), True).Face()


def solid_of(polygons):
    sewing = BRepBuilderAPI_Sewing(1e-7)
    for points in polygons.values():
        sewing.Add(face_of(points))
    sewing.Perform()
    solid = BRepBuilderAPI_MakeSolid(TopoDS.Shell(sewing.SewedShape())).Solid()
    # The polygons are in no order about their normals.
    return solid if volume_of(solid) > 0 else TopoDS.Solid(solid.Reversed())


def properties_of(solid):
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, properties)
    centre = properties.CentreOfMass()
    return properties.Mass(), np.array([centre.X(), centre.Y(), centre.Z()])


def volume_of(solid):
    return properties_of(solid)[0]


def listed(shapes):
    out = List_TopoDS_Shape()
    for shape in shapes:
        out.Append(shape)
    return out


def cut(shape, tools):
    operation = BRepAlgoAPI_Cut()
    operation.SetArguments(listed([shape]))
    operation.SetTools(listed(tools))
    operation.Build()
    return operation.Shape()


def mitred_panels(leg):
    """Outer less inner, parted along the seams."""
    wood = cut(solid_of(leg.polygons({})), [solid_of(leg.polygons(leg.thickness))])
    seams = [face_of(points) for points in leg.seams()]
    if seams:
        splitter = BRepAlgoAPI_Splitter()
        splitter.SetArguments(listed([wood]))
        splitter.SetTools(listed(seams))
        splitter.Build()
        wood = splitter.Shape()
    return explored(wood, TopAbs_SOLID, TopoDS.Solid)


def peeled_panels(leg, order, rabbet):
    """Boards taken off in the order in which they run past, each less the tongues of those that come after it."""
    boards = []
    for at, name in enumerate(order):
        moved = {earlier: leg.thickness[earlier] - rabbet for earlier in order[:at]}
        rest = {**moved, name: leg.thickness[name]}
        boards.append(cut(solid_of(leg.polygons(moved)), [solid_of(leg.polygons(rest))]))
    if rabbet:
        boards = [cut(board, boards[at + 1 :]) if boards[at + 1 :] else board for at, board in enumerate(boards)]
    return [solid for board in boards for solid in explored(board, TopAbs_SOLID, TopoDS.Solid)]


def peer_panels(body):
    joint = body.get("joint", {})
    panels = []
    for leg in legs_of(body):
        if joint:
            panels += peeled_panels(leg, joint["running_past"], joint.get("rabbet_mm", 0.0))
        else:
            panels += mitred_panels(leg)
    return panels


def normal_of(face):
    direction = BRepAdaptor_Surface(face).Plane().Axis().Direction()
    sign = -1.0 if face.Orientation() == TopAbs_REVERSED else 1.0
    # A left-handed placement turns the normal of the plane against its axis.
    if not BRepAdaptor_Surface(face).Plane().Direct():
        sign = -sign
    return sign * np.array([direction.X(), direction.Y(), direction.Z()])


def library_normals(solid):
    points = np.array(solid["vertices_mm"])
    for face in solid["faces"]:
        ring = points[face["corners"]]
        normal = np.cross(ring, np.roll(ring, -1, axis=0)).sum(axis=0)
        yield normal / np.linalg.norm(normal)


def compare(body, result):
    """The kernel's panels in the library's order, each as volume and centroid; fails on any difference."""
    ours = [panel for leg in result["legs"] for panel in leg["panels"]]
    solids = peer_panels(body)
    assert len(solids) == len(ours), f"{len(solids)} solids, {len(ours)} panels"
    left = [(solid, *properties_of(solid)) for solid in solids]
    found = []
    for panel in ours:
        mass = panel["mass"]
        at = min(range(len(left)), key=lambda k: np.linalg.norm(left[k][2] - mass["centroid_mm"]))
        solid, volume, centroid = left.pop(at)
        assert BRepCheck_Analyzer(solid).IsValid()
        assert abs(volume / mass["volume_mm3"] - 1) < VOLUME_REL, (panel["id"], volume, mass["volume_mm3"])
        assert np.linalg.norm(centroid - mass["centroid_mm"]) < CENTROID_MM, (panel["id"], centroid)
        if all(piece["sign"] == "added" for piece in panel["pieces"]):
            faces = explored(solid, TopAbs_FACE, TopoDS.Face)
            shape = panel["pieces"][0]["solid"]
            assert len(faces) == len(shape["faces"]), (panel["id"], len(faces), len(shape["faces"]))
            normals = [normal_of(face) for face in faces]
            for normal in library_normals(shape):
                at = max(range(len(normals)), key=lambda k: normals[k] @ normal)
                assert np.linalg.norm(normals.pop(at) - normal) < NORMAL, (panel["id"], normal)
        found.append((volume, centroid))
    return found


def toml(value):
    """A value as TOML on one line."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {toml(item)}" for key, item in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml, value)) + "]"
    return json.dumps(value)


HEAD = """# Volumes and centroids of the panels of random hollow bodies, by a general-purpose B-rep kernel: the inner solid cut out of
# the outer one, and the rest parted along the seams, or peeled board by board for butts and rabbets.
# Written by `bash tests/peers/run-bodies --record`; the full tier of the tests computes them again and compares.
"""


def row(number, kind, body, found, result):
    expect = {}
    at = iter(found)
    for leg, shell in enumerate(result["legs"]):
        for panel in range(len(shell["panels"])):
            volume, _ = next(at)
            expect[f'"legs[{leg}].panels[{panel}].mass.volume_mm3"'] = volume
    total = math.fsum(volume for volume, _ in found)
    for axis in range(3):
        moment = math.fsum(volume * centroid[axis] for volume, centroid in found)
        expect[f'"wood.centroid_mm[{axis}]"'] = float(moment / total)
    kernel = importlib.metadata.version("cadquery-ocp-novtk")
    return f"""
[[row]]
id = "body-{number:03}-{kind.replace(" ", "-")}"
calculation = "hollow_body"
input = {toml(body)}
expect = {toml(expect)}
tolerance = {{ rel = 1e-8, why = "both work in doubles, the kernel sews and splits at 1e-7 mm; a centroid may lie close to an axis" }}
source = "Open CASCADE by its Python binding, OCP {kernel}"
evidence = "seen"
"""


def library(program, bodies):
    text = "\n".join(json.dumps(body) for _, body in bodies) + "\n"
    done = subprocess.run([program], input=text, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in done.stdout.splitlines()]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--count", type=int, default=220)
    parser.add_argument("--record")
    parser.add_argument("--against")
    options = parser.parse_args()
    # Some have no room inside and are refused.
    drawn = list(itertools.islice(random_bodies(SEED), 2 * options.count))
    rows, kinds, panels, refused = [], {}, 0, 0
    for (kind, body), result in zip(drawn, library(options.program, drawn), strict=True):
        if len(rows) == options.count:
            break
        if "refused" in result:
            refused += 1
            continue
        try:
            found = compare(body, result)
        except Exception:
            print(f"{kind}: {json.dumps(body)}", file=sys.stderr)
            raise
        rows.append(row(len(rows) + 1, kind, body, found, result))
        kinds[kind] = kinds.get(kind, 0) + 1
        panels += len(found)
    assert len(rows) == options.count, f"only {len(rows)} bodies of {len(drawn)} have room inside"
    text = HEAD + "".join(rows)
    if options.record:
        with open(options.record, "w", encoding="utf-8") as file:
            file.write(text)
    if options.against:
        against(text, options.against)
    each = ", ".join(f"{count} {kind}" for kind, count in kinds.items())
    print(f"{len(rows)} bodies, {panels} panels: volume, centroid, faces and normals agree ({each}; {refused} refused)")


def against(text, path):
    """Recorded rows are those of now: the same bodies, and numbers as close as their tolerance says."""
    with open(path, "rb") as file:
        recorded = tomllib.load(file)["row"]
    now = tomllib.loads(text)["row"]
    assert [row["id"] for row in recorded] == [row["id"] for row in now], "other bodies than recorded: record them anew"
    for one, other in zip(recorded, now):
        assert one["input"] == other["input"] and one["expect"].keys() == other["expect"].keys(), one["id"]
        for name, value in one["expect"].items():
            assert math.isclose(value, other["expect"][name], rel_tol=1e-9, abs_tol=1e-9), (one["id"], name)
    print(f"{len(recorded)} recorded rows are the kernel's of now")


if __name__ == "__main__":
    main()
