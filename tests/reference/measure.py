"""How far apart are two solids, by two libraries that know nothing of Bayrise?

All arithmetic is in double precision, and each library builds its own shapes.
"""

from dataclasses import dataclass

import coal
import fcl
import numpy as np
from scipy.spatial import ConvexHull

@dataclass(frozen=True)
class Posed:
    """A convex shape, its rotation matrix and the place of its origin, metres."""

    shape: dict
    rotation: np.ndarray
    place: np.ndarray

    @staticmethod
    def of(shape, position, quaternion):
        """From a shape as exported, a position and (w, x, y, z)."""
        quaternion = np.asarray(quaternion, float)
        w, x, y, z = quaternion / np.linalg.norm(quaternion)
        rotation = np.array(
            [
                [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
                [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
                [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
            ]
        )
        return Posed(shape, rotation, np.asarray(position, float))

    def support(self, direction):
        """The farthest point along a direction, bay axes."""
        local = self.rotation.T @ direction
        kind = self.shape["kind"]
        if kind == "box":
            point = np.copysign(np.asarray(self.shape["size_m"]) / 2, local)
        elif kind == "cylinder":
            across = np.hypot(local[0], local[1])
            rim = local[:2] / across * self.shape["radius_m"] if across > 0 else np.zeros(2)
            point = np.array([*rim, np.copysign(self.shape["height_m"] / 2, local[2])])
        else:
            vertices = np.asarray(self.shape["vertices_m"])
            point = vertices[np.argmax(vertices @ local)]
        return self.rotation @ point + self.place


def _hull(vertices):
    """The hull's corners and its triangles, seen from outside counter-clockwise."""
    vertices = np.asarray(vertices, float)
    hull = ConvexHull(vertices)
    corners = sorted(set(hull.simplices.ravel()))
    renumbered = {old: new for new, old in enumerate(corners)}
    middle = vertices.mean(axis=0)
    triangles = []
    for a, b, c in hull.simplices:
        normal = np.cross(vertices[b] - vertices[a], vertices[c] - vertices[a])
        if normal @ (vertices[a] - middle) < 0:
            b, c = c, b
        triangles.append([renumbered[a], renumbered[b], renumbered[c]])
    return vertices[corners], np.array(triangles)


class Fcl:
    """python-fcl, with the GJK of libccd."""

    def __init__(self):
        self.shapes = {}

    def _shape(self, shape):
        key = id(shape)
        if key not in self.shapes:
            if shape["kind"] == "box":
                made = fcl.Box(*shape["size_m"])
            elif shape["kind"] == "cylinder":
                made = fcl.Cylinder(shape["radius_m"], shape["height_m"])
            else:
                corners, triangles = _hull(shape["vertices_m"])
                faces = np.hstack([np.full((len(triangles), 1), 3), triangles]).ravel()
                made = fcl.Convex(corners, len(triangles), faces)
            self.shapes[key] = (shape, made)
        return self.shapes[key][1]

    def object(self, posed):
        """The solid as a collision object."""
        return fcl.CollisionObject(
            self._shape(posed.shape), fcl.Transform(posed.rotation, posed.place)
        )

    def distance(self, a, b):
        """The distance, metres; None for an overlap."""
        a, b = self.object(a), self.object(b)
        if fcl.collide(a, b, fcl.CollisionRequest(), fcl.CollisionResult()):
            return None
        return fcl.distance(a, b, fcl.DistanceRequest(), fcl.DistanceResult())


class Coal:
    """coal, its GJK and EPA tightened from 1e-6 to 1e-9."""

    def __init__(self):
        self.shapes = {}
        self.request = coal.DistanceRequest()
        self.request.gjk_tolerance = 1e-9
        self.request.gjk_max_iterations = 1000
        self.request.epa_tolerance = 1e-9
        self.request.epa_max_iterations = 1000

    def _shape(self, shape):
        key = id(shape)
        if key not in self.shapes:
            if shape["kind"] == "box":
                made = coal.Box(*shape["size_m"])
            elif shape["kind"] == "cylinder":
                made = coal.Cylinder(shape["radius_m"], shape["height_m"])
            else:
                points = coal.StdVec_Vec3s()
                for vertex in shape["vertices_m"]:
                    points.append(np.asarray(vertex, float))
                made = coal.ConvexBase.convexHull(points, True, None)
            self.shapes[key] = (shape, made)
        return self.shapes[key][1]

    def distance(self, a, b):
        """The distance, metres; minus the depth for an overlap."""
        return coal.distance(
            self._shape(a.shape),
            coal.Transform3s(a.rotation, a.place),
            self._shape(b.shape),
            coal.Transform3s(b.rotation, b.place),
            self.request,
            coal.DistanceResult(),
        )
