"""Relations of cupboard fronts, written out from the equations of the trade, for the size tests.

Labels F, DR, R and K in the sentences are those of the project's table of forms: face frame,
doors, frame and panel, drawers. Lengths are inches here and millimetres in the relations.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from scantling.sizes.linear import Linear, size_of, total
from scantling.sizes.model import (
    Alike,
    Bound,
    Dimension,
    Equation,
    Kind,
    Level,
    Measured,
    Relations,
    Rule,
    Stated,
    Yields,
)

INCH = Fraction(127, 5)
GRID = INCH / 32


def inch(text: str | int | Fraction) -> Fraction:
    """`1 3/4` -> millimetres."""
    return sum((Fraction(piece) for piece in str(text).split()), Fraction(0)) * INCH


def stated(**sizes: str) -> tuple[Stated, ...]:
    """Names with `__` for a point and `_` for a space."""
    return tuple(says(spelled(name), value) for name, value in sizes.items())


def spelled(name: str) -> str:
    return name.replace("__", ".").replace("_", " ")


def says(name: str, value: str | Fraction) -> Stated:
    return Stated(name=name, value=inch(value), text=str(value))


def reads(name: str, least: str, greatest: str | None = None) -> Measured:
    return Measured(name=name, least=inch(least), greatest=inch(greatest or least))


@dataclass
class Draft:
    """Relations as they are written down."""

    dimensions: list[Dimension] = field(default_factory=list)
    equations: list[Equation] = field(default_factory=list)
    bounds: list[Bound] = field(default_factory=list)
    rules: list[Rule] = field(default_factory=list)
    alike: list[Alike] = field(default_factory=list)

    def size(self, name: str, kind: Kind = Kind.TAPE, **more: object) -> Linear:
        self.dimensions.append(Dimension(name=name, kind=kind, **more))  # type: ignore[arg-type]  # tests only
        return size_of(name)

    def gap(self, name: str, kind: Kind = Kind.TAPE) -> Linear:
        return self.size(name, kind, positive=False)

    def equal(self, left: Linear, right: Linear, because: str) -> None:
        self.equations.append(Equation(sum=left - right, because=because))

    def usual(self, size: Linear, value: str | Linear, because: str = "usual") -> None:
        self._rule(size, value, because, Level.HABIT)

    def rule(self, size: Linear, value: str | Linear, because: str) -> None:
        self._rule(size, value, because, Level.RULE)

    def _rule(self, size: Linear, value: str | Linear, because: str, level: Level) -> None:
        wanted = value if isinstance(value, Linear) else Linear((), inch(value))
        self.rules.append(Rule(sum=size - wanted, because=because, level=level))

    def same(self, names: Iterable[str], because: str, sink: str | None = None) -> None:
        self.alike.append(Alike(names=tuple(names), because=because, sink=sink))

    def at_least(self, sum_: Linear, because: str, yields: Yields = Yields.SEASON) -> None:
        self.bounds.append(Bound(sum=sum_, because=because, yields=yields, code="sizes.bound"))

    def relations(self) -> Relations:
        return Relations(
            dimensions=tuple(self.dimensions),
            equations=tuple(self.equations),
            bounds=tuple(self.bounds),
            rules=tuple(self.rules),
            alike=tuple(self.alike),
        )


GROW = Fraction(274, 100000) * Fraction(695, 100)  # C_T of ash times the growth in moisture


def panelled(draft: Draft, name: str, wide: Linear, tall: Linear) -> None:
    """A frame with one panel: R1 to R9."""
    d, n = draft, name
    left, right = d.size(f"{n} left stile.width"), d.size(f"{n} right stile.width")
    top, bottom = d.size(f"{n} top rail.width"), d.size(f"{n} bottom rail.width")
    sight_wide, sight_tall = d.size(f"{n}.sight wide"), d.size(f"{n}.sight tall")
    d.equal(wide, left + right + sight_wide, "R1: stiles and sight make the width")
    d.equal(tall, top + bottom + sight_tall, "R2: rails and sight make the height")
    groove = d.size(f"{n}.groove depth", Kind.TOOL)
    across, along = d.size(f"{n} panel.width"), d.size(f"{n} panel.length")
    ease, side = d.gap(f"{n}.ease"), d.gap(f"{n}.gap side")
    d.equal(across, sight_wide + groove * 2 - side * 2, "R5: panel across the grain")
    d.equal(along, sight_tall + groove * 2 - ease * 2, "R6: panel along the grain")
    for member, tall_of in (("left", left), ("right", right)):
        stile = d.size(f"{n} {member} stile.length", stage=1)
        d.equal(stile, tall, "R3: stiles run through")
        thick = d.size(f"{n} {member} stile.thickness")
        d.usual(thick, "3/4", "door stock")
        d.usual(tall_of, "2 1/4", "door stiles")
    for member, width in (("top", top), ("bottom", bottom)):
        rail = d.size(f"{n} {member} rail.length", stage=1)
        tenon = d.size(f"{n} {member} rail.tenon length")
        d.equal(rail, sight_wide + tenon * 2, "R4: rail and its tenons")
        d.usual(tenon, "1 1/2", "door tenons")
        d.usual(d.size(f"{n} {member} rail.thickness"), "3/4", "door stock")
        haunch = d.size(f"{n} {member} rail.haunch")
        cheek = d.size(f"{n} {member} rail.tenon width")
        d.equal(cheek, width - groove - haunch, "R7: tenon beside groove and haunch")
        d.usual(haunch, "3/8", "haunch as long as the groove is deep")
        d.at_least(left - tenon - Linear((), inch("1/4")), "blind mortise", Yields.SEASON)
    d.same([f"{n} left stile.width", f"{n} right stile.width"], "stiles of one door")
    d.usual(top, "2 1/4", "top rail as the stiles")
    d.usual(bottom, "3", "bottom rail wider")
    d.usual(groove, "3/8")
    d.usual(ease, "1/32")
    d.usual(side, "3/16")
    grow = across * (GROW / 2) + Linear((), inch("1/32"))
    d.at_least(side - grow, "the panel swells in August")
    d.at_least(groove - side - Linear((), inch("1/8")), "the panel keeps its hold")


def door_pair(draft: Draft, name: str, wide: Linear, tall: Linear) -> None:
    """A pair of inset doors: DR2, DR3."""
    d = draft
    gaps = [d.gap(f"{name}.gap {at}") for at in ("left", "meet", "right")]
    left, right = d.size(f"{name} left.wide"), d.size(f"{name} right.wide")
    d.equal(wide, total([*gaps, left, right]), "DR3: doors and gaps fill the opening")
    for leaf, leaf_wide in (("left", left), ("right", right)):
        high = d.size(f"{name} {leaf}.tall")
        top, low = d.gap(f"{name} {leaf}.gap top"), d.gap(f"{name} {leaf}.gap bottom")
        d.equal(tall, high + top + low, "DR2: door and gaps fill the opening")
        d.usual(top, "1/16", "gap over a door")
        d.usual(low, "1/16", "gap under a door")
        panelled(d, f"{name} {leaf}", leaf_wide, high)
    d.same([f"{name} left.wide", f"{name} right.wide"], "the doors are a pair", None)
    for gap, usual in zip(gaps, ("1/16", "1/8", "1/16"), strict=True):
        d.usual(gap, usual, "gap beside a door")
    stiles = total(
        size_of(f"{name} {leaf} {side} stile.width")
        for leaf in ("left", "right")
        for side in ("left", "right")
    )
    wanted = stiles * GROW + Linear((), inch("1/32"))
    d.at_least(total(gaps) - wanted, "four stiles swell in August")


def drawer(draft: Draft, name: str, wide: Linear, tall: Linear) -> None:
    """One inset drawer: K1 to K6."""
    d, n = draft, name
    left_gap, right_gap = d.gap(f"{n}.gap left"), d.gap(f"{n}.gap right")
    top, low = d.gap(f"{n}.gap top"), d.gap(f"{n}.gap low")
    front_long, front_wide = d.size(f"{n} front.length"), d.size(f"{n} front.width")
    d.equal(front_long, wide - left_gap - right_gap, "K1: front fits the opening")
    d.equal(front_wide, tall - top - low, "K1: front fits the opening")
    deep, lap = d.size(f"{n}.deep"), d.size(f"{n} front.lap")
    groove, up, drop = (
        d.size(f"{n}.groove"),
        d.size(f"{n}.groove up"),
        d.size(f"{n} back.drop"),
    )
    thick = []
    for side in ("left", "right"):
        length, width = d.size(f"{n} {side} side.length"), d.size(f"{n} {side} side.width")
        thick.append(d.size(f"{n} {side} side.thickness"))
        d.equal(length, deep - lap, "K3: sides stop at the lap")
        d.equal(width, front_wide, "K3: sides as wide as the front")
        d.usual(thick[-1], "1/2", "drawer sides")
    back_long, back_wide = d.size(f"{n} back.length"), d.size(f"{n} back.width")
    d.equal(back_long, front_long, "K4: back as long as the front")
    d.equal(back_wide, front_wide - groove - up - drop, "K4: back clears the bottom")
    bottom_long, bottom_wide = d.size(f"{n} bottom.length"), d.size(f"{n} bottom.width")
    ease = d.gap(f"{n} bottom.ease")
    d.equal(bottom_long, front_long - total(thick) + groove * 2 - ease * 2, "K5: bottom's length")
    front_thick = d.size(f"{n} front.thickness")
    d.equal(bottom_wide, deep - front_thick + groove, "K5: bottom's width")
    for size, usual in (
        (deep, "16"), (lap, "1/4"), (groove, "1/4"), (up, "3/8"), (drop, "1/4"),
        (left_gap, "1/32"), (right_gap, "1/32"), (top, "1/8"), (low, "0"),
        (ease, "1/32"), (front_thick, "3/4"),
    ):  # fmt: skip
        d.usual(size, usual, "drawers of this shop")
    d.at_least(top - front_wide * GROW - Linear((), inch("1/32")), "the front swells in August")


def front(bays: int = 1, *, doors: bool = True) -> Relations:
    """A case with a face frame: in each bay two drawers side by side over a pair of doors.

    With one bay it is the front of the glaze cupboard, forms.md 18.
    """
    d = Draft()
    wide = d.size("case.wide")
    inside, frame = d.size("case.inside wide"), d.size("frame.wide")
    sides = [d.size(f"{s} side.thickness", Kind.MATE) for s in ("left", "right")]
    d.equal(inside, wide - total(sides), "C1: two sides and the inside make the width")
    d.same(["left side.thickness", "right side.thickness"], "sides of one stock")
    d.usual(sides[0], "3/4", "case stock")
    proud = [d.gap(f"frame.proud {s}") for s in ("left", "right")]
    d.equal(frame, wide + total(proud), "F7: the frame covers the case")
    stiles = [d.size(f"frame {s} stile.width") for s in ("left", "right")]
    d.same(["frame left stile.width", "frame right stile.width"], "stiles of one frame")
    for i, s in enumerate(("left", "right")):
        guide = d.gap(f"{s} guide.thickness")
        d.equal(guide, stiles[i] - proud[i] - sides[i], "F8: the guide fills to the stile")
        d.usual(proud[i], "0", "frame flush with the case")
    d.usual(stiles[0], "1 3/4", "frame stiles")
    posts = [d.size(f"frame post {i}.width") for i in range(1, bays)]
    for post in posts:
        d.usual(post, "1 3/4", "frame posts")
    openings = [d.size(f"bay {i}.wide") for i in range(1, bays + 1)]
    d.equal(frame, total([*stiles, *posts, *openings]), "F1: stiles and openings make the frame")
    d.same([f"bay {i}.wide" for i in range(1, bays + 1)], "bays alike") if bays > 1 else None
    tall, foot = d.size("case.tall"), d.size("frame.foot")
    rails = [d.size(f"frame {r} rail.width") for r in ("top", "mid", "bottom")]
    drawers_tall, doors_tall = d.size("drawer row.tall"), d.size("door row.tall")
    d.equal(tall, total([*rails, foot, drawers_tall, doors_tall]), "F2: rows make the height")
    for size, usual in zip(
        [tall, foot, *rails, drawers_tall, wide],
        ("37", "1", "1 1/2", "1 1/2", "3", "5", str(42 * bays)),
        strict=True,
    ):
        d.usual(size, usual, "cupboards of this shop")
    top_long = d.size("top.length")
    over = [d.gap(f"top.over {s}") for s in ("left", "right")]
    d.equal(top_long, wide + total(over), "the top oversails")
    for size in over:
        d.usual(size, "3/4", "a top oversails")
    for i, opening in enumerate(openings, 1):
        mullion = d.size(f"mullion {i}.width")
        d.usual(mullion, "1 1/2", "mullions")
        halves = [d.size(f"bay {i} drawer {s}.wide") for s in ("left", "right")]
        d.equal(opening, total([*halves, mullion]), "F1: drawers and mullion fill the bay")
        d.same([f"bay {i} drawer {s}.wide" for s in ("left", "right")], "drawers alike")
        for s, half in zip(("left", "right"), halves, strict=True):
            drawer(d, f"drawer {i} {s}", half, drawers_tall)
        if doors:
            door_pair(d, f"door {i}", opening, doors_tall)
    return d.relations()
