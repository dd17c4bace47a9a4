"""Random hollow bodies, and the corners of their solids worked out from arrises and planes.

Nothing here knows how the library cuts a panel. A body is a ring of arrises along each leg, two end planes, and the same
solid once more with every face that has a board moved inwards by its thickness.
"""

import itertools
import math
import random

import numpy as np

SIDES = ("front", "top", "back", "bottom")


def ring_of(section):
    """Names of the sides and the corners (y, z) of a section; side k runs from corner k to corner k + 1."""
    (kind, size), = section.items()
    if kind == "rectangular":
        high, deep = size["height_mm"], size["depth_mm"]
        return SIDES, [(0.0, 0.0), (0.0, high), (deep, high), (deep, 0.0)]
    if kind == "sloped":
        # Level top, plumb back; the foremost arris at y = 0, the lowest at z = 0.
        back, top = max(size["top_depth_mm"], size["bottom_depth_mm"]), max(size["front_height_mm"], size["back_height_mm"])
        front = [(back - size["bottom_depth_mm"], top - size["front_height_mm"]), (back - size["top_depth_mm"], top)]
        return SIDES, [*front, (back, top), (back, top - size["back_height_mm"])]
    if kind == "regular":
        count, inradius = size["sides"], size["across_flats_mm"] / 2
        side = 2 * inradius * math.tan(math.pi / count)
        corners, at, heading = [], (0.0, 0.0), math.pi / 2
        for _ in range(count):
            corners.append(at)
            at = (at[0] + side * math.cos(heading), at[1] + side * math.sin(heading))
            heading -= 2 * math.pi / count
        lowest = min(z for _, z in corners)
        corners = [(y, z - lowest) for y, z in corners]
        return tuple(f"side{k + 1}" for k in range(count)), corners
    corners = [(corner["y_mm"], corner["z_mm"]) for corner in size["corners"]]
    return tuple(f"side{k + 1}" for k in range(len(corners))), corners


class Plane:
    """A plane with its normal out of the body."""

    def __init__(self, point, normal):
        self.point = np.asarray(point, float)
        self.normal = np.asarray(normal, float) / np.linalg.norm(normal)

    def inwards(self, thickness):
        return Plane(self.point - thickness * self.normal, self.normal)


def meet(*planes):
    """The point of three planes."""
    normals = np.array([plane.normal for plane in planes])
    return np.linalg.solve(normals, [plane.normal @ plane.point for plane in planes])


def tan_pair(plan_deg, plumb_deg, side):
    """Two directions in an end plane: in plan from the front, and in the front from the underside."""
    plan, plumb = math.radians(plan_deg), math.radians(plumb_deg)
    return (np.array([-side * math.cos(plan), math.sin(plan), 0.0]), np.array([-side * math.cos(plumb), 0.0, math.sin(plumb)]))


class Leg:
    """Faces of a leg by name, their planes and thicknesses, in order round the section, then the ends."""

    def __init__(self, prefix, names, arrises, ends, boards):
        self.names = [prefix + name for name in names]
        self.planes, self.thickness = {}, {}
        centre = np.mean(list(itertools.chain.from_iterable(arrises)), axis=0)
        for k, name in enumerate(self.names):
            (a, b), (c, _) = arrises[k], arrises[(k + 1) % len(arrises)]
            normal = np.cross(b - a, c - a)
            normal *= np.sign(normal @ (a - centre))
            self.planes[name] = Plane(a, normal)
            self.thickness[name] = boards.get(names[k], 0.0)
        self.ends = []
        for name, plane, thickness in ends:
            self.ends.append(prefix + name)
            self.planes[prefix + name] = plane
            self.thickness[prefix + name] = thickness

    def corners(self, moved):
        """Corners {(side, next side, end): point} with each face moved inwards by as much as `moved` says."""
        at = {name: plane.inwards(moved.get(name, 0.0)) for name, plane in self.planes.items()}
        pairs = zip(self.names, self.names[1:] + self.names[:1])
        return {(one, two, end): meet(at[one], at[two], at[end]) for one, two in pairs for end in self.ends}

    def polygons(self, moved):
        """Faces {name: corners in order} with each face moved inwards."""
        corner = self.corners(moved)
        count, (left, right) = len(self.names), self.ends
        faces = {}
        for k, name in enumerate(self.names):
            before, after = self.names[k - 1], self.names[(k + 1) % count]
            faces[name] = [
                corner[before, name, left],
                corner[before, name, right],
                corner[name, after, right],
                corner[name, after, left],
            ]
        for end in self.ends:
            faces[end] = [corner[self.names[k - 1], name, end] for k, name in enumerate(self.names)]
        return faces

    def boards(self):
        return [name for name, thickness in self.thickness.items() if thickness > 0]

    def seams(self):
        """The quadrilateral between the outer and the inner arris of every two boards that share an edge."""
        outer, inner = self.corners({}), self.corners(self.thickness)
        for one, two in zip(self.names, self.names[1:] + self.names[:1]):
            if self.thickness[one] > 0 and self.thickness[two] > 0:
                ends = [(one, two, end) for end in self.ends]
                yield [outer[ends[0]], outer[ends[1]], inner[ends[1]], inner[ends[0]]]
        for k, name in enumerate(self.names):
            for end in self.ends:
                if self.thickness[name] > 0 and self.thickness[end] > 0:
                    keys = [(self.names[k - 1], name, end), (name, self.names[(k + 1) % len(self.names)], end)]
                    yield [outer[keys[0]], outer[keys[1]], inner[keys[1]], inner[keys[0]]]


