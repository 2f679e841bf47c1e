"""Numbers of the back teeth that can be made, in millimetres of the sintered crown.

Frame: +x mesial, +y buccal, +z occlusal, as on a tooth of quadrant 1 or 3. The overall sizes
follow the averages that textbooks of dental anatomy give for natural crowns [Nelson2010]. Where
cusps, ridges and grooves lie was modelled by eye for this project and follows no library of
teeth. Front teeth: `crown_data_front`.
"""

from __future__ import annotations

from dataclasses import replace

from stainmap.practice.crown_data_front import UPPER_CANINE, UPPER_CENTRAL_INCISOR
from stainmap.practice.crown_form import (
    AroundTooth,
    BackTooth,
    Carving,
    Cusp,
    Pit,
    Preparation,
    Ridge,
    ToothForm,
    WallGroove,
)

_CONTOUR = AroundTooth(mesial=0.62, buccal=0.30, distal=0.60, lingual=0.50)

LOWER_FIRST_MOLAR = BackTooth(
    position=6,
    is_upper=False,
    cusps=(
        Cusp(
            name="mesiobuccal",
            tip=(2.55, 2.7, 6.95),
            triangular=((1.7, 1.5, 6.5), (0.85, 0.45, 5.55)),
            mesial=(4.3, 2.0, 6.1),
            distal=(1.05, 3.05, 6.05),
            outer=(2.7, 5.2, 4.6),
        ),
        Cusp(
            name="distobuccal",
            tip=(-0.75, 2.9, 6.85),
            triangular=((-0.6, 1.6, 6.4), (-0.35, 0.5, 5.5)),
            mesial=(0.55, 3.2, 6.05),
            distal=(-2.0, 3.0, 6.0),
            outer=(-0.8, 5.4, 4.6),
        ),
        Cusp(
            name="distal",
            tip=(-3.55, 1.7, 6.4),
            triangular=((-2.8, 1.1, 6.1), (-1.8, 0.35, 5.55)),
            mesial=(-2.6, 2.7, 5.8),
            distal=(-4.4, 0.6, 5.85),
            outer=(-5.0, 2.8, 4.6),
        ),
        Cusp(
            name="mesiolingual",
            tip=(2.35, -2.95, 7.4),
            triangular=((1.7, -1.6, 6.7), (0.8, -0.4, 5.55)),
            mesial=(4.15, -2.1, 6.4),
            distal=(0.55, -3.25, 6.5),
            outer=(2.4, -5.2, 4.9),
        ),
        Cusp(
            name="distolingual",
            tip=(-2.15, -2.95, 7.2),
            triangular=((-1.6, -1.5, 6.6), (-0.8, -0.35, 5.5)),
            mesial=(-0.6, -3.3, 6.45),
            distal=(-3.9, -2.0, 6.2),
            outer=(-2.3, -5.2, 4.9),
        ),
    ),
    marginal_ridges=(
        Ridge(
            points=((4.0, 1.9, 6.15), (4.85, 0.0, 6.05), (3.9, -2.1, 6.25)),
            slope=0.85,
            rounding=0.55,
        ),
        Ridge(
            points=((-4.2, 0.7, 5.95), (-4.7, -0.5, 5.9), (-3.9, -1.9, 6.1)),
            slope=0.85,
            rounding=0.55,
        ),
    ),
    outline=(
        (5.5, 0.0),
        (5.2, 2.5),
        (4.1, 4.35),
        (2.7, 5.0),
        (1.0, 5.1),
        (-0.8, 5.1),
        (-2.6, 4.65),
        (-4.3, 3.5),
        (-5.25, 1.8),
        (-5.5, -0.2),
        (-4.85, -2.2),
        (-3.6, -3.95),
        (-2.0, -4.75),
        (0.0, -4.95),
        (2.0, -4.95),
        (3.65, -4.15),
        (4.85, -2.5),
    ),
    contour_share=_CONTOUR,
    cervical_draw=AroundTooth(mesial=1.1, buccal=0.6, distal=1.1, lingual=0.75),
    occlusal_draw=AroundTooth(mesial=1.0, buccal=2.0, distal=1.0, lingual=1.45),
    margin_height=AroundTooth(mesial=0.75, buccal=0.0, distal=0.35, lingual=0.15),
    top=7.4,
    axis_lean=-0.25,
    wall_grooves=(
        WallGroove(direction_deg=72, depth=0.36, half_width=0.55, share_from=0.35, share_to=0.95),
        WallGroove(direction_deg=121, depth=0.26, half_width=0.5, share_from=0.45, share_to=1.0),
        WallGroove(direction_deg=267, depth=0.26, half_width=0.5, share_from=0.5, share_to=1.0),
    ),
    pits=(
        Pit(place=(0.05, 0.05), depth=0.2, half_width=0.35),
        Pit(place=(3.3, -0.1), depth=0.2, half_width=0.35),
        Pit(place=(-3.2, -0.1), depth=0.18, half_width=0.35),
    ),
    carving=Carving(
        fissure_depth=0.24,
        fissure_width=0.2,
        at_marginal_ridges=0.65,
        fade=(0.62, 0.92),
        ridge_height=0.2,
    ),
    preparation=Preparation(occlusal_wall=1.1, axial_wall=0.85, rim=0.18, chamfer=0.5),
    stump_top=5.4,
    turn_height=3.6,
    core_radius=3.0,
    shoulder=0.9,
    tip_scatter=0.06,
)

