"""An ash shelf beam over an electric stove: sizes, saw settings, cleat, checks, finish.

Made-up demo scenario. Run it with ``python hearth_beam.py`` where the package ``beamcraft`` is installed.
"""

import beamcraft as bc


def shelf() -> bc.BeamSpec:
    """1 830 long, 185 high, 215 deep, boards of 20 mm; studs at 600 mm, a boxed cable duct above."""
    leg = bc.Leg(
        length_mm=1830,
        height_mm=185,
        depth_mm=215,
        boards=[
            bc.LegBoard(face="front", thickness_mm=20),
            bc.LegBoard(face="top", thickness_mm=20),
            bc.LegBoard(face="bottom", thickness_mm=20),
        ],
        left_end=bc.LegEnd(kind="return_panel", thickness_mm=20),
        right_end=bc.LegEnd(kind="return_panel", thickness_mm=20),
    )
    wall = bc.Wall(
        studs=bc.MeasuredStuds(centres_mm=[350, 950, 1550]),
        stud_width_mm=45,
        stud_depth_mm=95,
        stud_wood=bc.StudWood(combination="Spruce-Pine-Fir"),
        lining_thickness_mm=12.5,
    )
    duct = bc.Obstruction(
        name="boxed cable duct", left_mm=1200, right_mm=1380, bottom_mm=1580, top_mm=2400, projection_mm=90
    )
    site = bc.SiteSpec(
        place=bc.BodyPlace(left_end_mm=35, bottom_above_floor_mm=1350),
        wall=wall,
        obstructions=[duct],
        opening=bc.FireOpening(left_mm=550, width_mm=800, top_above_floor_mm=900),
        appliance=bc.Appliance(kind="electric_unit"),
    )
    screws = bc.ScrewSpec(size="no_14", length_mm=100, row_up_mm=30)
    return bc.BeamSpec(
        beamcraft_spec=1,
        name="Ash shelf beam over an electric stove",
        body=bc.BodySpec(legs=[leg]),
        wood=bc.WoodSpec(species="white ash"),
        cleat=bc.CleatSpec(strip_width_mm=94, lock="fitted", screws=screws),
        site=site,
        load=bc.LoadSpec(front_edge_n=200),
        finish=bc.FinishSpec(class_="oil_polyurethane", method="brush", coats=3, can_sizes_l=[0.375, 0.75, 2.5]),
    )


def main() -> None:
    plan = bc.plan(shelf())

    print(plan.spec.name)
    print("\npanels (show face, long point to long point)")
    for panel in plan.panels:
        print(f"  {panel.id:10} {panel.show_length_mm:7.1f} x {panel.show_width_mm:6.1f} x {panel.thickness_mm:4.1f} mm")

    print("\ncuts of the front")
    for cut in plan.cuts:
        if cut.panel == "front":
            fence = "" if cut.rip is None else f", fence {cut.rip.fence.fence_mm:.1f} mm"
            print(f"  {cut.step}. {cut.edge}: {cut.cut}, tilt {cut.blade_tilt_deg:.1f} deg{fence}")

    print("\nhanging")
    if plan.cleat is not None and plan.cleat.marks is not None:
        marks = plan.cleat.marks
        print(f"  lower edge of the wall half {marks.lower_edge_mm:.1f} mm above the floor")
        print(f"  screws at {', '.join(f'{screw.x_mm:.0f}' for screw in marks.screws)} mm")
        for room in marks.lift_rooms:
            print(f"  {room.name}: {room.room_mm:.0f} mm of room, {room.along_seat_mm:.0f} mm needed to lift on")
    print(f"  {plan.mass.lifted_kg:.1f} kg to lift")

    print("\nchecks")
    for check in plan.checks:
        share = "" if check.utilisation is None else f" ({check.utilisation:.2f} of the limit)"
        print(f"  {check.outcome:14} {check.name}: {check.subject}{share} [{check.clause}]")

    print("\nfindings, worst first")
    for finding in plan.findings:
        print(f"  {finding.grade:8} {finding.message} {finding.cure}")

    print("\nnot checked")
    for text in plan.not_checked:
        print(f"  {text}")

    print(f"\ndrawings: {', '.join(plan.drawing_names())}")
    vertices, triangles = plan.panel_mesh("front")
    print(f"front as {len(triangles)} triangles of {len(vertices)} points; report of {len(plan.report_html())} characters")

    print("\ncautions")
    for caution in plan.cautions:
        print(f"  {caution.about}: {caution.text}")


if __name__ == "__main__":
    main()
