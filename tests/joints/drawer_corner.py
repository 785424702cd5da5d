"""Front corner of a drawer. E12 is one of a set of joints worked by hand for this project."""

from collections.abc import Mapping
from fractions import Fraction

from tests.joints.sawn import Sawn, said

from scantling.joints._joint import Bench, Beside
from scantling.joints._tail_bench import corner_bench
from scantling.joints._tails import Layout
from scantling.joints.half_blind_dovetail import HalfBlindDovetail
from scantling.parts import Box, Cut, Extent, Span
from scantling.sizes.linear import exactly

E12 = HalfBlindDovetail(
    tails=4, half_pin=said(6), pin=said(4), lap=said(5), slope=said(Fraction(1, 6))
)


def size(length: int | str, width: int | str, thickness: int | str) -> Extent:
    return Extent(length=Fraction(length), width=Fraction(width), thickness=Fraction(thickness))


def hidden(low: int, *, role: str = "enters") -> Beside:
    """A groove 5 wide and 6 deep on the insides, that much up from the lower edge."""
    return Beside(
        what="hide",
        owner="bottom in grooves",
        role=role,
        axis=1,
        start=exactly(low),
        size=exactly(5),
        depth=exactly(6),
    )


def corner(
    joint: HalfBlindDovetail = E12,
    *,
    width: int | str = 138,
    front: int | str | None = None,
    set_off: int = 0,
    groove: int | None = None,
    thick: int | str = 20,
) -> Bench:
    return corner_bench(
        joint,
        name="front at side",
        board=size(410, width if front is None else front, thick),
        tails=size(250, width, 12),
        set_off=Fraction(set_off),
        beside=() if groove is None else (hidden(groove), hidden(groove, role="receives")),
    )


def figures(made: Sawn) -> Mapping[str, Fraction]:
    drawn = made.j.joint.drawn(made.j, sizes=made.sizes, choice=made.choice)
    return {d.word: d.value for d in drawn}


def layout(made: Sawn) -> Layout:
    assert isinstance(made.j.joint, HalfBlindDovetail)
    return made.j.joint.layout(made.j, sizes=made.sizes, choice=made.choice)


def ploughed(low: int) -> dict[str, tuple[Cut, ...]]:
    """The grooves that the bottom's own joint would make."""
    shape = Box(across=Span(Fraction(low), Fraction(low + 5)), into=Span(None, Fraction(6)))
    cut = Cut(name="groove", owner="bottom in grooves", shape=shape)
    return {"front": (cut,), "side": (cut,)}
