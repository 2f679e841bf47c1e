"""The predicted crown as 3MF: colours as a colour group, areas as triangle sets.

Colours are sRGB, as the materials extension [ThreeMFMaterials2021] defines them, one for each
corner of a triangle. Areas use the triangle sets of the core specification 1.3 [ThreeMF2021]; a
reader that knows neither still finds the plain surface.
"""

from __future__ import annotations

import io
import zipfile
from xml.sax.saxutils import quoteattr

import numpy as np
from numpy.typing import NDArray

from stainmap.files.mesh_areas import area_names, triangle_areas, vertex_accents
from stainmap.model.case import Case

COLOUR_NOTE = (
    "Colours are sRGB (IEC 61966-2-1), as 3MF defines them; predicted after sintering, not a match."
    " Sintered size. Areas are triangle sets."
)
_CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
_MATERIALS = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02"
_SETS = "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_TYPES = (
    f'{_HEAD}<Types xmlns="{_PACKAGE}/content-types">'
    '<Default Extension="rels"'
    ' ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Default Extension="model"'
    ' ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>'
)
_RELATIONS = (
    f'{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships"><Relationship Id="model"'
    ' Target="/3D/3dmodel.model"'
    ' Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>'
)
# The earliest date that ZIP knows: equal crowns give equal files.
_DATE = (1980, 1, 1, 0, 0, 0)


def three_mf_bytes(case: Case, srgb: NDArray[np.uint8]) -> bytes:
    """Return the refined surface as 3MF, sintered millimetres.

    Parameters
    ----------
    srgb
        (V, 3) predicted sRGB.
    """
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as archive:
        for name, text in (
            ("[Content_Types].xml", _TYPES),
            ("_rels/.rels", _RELATIONS),
            ("3D/3dmodel.model", _model(case, srgb)),
        ):
            entry = zipfile.ZipInfo(name, _DATE)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, text)
    return target.getvalue()


def _model(case: Case, srgb: NDArray[np.uint8]) -> str:
    mesh = case.surface.mesh
    colours, of_vertex = np.unique(srgb, axis=0, return_inverse=True)
    of_corner = of_vertex.reshape(-1)[mesh.faces]
    parts = [
        f'{_HEAD}<model unit="millimeter" xml:lang="en-US" xmlns="{_CORE}" xmlns:m="{_MATERIALS}"',
        f' xmlns:t="{_SETS}"><metadata name="Application">stainmap</metadata>',
        f'<metadata name="Description">{COLOUR_NOTE}</metadata>',
        '<resources><m:colorgroup id="1">\n',
    ]
    parts += [f'<m:color color="#{r:02X}{g:02X}{b:02X}FF"/>' for r, g, b in colours.tolist()]
    # A thin sheet without an inside is no solid body, which the type must say.
    kind = "model" if mesh.is_watertight else "surface"
    parts.append(
        f'\n</m:colorgroup><object id="2" type="{kind}" name={quoteattr(case.code)} pid="1"'
        ' pindex="0"><mesh><vertices>\n'
    )
    # Nine digits bring back single precision, in which the other formats keep the points.
    parts += [
        f'<vertex x="{x:.9g}" y="{y:.9g}" z="{z:.9g}"/>' for x, y, z in mesh.vertices.tolist()
    ]
    parts.append("\n</vertices><triangles>\n")
    rows = np.concatenate([mesh.faces, of_corner], axis=1)
    parts += [
        f'<triangle v1="{a}" v2="{b}" v3="{c}" pid="1" p1="{p}" p2="{q}" p3="{r}"/>'
        for a, b, c, p, q, r in rows.tolist()
    ]
    parts.append("\n</triangles><t:trianglesets>\n")
    names = area_names(case)
    zones = triangle_areas(case.zones, mesh.faces)
    accents = triangle_areas(vertex_accents(case), mesh.faces)
    for number, name in names.items():
        inside = (zones == number) | (accents == number)
        if inside.any():
            parts.append(f'<t:triangleset name={quoteattr(name)} identifier="area-{number}">')
            parts += _references(inside)
            parts.append("</t:triangleset>\n")
    parts.append('</t:trianglesets></mesh></object></resources><build><item objectid="2"/></build>')
    parts.append("</model>\n")
    return "".join(parts)


def _references(inside: NDArray[np.bool_]) -> list[str]:
    """Return references to the triangles of a mask, those in a row together."""
    edge = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]]).astype(np.int8)))
    return [
        f'<t:ref index="{start}"/>'
        if end == start + 1
        else f'<t:refrange startindex="{start}" endindex="{end - 1}"/>'
        for start, end in edge.reshape(-1, 2).tolist()
    ]
