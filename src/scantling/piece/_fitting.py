"""Gaps of drawers and doors that the year works on."""

from __future__ import annotations

from fractions import Fraction

from scantling.findings import Place
from scantling.joints._joint import Gap
from scantling.piece._form import Fitting, Opening, Sketch, Whole
from scantling.sizes.linear import Linear, size_of
from scantling.units import INCH, Unit

SOURCE = "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2; what is left over: common practice"


def ease(whole: Whole) -> Fraction:
    """What is to be left of a gap in the spell that closes it; common practice. [mm]"""
    return INCH / 32 if whole.measure is Unit.INCH else Fraction(4, 5)


def over_a_drawer(
    name: str, part: str, opening: Opening, *, place: Place | None, whole: Whole
) -> Fitting:
    """Room over the front or a side of a drawer, which lies on the rail and grows upward.

    The height of an opening is long grain and stays.
    """
    board, family = f"{name}.{part}", f"drawer {part.split()[-1]}s"
    return Fitting(
        gap=Gap(
            name=f"gap over the {part} of {name}",
            at_bench=opening.tall - size_of(f"{name}.low gap") - size_of(f"{board}.width"),
            moving=((board, size_of(f"{board}.width")),),
            least=ease(whole),
            greatest=None,
            because=f"the {family} grow upward in an opening that keeps its height",
            source=SOURCE,
        ),
        says=f"the {family} stick",
        code="drawers.sticks",
        cure=f'Take quarter-sawn wood for the {family}, leave more over them (gaps = {{ top = "'
        '5/32" }, say), or make them narrower.'
        if whole.measure is Unit.INCH
        else f"Take quarter-sawn wood for the {family}, leave more over them (gaps in [drawers]),"
        " or make them narrower.",
        place=place,
    )


def behind_a_drawer(
    name: str, opening: Opening, side: str, *, place: Place | None, whole: Whole
) -> Fitting:
    """Air behind a drawer: it keeps its length, and the case gets less deep as it dries."""
    return Fitting(
        gap=Gap(
            name=f"gap behind {name}",
            at_bench=opening.deep - size_of(f"{name}.deep"),
            moving=((side, -size_of("case.inside deep")),),
            least=INCH / 8 if whole.measure is Unit.INCH else Fraction(3),
            greatest=None,
            because="a drawer keeps its length in a case that gets less deep",
            source=SOURCE,
        ),
        says="the drawers meet the back of the case",
        code="drawers.meets-back",
        cure="Make the drawers shorter (deep in [drawers]), or the case deeper.",
        place=place,
        in_dry_spell=True,
    )


def across_doors(
    sketch: Sketch,
    opening: Opening,
    *,
    open_now: Linear,
    stiles: tuple[str, ...],
    place: Place | None,
    whole: Whole,
) -> Fitting:
    """Room across a row of doors: their stiles grow, and what frames the opening grows inward."""
    case = sketch.landings["case"]
    right = opening.left + opening.wide
    posts = (
        (opening.left_part, opening.left - case.sum("left")),
        (opening.right_part, case.sum("right") - right),
    )
    return Fitting(
        gap=Gap(
            name=f"gaps across the {opening.name}",
            at_bench=open_now,
            moving=(
                *((stile, size_of(f"{stile}.width")) for stile in stiles),
                *(
                    (post, width if post.endswith("stile") else size_of(f"{post}.width") / 2)
                    for post, width in posts
                ),
            ),
            least=ease(whole),
            greatest=None,
            because="the stiles of doors grow in an opening whose stiles grow too",
            source=SOURCE,
        ),
        says="the doors bind",
        code="doors.bind",
        cure="Take quarter-sawn or rift wood for the door stiles, make them narrower, or leave"
        " wider gaps (gaps in [doors]).",
        place=place,
    )
