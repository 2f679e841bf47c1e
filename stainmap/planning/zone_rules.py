"""The zones of one unit: how much each vertex belongs to each, by form and position."""

from __future__ import annotations

import numpy as np

from stainmap.model.zone import Zone
from stainmap.model.zone_sliders import CUSP_DESCENT, ZoneSliders
from stainmap.planning.landmarks import Landmarks
from stainmap.planning.unit_form import UnitForm, finite_mm, ramp
from stainmap.surface.mesh import BoolArray, FloatArray

# Every border is a ramp this wide on either side of its bound, in the units of what is compared;
# borders are smoothed later and run along the middle of the ramps.
_RISE_RAMP = 0.03
_FACING_RAMP = 0.05
_ANGLE_RAMP_DEG = 5.0
_RELATIVE_RAMP = 0.05
# Common practice, no published source: where the zones begin and end on a well-formed tooth.
_DEFAULT = ZoneSliders()
_FRONT_NECK_SHARE = 0.17
# In the table the cusps end this high above the fissures (a share of the way to the tips) where
# they come down least; at the default they nearly reach them.
_CUSP_ABOVE_FISSURE = 0.30
_ABOVE_FISSURE_PER_DESCENT = 2.5
_CREST_BAND = 0.04
_LEAST_RELIEF = 0.05
_INCISAL_SHARE = 0.213
_INCISAL_BELOW = 0.27
_PROXIMAL_RISE = (0.28, 0.80)
# How squarely, and within which angle of the mesiodistal line, on back and on front teeth.
_PROXIMAL_FACING = (0.76, 0.72)
_PROXIMAL_ANGLE_DEG = (38.0, 48.0)


def zone_shares(
    form: UnitForm, fissure: FloatArray, sliders: ZoneSliders
) -> dict[Zone, FloatArray]:
    """Return for each outer zone (V,) how much a vertex belongs to it, 0 to 1, adding up to 1.

    Each zone lies over the one before: body, cervical, cusp, interproximal, fissure.

    Parameters
    ----------
    form
        The unit, V vertices.
    fissure
        (V,) how much each vertex belongs to a fissure.
    sliders
        How far the zones reach.
    """
    landmarks = form.landmarks
    rise = np.nan_to_num(landmarks.rise)
    wall = 1.0 - landmarks.table if not landmarks.front else np.ones_like(rise)
    if landmarks.front:
        neck, cusp = _front_neck(landmarks, sliders), _incisal(landmarks, sliders)
    else:
        neck = ramp(sliders.neck_climb - rise, _RISE_RAMP) * wall
        cusp = _cusp(form, rise, fissure > 0.5, sliders)
    layers = (
        (Zone.BODY, np.ones_like(rise)),
        (Zone.CERVICAL, neck),
        (Zone.CUSP, cusp),
        (Zone.INTERPROXIMAL, _proximal(form, rise) * wall),
        (Zone.FISSURE, fissure),
    )
    shares = {}
    left = np.ones_like(rise)
    for zone, layer in reversed(layers):
        shares[zone] = left * layer
        left = left * (1.0 - layer)
    return shares


def _front_neck(landmarks: Landmarks, sliders: ZoneSliders) -> FloatArray:
    reach = _FRONT_NECK_SHARE * sliders.neck_climb / _DEFAULT.neck_climb * landmarks.size_mm
    return ramp(reach - finite_mm(landmarks.margin_mm), 0.15)


def _incisal(landmarks: Landmarks, sliders: ZoneSliders) -> FloatArray:
    """Return the incisal band: near the edge, along the surface and along the axis."""
    scale = sliders.cusp_descent / _DEFAULT.cusp_descent
    mesh = landmarks.part.mesh
    along = mesh.vertices @ landmarks.axis
    low, high = np.percentile(along[landmarks.outer], [2.0, 98.0])
    height = (along - low) / max(float(high - low), 1e-9)
    near = ramp(_INCISAL_SHARE * scale * landmarks.size_mm - finite_mm(landmarks.crest_mm), 0.2)
    return np.minimum(near, ramp(height - (1.0 - _INCISAL_BELOW * scale), 0.04))


def local_relief(form: UnitForm, fissure: BoolArray) -> FloatArray:
    """Return (V,) the height between fissures (0) and the tips and ridges nearby (1).

    Along the normal of the crest plane. NaN off the outer surface.
    """
    landmarks, top = form.landmarks, form.top_mm
    along = landmarks.part.mesh.vertices @ landmarks.up
    if fissure.any():
        low = float(np.percentile(along[fissure], 20.0))
    elif landmarks.table.any():
        low = float(along[landmarks.table].min())
    else:
        low = float(np.nanmax(top)) - 0.15 * landmarks.size_mm
    # Where a ridge is hardly higher than the fissures, as a worn one, it still has a top.
    span = np.maximum(top - low, _LEAST_RELIEF * landmarks.size_mm)
    return np.asarray(1.0 - (top - along) / span)


def _cusp(form: UnitForm, rise: FloatArray, fissure: BoolArray, sliders: ZoneSliders) -> FloatArray:
    landmarks = form.landmarks
    relief = np.nan_to_num(local_relief(form, fissure), nan=-1.0)
    above = _CUSP_ABOVE_FISSURE - _ABOVE_FISSURE_PER_DESCENT * (
        sliders.cusp_descent - CUSP_DESCENT[0]
    )
    in_table = ramp(relief - above, _RELATIVE_RAMP)
    on_crest = ramp(_CREST_BAND * landmarks.size_mm - finite_mm(landmarks.crest_mm), 0.2)
    on_wall = ramp(rise - (1.0 - sliders.cusp_descent), _RISE_RAMP)
    return np.where(landmarks.table, np.maximum(in_table, on_crest), on_wall)


def _proximal(form: UnitForm, rise: FloatArray) -> FloatArray:
    facing = np.abs(form.normals @ form.mesial)
    front = int(form.landmarks.front)
    within = np.minimum(
        ramp(facing - _PROXIMAL_FACING[front], _FACING_RAMP),
        ramp(_PROXIMAL_ANGLE_DEG[front] - form.proximal_angle_deg(), _ANGLE_RAMP_DEG),
    )
    low, high = _PROXIMAL_RISE
    tall = np.minimum(ramp(rise - low, _RISE_RAMP), ramp(high - rise, _RISE_RAMP))
    return np.minimum(within, tall)
