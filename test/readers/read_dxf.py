"""Reads every drawing of a folder and prints what it found as JSON, one object a file name."""

import json
import sys
from pathlib import Path

import ezdxf


def curve(entity):
    layer = entity.dxf.layer
    kind = entity.dxftype()
    if kind == "CIRCLE":
        centre = entity.dxf.center
        return {"kind": "circle", "layer": layer, "x": centre.x, "y": centre.y, "radius": entity.dxf.radius}
    if kind == "LWPOLYLINE":
        vertices = [{"x": x, "y": y, "bulge": b} for x, y, b in entity.get_points("xyb")]
        return {"kind": "polyline", "layer": layer, "closed": entity.closed, "vertices": vertices}
    if kind == "POLYLINE":
        vertices = [
            {"x": v.dxf.location.x, "y": v.dxf.location.y, "bulge": v.dxf.get("bulge", 0)} for v in entity.vertices
        ]
        return {"kind": "polyline", "layer": layer, "closed": entity.is_closed, "vertices": vertices}
    return None


def text(entity):
    return {"layer": entity.dxf.layer, "text": entity.dxf.text}


def found(path):
    document = ezdxf.readfile(path)
    auditor = document.audit()
    space = list(document.modelspace())
    header = document.header
    curves = [curve(entity) for entity in space]
    return {
        "version": document.dxfversion,
        "errors": [error.message for error in auditor.errors],
        "fixes": [fix.message for fix in auditor.fixes],
        "insUnits": header.get("$INSUNITS"),
        "measurement": header.get("$MEASUREMENT"),
        "least": list(header["$EXTMIN"])[:2],
        "greatest": list(header["$EXTMAX"])[:2],
        "layers": sorted(layer.dxf.name for layer in document.layers),
        "curves": [c for c in curves if c],
        "lines": [[*list(e.dxf.start)[:2], *list(e.dxf.end)[:2], e.dxf.layer] for e in space if e.dxftype() == "LINE"],
        "texts": [text(e) for e in space if e.dxftype() == "TEXT"],
        "kinds": sorted({e.dxftype() for e in space}),
        "paperspace": sum(len(list(layout)) for layout in document.layouts if layout.name != "Model"),
    }


print(json.dumps({path.name: found(path) for path in sorted(Path(sys.argv[1]).glob("*.dxf"))}))
