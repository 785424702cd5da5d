"""Fielded panel: a panel with bevelled edges, free to move in a grooved frame."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._frame import Range, leaving
from scantling.joints._joint import (
    Bench,
    Choice,
    Contact,
    DrawnSize,
    Estimate,
    Fit,
    Fixing,
    Gap,
    Glue,
    Joined,
    Joint,
    Move,
    Said,
    SeatRole,
    State,
    Strains,
    Woods,
    lifted,
    option,
    rectangle,
)
from scantling.joints._panel import (
    FRAME,
    at_edge,
    chosen_for_panel,
    panel_bench,
    panel_relations,
    panel_seasons,
    season_gaps,
)
from scantling.joints._panel_faults import panel_faults
from scantling.joints._season import room
from scantling.parts import (
    ACROSS,
    ALONG,
    INTO,
    Box,
    Cut,
    Part,
    Point,
    Profile,
    Span,
    Way,
)
from scantling.shop.habits import Habits
from scantling.shop.operations import Operation, Reference, Setting, SetTo, operation
from scantling.shop.tools import Shop, Tool
from scantling.sizes.model import Relations, Sizes

_EDGES = (
    ("left", ACROSS, False),
    ("right", ACROSS, True),
    ("below", ALONG, False),
    ("above", ALONG, True),
)


@dataclass(frozen=True, kw_only=True)
class FieldedPanel(Joint):
    """A panel whose four edges are bevelled to a flat tongue, dry in the grooves of its frame.

    The joint owns the grooves. The tongue lies against the groove's back wall and the panel's
    back with it; a thicker panel is rabbeted behind. Its ends have a fixed ease; its sides have a
    gap that holds the growth of the dampest spell and lets it keep hold in the driest. Pinned at
    the middle of each end, half the movement goes to each side.
    Own dimensions: `groove`, `set in`, `depth`, `side gap`, `end ease`, `set back`,
    `edge`, `flat`, `margin`, `step`.

    References:
        Handwork in Wood, 1910, on panels; the figures are common practice.
    """

    title: ClassVar[str] = "fielded panel"

    groove: Said | None = option(dimension="groove", says="width of the groove")
    deep: Said | None = option(dimension="depth", says="depth of the groove")
    set_in: Said | None = option(dimension="set in", says="groove behind the frame's face")
    set_back: Said | None = option(
        dimension="set back", says="panel behind the frame's face", reads="offset"
    )
    side_gap: Said | None = option(dimension="side gap", says="room on each side", reads="gap")
    end_ease: Said | None = option(dimension="end ease", says="room at each end", reads="gap")
    # asked of the seasons, never set out
    ease: Said | None = field(default=None, metadata={"says": "room left damp", "reads": "gap"})
    hold: Said | None = field(default=None, metadata={"says": "hold left dry", "reads": "gap"})
    edge: Said | None = option(dimension="edge", says="thickness of the tongue")
    flat: Said | None = option(dimension="flat", says="width of the flat tongue")
    margin: Said | None = option(dimension="margin", says="from the edge to the field")
    step: Said | None = option(dimension="step", says="step at the field", reads="gap")
    pinned: bool = True  # at the middle of each end

    @classmethod
    def seats(cls) -> tuple[SeatRole, ...]:
        """1. The panel, and the four members round it."""
        return (
            SeatRole(role="panel", means="along: end below; across: left edge; into: face side"),
            *(
                SeatRole(
                    role=role, means="along: as the panel; across: inner edge; into: face side"
                )
                for role in FRAME
            ),
        )

    def relations(self, j: Joined, *, choice: Choice, strains: Strains) -> Relations:
        """2. Groove, gaps, edge, and both ends of the year."""
        found = panel_relations(j, choice=choice)
        asked = self._asked(choice)
        return found + panel_seasons(j, strains=strains, is_pinned=self.pinned, **asked)

    def _asked(self, choice: Choice) -> dict[str, Fraction]:
        return {
            word: choice[word] if said is None else said.value
            for word, said in (("ease", self.ease), ("hold", self.hold))
        }

    def choose(
        self,
        j: Joined,
        *,
        sizes: Sizes | None,
        shop: Shop,
        habits: Habits,
        woods: Woods,
        strains: Strains,
    ) -> Choice:
        """3. The groove's iron, room for the year, and whether the back is rabbeted."""
        del habits, woods
        is_said = self.set_back is not None
        found = chosen_for_panel(j, sizes=sizes, shop=shop, set_back_is_said=is_said)
        strain = strains.get(j.seat("panel").part)
        if sizes is None or strain is None:
            return found
        ease = found["ease"] if self.ease is None else self.ease.value
        needed = j.width("panel").at(sizes) * strain.widest / 2 + ease
        gap = room(found["side gap"], needed=needed, mark=shop.finest)
        return Choice.of({**dict(found.values), "side gap": gap})

    def _front(self, j: Joined, sizes: Sizes, choice: Choice) -> Fraction:
        """Wood taken before the tongue, from the panel's face. [mm]"""
        if choice["rabbet"]:
            return sizes[j.own("set in")] - sizes[j.own("set back")]
        return j.thickness("panel").at(sizes) - sizes[j.own("edge")]

    def cuts(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Mapping[str, tuple[Cut, ...]]:
        """4. A groove in each member, a bevel along each edge of the panel."""
        start, wide = sizes[j.own("set in")], sizes[j.own("groove")]
        shape = Box(across=Span(None, sizes[j.own("depth")]), into=Span(start, start + wide))
        words = {"into start": "set in", "into size": "groove", "across size": "depth"}
        sized = {word: j.own(name) for word, name in words.items()}
        found: dict[str, tuple[Cut, ...]] = {}
        for role in FRAME:
            seat = j.seat(role)
            cut = seat.cut(sizes, name=f"groove {role}", owner=j.name, shape=shape, sized=sized)
            found[seat.part] = (*found.get(seat.part, ()), cut)
        found[j.seat("panel").part] = tuple(self._edges(j, sizes=sizes, choice=choice))
        return found

    def _edges(self, j: Joined, *, sizes: Sizes, choice: Choice) -> Iterator[Cut]:
        front = self._front(j, sizes, choice)
        behind = front + sizes[j.own("edge")]
        flat = sizes[j.own("flat")]
        for role, axis, is_far in _EDGES:
            seat = at_edge(j.seat("panel"), axis=axis, is_far=is_far)
            if front > 0:
                shape = self._bevel(j, sizes=sizes, front=front, across=axis)
                yield seat.cut(
                    sizes,
                    name=f"bevel {role}",
                    owner=j.name,
                    shape=shape,
                    sized=self._bevel_words(j, shape),
                )
            if choice["rabbet"] and behind < j.thickness("panel").at(sizes):
                back, span = Span(behind, None), Span(None, flat)
                box = Box(along=span, into=back) if axis == ALONG else Box(across=span, into=back)
                word = "along size" if axis == ALONG else "across size"
                yield seat.cut(
                    sizes,
                    name=f"back rabbet {role}",
                    owner=j.name,
                    shape=box,
                    sized={word: j.own("flat")},
                )

    def _bevel(self, j: Joined, *, sizes: Sizes, front: Fraction, across: int) -> Profile:
        """The flat tongue and the slope up to the step, in one outline from the edge."""
        flat, margin = sizes[j.own("flat")], sizes[j.own("margin")]
        step = min(sizes[j.own("step")], front)
        zero = Fraction(0)
        points = [(zero, zero), (zero, front), (flat, front), (margin, step), (margin, zero)]
        if step == front:
            points = [(zero, zero), (zero, front), (margin, front), (margin, zero)]
        if step == 0:
            points.pop()
        return Profile(
            axis=ACROSS if across == ALONG else ALONG,
            points=tuple(points),
            open_sides=frozenset({0, len(points) - 1}),
        )

    def _bevel_words(self, j: Joined, shape: Profile) -> dict[str, str]:
        if len(shape.points) < len(("edge", "tongue", "slope", "step", "field")):
            return {}
        word = "along" if shape.axis == ACROSS else "across"
        dimensions = {
            f"point 2 {word}": "flat",
            f"point 3 {word}": "margin",
            "point 3 into": "step",
        }
        return {measure: j.own(name) for measure, name in dimensions.items()}

    def loose(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Part, ...]:
        """5. Nothing of its own: a pin at each end is a brad, driven where the maker likes."""
        del j, sizes, choice, parts
        return ()

    def moves(
        self, j: Joined, *, state: State, sizes: Sizes, parts: Mapping[str, Part]
    ) -> tuple[Move, ...]:
        """6. Each member is drawn off the panel's edge; in a closed frame nothing leaves."""
        del sizes
        if state is not State.OPEN:
            return ()
        seat = j.seat("panel")
        found: list[Move] = []
        for role, axis, is_far in _EDGES:
            way = seat.way(axis=axis, part=parts[seat.part])
            found += leaving(role, way if is_far else way.opposite)
        return tuple(found)

    def contacts(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Contact, ...]:
        """7. The tongue on a wall of each groove, dry: its back wall, or the front one."""
        length, width = j.length("panel").at(sizes), j.width("panel").at(sizes)
        depth = sizes[j.own("depth")]
        side, end = depth - sizes[j.own("side gap")], depth - sizes[j.own("end ease")]
        front = self._front(j, sizes, choice)
        at = front if choice["rabbet"] else front + sizes[j.own("edge")]
        wall = sizes[j.own("set in")] + (0 if choice["rabbet"] else sizes[j.own("groove")])
        if at + sizes[j.own("set back")] != wall:
            return ()  # it hangs free between the walls; a fault says so
        within: Range = (side, width - side)
        flats: dict[str, tuple[Range, Range]] = {
            "left": ((end, length - end), (Fraction(0), side)),
            "right": ((end, length - end), (width - side, width)),
            "below": ((Fraction(0), end), within),
            "above": ((length - end, length), within),
        }
        return tuple(
            self._patch(j, role, _flat(at, along, across), sizes=sizes, parts=parts)
            for role, (along, across) in flats.items()
        )

    def _patch(
        self,
        j: Joined,
        role: str,
        points: tuple[Point, ...],
        *,
        sizes: Sizes,
        parts: Mapping[str, Part],
    ) -> Contact:
        seat = j.seat("panel")
        return Contact(
            between=(j.seat(role).part, seat.part),
            joined=j.name,
            zone=f"tongue {role}",
            glue=Glue.DRY,
            fit=Fit.FLOAT,
            patch=lifted(seat, points, sizes=sizes, part=parts[seat.part]),
        )

    def fixings(
        self, j: Joined, *, sizes: Sizes, choice: Choice, parts: Mapping[str, Part]
    ) -> tuple[Fixing, ...]:
        """8. A pin at the middle of each end, if it is pinned: held sideways, free along."""
        del choice
        if not self.pinned:
            return ()
        seat = j.seat("panel")
        part = parts[seat.part]
        across = seat.way(axis=ACROSS, part=part)
        middle, deep = j.width("panel").at(sizes) / 2, j.thickness("panel").at(sizes)
        reach = (sizes[j.own("depth")] - sizes[j.own("end ease")]) / 2
        length = j.length("panel").at(sizes)
        held = frozenset({across, across.opposite})
        return tuple(
            Fixing(
                between=(j.seat(role).part, seat.part),
                at=lifted(seat, [(along, middle, deep)], sizes=sizes, part=part)[0],
                holds=held,
                free=frozenset(Way) - held,
                by="pin",
            )
            for role, along in (("below", reach), ("above", length - reach))
        )

    def gaps(self, j: Joined, *, choice: Choice) -> tuple[Gap, ...]:
        """9. Room on each side for half the panel's movement, or for all of it if unpinned."""
        asked = self._asked(choice)
        return (
            *season_gaps(j, is_pinned=self.pinned, **asked),
            Gap(
                name=j.own("end ease"),
                at_bench=j.size("end ease"),
                moving=(),
                least=Fraction(0),
                greatest=None,
                because="wood keeps its length; the ease lets the frame close",
                source="common practice",
            ),
        )

    def holds(
        self, j: Joined, *, sizes: Sizes, choice: Choice, woods: Woods
    ) -> tuple[Estimate, ...]:
        """10. Nothing: it is carried, and stiffens the frame by no figure one can rely on."""
        del j, sizes, choice, woods
        return ()

    def work(
        self, j: Joined, *, choice: Choice, shop: Shop, habits: Habits
    ) -> tuple[Operation, ...]:
        """11. Grooves at one fence, the panel sized from the dry frame, raised, finished first."""
        del shop, habits
        panel = j.seat("panel").part
        members = tuple(j.seat(role).part for role in FRAME)
        near = SetTo(j.own("set in"), "near wall of the groove", Reference.FACE_SIDE)
        deep = SetTo(j.own("depth"), "depth of the groove, from the inner edge")
        margin = SetTo(j.own("margin"), "edge of the field, in from the edges of the panel")
        fence = Setting(held_by=Tool.PLOUGH, to=(near, deep))
        field = Setting(held_by=Tool.CUTTING_GAUGE, to=(margin,))
        note = "ends before edges; each edge tried with an offcut of the grooved frame"
        rabbet = "; back rabbet last" if choice["rabbet"] else ""
        return (
            operation(
                "plough groove", *members, setting=fence, note="fence on every face side alike"
            ),
            operation("take size", panel, note="from the frame put together dry"),
            operation("raise panel", panel, setting=field, note=note + rabbet),
            operation("prefinish", panel, note="edges too: a bare strip shows when it shrinks"),
        )

    def drawn(self, j: Joined, *, sizes: Sizes, choice: Choice) -> tuple[DrawnSize, ...]:
        """12. The section of the edge, with the slope of its bevel."""
        front = self._front(j, sizes, choice)
        run = sizes[j.own("margin")] - sizes[j.own("flat")]
        rise = front - min(sizes[j.own("step")], front)
        left = j.thickness("panel").at(sizes) - front - sizes[j.own("edge")]
        words = ("edge", "flat", "margin", "step", "side gap", "end ease")
        return (
            *(DrawnSize(word=w, value=sizes[j.own(w)], dimension=j.own(w)) for w in words),
            DrawnSize(word="before the tongue", value=front, reference="face side"),
            DrawnSize(word="behind the tongue", value=left),
            DrawnSize(word="bevel", value=rise / run if run > 0 else Fraction(0), unit="ratio"),
        )

    def faults(
        self, j: Joined, *, sizes: Sizes, choice: Choice, shop: Shop, parts: Mapping[str, Part]
    ) -> tuple[Finding, ...]:
        """13. No iron, thin walls, a loose or a proud panel, no field, no bevel, too wide."""
        del parts
        front = self._front(j, sizes, choice)
        return panel_faults(j, sizes=sizes, shop=shop, front=front)

    @classmethod
    def bench(cls) -> Bench:
        """A panel 15 thick between stiles 55 and 60, rails 62 and 78, all 22 thick. [mm]"""
        return panel_bench(cls(), thick=Fraction(15))


def _flat(at: Fraction, along: Range, across: Range) -> tuple[Point, ...]:
    return rectangle(axis=INTO, at=at, first=along, second=across)
