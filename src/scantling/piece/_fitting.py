"""Gaps of drawers, doors and kickers that the year works on."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.exact import Fraction
from scantling.findings import Place
from scantling.joints._joint import Gap
from scantling.piece._form import Fitting, Landing, Opening, Whole
from scantling.piece._words import inch_or_mm
from scantling.sizes.linear import Linear, size_of, total
from scantling.units import INCH

SOURCE = "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2; what is left over: common practice"


def ease(whole: Whole) -> Fraction:
    """What is to be left of a gap in the spell that closes it; common practice. [mm]"""
    return inch_or_mm(whole, inch=INCH / 32, mm=Fraction(4, 5))


def over_a_drawer(
    name: str, part: str, opening: Opening, *, place: Place | None, whole: Whole
) -> Fitting:
    """Room over the front or a side of a drawer, which lies on the rail and grows upward.

    The height of an opening is long grain and stays; what the rails swell is not counted.
    """
    board, family = f"{name}.{part}", f"drawer {part.rsplit(maxsplit=1)[-1]}s"
    return Fitting(
        gap=Gap(
            name=f"gap over the {part} of {name}",
            at_bench=opening.tall - size_of(f"{name}.low gap") - size_of(f"{board}.width"),
            moving=((board, size_of(f"{board}.width")),),
            least=ease(whole),
            greatest=inch_or_mm(whole, inch=INCH / 4, mm=6),
            because=f"the {family} grow upward in an opening that keeps its height",
            source=SOURCE,
            what=f"gap over the {family}",
            closed=f"the {family} stick",
            cure=f"Take quarter-sawn or rift stock for the {family}, plane them {{short}} narrower,"
            " or leave more over them (gaps in [drawers]).",
        ),
        code="drawers.sticks",
        place=place,
        may_grow=(f"{name}.top gap",),
    )


def behind_a_drawer(
    name: str, opening: Opening, side: str, *, place: Place | None, whole: Whole
) -> Fitting:
    """Air behind a drawer: it keeps its length, and the case gets less deep as it dries."""
    return Fitting(
        gap=Gap(
            name=f"gap behind {name}",
            at_bench=opening.deep - size_of(f"{name}.deep"),
            moving=((side, -size_of(f"{side}.width")),),
            least=inch_or_mm(whole, inch=INCH / 8, mm=3),
            greatest=None,
            because="a drawer keeps its length in a case that gets less deep",
            source=SOURCE,
            what="air behind the drawers",
            closed="the drawers meet the back of the case",
            cure="Make the drawers {short} shorter (deep in [drawers]), or the case deeper.",
        ),
        code="drawers.meets-back",
        place=place,
        in_dry_spell=True,
    )


def across_doors(
    opening: Opening,
    case: Landing,
    *,
    gaps: tuple[str, ...],
    stiles: tuple[str, ...],
    place: Place | None,
    whole: Whole,
) -> Fitting:
    """Room across a row of doors: their stiles grow, and what frames the opening grows inward.

    A stile of the face frame is held by the side behind it and grows from there; a mullion
    grows from its middle.
    """
    pair = len(stiles) > 2
    right = opening.left + opening.wide
    posts = (
        (opening.left_part, opening.left - case.sum("left")),
        (opening.right_part, case.sum("right") - right),
    )
    return Fitting(
        gap=Gap(
            name=f"gaps across the {opening.name}",
            at_bench=total(size_of(gap) for gap in gaps),
            moving=(
                *((stile, size_of(f"{stile}.width")) for stile in stiles),
                *(
                    (post, width if post.endswith("stile") else size_of(f"{post}.width") / 2)
                    for post, width in posts
                ),
            ),
            least=ease(whole),
            greatest=inch_or_mm(whole, inch=INCH / 8, mm=3) * len(gaps),
            because="the stiles of doors grow in an opening whose stiles grow too",
            source=SOURCE,
            what="gaps across the doors, together" if pair else "gaps across the door, together",
            closed="the doors bind" if pair else "the door binds",
            cure=f"Plane {'each meeting stile' if pair else 'the lock stile'} {{short}}, take"
            " quarter-sawn or rift stock for the stiles, or leave wider gaps (gaps in [doors]).",
            shared_by=2 if pair else 1,
        ),
        code="doors.bind",
        place=place,
    )


def over_and_under_a_door(
    door: str, opening: Opening, *, place: Place | None, whole: Whole
) -> Iterator[Fitting]:
    """Gaps over and under a door: it keeps its height, and the rails it stands between grow.

    A rail is held at its tenons and grows from its middle, so that half of it comes nearer.
    """
    low = size_of(f"{door}.bottom gap")
    over = opening.tall - size_of(f"{door}.tall") - low
    for word, gap, rail, grows in (
        ("over", over, opening.above_part, "top gap"),
        ("under", low, opening.below_part, "bottom gap"),
    ):
        yield Fitting(
            gap=Gap(
                name=f"gap {word} the {door}",
                at_bench=gap,
                moving=((rail, size_of(f"{rail}.width") / 2),),
                least=ease(whole),
                greatest=inch_or_mm(whole, inch=INCH / 8, mm=3),
                because=f"a door keeps its height, and the rail {word} it grows from its middle",
                source=SOURCE,
                what=f"gap {word} the doors",
                closed=f"the rail {word} the doors rubs on them",
                cure=f"Take quarter-sawn or rift stock for the {rail}, or leave {{short}} more"
                f" {word} the doors (gaps in [doors]).",
            ),
            code="doors.rub",
            place=place,
            may_grow=(f"{door}.{grows}",),
        )


def kicker_stub(
    name: str, *, left: Linear, between: Linear, side: str, place: Place | None, whole: Whole
) -> Fitting:
    """What of a kicker's rear stub stays in its rail when the sides have carried the rail away.

    Args:
        name: The kicker.
        left: What of the stub is in the rail today. [mm]
        between: From rail to rail, across the grain of the sides. [mm]
        side: The side that carries the rails.
        place: Where the kicker was asked for.
        whole: The piece.
    """
    return Fitting(
        gap=Gap(
            name=f"stub of the {name} in the rear rail",
            at_bench=left,
            moving=((side, between),),
            least=inch_or_mm(whole, inch=INCH / 8, mm=3),
            greatest=None,
            because="the sides carry the rear rail backwards, and a kicker keeps its length",
            source=SOURCE,
            what="what of the kickers' rear stubs stays in the rail",
            closed="the kickers let go of the rear rail",
            cure="Make the stubs longer, or leave a smaller gap at their rear shoulders.",
        ),
        code="kickers.let-go",
        place=place,
    )


def kicker_shoulder(
    name: str, *, gap: Linear, between: Linear, side: str, place: Place | None
) -> Fitting:
    """The gap at a kicker's rear shoulder, which a drying case closes."""
    return Fitting(
        gap=Gap(
            name=f"gap at the rear shoulder of the {name}",
            at_bench=gap,
            moving=((side, -between),),
            least=Fraction(0),
            greatest=None,
            because="a kicker keeps its length between rails that come nearer as the sides dry",
            source=SOURCE,
            what="gap at the kickers' rear shoulders",
            closed="the kickers push the rails apart",
            cure="Leave {short} more at their rear shoulders (rear_gap).",
        ),
        code="kickers.push",
        place=place,
        in_dry_spell=True,
        unneeded="A rear gap of 0 would be sounder: the stubs would keep that much more.",
    )
