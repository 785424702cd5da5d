"""The arch of a rail, by the triangle of sides 3, 4 and 5."""

from __future__ import annotations

from fractions import Fraction

from tests.pieces.edited import DEMO, demo, edited

from scantling.parts import Part, Profile
from scantling.piece._arch import arc_points
from scantling.units import INCH


def test_an_arc_that_rises_2_over_a_chord_of_8_has_a_radius_of_5() -> None:
    heights = dict(arc_points(chord=Fraction(8), rise=Fraction(2)))
    # 5 over its middle less 3 that the middle lies below the chord; 4 over it at 3 from the middle
    expected = {0: 0, 1: 1, 4: 2, 7: 1, 8: 0}
    assert {along: heights[Fraction(along)] for along in expected} == expected


def test_a_half_circle_is_as_high_as_half_its_chord() -> None:
    heights = dict(arc_points(chord=Fraction(10), rise=Fraction(5)))
    assert heights[Fraction(5)] == 5
    # 3 from the middle of a circle of radius 5; 32 chords have points at 1.875 and 2.1875
    low, high = heights[Fraction(15, 8)], heights[Fraction(35, 16)]
    assert low < 4 < high


def arched(part: Part) -> list[tuple[Fraction, Fraction]]:
    (cut,) = (cut for cut in part.cuts if cut.name == "arch")
    assert isinstance(cut.shape, Profile)
    return [(along / INCH, up / INCH) for along, up in cut.shape.points]


def test_the_arch_runs_from_stile_to_stile_and_rises_as_stated() -> None:
    # 42 wide less two stiles of 1 3/4; the tenon of 1 1/4 lies within the stile
    for text, rise in (
        (DEMO, Fraction(1, 2)),
        (DEMO.replace('arch = "1/2"', 'arch = "1 1/8"'), Fraction(9, 8)),
    ):
        found = demo() if text == DEMO else edited(text)
        points = arched(found.part("bottom rail"))
        assert points[0] == (Fraction(5, 4), Fraction(0))
        assert points[-1] == (Fraction(5, 4) + Fraction(77, 2), Fraction(0))
        along, up = max(points, key=lambda point: point[1])
        assert along == Fraction(5, 4) + Fraction(77, 4)
        assert 0 <= rise - up < Fraction(1, 10**6)  # heights are kept to a millionth of a mm
