"""A whole job: from a class, a dict or a text; kept, copied and sent as its spec."""

import copy
import json
import pickle
import struct
from pathlib import Path
from xml.etree import ElementTree

import pytest

import beamcraft
from schemas import SPECS

FILES = sorted(Path(SPECS).glob("*.json"))
every_spec = pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)


def test_there_are_specs() -> None:
    assert len(FILES) >= 2


@every_spec
def test_class_dict_and_text_give_the_same_plan(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    plan = beamcraft.plan(text)
    assert plan == beamcraft.plan(json.loads(text)) == beamcraft.plan(plan.spec)
    assert plan.to_json() == beamcraft.call_json("plan", text), "every byte as through the JSON door"
    assert plan.to_dict() == beamcraft.call("plan", text)
    assert plan.to_json() == beamcraft.plan(plan.spec.to_json()).to_json()


@every_spec
def test_a_plan_is_kept_as_its_spec(file: Path) -> None:
    plan = beamcraft.plan(file.read_text(encoding="utf-8"))
    pickled = pickle.dumps(plan)
    assert pickle.loads(pickled) == plan
    assert len(pickled) < len(plan.to_json()) / 2
    assert copy.copy(plan) is plan and copy.deepcopy(plan) is plan
    assert repr(plan) == f"plan({plan.spec!r})"
    assert eval(repr(plan), vars(beamcraft)) == plan


def test_a_plan_comes_from_its_function_only() -> None:
    with pytest.raises(TypeError):
        beamcraft.Plan()
    with pytest.raises(TypeError):
        beamcraft.Plan.__new__(beamcraft.Plan)


def test_a_changed_spec_gives_another_plan() -> None:
    plan = beamcraft.plan(FILES[0].read_text(encoding="utf-8"))
    heavier = plan.spec.wood.replace(species="white oak")
    other = beamcraft.plan(plan.spec.replace(wood=heavier))
    assert other != plan
    assert other.mass.panels_kg > plan.mass.panels_kg


def test_shop_lengths_are_read_in_dicts() -> None:
    spec = json.loads(FILES[0].read_text(encoding="utf-8"))
    leg = spec["body"]["legs"][0]["rectangular"]
    leg["length_mm"] = "72 in"
    assert beamcraft.plan(spec).spec.body.legs[0].length_mm == 1828.8


def test_every_fault_of_a_spec_is_named_with_its_path() -> None:
    spec = json.loads(FILES[0].read_text(encoding="utf-8"))
    spec["wood"]["moisture_pct"] = 99
    spec["saw"]["kerf_mm"] = -1
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.plan(spec)
    assert {fault.field for fault in caught.value.details} == {"wood.moisture_pct", "saw.kerf_mm"}
    spec = json.loads(FILES[0].read_text(encoding="utf-8"))
    spec["body"]["legs"][0]["rectangular"]["length_mm"] = -1
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.plan(spec)
    assert caught.value.field == "body.legs[0].rectangular.length_mm"
    with pytest.raises(beamcraft.InputError) as caught:
        beamcraft.plan({})
    assert "beamcraft_spec" in {fault.field for fault in caught.value.details}


@pytest.mark.parametrize("wrong", [None, 1, [], b"{}", beamcraft.MeasuredStuds(centres_mm=[])])
def test_a_spec_is_a_class_a_dict_or_a_text(wrong: object) -> None:
    with pytest.raises(TypeError, match="^spec: a BeamSpec, a dict or JSON text is needed"):
        beamcraft.plan(wrong)  # type: ignore[arg-type]


def test_a_plan_shows_as_a_table() -> None:
    table = beamcraft.plan(FILES[0].read_text(encoding="utf-8"))._repr_html_()
    assert "<caption>Plan</caption>" in table and "left_end" in table
    assert len(table) < 400_000


@every_spec
def test_drawings_of_a_plan(file: Path) -> None:
    plan = beamcraft.plan(file.read_text(encoding="utf-8"))
    names = plan.drawing_names()
    assert names[:2] == ["section", "exploded"]
    assert {f"panel_{panel.id}" for panel in plan.panels} | {f"set_ups_{panel.id}" for panel in plan.panels} <= set(names)
    for name in names:
        drawing = plan.drawing(name)
        assert isinstance(drawing, beamcraft.Drawing) and isinstance(drawing, str)
        assert type(drawing._repr_svg_()) is str and drawing._repr_svg_() == drawing
        assert ElementTree.fromstring(drawing).tag == "{http://www.w3.org/2000/svg}svg"
    assert plan.drawing("section") == plan.section_svg()
    with pytest.raises(beamcraft.InputError, match="did you mean panel_front"):
        plan.drawing("panel_frnt")


def volume(vertices: memoryview, triangles: memoryview) -> float:
    """By the divergence theorem."""
    points = vertices.tolist()
    total = 0.0
    for a, b, c in triangles.tolist():
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = points[a], points[b], points[c]
        total += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)
    return total / 6