def legs_of(body):
    """The legs of a body as the input of `hollow_body` describes it."""
    names, corners = ring_of(body["section"])
    boards = {board["face"]: board["thickness_mm"] for board in body["boards"]}
    start, heading, legs = np.zeros(3), 0.0, []
    cut = None
    count = len(body["legs"])
    for number, leg in enumerate(body["legs"], 1):
        along = np.array([math.cos(heading), math.sin(heading), 0.0])
        back, up = np.array([-along[1], along[0], 0.0]), np.array([0.0, 0.0, 1.0])
        stop = start + leg["length_mm"] * along
        far = corners
        if taper := body.get("taper"):
            _, far = ring_of(taper["section"])
            far = [(y + taper.get("back_mm", 0.0), z + taper.get("up_mm", 0.0)) for y, z in far]
        arrises = [(start + y * back + z * up, stop + v * back + w * up) for (y, z), (v, w) in zip(corners, far)]
        ends = []
        for name, side, at in (("left_end", -1.0, start), ("right_end", 1.0, stop)):
            outermost = (number == 1) if side < 0 else (number == count)
            if outermost:
                end = body[name]
                one, two = tan_pair(end.get("corner_deg", 90.0), end.get("plumb_deg", 90.0), side)
                turned = [v[0] * along + v[1] * back + v[2] * up for v in (one, two)]
                normal = np.cross(*turned)
                thickness = end.get("thickness_mm", 0.0)
            elif side < 0:
                normal, thickness = -cut, 0.0
            else:
                # The bisector of the corner in plan.
                turn = math.pi - math.radians(leg["corner_deg"])
                next_along = np.array([math.cos(heading + turn), math.sin(heading + turn), 0.0])
                normal, thickness = along + next_along, 0.0
                cut, heading = normal, heading + turn
            normal = normal * np.sign(side * (normal @ along))
            ends.append((name, Plane(at, normal), thickness))
        prefix = "" if number == 1 else f"leg{number}."
        legs.append(Leg(prefix, names, arrises, ends, boards))
        start = stop
    return legs


def size(chance, low, high):
    """A size as a shop would write it."""
    return round(chance.uniform(low, high), 1)


def random_section(chance, kind):
    if kind == "sloped":
        top, front = size(chance, 160, 300), size(chance, 140, 260)
        ratio = lambda: chance.uniform(0.75, 1.25)
        return {"sloped": {"top_depth_mm": top, "bottom_depth_mm": round(top * ratio(), 1), "front_height_mm": front,
                           "back_height_mm": round(front * ratio(), 1)}}
    if kind == "regular":
        return {"regular": {"sides": chance.choice([3, 5, 6, 7, 8, 10, 12]), "across_flats_mm": size(chance, 180, 400)}}
    if kind == "polygon":
        count = chance.randint(3, 8)
        turns = sorted(chance.uniform(0, 2 * math.pi) for _ in range(count))
        wide, high = chance.uniform(120, 260), chance.uniform(120, 260)
        # Clockwise seen from the right end, or the other way round.
        turns = turns[::chance.choice([1, -1])]
        return {"polygon": {"corners": [{"y_mm": round(wide + wide * math.cos(a), 1), "z_mm": round(high * math.sin(a), 1)} for a in turns]}}
    return {"rectangular": {"height_mm": size(chance, 90, 400), "depth_mm": size(chance, 90, 400)}}


def random_end(chance, straight=False):
    end = {"kind": "open", "corner_deg": size(chance, 75, 110), "plumb_deg": size(chance, 80, 100)}
    if straight or chance.random() < 0.4:
        end.update(corner_deg=90.0, plumb_deg=90.0)
    if chance.random() < 0.7:
        end.update(kind="return_panel", thickness_mm=size(chance, 9, 45))
    return end


KINDS = ("square", "rectangular", "butt", "rabbet", "sloped", "regular", "polygon", "taper", "legs", "polygon legs")


def random_body(chance, kind):
    """A body of a kind; not every one has room inside."""
    section = random_section(chance, {"polygon legs": "polygon"}.get(kind, kind))
    names, _ = ring_of(section)
    open_share = 0.0 if len(names) == 3 else 0.2
    faces = [name for name in names if chance.random() >= open_share] or [names[0]]
    body = {
        "section": section,
        "legs": [{"length_mm": size(chance, 500, 3000)}],
        "boards": [{"face": name, "thickness_mm": size(chance, 9, 45)} for name in faces],
        "left_end": random_end(chance, kind == "square"),
        "right_end": random_end(chance, kind == "square"),
    }
    if kind in ("butt", "rabbet"):
        order = faces + [end for end in ("left_end", "right_end") if body[end]["kind"] == "return_panel"]
        chance.shuffle(order)
        body["joint"] = {"joining": kind, "running_past": order}
        if kind == "rabbet":
            body["joint"]["rabbet_mm"] = size(chance, 2, 8)
    if kind == "taper":
        shape = section["rectangular"]
        far = {name: round(mm * chance.uniform(0.7, 1.3), 1) for name, mm in shape.items()}
        body["taper"] = {"section": {"rectangular": far}, "back_mm": size(chance, -40, 40), "up_mm": size(chance, -40, 40)}
    if kind.endswith("legs"):
        count = chance.choice([2, 2, 3])
        body["legs"] = [{"length_mm": size(chance, 900, 2500)} for _ in range(count)]
        for leg in body["legs"][:-1]:
            leg["corner_deg"] = chance.choice([90.0, 270.0, size(chance, 100, 170), size(chance, 190, 260)])
    return body


def random_bodies(seed):
    """Bodies of every kind in turn, without end."""
    chance = random.Random(seed)
    for kind in itertools.cycle(KINDS):
        yield kind, random_body(chance, kind)