UPPER_FIRST_MOLAR = BackTooth(
    position=6,
    is_upper=True,
    cusps=(
        Cusp(
            name="mesiobuccal",
            tip=(2.55, 3.0, 7.1),
            triangular=((1.9, 1.7, 6.6), (1.25, 0.75, 5.5)),
            mesial=(4.0, 2.5, 6.2),
            distal=(0.75, 3.3, 6.1),
            outer=(2.8, 5.4, 4.7),
        ),
        Cusp(
            name="distobuccal",
            tip=(-1.75, 2.95, 6.95),
            triangular=((-1.35, 1.6, 6.65), (-0.75, 0.4, 6.4)),
            mesial=(0.0, 3.3, 6.1),
            distal=(-3.7, 2.2, 6.0),
            outer=(-1.9, 5.3, 4.7),
        ),
        Cusp(
            name="mesiolingual",
            tip=(1.55, -2.75, 7.5),
            triangular=((1.75, -1.4, 6.7), (1.6, -0.15, 5.5)),
            mesial=(3.7, -2.0, 6.3),
            distal=None,
            outer=(1.3, -5.4, 4.7),
            further=(
                # The oblique ridge, towards the distobuccal cusp, and the ridge to the distal.
                Ridge(
                    points=((1.55, -2.75, 7.5), (0.4, -1.5, 7.05), (-0.65, 0.15, 6.4)),
                    slope=0.85,
                    rounding=0.4,
                ),
                Ridge(
                    points=((1.55, -2.75, 7.5), (0.6, -3.2, 7.1), (-0.75, -3.5, 6.2)),
                    slope=0.8,
                    rounding=0.45,
                ),
            ),
        ),
        Cusp(
            name="distolingual",
            tip=(-2.9, -2.85, 6.45),
            triangular=((-2.5, -2.0, 6.25), (-2.35, -1.2, 5.7)),
            mesial=(-1.75, -3.4, 6.0),
            distal=(-4.1, -1.7, 5.95),
            outer=(-3.2, -5.0, 4.6),
        ),
    ),
    marginal_ridges=(
        Ridge(
            points=((3.7, 2.4, 6.25), (4.5, 0.4, 6.15), (3.6, -2.0, 6.35)),
            slope=0.85,
            rounding=0.55,
        ),
        Ridge(
            points=((-3.6, 2.1, 6.05), (-4.45, 0.2, 6.0), (-4.0, -1.7, 6.0)),
            slope=0.85,
            rounding=0.55,
        ),
    ),
    outline=(
        (5.0, 0.9),
        (4.75, 3.0),
        (3.9, 4.75),
        (2.3, 5.45),
        (0.3, 5.3),
        (-1.7, 5.2),
        (-3.5, 4.1),
        (-4.6, 2.2),
        (-5.0, 0.1),
        (-4.85, -2.2),
        (-4.1, -4.1),
        (-2.8, -5.05),
        (-1.2, -5.25),
        (0.7, -5.55),
        (2.6, -5.1),
        (4.1, -3.6),
        (4.8, -1.4),
    ),
    contour_share=_CONTOUR,
    cervical_draw=AroundTooth(mesial=1.1, buccal=0.6, distal=1.0, lingual=0.7),
    occlusal_draw=AroundTooth(mesial=1.0, buccal=1.5, distal=1.0, lingual=1.7),
    margin_height=AroundTooth(mesial=0.8, buccal=0.0, distal=0.4, lingual=0.0),
    top=7.4,
    axis_lean=0.1,
    wall_grooves=(
        WallGroove(direction_deg=87, depth=0.32, half_width=0.5, share_from=0.4, share_to=0.95),
        WallGroove(direction_deg=253, depth=0.34, half_width=0.5, share_from=0.35, share_to=0.95),
        WallGroove(direction_deg=303, depth=-0.1, half_width=0.8, share_from=0.3, share_to=0.75),
    ),
    pits=(
        Pit(place=(0.55, 0.45), depth=0.22, half_width=0.35),
        Pit(place=(3.3, 0.25), depth=0.18, half_width=0.32),
        Pit(place=(-2.75, -0.6), depth=0.2, half_width=0.32),
    ),
    carving=Carving(
        fissure_depth=0.24,
        fissure_width=0.2,
        at_marginal_ridges=0.65,
        fade=(0.62, 0.92),
        ridge_height=0.2,
        between=(("distobuccal", "mesiolingual", 0.2),),
    ),
    preparation=Preparation(occlusal_wall=1.1, axial_wall=0.85, rim=0.18, chamfer=0.5),
    stump_top=5.5,
    turn_height=3.6,
    core_radius=3.0,
    shoulder=0.9,
    tip_scatter=0.06,
)

