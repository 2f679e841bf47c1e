"""The light on the crown: what goes in comes out, and nothing is made up."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from stainmap.paper.pictures import crown_picture
from stainmap.paper.raster import Camera, FrameBuffer, rasterise
from stainmap.paper.shading import (
    LEVEL,
    ShadingFields,
    bounced,
    develop,
    encoded,
    form_relief,
    light_frame,
    shade,
    shading_fields,
    shoulder,
)
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh

UP = (0.0, 0.0, 1.0)


@pytest.fixture(scope="module")
def ball() -> TriMesh:
    mesh = trimesh.creation.icosphere(subdivisions=4)
    return TriMesh(5.0 * mesh.vertices, mesh.faces)


@pytest.fixture(scope="module")
def fields(ball: TriMesh) -> ShadingFields:
    return shading_fields(SurfaceOperator(ball))


@pytest.fixture(scope="module")
def frame(ball: TriMesh) -> FrameBuffer:
    camera = Camera(eye=(0.3, 1.0, 0.6), up=UP, centre=(0, 0, 0), height_mm=12.0, distance_mm=120.0)
    return rasterise(ball.vertices, ball.faces, camera, 160, 140)


def flat(ball: TriMesh, rgb: tuple[float, float, float]) -> NDArray[np.float64]:
    return np.tile(rgb, (ball.vertex_count, 1))


def test_smoothed_normals_of_a_ball_are_its_normals(ball: TriMesh, fields: ShadingFields) -> None:
    # Normals are first spherical harmonics: smoothing shrinks them, their directions stay.
    outward = ball.vertices / 5.0
    for normals in (fields.normals_red, fields.normals_green, fields.normals_blue):
        assert np.linalg.norm(normals, axis=1) == pytest.approx(1.0, abs=1e-5)
        assert (normals * outward).sum(axis=1).min() > 0.9999
    assert fields.openness.min() > 0.97


def test_without_shading_every_pixel_is_the_colour_itself(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    srgb = np.tile(np.array([[201, 183, 149]], np.uint8), (ball.vertex_count, 1))
    picture = crown_picture(frame, srgb, shading=fields, occlusal=UP, relief=0.0)
    inside = frame.coverage == 1.0
    assert inside.sum() > 5000
    np.testing.assert_array_equal(np.unique(picture[inside], axis=0), [[201, 183, 149]])


def test_the_surround_is_neutral_and_exact(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    picture = crown_picture(frame, flat(ball, (0.6, 0.5, 0.4)), shading=fields, occlusal=UP)
    outside = frame.coverage == 0.0
    np.testing.assert_array_equal(np.unique(picture[outside], axis=0), [[0x77] * 3])


def test_grey_ceramic_under_matt_light_stays_grey_where_the_surface_is_level(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    matt = crown_picture(
        frame, flat(ball, (0.5, 0.5, 0.5)), shading=fields, occlusal=UP, chalk=True
    ).astype(int)
    assert np.abs(matt[:, :, 0] - matt[:, :, 1]).max() <= 1
    assert np.abs(matt[:, :, 1] - matt[:, :, 2]).max() <= 1


def test_facing_the_viewer_light_is_one(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    lighting = light_frame(frame, fields, occlusal=UP, gloss=0.0)
    up_a_little = frame.camera.axes[2] + 0.28 * frame.camera.axes[1]
    normals = frame.take(fields.normals)
    there = normals @ (up_a_little / np.linalg.norm(up_a_little)) > 0.9995
    assert there.any()
    assert lighting.diffuse[there] == pytest.approx(1.0, abs=0.01)


def test_light_is_even_enough_not_to_pass_for_colour(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    lighting = light_frame(frame, fields, occlusal=UP)
    assert lighting.diffuse.min() > 0.4
    assert lighting.diffuse.max() < 1.15
    assert lighting.gloss.min() >= 0.0


def test_diffuse_light_is_proportional_to_the_colour(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    lighting = light_frame(frame, fields, occlusal=UP, gloss=0.0)
    open_places = lighting.openness[:, 0] > 0.999
    dark = shade(lighting, flat(ball, (0.2, 0.2, 0.2)))
    light = shade(lighting, flat(ball, (0.4, 0.4, 0.4)))
    assert open_places.sum() > 100
    np.testing.assert_allclose(light[open_places], 2.0 * dark[open_places], rtol=2e-3)


def test_no_more_light_comes_back_than_level_times_light_times_colour(
    ball: TriMesh, fields: ShadingFields, frame: FrameBuffer
) -> None:
    lighting = light_frame(frame, fields, occlusal=UP, gloss=0.0)
    light = shade(lighting, flat(ball, (0.7, 0.6, 0.5)))
    most = LEVEL * lighting.diffuse * np.array([0.7, 0.6, 0.5])
    assert (light <= most * 1.001).all()


@given(st.floats(0.02, 1.0), st.floats(0.02, 0.95))
def test_bounced_light_lies_between_the_open_share_and_all_of_it(open_share, albedo) -> None:
    one = float(bounced(np.array([[open_share]]), np.array([[albedo]]))[0, 0])
    assert open_share <= one <= 1.001


def test_an_open_place_gets_all_light_whatever_its_colour() -> None:
    albedo = np.linspace(0.0, 1.0, 11)[:, None]
    np.testing.assert_allclose(bounced(np.ones((11, 1)), albedo), 1.0, atol=1e-3)


def test_bounced_light_is_brighter_in_brighter_hollows() -> None:
    albedo = np.linspace(0.1, 0.9, 9)[:, None]
    share = bounced(np.full((9, 1), 0.3), albedo)[:, 0]
    assert (np.diff(share) >= 0).all()
    assert share[-1] > share[0] + 0.05


def test_the_shoulder_leaves_what_lies_below_it_and_never_clips() -> None:
    light = np.linspace(0.0, 4.0, 400, dtype=np.float32)
    bent = shoulder(light)
    np.testing.assert_array_equal(bent[light <= 0.82], light[light <= 0.82])
    assert (np.diff(bent) >= 0).all()
    assert bent.max() <= 1.0
    # No kink: slope 1 on both sides of the knee.
    knee = shoulder(np.array([0.82, 0.8201], np.float32))
    assert (knee[1] - knee[0]) / 1e-4 == pytest.approx(1.0, abs=0.02)


def test_samples_are_averaged_as_light_not_as_code_values() -> None:
    mesh = TriMesh([[0.05, -9, 0], [9, -9, 0], [9, 9, 0], [0.05, 9, 0]], [[0, 1, 2], [0, 2, 3]])
    camera = Camera(eye=(0, 0, 1), up=(0, 1, 0), centre=(0, 0, 0), height_mm=1.0)
    frame = rasterise(mesh.vertices, mesh.faces, camera, 10, 10)
    picture = develop(frame, np.full((len(frame.hits), 3), 0.8, np.float32), surround_srgb=0.0)
    # Half of linear 0.8 is linear 0.4, sRGB 169.6 by the standard's formula; half the code would be
    # 116.
    assert picture[5, 5].tolist() == [encoded(np.array([0.4]))[0]] * 3
    assert int(encoded(np.array([0.4]))[0]) == round(255 * (1.055 * 0.4 ** (1 / 2.4) - 0.055))


def test_relief_darkens_only(ball: TriMesh, fields: ShadingFields, frame: FrameBuffer) -> None:
    relief = form_relief(frame, fields, 0.55)
    assert relief.max() < 1.05
    assert relief.min() > 0.45
    np.testing.assert_allclose(form_relief(frame, fields, 0.0), 1.0)
