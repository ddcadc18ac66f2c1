#!/usr/bin/env python3
"""Measures the program's solids with other libraries, and stores what they say.

    make_fixture.py            writes distances.json
    make_fixture.py --check    measures all again and compares with distances.json

Needs the packages of requirements.txt, and builds the program unless --program names it. Ends with
status 1 when a list is unsound, when the libraries differ too often, or when the check fails.
"""

import argparse
import json
import random
import sys
import tempfile
from collections import Counter
from dataclasses import asdict
from importlib.metadata import version
from pathlib import Path

import bays
import export
import fixture
import judge
from measure import Coal, Fcl

STORED = Path(__file__).with_name("distances.json")
# Libraries that differ by more than this, or about an overlap, are told apart by the third method.
DOUBT_M = 0.05e-3
# At most this share of the pairs may be in doubt.
DOUBT_SHARE = 0.01
# Closer than this, or less deep, two solids touch: no library can tell which side they are on.
TOUCH_M = 1e-5
# What --check forgives: the last digit stored, and the libraries' own last digits.
SAME_PLACE_M = 2e-7
SAME_DISTANCE_M = 1e-6


class Doubts:
    """How the methods agreed."""

    def __init__(self):
        self.fcl, self.coal = Fcl(), Coal()
        self.pairs = 0
        self.doubtful = []
        self.worst_m = Counter()

    def reference(self, a, b, names):
        """The distance to compare with, metres; 0.0 for touching, None for an overlap."""
        self.pairs += 1
        coal = [self.coal.distance(a, b), self.coal.distance(b, a)]
        fcl = [self.fcl.distance(a, b), self.fcl.distance(b, a)]
        proved = judge.distance(a, b)
        told = [max(d, 0.0) for d in coal] + [0.0 if d is None else max(d, 0.0) for d in fcl]
        touching = max(told) <= TOUCH_M and min(coal) > -TOUCH_M
        meet = {d <= 0 for d in coal} | {d is None or d <= 0 for d in fcl}
        if not touching and (max(told) - min(told) > DOUBT_M or len(meet) > 1):
            self.doubtful.append((names, coal, fcl, proved))
            distance = proved
        else:
            distance = max(coal[0], 0.0)
        if not touching and distance > 0:
            self.worst_m["coal"] = max(self.worst_m["coal"], *(abs(d - proved) for d in told[:2]))
            self.worst_m["fcl"] = max(self.worst_m["fcl"], *(abs(d - proved) for d in told[2:]))
        if touching:
            return 0.0
        return round(distance, fixture.LENGTH_DIGITS) if distance > 0 else None

    def say(self):
        """Prints the count and says whether it is small enough."""
        share = len(self.doubtful) / self.pairs
        print(f"{len(self.doubtful)} of {self.pairs} pairs in doubt ({share:.2%})")
        for names, coal, fcl, proved in self.doubtful:
            print(f"  {names}: coal {coal}, fcl {fcl}, proved {proved}")
        for library, worst in self.worst_m.items():
            print(f"{library}: at most {worst * 1e3:.6f} mm from the proved distance")
        return share <= DOUBT_SHARE


def exported(program, folder, asked):
    """The program's list, after the outsider's look at it."""
    path = Path(folder) / "bay.ron"
    path.write_text(asked.text())
    listed = export.solids(program, path, asked.travel_m, asked.door)
    faults = export.faults(listed)
    if faults:
        raise SystemExit(f"{asked}:\n  " + "\n  ".join(faults))
    return listed


def chosen(listed, coal, draw, store, seen):
    """Ten pairs of a list: the nearest of each group of the pair table, and any other."""

    def of(layers):
        return [solid for solid in listed if solid["layer"] in layers]

    lift, vehicle, post = of({"moving_lift"}), of({"vehicle"}), of({"post"})
    bay = of({"shell", "overhead", "door"})
    groups = [(vehicle, bay + post, 4), (lift, bay + post, 2), (lift, vehicle, 2), (post, bay, 1)]
    pairs = []
    for movers, things, wanted in groups:
        ranked = []
        for a in movers:
            for b in things:
                pair = (store.add(a), store.add(b))
                ranked.append((coal.distance(*(store.posed[i] for i in pair)), pair))
        # Equal to the stored digit counts as equal, so that the order is the same everywhere.
        ranked.sort(key=lambda item: (round(item[0], 6), item[1]))
        fresh = [(d, pair) for d, pair in ranked if pair not in seen]
        apart = [pair for d, pair in fresh if d > TOUCH_M]
        meeting = [pair for d, pair in fresh if d <= TOUCH_M]
        picked = apart[:wanted] + meeting[:1 if movers is not post else 0]
        if movers is vehicle and len(apart) > wanted:
            picked.append(draw.choice(apart[wanted:]))
        seen.update(picked)
        pairs += picked
    return pairs


