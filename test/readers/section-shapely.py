"""Measures outlines with GEOS through shapely: flattens, asks the library, and drives the flattening's error out.

Reads a JSON list of outlines on stdin: each a list of loops, outer first, each loop a list of segments
["line", x, y] or ["arc", x, y, centre x, centre y, radius, start, sweep], x and y being where the segment starts.
Writes a list of measures. The second moments, which the library lacks, are summed here by trapezia under each edge.
"""

import json
import sys
from math import cos, hypot, sin

try:
    from shapely.geometry import Polygon
    from shapely.geometry.polygon import orient
except ImportError:
    sys.exit("this check reads outlines with GEOS: install the Debian package python3-shapely")

CHORDS_PER_ARC = (24, 48, 96, 192, 384)


def flatten(loop, chords):
    points = []
    for kind, x, y, *rest in loop:
        points.append((x, y))
        if kind == "arc":
            cx, cy, radius, start, sweep = rest
            angles = (start + sweep * i / chords for i in range(1, chords))
            points.extend((cx + radius * cos(a), cy + radius * sin(a)) for a in angles)
    return points


def edges_of(polygon):
    """Edges of all rings, the metal on their left."""
    for ring in (polygon.exterior, *polygon.interiors):
        coords = list(ring.coords)
        yield from zip(coords, coords[1:])


def second_moments(polygon):
    xx = yy = xy = 0.0
    for (x0, y0), (x1, y1) in edges_of(polygon):
        xx += (x0 - x1) * (y0**3 + y0**2 * y1 + y0 * y1**2 + y1**3) / 12
        yy += (y1 - y0) * (x0**3 + x0**2 * x1 + x0 * x1**2 + x1**3) / 12
        left = 3 * x0**2 * y0 + 2 * x0 * x1 * y0 + x1**2 * y0
        right = x0**2 * y1 + 2 * x0 * x1 * y1 + 3 * x1**2 * y1
        xy += (y1 - y0) * (left + right) / 24
    return [xx, yy, xy]


def measure(polygon):
    """Numbers whose error falls with the square of the count of chords."""
    area, centroid = polygon.area, polygon.centroid
    return [area, area * centroid.x, area * centroid.y, polygon.length, *second_moments(polygon)]


def extrapolate(rows):
    """Richardson: each doubling of the chords takes out the next even power of the error."""
    power = 1
    while len(rows) > 1:
        factor = 4**power
        rows = [[(factor * b - a) / (factor - 1) for a, b in zip(low, high)] for low, high in zip(rows, rows[1:])]
        power += 1
    return rows[0]


def read(loops):
    polygons = []
    for chords in CHORDS_PER_ARC:
        outer, *inner = (flatten(loop, chords) for loop in loops)
        polygons.append(orient(Polygon(outer, inner)))
    area, first_x, first_y, perimeter, xx, yy, xy = extrapolate([measure(polygon) for polygon in polygons])
    finest = polygons[-1]
    return {
        "valid": all(polygon.is_valid for polygon in polygons),
        "areaMm2": area,
        "perimeterMm": perimeter,
        "centroidMm": [first_x / area, first_y / area],
        "secondMomentsMm4": {"xx": xx, "yy": yy, "xy": xy},
        "boundsMm": list(finest.bounds),
        "maxRadiusMm": max(hypot(x, y) for x, y in finest.exterior.coords),
    }


json.dump([read(outline) for outline in json.load(sys.stdin)], sys.stdout)
