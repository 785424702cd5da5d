"""A maker's rule: the blanks that fewest boards can give first, the longest of them first.

A board is crosscut to a section as long as the longest blank still wanted, and the section is
ripped from edge a: blanks of that length or less side by side, then strips of a panel as wide as
the rest allows. Of all places on all boards the section goes where least of its width is wasted,
into a board that is cut already rather than a fresh one, and never into thick wood where thin
wood does.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum

from scantling.stock._lumber import Blank, Lumber, Saws, exact, up, widest_from
from scantling.stock._section import Strip, ripped
from scantling.stock.job import Job
from scantling.stock.plan import Plan, Sawn, Section


class Turn(StrEnum):
    """What is ripped from a section first."""

    WIDE = "wide"  # the widest blank
    STRIPS = "strips"  # strips of panels, so that blanks of one piece fill what they leave
    NARROW = "narrow"  # the narrowest blank


@dataclass(kw_only=True)
class _Panel:
    """A panel being made up. [1/1000 mm]"""

    lacks: int  # net width that strips must still bring
    begun: bool = False


@dataclass(frozen=True, kw_only=True)
class _Filled:
    """A section with what it would hold. [1/1000 mm]"""

    lumber: Lumber
    start: int
    stop: int
    cuts: tuple[Strip, ...]
    rank: tuple[float, ...]  # the less the better [-]


@dataclass(kw_only=True)
class _Work:
    """A plan being made."""

    job: Job
    saws: Saws
    widest: Mapping[str, Mapping[str, int]]  # by board, strip each part can be got out of
    turns: Sequence[Turn]
    lumber: list[Lumber]
    blanks: list[Blank]  # in the order they are seen to
    panels: dict[str, _Panel]
    made: list[_Filled] = field(default_factory=list)
    short: list[str] = field(default_factory=list)


def by_rule(job: Job, *, turns: Sequence[Turn] = tuple(Turn)) -> Plan:
    """A plan by the maker's rule. It can always be sawn; what it finds no place for is short.

    Args:
        job: Boards, blanks and saws.
        turns: Which ways of filling a section are tried.
    """
    dropped: list[str] = []
    while True:
        work = _work(job, turns, without=dropped)
        _all_placed(work)
        unfinished = [name for name in work.short if work.panels.get(name, _NO_PANEL).begun]
        if not unfinished:
            return _plan(work, dropped)
        # strips of a panel that cannot be finished would hold room that others need
        dropped.append(unfinished[0])


_NO_PANEL = _Panel(lacks=0)


def _work(job: Job, turns: Sequence[Turn], *, without: Sequence[str]) -> _Work:
    widest = {
        board.name: {
            each.part: most for each in job.wanted if (most := widest_from(each, board, job=job))
        }
        for board in job.boards
    }
    count = {w.part: sum(w.part in parts for parts in widest.values()) for w in job.wanted}
    blanks = [
        Blank(wanted=each, length=up(each.length), width=up(each.width))
        for each in job.wanted
        if each.part not in without
    ]
    blanks.sort(key=lambda b: (count[b.name], -b.length, -b.width, b.name))
    return _Work(
        job=job,
        saws=Saws.of(job.cutting),
        widest=widest,
        turns=turns,
        lumber=[Lumber.of(board, trim=job.cutting.end_trim) for board in job.boards],
        blanks=blanks,
        panels={b.name: _Panel(lacks=b.width) for b in blanks if b.wanted.glued_up},
    )


def _all_placed(work: _Work) -> None:
    while work.blanks:
        first = work.blanks[0]
        best = min(_places(work, first), key=lambda found: found.rank, default=None)
        if best is None:
            work.short.append(first.name)
            work.blanks.pop(0)
        else:
            _take(work, best)


def _take(work: _Work, found: _Filled) -> None:
    found.lumber.take(start=found.start, stop=found.stop, kerf=work.saws.across)
    work.made.append(found)
    for cut in found.cuts:
        panel = work.panels.get(cut.blank.name)
        if panel is not None:
            panel.lacks -= cut.net
            panel.begun = True
        if panel is None or panel.lacks <= 0:
            work.blanks.remove(cut.blank)


def _places(work: _Work, first: Blank) -> Iterator[_Filled]:
    """Every section that would hold the first blank, in every board and every way."""
    lacks = {name: panel.lacks for name, panel in work.panels.items()}
    cut_into = {found.lumber.board.name for found in work.made}
    for lumber in work.lumber:
        board = lumber.board
        widest = work.widest[board.name]
        if first.name not in widest:
            continue
        others = [b for b in work.blanks[1:] if b.name in widest]
        spare = float(board.thickness - first.wanted.thickness)
        fine = float(board.cut not in {first.wanted.cut, "flat"})
        for start in lumber.starts(first.length):
            stop = start + first.length
            for turn in work.turns:
                waiting = [first, *_turned(others, turn)]
                cuts = ripped(lumber, (start, stop), waiting, lacks, saws=work.saws, widest=widest)
                if cuts:
                    used = sum(cut.blank.length * cut.width for cut in cuts)
                    waste = 1 - used / (
                        (stop - start) * max(lumber.room(start=start, stop=stop), 1)
                    )
                    fresh = 0.0 if board.name in cut_into else 0.15
                    rank = (round(spare / 5), fine, round(waste + fresh, 4), start)
                    yield _Filled(lumber=lumber, start=start, stop=stop, cuts=cuts, rank=rank)


_ORDER: dict[Turn, Callable[[Blank], tuple[object, ...]]] = {
    Turn.WIDE: lambda b: (b.wanted.glued_up, -b.length, -b.width),
    Turn.STRIPS: lambda b: (not b.wanted.glued_up, -b.length, -b.width),
    Turn.NARROW: lambda b: (b.wanted.glued_up, -b.length, b.width),
}


def _turned(blanks: Sequence[Blank], turn: Turn) -> list[Blank]:
    return sorted(blanks, key=_ORDER[turn])


def _plan(work: _Work, dropped: Sequence[str]) -> Plan:
    """The plan in exact lengths, boards as they come on the rack."""
    place = {board.name: i for i, board in enumerate(work.job.boards)}
    made = sorted(work.made, key=lambda found: (place[found.lumber.board.name], found.start))
    missing = {*work.short, *dropped}
    return Plan(
        sections=tuple(_section(found) for found in made),
        short=tuple(w.part for w in work.job.wanted if w.part in missing),
    )


def _section(found: _Filled) -> Section:
    return Section(
        board=found.lumber.board.name,
        start=exact(found.start),
        stop=exact(found.stop),
        sawn=tuple(
            Sawn(
                part=cut.blank.name,
                start=exact(cut.start),
                length=exact(cut.blank.length),
                near=exact(cut.near),
                width=exact(cut.width),
            )
            for cut in found.cuts
        ),
    )
