"""Numbers of the front teeth that can be made; frame and sources as in `crown_data`."""

from __future__ import annotations

from stainmap.practice.crown_form import AroundTooth, CanineCusp, FrontTooth, Preparation

UPPER_CENTRAL_INCISOR = FrontTooth(
    position=1,
    is_upper=True,
    labial=(
        (-2.0, 2.2),
        (0.0, 2.95),
        (2.2, 3.35),
        (5.0, 3.2),
        (8.0, 2.55),
        (10.5, 1.35),
        (12.0, 0.5),
    ),
    palatal=(
        (-2.0, -2.6),
        (0.0, -3.1),
        (2.1, -3.45),
        (3.6, -2.95),
        (5.4, -1.55),
        (7.5, -0.5),
        (9.5, 0.0),
        (10.5, 0.15),
        (12.0, 0.2),
    ),
    mesial=((-2.0, 3.0), (0.0, 3.45), (4.0, 4.05), (8.0, 4.3), (9.5, 4.25), (12.0, 4.1)),
    distal=((-2.0, -2.95), (0.0, -3.4), (3.8, -4.0), (7.2, -4.25), (9.5, -4.0), (12.0, -3.6)),
    edge=10.5,
    margin_height=AroundTooth(mesial=2.6, buccal=0.0, distal=1.9, lingual=0.0),
    lobe_depth=0.08,
    ridge_height=0.5,
    mamelon_height=0.05,
    preparation=Preparation(occlusal_wall=2.3, axial_wall=0.75, rim=0.15, chamfer=0.45),
    turn_height=8.7,
    core=(2.5, 0.1),
)

# Sizes: textbook values from memory (crown 10.0 long, 7.5 mesiodistally, 8.0 labiopalatally; 5.5
# and 7.0 at the cervix). The tip lies a little to mesial, its distal slope is the longer one.
UPPER_CANINE = FrontTooth(
    position=3,
    is_upper=True,
    labial=(
        (-2.0, 2.7),
        (0.0, 3.42),
        (2.2, 3.8),
        (5.0, 3.7),
        (7.5, 3.0),
        (10.0, 1.5),
        (12.0, 0.3),
    ),
    palatal=(
        (-2.0, -3.0),
        (0.0, -3.6),
        (2.1, -4.05),
        (4.0, -3.4),
        (6.0, -2.0),
        (8.0, -0.8),
        (9.5, -0.1),
        (10.2, 0.1),
        (12.0, 0.2),
    ),
    mesial=((-2.0, 2.1), (0.0, 2.45), (4.0, 3.3), (7.0, 3.72), (8.5, 3.65), (12.0, 3.1)),
    distal=((-2.0, -2.1), (0.0, -2.45), (3.5, -3.25), (6.0, -3.78), (8.0, -3.55), (12.0, -2.6)),
    edge=10.0,
    margin_height=AroundTooth(mesial=2.4, buccal=0.0, distal=1.6, lingual=0.0),
    lobe_depth=0.10,
    ridge_height=0.42,
    mamelon_height=0.0,
    preparation=Preparation(occlusal_wall=2.0, axial_wall=0.75, rim=0.15, chamfer=0.45),
    turn_height=7.6,
    core=(1.8, 0.1),
    labial_bend=(0.12, 0.085),
    cusp=CanineCusp(
        x=0.2,
        mesial_slope=0.52,
        distal_slope=0.6,
        rounding=0.55,
        labial_ridge=0.22,
        palatal_ridge=0.3,
    ),
)
