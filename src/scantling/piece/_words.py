"""Short words in which forms write relations."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight
from scantling.piece._form import Whole
from scantling.roster import nearest
from scantling.sizes.linear import Linear
from scantling.sizes.model import Alike, Bound, Dimension, Equation, Kind, Level, Rule, Yields
from scantling.units import Unit


def free(
    name: str,
    *,
    says: str = "",
    kind: Kind = Kind.TAPE,
    may_be_nothing: bool = False,
    stage: int = 0,
) -> Dimension:
    """A dimension of an assembly: more than 0, or at least 0 for a gap."""
    return Dimension(
        name=name, kind=kind, says=says or name, positive=not may_be_nothing, stage=stage
    )


def follows(found: Linear, parts: Linear, because: str) -> Equation:
    """`found` equals `parts`."""
    return Equation(sum=found - parts, because=because)


def habit(
    found: Linear,
    value: Linear | Fraction | int,
    because: str,
    *,
    level: Level = Level.HABIT,
    source: str = "common practice",
) -> Rule:
    """`found` would be `value` [mm] if nothing stronger spoke."""
    return Rule(sum=found - value, because=because, level=level, source=source)


def unsaid(found: Linear, value: Linear | Fraction) -> Rule:
    """`found` is `value` [mm] where nobody says and nothing else settles it; weakest of all."""
    return habit(found, value, "nobody said, and nothing else settles it")


def equally(several: Sequence[Linear], because: str) -> tuple[Rule, ...]:
    """Sums that are all as large as the last; an odd mark of the rule goes to one of them.

    A habit, unlike sizes that are `alike`: no rail is made an odd width for its sake.
    """
    return tuple(habit(each - several[-1], 0, because) for each in several[:-1])


def alike(names: tuple[str, ...], because: str, *, sink: str | None = None) -> Alike:
    """Dimensions kept equal as far as the rule's marks allow."""
    return Alike(names=names, because=because, sink=sink)


def at_least(
    found: Linear,
    least: Linear | Fraction | int,
    because: str,
    *,
    code: str,
    cure: str,
    source: str = "common practice",
) -> Bound:
    """`found` is no less than `least` [mm]; broken as little as possible, and said."""
    return Bound(
        sum=found - least,
        because=because,
        yields=Yields.SEASON,
        code=code,
        cure=cure,
        source=source,
    )


def inch_or_mm(whole: Whole, *, inch: Fraction, mm: Fraction | int) -> Fraction:
    """The habit of the maker's own measure: two habits, not conversions. [mm]"""
    return inch if whole.measure is Unit.INCH else Fraction(mm)


def nothing_there(said: Place | None, *, says: str, cure: str) -> Finding:
    """What a section asks for is not there."""
    return Finding(
        code="piece.nothing-to-stand-on", weight=Weight.HALT, says=says, cure=cure, place=said
    )


def or_nearest(word: str, known: Iterable[str], *, what: str) -> str:
    """The cure for a name that is not known."""
    names = sorted(known)
    near = nearest(word, names)
    if near is not None:
        return f"did you mean {near!r}?"
    return f"known here: {', '.join(names)}" if names else f"there is no {what} yet"