UPPER_FIRST_PREMOLAR = BackTooth(
    position=4,
    is_upper=True,
    cusps=(
        Cusp(
            name="buccal",
            tip=(0.0, 2.7, 8.45),
            triangular=((0.0, 1.5, 7.75), (0.0, 0.3, 6.45)),
            mesial=(2.5, 2.0, 6.95),
            distal=(-2.55, 1.95, 6.9),
            outer=(0.0, 4.6, 5.2),
            slope=1.0,
            rounding=0.35,
        ),
        Cusp(
            name="lingual",
            tip=(0.3, -2.65, 7.5),
            triangular=((0.2, -1.3, 7.15), (0.05, -0.05, 6.4)),
            mesial=(2.0, -2.0, 6.8),
            distal=(-1.8, -2.05, 6.75),
            outer=(0.25, -4.5, 4.9),
            slope=0.78,
            rounding=0.35,
        ),
    ),
    marginal_ridges=(
        Ridge(
            points=((2.5, 1.8, 6.95), (3.15, 0.1, 6.75), (1.9, -1.85, 6.75)),
            slope=0.85,
            rounding=0.45,
        ),
        Ridge(
            points=((-2.5, 1.75, 6.9), (-3.15, 0.0, 6.7), (-1.75, -1.9, 6.7)),
            slope=0.85,
            rounding=0.45,
        ),
    ),
    outline=(
        (3.5, 0.9),
        (3.25, 2.4),
        (2.3, 3.8),
        (0.9, 4.45),
        (-0.8, 4.45),
        (-2.3, 3.8),
        (-3.3, 2.4),
        (-3.5, 0.8),
        (-3.25, -1.3),
        (-2.5, -3.1),
        (-1.2, -4.15),
        (0.2, -4.45),
        (1.6, -4.05),
        (2.7, -2.9),
        (3.3, -1.2),
    ),
    contour_share=_CONTOUR,
    cervical_draw=AroundTooth(mesial=1.0, buccal=0.55, distal=0.95, lingual=0.6),
    occlusal_draw=AroundTooth(mesial=0.75, buccal=1.75, distal=0.75, lingual=1.8),
    margin_height=AroundTooth(mesial=0.9, buccal=0.0, distal=0.5, lingual=0.1),
    top=7.9,
    axis_lean=0.0,
    wall_grooves=(
        WallGroove(direction_deg=62, depth=0.09, half_width=0.75, share_from=0.3, share_to=1.0),
        WallGroove(direction_deg=118, depth=0.09, half_width=0.75, share_from=0.3, share_to=1.0),
        WallGroove(direction_deg=-8, depth=0.1, half_width=0.6, share_from=-0.1, share_to=0.25),
    ),
    pits=(
        Pit(place=(1.8, 0.2), depth=0.2, half_width=0.3),
        Pit(place=(-1.8, 0.2), depth=0.2, half_width=0.3),
    ),
    carving=Carving(
        fissure_depth=0.24,
        fissure_width=0.18,
        at_marginal_ridges=0.3,
        fade=(0.5, 0.82),
        ridge_height=0.3,
        # The groove that runs from the mesial pit over the marginal ridge.
        crossing=((((1.9, 0.15), (2.7, -0.05), (3.6, -0.05)), 0.2, 0.22),),
    ),
    preparation=Preparation(occlusal_wall=1.1, axial_wall=0.75, rim=0.15, chamfer=0.45),
    stump_top=6.3,
    turn_height=4.3,
    core_radius=1.9,
    shoulder=0.8,
    tip_scatter=0.05,
)

# As the first, from memory of the same textbooks: cusps nearly alike in height, the lingual one as
# far mesial, a shorter groove, and none over the mesial marginal ridge.
UPPER_SECOND_PREMOLAR = replace(
    UPPER_FIRST_PREMOLAR,
    position=5,
    cusps=(
        replace(UPPER_FIRST_PREMOLAR.cusps[0], tip=(0.0, 2.65, 8.2)),
        replace(UPPER_FIRST_PREMOLAR.cusps[1], tip=(0.25, -2.65, 7.8)),
    ),
    carving=replace(UPPER_FIRST_PREMOLAR.carving, crossing=()),
    pits=(
        Pit(place=(1.5, 0.15), depth=0.18, half_width=0.3),
        Pit(place=(-1.5, 0.15), depth=0.18, half_width=0.3),
    ),
)

TOOTH_FORMS: tuple[ToothForm, ...] = (
    LOWER_FIRST_MOLAR,
    UPPER_FIRST_MOLAR,
    UPPER_FIRST_PREMOLAR,
    UPPER_SECOND_PREMOLAR,
    UPPER_CANINE,
    UPPER_CENTRAL_INCISOR,
)
