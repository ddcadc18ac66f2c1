#!/usr/bin/env python3
"""How long does python-fcl take for the distances that one study of the dense bay decides on?

    BAYRISE_DENSE_JSON=dense.json cargo bench --no-default-features --bench study
    python3 benches/fcl_compare.py dense.json --ours-us 50

Its broadphase manager holds the fixed solids and the moving ones in two trees; at every lock the
moving ones are set to their place and the least distance between the trees is asked for. Needs
python-fcl and scipy as in tests/reference/requirements.txt. --ours-us is the median of our own
study of the same bay in microseconds, or a file that holds it; the ratio is printed then.
--sample writes a bay of the same size at random, to try the script without the benchmark.

The file holds `moving` and `fixed`, solids as `bayrise solids --format json` prints them, moving
ones at travel 0, and `lock_travels_m`. Moving solids climb straight up.
"""

import argparse
import json
import random
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "tests" / "reference"))

import fcl
import numpy as np

import bays
from measure import Fcl, Posed

ROUNDS = 50


class Bay:
    """The two trees, and where the moving solids stand at travel 0."""

    def __init__(self, read):
        make = Fcl()

        def objects(solids):
            posed = [
                Posed.of(s, s["position_m"], [s["quaternion"][axis] for axis in "wxyz"])
                for s in solids
            ]
            return [make.object(solid) for solid in posed], [solid.place for solid in posed]

        self.fixed, _ = objects(read["fixed"])
        self.moving, self.places = objects(read["moving"])
        self.travels = [float(travel) for travel in read["lock_travels_m"]]
        self.fixed_tree = self._tree(self.fixed)
        self.moving_tree = self._tree(self.moving)

    @staticmethod
    def _tree(objects):
        tree = fcl.DynamicAABBTreeCollisionManager()
        tree.registerObjects(objects)
        tree.setup()
        return tree

    def climb_to(self, travel):
        """Sets the moving solids to a travel."""
        for solid, place in zip(self.moving, self.places):
            solid.setTranslation(place + np.array([0.0, 0.0, travel]))
        self.moving_tree.update()

    def least_m(self):
        """The least distance between the trees, metres; 0 or less when something meets."""
        data = fcl.DistanceData()
        self.moving_tree.distance(self.fixed_tree, data, fcl.defaultDistanceCallback)
        return data.result.min_distance

    def pass_over_locks(self):
        """The least distance at every lock; seconds spent on moving and on measuring."""
        moving = measuring = 0.0
        least = []
        for travel in self.travels:
            start = time.perf_counter()
            self.climb_to(travel)
            middle = time.perf_counter()
            least.append(self.least_m())
            moving += middle - start
            measuring += time.perf_counter() - middle
        return least, moving, measuring


def sample():
    """24 moving solids under 60 fixed ones, 20 locks."""
    draw = random.Random(bays.SEED)

    def solid(name, low, high):
        made = bays.random_solid(draw)
        place = [draw.uniform(-1.0, 1.0), draw.uniform(-3.0, 3.0), draw.uniform(low, high)]
        return made | {"name": name, "position_m": place}

    return {
        "moving": [solid(f"vehicle/part {n}", 0.5, 1.0) for n in range(24)],
        "fixed": [solid(f"obstacle/thing {n}", 4.0, 5.0) for n in range(60)],
        "lock_travels_m": [0.3 + 0.08 * lock for lock in range(20)],
    }


def microseconds(told):
    """A number, or the number that a file holds."""
    path = Path(told)
    value = float(path.read_text() if path.is_file() else told)
    if not 0 < value < float("inf"):
        raise ValueError(told)
    return value


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("bay", type=Path, help="the dense bay as JSON")
    parser.add_argument("--ours-us", type=microseconds, help="our median, microseconds")
    parser.add_argument("--sample", action="store_true", help="write a sample bay there first")
    given = parser.parse_args()
    if given.sample:
        given.bay.write_text(json.dumps(sample()))

    bay = Bay(json.loads(given.bay.read_text()))
    bay.pass_over_locks()
    rounds = [bay.pass_over_locks() for _ in range(ROUNDS)]
    moving = statistics.median(spent for _, spent, _ in rounds) * 1e6
    measuring = statistics.median(spent for _, _, spent in rounds) * 1e6
    print(f"{len(bay.moving)} moving, {len(bay.fixed)} fixed, {len(bay.travels)} locks, "
          f"median of {ROUNDS} passes")
    least = ", ".join(f"{distance:.3f}" for distance in rounds[0][0])
    print(f"least distance at each lock, m: {least}")
    print(f"python-fcl: {measuring:.0f} us to measure, {moving:.0f} us more to set the solids")
    if given.ours_us is not None:
        print(f"ours: {given.ours_us:.1f} us")
        # Setting the solids is mostly Python's own time, so it does not count for us.
        print(f"ratio: {measuring / given.ours_us:.1f}")


if __name__ == "__main__":
    main()
