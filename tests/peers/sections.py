"""Sections of the verification rows, computed again by sectionproperties, a general-purpose finite-element section library.

Compared are area, centroid and second moments, transformed to the reference modulus, of every row that expects one of them.
"""

import math
import pathlib
import sys
import tomllib

from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry, Material
from shapely import Polygon, box

ROWS = pathlib.Path(__file__).resolve().parent.parent / "verification" / "sections.toml"


def shape(part):
    """A part's outline."""
    outline = part["outline"]
    if "rectangle" in outline:
        r = outline["rectangle"]
        return box(r["left_mm"], r["bottom_mm"], r["left_mm"] + r["width_mm"], r["bottom_mm"] + r["height_mm"])
    return Polygon([(p["x_mm"], p["y_mm"]) for p in outline["polygon"]["points"]])


def section(given):
    """Figures of a section by finite elements."""
    modulus = next((part["modulus_mpa"] for part in given["parts"] if "modulus_mpa" in part), 1.0)
    reference = given.get("reference_modulus_mpa", modulus)
    holes = [shape(part) for part in given["parts"] if part.get("sense") == "hole"]
    whole = None
    for part in given["parts"]:
        if part.get("sense") == "hole":
            continue
        outline = shape(part)
        for hole in holes:
            outline = outline.difference(hole)
        own = part.get("modulus_mpa", reference)
        material = Material("wood", own, 0.0, 1.0, 1.0, "tan")
        piece = Geometry(outline, material)
        whole = piece if whole is None else whole + piece
    mesh = Section(whole.create_mesh(mesh_sizes=[0.0]))
    mesh.calculate_geometric_properties()
    x, y = mesh.get_c()
    ixx, iyy, _ = mesh.get_eic(e_ref=reference)
    return {"area_mm2": mesh.get_area(), "centroid_x_mm": x, "centroid_y_mm": y, "ix_mm4": ixx, "iy_mm4": iyy}


def main():
    """Compares every row that expects a property of a section."""
    compared = 0
    for row in tomllib.loads(ROWS.read_text())["row"]:
        wanted = {path.removeprefix("properties."): value for path, value in row["expect"].items()}
        names = {"area_mm2", "centroid_x_mm", "centroid_y_mm", "ix_mm4", "iy_mm4"} & wanted.keys()
        if not names:
            continue
        found = section(row["input"].get("section", row["input"]))
        tolerance = row["tolerance"]
        for name in names:
            allowed = tolerance.get("abs", 0.0) + tolerance.get("rel", 0.0) * abs(wanted[name])
            if not math.isclose(found[name], wanted[name], rel_tol=1e-9, abs_tol=allowed):
                sys.exit(f"{row['id']}: {name} is {found[name]} by finite elements, {wanted[name]} in the row")
            compared += 1
    if compared < 20:
        sys.exit(f"only {compared} figures were compared")
    print(f"{compared} figures of the rows agree with the section library")


if __name__ == "__main__":
    main()
