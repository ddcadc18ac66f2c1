"""Which lists of solids are measured?

Every shipped scene, every lift under every vehicle, doors shut, open and part of the way, pads on
the floor and high up; then tilted solids at random.
"""

import math
import random
import re
from dataclasses import dataclass

from export import ROOT

DOORS = ["shut", "open", "0.35"]
# Pads on the floor, near the lift points, wheels hanging, high up. Metres.
TRAVELS_M = [0.0, 0.35, 0.85, 1.37]
BASE = "scenes/tall-pickup.ron"
RANDOM_LISTS = 40
RANDOM_PAIRS = 10
SEED = 20


@dataclass(frozen=True)
class Asked:
    """One list to ask the program for. `lift` and `vehicle` replace those of the bay."""

    bay: str
    lift: str | None
    vehicle: str | None
    door: str
    travel_m: float

    def text(self):
        """The bay file."""
        text = (ROOT / self.bay).read_text()
        if self.lift is None:
            return text
        lift, vehicle = _presets_of(text)
        replaced = text.replace(f'"{lift}"', f'"{self.lift}"')
        replaced = replaced.replace(f'"{vehicle}"', f'"{self.vehicle}"')
        # No screw goes as far on every lift: the pads stay down.
        return re.sub(r'pad_raise: "[^"]*"', 'pad_raise: "0 in"', replaced)


def _presets_of(text):
    lift, vehicle = re.findall(r'preset: "([^"]*)"', text)
    return lift, vehicle


def asked():
    """Every list to ask the program for."""
    wanted = []
    for scene in sorted((ROOT / "scenes").glob("*.ron")):
        bay = str(scene.relative_to(ROOT))
        for door in DOORS:
            wanted += [Asked(bay, None, None, door, travel) for travel in TRAVELS_M[1:]]
    turn = 0
    for lift in _names("lifts"):
        for vehicle in _names("vehicles"):
            for _ in range(2):
                # 3 doors and 4 travels: over 12 turns every door meets every travel.
                door, travel = DOORS[turn % 3], TRAVELS_M[turn % 4]
                wanted.append(Asked(BASE, lift, vehicle, door, travel))
                turn += 1
    return wanted


def _names(folder):
    return sorted(path.stem for path in (ROOT / "assets" / folder).glob("*.ron"))


def random_lists():
    """Pairs of tilted solids, from apart to deep in each other."""
    draw = random.Random(SEED)
    return [[_random_pair(draw) for _ in range(RANDOM_PAIRS)] for _ in range(RANDOM_LISTS)]


def _random_pair(draw):
    first, second = random_solid(draw), random_solid(draw)
    first["name"], second["name"] = "random/moving", "random/fixed"
    return first, second


def random_solid(draw):
    """A tilted solid within a few metres of the origin, as exported, without a name."""
    turn = [draw.gauss(0, 1) for _ in range(4)]
    length = math.hypot(*turn)
    return {
        **_random_shape(draw),
        "position_m": [draw.uniform(-1.2, 1.2) for _ in range(3)],
        "quaternion": dict(zip("wxyz", (part / length for part in turn))),
    }


def _random_shape(draw):
    kind = draw.choice(["box", "cylinder", "prism"])
    if kind == "box":
        return {"kind": kind, "size_m": [draw.uniform(0.02, 1.5) for _ in range(3)]}
    if kind == "cylinder":
        return {
            "kind": kind,
            "radius_m": draw.uniform(0.02, 0.4),
            "height_m": draw.uniform(0.02, 2.0),
        }
    # A slice of a body: two upright cuts, each wider below than above, or the other way round.
    half_length = draw.uniform(0.1, 1.0)
    vertices = []
    for y in (-half_length, half_length):
        low, high = draw.uniform(0.1, 0.6), draw.uniform(0.1, 0.6)
        bottom, top = -draw.uniform(0.05, 0.4), draw.uniform(0.05, 0.4)
        vertices += [[-low, y, bottom], [low, y, bottom], [-high, y, top], [high, y, top]]
    return {"kind": kind, "vertices_m": vertices}
