"""Files of the example read back by general-purpose readers: STEP by a B-rep kernel, glTF by a mesh library, DXF by a
drawing library with its audit.

    files.py FOLDER...      each holds plan.json, panels.step, panels.glb and panels.dxf as the example writes them
"""

import json
import pathlib
import sys

import ezdxf
import trimesh
from build123d import import_step
from OCP.BRepCheck import BRepCheck_Analyzer


def main():
    """Compares volumes, counts faces, and fails on any fault a reader finds."""
    for folder in map(pathlib.Path, sys.argv[1:]):
        panels = json.loads((folder / "plan.json").read_text())["panels"]
        volumes = [panel["mass"]["volume_mm3"] for panel in panels]
        whole = import_step(str(folder / "panels.step"))
        solids = whole.solids()
        assert len(solids) == len(panels), "one solid a panel"
        assert len({child.label for child in whole.children}) == len(panels), "each with a name of its own"
        worst = 0.0
        for panel, volume, solid in zip(panels, volumes, solids, strict=True):
            assert BRepCheck_Analyzer(solid.wrapped).IsValid()
            # Plain boards: show face, inner face and the edges.
            assert len(solid.faces()) == 2 + len(panel["edges"])
            worst = max(worst, abs(solid.volume - volume) / volume)
        # Both add up doubles; the file holds every digit.
        assert worst < 1e-12
        scene = trimesh.load(folder / "panels.glb").to_geometry()
        gltf = abs(scene.volume * 1e9 - sum(volumes)) / sum(volumes)
        # glTF holds single-precision metres.
        assert gltf < 1e-5
        audit = ezdxf.readfile(folder / "panels.dxf").audit()
        assert not audit.errors and not audit.fixes
        print(f"{folder.name}: {len(solids)} solids, STEP volume within {worst:.1e}, glTF within {gltf:.1e}, DXF audit clean")


if __name__ == "__main__":
    main()
