"""Screws of a hinge: their sizes, what they hold, and where they come through."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.joints._frame import fault
from scantling.joints._hinge import hung
from scantling.joints._joint import Choice, Estimate, Joined, Woods
from scantling.joints._strength import screw_pull, screw_push, thread_in_wood
from scantling.shop.tools import Shop
from scantling.sizes.linear import exactly
from scantling.sizes.model import Dimension, Kind, Relations, Rule, Sizes
from scantling.units import INCH, Unit

ROLES = ("receives", "enters")
LEAST_BEYOND = Fraction(3)  # [mm] wood beyond the point of a screw
LONG = INCH * 5 / 2  # [mm] a hinge from here on has three screws to a leaf

# number 6 by 3/4 in, and its metric fellow [mm]
_USUAL = {
    "screw": (INCH * Fraction(138, 1000), Fraction(7, 2)),
    "screw length": (INCH * 3 / 4, Fraction(20)),
}
_SAYS = {"screw": "diameter of a screw", "screw length": "length of a screw"}


def chosen_screws(
    j: Joined, *, sizes: Sizes | None, shop: Shop, each: int | None
) -> dict[str, Fraction]:
    """Usual screws, and how many to a leaf.

    Args:
        j: The hinges.
        sizes: Solved sizes; None in the first round.
        shop: Whose rule says whether they are bought by the inch.
        each: Screws to a leaf, where the maker says so.

    References:
        Number 6 by 3/4 in, two to a short leaf, three to a longer one: common practice.
    """
    by_inch = shop.unit is Unit.INCH
    found = {word: both[0] if by_inch else both[1] for word, both in _USUAL.items()}
    is_long = sizes is not None and sizes[j.own("length")] >= LONG
    return found | {"screws": Fraction(each or (3 if is_long else 2))}


def screw_relations(j: Joined, *, choice: Choice) -> Relations:
    """Diameter and length of the screws."""
    return Relations(
        dimensions=tuple(
            Dimension(name=j.own(word), kind=Kind.TOOL, says=f"{says}, {j.name}")
            for word, says in _SAYS.items()
        ),
        rules=tuple(
            Rule(
                sum=j.size(word) - exactly(choice[word]),
                because="a usual screw for a hinge",
                source="common practice",
            )
            for word in _SAYS
        ),
    )


def hinge_holds(j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods) -> tuple[Estimate, ...]:
    """What the screws in the weaker stile hold: pull on one leaf, sag of the door, its weight."""
    if any(j.seat(role).part not in woods for role in ROLES):
        return ()
    shank, long = float(sizes[j.own("screw")]), float(sizes[j.own("screw length")])
    leaf, each = float(sizes[j.own("gain depth")]), choice.count("screws")
    thread = thread_in_wood(length=long, outside=leaf)
    pull, drawn = min(
        (each * screw_pull(gravity=woods[part].gravity, shank=shank, thread=thread), part)
        for part in (j.seat(role).part for role in ROLES)
    )
    found = [
        Estimate(
            what="pull on one leaf, straight off its stile",
            value=pull,
            unit="N",
            basis="threads of its screws drawn from side grain, ultimate",
            weakest=f"threads in the {drawn}",
        )
    ]
    places = hung(j, sizes=sizes, choice=choice)
    lever = float(places[-1].along[0] - places[0].along[0])
    if lever > 0:
        found.append(
            Estimate(
                what="sag: weight on the door times its distance from the pins",
                value=pull * lever / 1000,
                unit="N m",
                basis="pull on the upper leaf, the lower one as the pivot, ultimate",
                weakest=f"threads in the {drawn}",
            )
        )
    return (
        *found,
        *_sideways(j, shank=shank, deep=long - leaf, count=each * len(places), woods=woods),
    )


def _sideways(
    j: Joined, *, shank: float, deep: float, count: int, woods: Woods
) -> Iterator[Estimate]:
    known = [
        (each, part)
        for part in (j.seat(role).part for role in ROLES)
        if (each := screw_push(woods[part], shank=shank, deep=deep)) is not None
    ]
    if len(known) < len(ROLES):
        return
    push, part = min(known)
    yield Estimate(
        what="weight down along the stile, on all hinges",
        value=count * push,
        unit="N",
        basis="screws pressed sideways into side grain, to where they start to give",
        weakest=f"wood under the screws in the {part}",
    )


def screw_faults(j: Joined, *, sizes: Sizes, shop: Shop) -> Iterator[Finding]:
    """Screws that come through, or nearly."""
    long = sizes[j.own("screw length")]
    for role in ROLES:
        beyond = j.width(role).at(sizes) - j.seat(role).across.at(sizes) - long
        if beyond < LEAST_BEYOND:
            yield fault(
                j,
                "hinge.screw-through",
                Weight.MIND,
                says=f"The hinge's screws nearly come through the {j.seat(role).part}.",
                cure="Take shorter screws, or a wider stile.",
                figure=beyond,
                limit=LEAST_BEYOND,
                shop=shop,
            )
