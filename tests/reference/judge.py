"""Which library is right? A distance with a proof on both sides.

Wolfe's nearest-point method on the difference of the two solids ("Finding the nearest point in a
polytope", Mathematical Programming 11, 1976; cited from memory) needs nothing but the farthest
points along a direction. How it gets there does not matter: the distance lies between the gap of
the support planes along the direction found (no more than the true distance) and the distance of
two points that are mixtures of points of the solids (no less). It stops when the two meet.
"""

import numpy as np

# The two proofs must agree this well, metres.
BRACKET_M = 2e-8
ROUNDS = 2000


class NotDecided(Exception):
    """The proofs did not meet."""


def distance(a, b):
    """The distance between two posed solids, metres; 0.0 when they meet."""
    toward = b.place - a.place
    corners = [_farthest(a, b, -toward if toward @ toward > 0 else np.array([0.0, 0.0, 1.0]))]
    shares = np.array([1.0])
    for _ in range(ROUNDS):
        nearest = shares @ corners
        upper = np.linalg.norm(nearest)
        if upper <= BRACKET_M:
            return 0.0
        corner = _farthest(a, b, -nearest)
        lower = nearest @ corner / upper
        if upper - lower <= BRACKET_M:
            return float((upper + lower) / 2)
        corners, shares = _nearest_of(np.vstack([corners, corner]), np.append(shares, 0.0))
    raise NotDecided(f"bracket {lower} to {upper}")


def _farthest(a, b, direction):
    """The farthest point along a direction of all differences (point of b less point of a)."""
    return b.support(direction) - a.support(-direction)


def _nearest_of(corners, shares):
    """The corners that carry the nearest point to the origin of their hull, and its shares."""
    while True:
        free = _nearest_of_plane(corners)
        if np.all(free > 1e-14):
            return corners, free
        falling = free < shares
        blocked = falling & (free <= 1e-14)
        step = np.min(shares[blocked] / (shares[blocked] - free[blocked]), initial=1.0)
        shares = shares + step * (free - shares)
        keep = shares > 1e-14
        if np.all(keep):
            keep[np.argmin(shares)] = False
        corners, shares = corners[keep], shares[keep] / shares[keep].sum()


def _nearest_of_plane(corners):
    """Shares (they add up to 1) of the point nearest to the origin on the corners' plane."""
    edges = corners[1:] - corners[0]
    shares = np.linalg.lstsq(edges.T, -corners[0], rcond=None)[0] if len(edges) else np.zeros(0)
    return np.append(1.0 - shares.sum(), shares)