def make(program):
    """Measures everything; returns 0 when the libraries agree well enough."""
    lists, doubts, seen = [], Doubts(), set()
    everything, kept = fixture.Store(), fixture.Store()
    draw = random.Random(bays.SEED)
    kinds, thinnest = Counter(), (1.0, "")

    def measured(pairs):
        rows = []
        for a, b in pairs:
            i, j = kept.add(a), kept.add(b)
            names = f"{a['name']} and {b['name']}"
            rows.append([i, j, doubts.reference(kept.posed[i], kept.posed[j], names)])
        return rows

    with tempfile.TemporaryDirectory() as folder:
        for asked in bays.asked():
            listed = exported(program, folder, asked)
            kinds.update(solid["kind"] for solid in listed)
            thinnest = min(thinnest, *((export.thinnest_m(s), s["name"]) for s in listed))
            by_index = {everything.add(solid): solid for solid in listed}
            pairs = chosen(listed, doubts.coal, draw, everything, seen)
            rows = measured((by_index[i], by_index[j]) for i, j in pairs)
            lists.append(asdict(asked) | {"pairs": rows})
    print(f"{len(lists)} lists read as an outsider: {dict(kinds)}, thinnest {thinnest}")
    for number, pairs in enumerate(bays.random_lists()):
        lists.append({"random": number, "pairs": measured(pairs)})

    agreed = doubts.say()
    rows = [row for each in lists for row in each["pairs"]]
    header = {
        "what": "Distances between exported solids, metres, by libraries outside this project. "
        "A row is [moving, fixed, distance]; 0.0 is touching within 0.01 mm, null an overlap.",
        "made_by": "python3 tests/reference/make_fixture.py",
        "libraries": libraries(),
        "lists": len(lists),
        "pairs": len(rows),
        "touching": sum(row[2] == 0.0 for row in rows),
        "overlapping": sum(row[2] is None for row in rows),
        "in_doubt": len(doubts.doubtful),
        "in_doubt_means": "The libraries differ by over 0.05 mm or about an overlap; a third "
        "method with a proof on both sides decided (judge.py).",
    }
    fixture.write(STORED, header, kept, lists)
    print(f"wrote {STORED.name}: {header['pairs']} pairs, {header['touching']} touching, "
          f"{header['overlapping']} overlapping, {STORED.stat().st_size} bytes")
    return 0 if agreed else 1


def libraries():
    """What the distances are measured with."""
    return {name: version(name) for name in ["python-fcl", "coal", "numpy", "scipy"]}


def check(program):
    """Measures everything again; returns 0 when all is as stored."""
    stored = json.loads(STORED.read_text())
    wrong = []
    if stored["header"]["libraries"] != libraries():
        wrong.append(f"other libraries: {libraries()}")
    asked = bays.asked()
    told = [bays.Asked(**{k: v for k, v in each.items() if k != "pairs"})
            for each in stored["lists"] if "random" not in each]
    if told != asked:
        wrong.append("the scenes and presets are not those of the stored lists")
    doubts, fresh = Doubts(), fixture.Store()
    drawn = bays.random_lists()
    with tempfile.TemporaryDirectory() as folder:
        for each in stored["lists"]:
            if "random" in each:
                found = drawn[each["random"]]
                where = f"random list {each['random']}"
            else:
                wanted = bays.Asked(**{k: v for k, v in each.items() if k != "pairs"})
                by_name = {s["name"]: s for s in exported(program, folder, wanted)}
                names = [[stored["solids"][i]["name"] for i in row[:2]] for row in each["pairs"]]
                found = [[by_name.get(name) for name in pair] for pair in names]
                where = str(wanted)
            for pair, row in zip(found, each["pairs"], strict=True):
                wrong += [f"{where}: {fault}" for fault in differs(stored, fresh, doubts, pair, row)]
    agreed = doubts.say()
    if not agreed or len(doubts.doubtful) != stored["header"]["in_doubt"]:
        wrong.append("another number of pairs in doubt")
    for fault in wrong[:20]:
        print(fault, file=sys.stderr)
    if wrong:
        print(f"{len(wrong)} differences from {STORED.name}. Where the scenes, presets or solids "
              f"were meant to change: {stored['header']['made_by']}", file=sys.stderr)
        return 1
    print(f"{doubts.pairs} pairs are as stored")
    return 0


def differs(stored, fresh, doubts, pair, row):
    """What is no longer as stored, of one pair."""
    for solid, index in zip(pair, row[:2]):
        kept = stored["solids"][index]
        if solid is None:
            yield f"{kept['name']} is gone"
            return
        shape, placed = fixture.rounded(solid)
        if not (same(shape, stored["shapes"][kept["shape"]])
                and same(placed, {k: v for k, v in kept.items() if k != "shape"})):
            yield f"{kept['name']} has another shape or place"
            return
    i, j = (fresh.add(solid) for solid in pair)
    names = f"{pair[0]['name']} and {pair[1]['name']}"
    found = doubts.reference(fresh.posed[i], fresh.posed[j], names)
    agree = found is row[2] if None in (found, row[2]) else abs(found - row[2]) <= SAME_DISTANCE_M
    if not agree:
        yield f"{names}: {found} is not {row[2]}"


def same(found, stored):
    """True when two stored values differ by no more than their last digit."""
    if isinstance(found, dict):
        return found.keys() == stored.keys() and all(same(found[k], stored[k]) for k in found)
    if isinstance(found, list):
        return len(found) == len(stored) and all(map(same, found, stored))
    if isinstance(found, str):
        return found == stored
    return abs(found - stored) <= SAME_PLACE_M


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--check", action="store_true", help="compare with the stored file")
    parser.add_argument("--program", type=Path, help="the bayrise program; built when not given")
    given = parser.parse_args()
    program = (given.program or export.built_program()).resolve()
    return check(program) if given.check else make(program)


if __name__ == "__main__":
    sys.exit(main())
