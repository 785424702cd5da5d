"""Sizes of a drawer bottom's grooves, bevels and slot."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Choice, Joined, Strains
from scantling.joints._tails import up
from scantling.shop.tools import Shop, nearest_owned, whole_depth
from scantling.sizes.linear import Linear, exactly
from scantling.sizes.model import Bound, Dimension, Kind, Level, Relations, Rule, Sizes, Yields
from scantling.units import INCH, Unit

LEAST_COVER = Fraction(3)  # [mm] of the back's thickness that the bottom still lies under
SLOT_SPARE = Fraction(1)  # [mm] beyond the movement, half at either end
LEAST_REACH = Fraction(3)  # [mm] that the bottom goes into a groove
BITE = 6  # [-] thread or nail in the back, in diameters
GROOVES = (Fraction(3), Fraction(10))  # [mm] widths that are sound

SAYS = {
    "set up": "grooves above the lower edge",
    "groove": "width of the grooves",
    "depth": "depth of the grooves",
    "end ease": "ease at either end",
    "bevel": "bevel of the edges",
    "screw": "diameter of the screw or nail",
    "screw length": "length of the screw or nail",
}
TAPES = ("set up", "depth", "end ease", "bevel")
RULED = ("groove", "depth", "screw", "screw length")  # of tools owned, or bought


def choice_of(j: Joined, *, sizes: Sizes | None, shop: Shop) -> Choice:
    """Usual sizes, of irons that are owned.

    References:
        Handwork in Wood, 1910, for a groove of 1/4 in; six diameters of thread, half the side for
        the depth, and the other figures are common practice.
    """
    by_inch = shop.unit is Unit.INCH
    wide = INCH / 4 if by_inch else Fraction(6)
    iron = nearest_owned(wide, shop.groove_sizes, low=GROOVES[0], high=GROOVES[1])
    screw = INCH * Fraction(5, 32) if by_inch else Fraction(4)
    found = {
        "set up": INCH * Fraction(3, 8) if by_inch else Fraction(10),
        "groove": iron.size if iron else wide,
        "end ease": INCH / 32 if by_inch else Fraction(1, 2),
        "bevel": INCH * Fraction(5, 4) if by_inch else Fraction(30),
        "screw": screw,
    }
    if sizes is not None:
        half = min(j.thickness(role).at(sizes) / 2 for role in ("front", "left", "right"))
        found["depth"] = whole_depth(half, unit=shop.unit) or half
        bite = j.thickness("bottom").at(sizes) + BITE * sizes[j.own("screw")]
        found["screw length"] = up(bite, step=INCH / 8 if by_inch else Fraction(5))
    return Choice.of(found)


def relations_of(j: Joined, *, choice: Choice, strains: Strains, screwed: bool) -> Relations:
    """Dimensions of grooves, bevels and what holds the bottom behind."""
    dimensions = tuple(
        Dimension(
            name=j.own(word),
            kind=Kind.TAPE if word in TAPES else Kind.TOOL,
            says=f"{says}, {j.name}",
            positive=word != "end ease",
        )
        for word, says in SAYS.items()
    )
    found = Relations(
        dimensions=dimensions,
        bounds=(
            Bound(
                sum=j.size("depth") - j.size("end ease"),
                because="the bottom reaches into its grooves",
                place=j.place,
            ),
            Bound(
                sum=j.size("depth") - j.size("end ease") - LEAST_REACH,
                because="the bottom reaches into its grooves far enough to hang there",
                yields=Yields.SEASON,
                code="drawer-bottom.shallow",
                source="common practice",
                cure="deeper grooves, or less ease",
                place=j.place,
            ),
            Bound(
                sum=j.size("bevel") - j.size("depth") - 1,
                because="the bevel runs in further than the groove is deep",
                place=j.place,
            ),
        ),
        rules=tuple(
            Rule(
                sum=j.size(word) - _usual(j, word, choice),
                because=f"usual for the {says}",
                level=Level.RULE if word in RULED else Level.HABIT,
                source="common practice",
            )
            for word, says in SAYS.items()
        ),
    )
    found += _covers(j, strains)
    return found + _slot(j, strains, choice) if screwed else found


def _usual(j: Joined, word: str, choice: Choice) -> Linear:
    if word in choice:
        return exactly(choice[word])
    if word == "depth":
        return j.thickness("left") / 2
    return j.thickness("bottom") + BITE * j.size("screw")


def _covers(j: Joined, strains: Strains) -> Relations:
    """All movement goes to the rear, where the edge has to stay under the back."""
    moving = strains.get(j.seat("bottom").part)
    if moving is None:
        return Relations()
    bounds = [
        Bound(
            sum=j.thickness("back") - LEAST_COVER - moving.narrowest * j.width("bottom"),
            because="in the driest spell the bottom still lies under the back",
            yields=Yields.SEASON,
            code="drawer-bottom.falls-out",
            source="common practice",
            cure="a thicker back, or quarter-sawn wood for the bottom",
            place=j.place,
        )
    ]
    bounds += [
        Bound(
            sum=room.size - moving.widest * j.width("bottom"),
            because="in the dampest spell the bottom does not reach what stands behind",
            yields=Yields.SEASON,
            code="drawer-bottom.hits-back",
            source="common practice",
            cure="a shallower drawer, or quarter-sawn wood for the bottom",
            place=j.place,
        )
        for room in j.neighbours("room", role="bottom")
    ]
    return Relations(bounds=tuple(bounds))


def slot_needed(j: Joined, strains: Strains) -> tuple[Linear, Linear]:
    """Least length of the slot, and how much of it lies behind the screw. [mm]"""
    moving = strains.get(j.seat("bottom").part)
    width = j.width("bottom")
    ahead = behind = exactly(SLOT_SPARE / 2)
    if moving is not None:
        ahead += moving.widest * width
        behind += moving.narrowest * width
    return j.size("screw") + ahead + behind, behind


def _slot(j: Joined, strains: Strains, choice: Choice) -> Relations:
    """The slot lets the screw stand still while the bottom shrinks before it and grows past it."""
    needed, behind = slot_needed(j, strains)
    usual = exactly(choice["slot"]) if "slot" in choice else needed
    return Relations(
        dimensions=(
            Dimension(name=j.own("slot"), kind=Kind.TAPE, says=f"length of the slot, {j.name}"),
            Dimension(
                name=j.own("slot behind"),
                kind=Kind.FOLLOWS,
                says=f"slot behind its screw, {j.name}",
            ),
        ),
        bounds=(
            Bound(
                sum=j.size("slot") - needed,
                because="the slot is as long as its screw and the year's movement",
                yields=Yields.SEASON,
                code="drawer-bottom.short-slot",
                source="common practice",
                cure="a longer slot",
                place=j.place,
            ),
        ),
        rules=(
            Rule(sum=j.size("slot") - usual, because="movement, and half a millimetre either way"),
            Rule(sum=j.size("slot behind") - behind, because="room to shrink"),
        ),
    )
