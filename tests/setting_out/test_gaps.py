"""Room left on purpose, through the year, by hand."""

from fractions import Fraction

from scantling.joints._joint import Gap
from scantling.setting_out import SetGap
from scantling.sizes.linear import size_of
from scantling.sizes.model import Kind, Origin, Size, Sizes
from scantling.timber.movement import Strain

SIZES = Sizes(
    {
        name: Size(name=name, value=Fraction(value), kind=Kind.TAPE, origin=Origin.STATED)
        for name, value in {"room": 5, "panel.width": 300, "stile.width": 50}.items()
    }
)
PANEL = Strain(grow=Fraction("0.006"), shrink=Fraction("0.010"))
STILE = Strain(grow=Fraction("-0.002"), shrink=Fraction("0.004"))  # made in the dampest spell


def through_the_year(**strains: Strain) -> list[Fraction]:
    gap = Gap(
        name="room",
        at_bench=size_of("room"),
        moving=(("panel", size_of("panel.width")), ("stile", size_of("stile.width"))),
        least=Fraction(0),
        greatest=None,
        because="",
    )
    found = SetGap.of(gap, sizes=SIZES, strains=strains)
    return [found.at_bench, found.dampest, found.driest]


def test_what_grows_closes_it_and_what_shrinks_opens_it() -> None:
    # 5 - 300 x 0.006; 5 + 300 x 0.010 + 50 x 0.004: nothing grows beyond the day it was made
    assert through_the_year(panel=PANEL, stile=STILE) == [
        Fraction(value) for value in ("5", "3.2", "8.2")
    ]


def test_what_does_not_move_leaves_it_as_it_is() -> None:
    assert through_the_year() == [Fraction(5)] * 3


def test_room_both_ways_shrinks_whichever_way_the_wood_goes() -> None:
    gap = Gap(
        name="travel",
        at_bench=size_of("room"),
        moving=(("panel", size_of("panel.width")),),
        least=Fraction(0),
        greatest=None,
        because="",
        either_way=True,
    )
    found = SetGap.of(gap, sizes=SIZES, strains={"panel": PANEL})
    # 300 x 0.006 one way, 300 x 0.010 the other; the middle of the slot on the way between
    assert (found.in_damp, found.in_dry) == (Fraction("3.2"), Fraction(2))
    assert found.at(Fraction(5, 8)) == 5
