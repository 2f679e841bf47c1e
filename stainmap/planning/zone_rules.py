"""The zones of one unit: how much each vertex belongs to each, by form and position."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.errors import PlanError
from stainmap.model.zone import Zone
from stainmap.planning.landmarks import Landmarks, height_of_top
from stainmap.planning.unit_form import UnitForm, finite_mm, ramp
from stainmap.surface.mesh import BoolArray, FloatArray

# Every border is a ramp this wide on either side of its bound, in the units of what is compared;
# borders are smoothed later and run along the middle of the ramps.
_RISE_RAMP = 0.03
_FACING_RAMP = 0.05
_ANGLE_RAMP_DEG = 5.0
_RELATIVE_RAMP = 0.05
# Common practice, no published source: where the zones begin and end on a well-formed tooth.
_NECK_RISE = 0.30
_FRONT_NECK_SHARE = 0.15
_CUSP_ABOVE_FISSURE = 0.30
_CREST_BAND = 0.04
_LOWEST_RELIEF = -0.4
_RELIEF_PER_DESCENT = 7.0
_LEAST_RELIEF = 0.05
_INCISAL_SHARE = 0.213
_INCISAL_BELOW = 0.27
_DEFAULT_CUSP = 0.40
_PROXIMAL_RISE = (0.28, 0.80)
_PROXIMAL_FACING = 0.72
_PROXIMAL_ANGLE_DEG = 48.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ZoneSliders:
    """How far the proposed zones reach.

    Parameters
    ----------
    neck_climb
        How high the cervical zone climbs, as a share of the way from margin to crest; 0.15 to
        0.50.
    cusp_descent
        How far the cusp (or incisal) zone comes down from the crest, as such a share; 0.30 to
        0.60.
    fissure_width
        How wide fissures are: 0 keeps to their bottoms, 1 takes all of a valley that is deeper
        than its surroundings.
    """

    neck_climb: float = _NECK_RISE
    cusp_descent: float = _DEFAULT_CUSP
    fissure_width: float = 0.5

    def __post_init__(self) -> None:
        """Refuse what lies outside the sliders."""
        for name, value, low, high in (
            ("neck_climb", self.neck_climb, 0.15, 0.50),
            ("cusp_descent", self.cusp_descent, 0.30, 0.60),
            ("fissure_width", self.fissure_width, 0.0, 1.0),
        ):
            if not low <= value <= high:
                raise PlanError(
                    f"{value} is out of range.",
                    where=name,
                    advice=f"Give {low} to {high}.",
                )


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
        cusp = _cusp(landmarks, rise, fissure > 0.5, sliders)
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
    reach = _FRONT_NECK_SHARE * sliders.neck_climb / _NECK_RISE * landmarks.size_mm
    return ramp(reach - finite_mm(landmarks.margin_mm), 0.15)


def _incisal(landmarks: Landmarks, sliders: ZoneSliders) -> FloatArray:
    """Return the incisal band: near the edge, along the surface and along the axis."""
    scale = sliders.cusp_descent / _DEFAULT_CUSP
    mesh = landmarks.part.mesh
    along = mesh.vertices @ landmarks.axis
    low, high = np.percentile(along[landmarks.outer], [2.0, 98.0])
    height = (along - low) / max(float(high - low), 1e-9)
    near = ramp(_INCISAL_SHARE * scale * landmarks.size_mm - finite_mm(landmarks.crest_mm), 0.2)
    return np.minimum(near, ramp(height - (1.0 - _INCISAL_BELOW * scale), 0.04))


def local_relief(landmarks: Landmarks, fissure: BoolArray) -> FloatArray:
    """Return (V,) the height between fissures (0) and the tips and ridges nearby (1).

    Along the normal of the crest plane. NaN off the outer surface.
    """
    along = landmarks.part.mesh.vertices @ landmarks.up
    top = height_of_top(landmarks, landmarks.up)
    if fissure.any():
        low = float(np.percentile(along[fissure], 20.0))
    elif landmarks.table.any():
        low = float(along[landmarks.table].min())
    else:
        low = float(np.nanmax(top)) - 0.15 * landmarks.size_mm
    # Where a ridge is hardly higher than the fissures, as a worn one, it still has a top.
    span = np.maximum(top - low, _LEAST_RELIEF * landmarks.size_mm)
    return np.asarray(1.0 - (top - along) / span)


def _cusp(
    landmarks: Landmarks, rise: FloatArray, fissure: BoolArray, sliders: ZoneSliders
) -> FloatArray:
    relief = np.nan_to_num(local_relief(landmarks, fissure), nan=-1.0)
    in_table = ramp(relief - _CUSP_ABOVE_FISSURE, _RELATIVE_RAMP)
    on_crest = ramp(_CREST_BAND * landmarks.size_mm - finite_mm(landmarks.crest_mm), 0.2)
    # On squat crowns the share of the wall alone would leave hardly any body.
    lowest = _LOWEST_RELIEF - _RELIEF_PER_DESCENT * (sliders.cusp_descent - _DEFAULT_CUSP)
    on_wall = np.minimum(
        ramp(rise - (1.0 - sliders.cusp_descent), _RISE_RAMP),
        ramp(relief - lowest, _RELATIVE_RAMP),
    )
    return np.where(landmarks.table, np.maximum(in_table, on_crest), on_wall)


def _proximal(form: UnitForm, rise: FloatArray) -> FloatArray:
    facing = np.abs(form.normals @ form.mesial)
    within = np.minimum(
        ramp(facing - _PROXIMAL_FACING, _FACING_RAMP),
        ramp(_PROXIMAL_ANGLE_DEG - form.proximal_angle_deg(), _ANGLE_RAMP_DEG),
    )
    low, high = _PROXIMAL_RISE
    tall = np.minimum(ramp(rise - low, _RISE_RAMP), ramp(high - rise, _RISE_RAMP))
    return np.minimum(within, tall)
