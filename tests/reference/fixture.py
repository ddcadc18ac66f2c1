"""The stored file: solids that recur are stored once, floats are rounded, one item a line."""

import json

from measure import Posed

LENGTH_DIGITS = 7
TURN_DIGITS = 9


def rounded(solid):
    """(shape, place) of an exported solid as they are stored."""
    kind = solid["kind"]
    keys = {"box": ["size_m"], "cylinder": ["radius_m", "height_m"], "prism": ["vertices_m"]}
    shape = {"kind": kind} | {key: _round(solid[key], LENGTH_DIGITS) for key in keys[kind]}
    turn = [_round(solid["quaternion"][axis], TURN_DIGITS) for axis in "wxyz"]
    return shape, {
        "name": solid["name"],
        "position_m": _round(solid["position_m"], LENGTH_DIGITS),
        "quaternion_wxyz": turn,
    }


def _round(value, digits):
    if isinstance(value, list):
        return [_round(item, digits) for item in value]
    # Adding zero turns -0.0 into 0.0.
    return round(value, digits) + 0.0


class Store:
    """The shapes and solids seen so far."""

    def __init__(self):
        self.shapes, self.solids, self.posed = [], [], []
        self._shape_index, self._solid_index = {}, {}

    def add(self, exported):
        """The index of a solid, stored now if it is new."""
        shape, placed = rounded(exported)
        shape_key = json.dumps(shape)
        if shape_key not in self._shape_index:
            self._shape_index[shape_key] = len(self.shapes)
            self.shapes.append(shape)
        solid = {"shape": self._shape_index[shape_key], **placed}
        key = json.dumps(solid)
        if key not in self._solid_index:
            self._solid_index[key] = len(self.solids)
            self.solids.append(solid)
            shape = self.shapes[solid["shape"]]
            self.posed.append(Posed.of(shape, solid["position_m"], solid["quaternion_wxyz"]))
        return self._solid_index[key]


def write(path, header, store, lists):
    """Writes the file, one item a line, so that changes to it can be read."""
    parts = [f'"header": {json.dumps(header, indent=1)}']
    for name, items in [("shapes", store.shapes), ("solids", store.solids), ("lists", lists)]:
        lines = ",\n".join(json.dumps(item, separators=(",", ":")) for item in items)
        parts.append(f'"{name}": [\n{lines}\n]')
    path.write_text("{\n" + ",\n".join(parts) + "\n}\n")
