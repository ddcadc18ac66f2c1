"""What does the program print, and is it sound in the eyes of an outsider?"""

import json
import re
import subprocess
from collections import Counter
from pathlib import Path

import numpy as np
from scipy.spatial import ConvexHull, QhullError

ROOT = Path(__file__).resolve().parents[2]
LAYERS = {"shell", "overhead", "door", "post", "moving_lift", "vehicle"}
MOVING = {"moving_lift", "vehicle"}
# A corner may lie this far inside the hull of the others for want of digits, metres.
ON_HULL_M = 1e-9


def built_program():
    """The path of the program, built without the viewer."""
    build = ["cargo", "build", "--release", "--no-default-features", "--bin", "bayrise"]
    subprocess.run([*build, "--quiet"], cwd=ROOT, check=True)
    metadata = ["cargo", "metadata", "--format-version", "1", "--no-deps", "--offline"]
    printed = subprocess.run(metadata, cwd=ROOT, check=True, capture_output=True).stdout
    return Path(json.loads(printed)["target_directory"]) / "release" / "bayrise"


def solids(program, bay, travel_m, door):
    """Every solid of a bay, as printed."""
    command = [program, "solids", bay, "--travel", f"{travel_m} m", "--door", door]
    run = subprocess.run([*command, "--format", "json"], capture_output=True, text=True)
    if run.returncode != 0:
        raise SystemExit(f"{' '.join(map(str, command))}: {run.stderr}")
    return json.loads(run.stdout)["solids"]


def faults(listed):
    """Everything that is wrong with a list, one line each."""
    found = []
    counted = Counter(solid["name"] for solid in listed)
    found += [f"{name}: {n} solids of this name" for name, n in counted.items() if n > 1]
    for solid in listed:
        found += [f"{solid['name']}: {fault}" for fault in _faults_of(solid)]
    return found


def _faults_of(solid):
    if not re.fullmatch(r"[^/\s][^/]*(/[^/\s][^/]*)+", solid["name"]):
        yield "the name is no path"
    if solid["layer"] not in LAYERS:
        yield f"unknown layer {solid['layer']}"
    if solid["motion"] != ("moving" if solid["layer"] in MOVING else "fixed"):
        yield f"{solid['motion']} in layer {solid['layer']}"
    turn = np.array([solid["quaternion"][axis] for axis in "wxyz"], float)
    if not abs(np.linalg.norm(turn) - 1) < 1e-9:
        yield f"the quaternion is {np.linalg.norm(turn)} long"
    if not np.all(np.isfinite(solid["position_m"])):
        yield "the position is not finite"
    if solid["kind"] == "prism":
        yield from _faults_of_prism(np.asarray(solid["vertices_m"], float))
    else:
        sizes = solid["size_m"] if solid["kind"] == "box" else _round_sizes(solid)
        if not np.all(np.isfinite(sizes)) or min(sizes) <= 0:
            yield f"sizes {sizes}"


def _round_sizes(solid):
    return [solid["radius_m"], solid["height_m"]]


def _faults_of_prism(vertices):
    if len(vertices) < 4 or vertices.shape[1] != 3 or not np.all(np.isfinite(vertices)):
        yield f"{len(vertices)} corners, or some are not finite"
        return
    try:
        hull = ConvexHull(vertices)
    except QhullError:
        yield "the corners are flat"
        return
    # The hull's planes: outward normal and offset. A corner on the hull lies on one of them.
    outside = hull.equations[:, :3] @ vertices.T + hull.equations[:, 3:]
    inside = -outside.max(axis=0)
    for corner, depth in enumerate(inside):
        if depth > ON_HULL_M:
            yield f"corner {corner} lies {depth} m inside the hull of the others"
    apart = np.linalg.norm(vertices[:, None] - vertices[None], axis=2)
    twins = int((np.triu(apart < 1e-9, 1)).sum())
    if twins:
        yield f"{twins} corners are given twice"


def thinnest_m(solid):
    """The least size of a solid, metres: of a prism, the least width across a face of its hull."""
    if solid["kind"] == "box":
        return min(solid["size_m"])
    if solid["kind"] == "cylinder":
        return min(2 * solid["radius_m"], solid["height_m"])
    vertices = np.asarray(solid["vertices_m"], float)
    normals = ConvexHull(vertices).equations[:, :3]
    return float(np.ptp(normals @ vertices.T, axis=1).min())
