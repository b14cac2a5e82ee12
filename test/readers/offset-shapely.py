"""Offsets outlines outwards with GEOS through shapely, and writes the outer ring of what it makes.

The region is put together from each edge's own buffer: the buffer of a whole ring would first be simplified, by up to a
hundredth of the distance on its concave side.

Reads a JSON object on stdin: "chord", how far chords may stray from their arcs, and "cases", each with "distance" and
"segments", each segment ["line", x, y] or ["arc", x, y, centre x, centre y, radius, start, sweep], x and y being where
it starts. Writes a list of {"areaMm2", "points"}.
"""

import json
import sys
from math import acos, ceil, cos, pi, sin

try:
    from shapely.geometry import LineString, Polygon
    from shapely.ops import unary_union
except ImportError:
    sys.exit("this check offsets outlines with GEOS: install the Debian package python3-shapely")


def widest(radius, chord):
    """The angle of a chord that stays within the given height of its arc."""
    return 2 * acos(max(0.0, 1 - chord / radius))


def flatten(segments, chord):
    points = []
    for kind, x, y, *rest in segments:
        points.append((x, y))
        if kind == "arc":
            cx, cy, radius, start, sweep = rest
            count = max(1, ceil(abs(sweep) / widest(radius, chord)))
            angles = (start + sweep * i / count for i in range(1, count))
            points.extend((cx + radius * cos(a), cy + radius * sin(a)) for a in angles)
    return points


def offset(case, chord):
    distance = case["distance"]
    per_quarter = ceil((pi / 2) / widest(distance, chord))
    corners = flatten(case["segments"], chord)
    edges = zip(corners, corners[1:] + corners[:1])
    buffers = [LineString(edge).buffer(distance, per_quarter) for edge in edges]
    ring = unary_union([Polygon(corners), *buffers]).exterior
    return {"areaMm2": Polygon(ring).area, "points": [list(point) for point in ring.coords[:-1]]}


job = json.load(sys.stdin)
json.dump([offset(case, job["chord"]) for case in job["cases"]], sys.stdout)