@every_spec
def test_triangles_of_a_panel(file: Path) -> None:
    plan = beamcraft.plan(file.read_text(encoding="utf-8"))
    for panel in plan.panels:
        vertices, triangles = plan.panel_mesh(panel.id)
        assert (vertices.format, triangles.format) == ("d", "I") and vertices.readonly and triangles.readonly
        assert vertices.shape[1] == triangles.shape[1] == 3 and triangles.shape[0] >= 12
        assert volume(vertices, triangles) == pytest.approx(panel.mass.volume_mm3, rel=1e-9), "two sums of the same terms"
        solid = panel.pieces[0].solid
        assert vertices.tolist() == [list(point) for point in solid.vertices_mm]
    with pytest.raises(beamcraft.InputError, match="did you mean front"):
        plan.panel_mesh("frnt")


def test_triangles_are_arrays_without_a_copy() -> None:
    numpy = pytest.importorskip("numpy")
    plan = beamcraft.plan(FILES[0].read_text(encoding="utf-8"))
    vertices, triangles = map(numpy.asarray, plan.panel_mesh("front"))
    assert (vertices.dtype, triangles.dtype) == (numpy.float64, numpy.uint32)
    corners = vertices[triangles]
    doubled = numpy.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area = numpy.linalg.norm(doubled, axis=1).sum() / 2
    assert area == pytest.approx(plan.panels[0].mass.surface_mm2, rel=1e-12)
    assert not vertices.flags.owndata and not vertices.flags.writeable


@every_spec
def test_files_of_a_plan(file: Path) -> None:
    plan = beamcraft.plan(file.read_text(encoding="utf-8"))
    drawing = ElementTree.fromstring(plan.section_svg())
    assert beamcraft.drawing_svg("plan", plan.spec) == plan.section_svg()
    assert drawing.tag == "{http://www.w3.org/2000/svg}svg" and len(drawing) > 0
    report = plan.report_html()
    assert report.lower().startswith("<!doctype html>") and "<script" not in report
    for panel in plan.panels:
        assert f"{panel.id}" in report or panel.id.replace("_", " ") in report
    solids = plan.panels_stl()
    (count,) = struct.unpack_from("<I", solids, 80)
    assert len(solids) == 84 + 50 * count and count >= 12 * len(plan.panels), "each panel has at least six faces"
    step = plan.panels_step()
    assert step.startswith("ISO-10303-21;") and step.count("MANIFOLD_SOLID_BREP(") == len(plan.panels)
    assert plan.panels_dxf().rstrip().endswith("EOF")
    scene = plan.panels_gltf()
    magic, version, length = struct.unpack_from("<4sII", scene)
    assert (magic, version, length) == (b"glTF", 2, len(scene))
    # The spec is all that a plan is kept as: what is made from a copy is the same to the last byte.
    again = pickle.loads(pickle.dumps(plan))
    assert (again.section_svg(), again.report_html(), again.panels_stl()) == (plan.section_svg(), report, solids)


def test_a_body_without_a_plan_has_its_files_and_drawings() -> None:
    """A front that leans, in two legs round an inside corner."""
    body = beamcraft.sawn_body(
        name="Corner shelf",
        body=beamcraft.HollowBodyInput(
            section=beamcraft.SlopedSection(
                top_depth_mm=240, bottom_depth_mm=180, front_height_mm=200, back_height_mm=200
            ),
            legs=[beamcraft.BodyLeg(length_mm=900, corner_deg=270), beamcraft.BodyLeg(length_mm=1400)],
            boards=[beamcraft.BodyBoard(face=face, thickness_mm=18) for face in ("front", "top", "bottom")],
            left_end=beamcraft.BodyEnd(kind="return_panel", thickness_mm=18),
            right_end=beamcraft.BodyEnd(kind="open"),
        ),
    )
    names = [panel.id for panel in body.panels]
    assert names == ["front", "top", "bottom", "left_end", "leg2.front", "leg2.top", "leg2.bottom"]
    for name in body.drawing_names():
        drawing = body.drawing(name)
        assert drawing._repr_svg_() == drawing
        assert ElementTree.fromstring(drawing).tag == "{http://www.w3.org/2000/svg}svg"
    assert body.drawing("exploded") == beamcraft.drawing_svg("sawn_body", body.spec)
    for panel in body.panels:
        vertices, triangles = body.panel_mesh(panel.id)
        assert volume(vertices, triangles) == pytest.approx(panel.mass.volume_mm3, rel=1e-9), "two sums of the same terms"
    assert body.panels_step().count("MANIFOLD_SOLID_BREP(") == len(names)
    assert body.panels_dxf().rstrip().endswith("EOF") and body.panels_gltf()[:4] == b"glTF"
    (count,) = struct.unpack_from("<I", body.panels_stl(), 80)
    assert count >= 12 * len(names)
    again = pickle.loads(pickle.dumps(body))
    assert again == body and again.panels_step() == body.panels_step()
    with pytest.raises(beamcraft.InputError, match="did you mean leg2.front"):
        body.panel_mesh("leg2.frnt")
