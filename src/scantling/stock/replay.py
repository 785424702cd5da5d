"""Steps through a plan cut by cut and says what is wrong with it. Knows nothing of its planner.

Written apart from everything that makes plans: from the words of the job alone. Widths, knots
and thicknesses are worked out here a second time.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from scantling.exact import Fraction
from scantling.stock.boards import Board, Defect, Harm
from scantling.stock.job import Job, Wanted
from scantling.stock.plan import Plan, Sawn, Section


def faults(plan: Plan, *, job: Job) -> tuple[str, ...]:
    """Everything that keeps a plan from being sawn as it stands; empty if it can be."""
    boards = {board.name: board for board in job.boards}
    wanted = {each.part: each for each in job.wanted}
    return (*_cuts(plan, boards, wanted, job), *_demand(plan, wanted, job))


def _cuts(
    plan: Plan, boards: Mapping[str, Board], wanted: Mapping[str, Wanted], job: Job
) -> Iterator[str]:
    by_board: dict[str, list[Section]] = defaultdict(list)
    for section in plan.sections:
        by_board[section.board].append(section)
    for name, sections in by_board.items():
        board = boards.get(name)
        if board is None:
            yield f"there is no board {name}"
            continue
        yield from _crosscuts(board, sections, job)
        for section in sections:
            yield from _rips(board, section, job)
            for sawn in section.sawn:
                if sawn.part in wanted:
                    yield from _blank(board, section, sawn, wanted[sawn.part], job)


def _crosscuts(board: Board, sections: Sequence[Section], job: Job) -> Iterator[str]:
    trim = job.cutting.end_trim
    along = sorted(sections, key=lambda section: section.start)
    for section in along:
        if section.stop <= section.start:
            yield f"a section of {board.name} has no length"
        if section.start < trim or section.stop > board.length - trim:
            yield f"a section of {board.name} reaches into its trimmed ends"
    for one, other in pairwise(along):
        if other.start - one.stop < job.cutting.kerf_across:
            yield f"no kerf between two sections of {board.name}"


def _straightened(board: Board, section: Section) -> Fraction:
    """What is lost in jointing an edge of the section straight: its share of the crook. [mm]"""
    share = (section.stop - section.start) / board.length
    return board.crook * share * share


def _rips(board: Board, section: Section, job: Job) -> Iterator[str]:
    slope = (board.width_b - board.width_a) / board.length
    ends = (board.width_a + slope * section.start, board.width_a + slope * section.stop)
    room = min(ends) - _straightened(board, section)
    across = sorted(section.sawn, key=lambda sawn: sawn.near)
    if not across:
        yield f"a section of {board.name} holds nothing"
        return
    if across[0].near < 0 or across[-1].near + across[-1].width > room:
        yield f"a strip of {board.name} reaches over its edge"
    for one, other in pairwise(across):
        if other.near - (one.near + one.width) < job.cutting.kerf_along:
            yield f"no kerf between {one.part} and {other.part} in {board.name}"


def _blank(board: Board, section: Section, sawn: Sawn, wanted: Wanted, job: Job) -> Iterator[str]:
    name = sawn.part
    begins, ends = sawn.start, sawn.start + sawn.length
    if begins < section.start or ends > section.stop:
        yield f"{name} does not lie in its section of {board.name}"
    if sawn.length < wanted.length:
        yield f"{name} is too short in {board.name}"
    if not wanted.glued_up and sawn.width < wanted.width:
        yield f"{name} is too narrow in {board.name}"
    if board.wood != wanted.wood:
        yield f"{name} is of {wanted.wood}, and {board.name} is not"
    if ("flat", "rift", "quarter").index(board.cut) < (
        ("flat", "rift", "quarter").index(wanted.cut)
    ):
        yield f"{name} asks for {wanted.cut}, and {board.name} is {board.cut}"
    if _flat(board, sawn, job) < wanted.thickness:
        yield f"{name} is not thick enough in {board.name}"
    for defect in board.defects:
        yield from _over(board, section, sawn, wanted, defect=defect, job=job)


def _flat(board: Board, sawn: Sawn, job: Job) -> Fraction:
    """Thickness left when both faces are flat. [mm]"""
    length, width = sawn.length / board.length, sawn.width / max(board.width_a, board.width_b)
    rises = (
        board.bow * length * length,
        board.cup * width * width,
        board.twist * length * width / 2,
    )
    lost = sum(rises, Fraction(0))
    if not board.dressed and lost < job.cutting.planing:
        lost = job.cutting.planing
    return board.thickness - lost


def _over(
    board: Board, section: Section, sawn: Sawn, wanted: Wanted, *, defect: Defect, job: Job
) -> Iterator[str]:
    if defect.harm is Harm.LOOK:
        return
    # The survey counts across from the bare edge; jointing may have moved the edge inwards.
    near, far = defect.near - _straightened(board, section), defect.far
    left, right = sawn.start, sawn.start + sawn.length
    low, high = sawn.near, sawn.near + sawn.width
    if defect.stop <= left or right <= defect.start or far <= low or high <= near:
        return
    if defect.harm is Harm.SPOILS:
        yield f"{sawn.part} lies over the {defect.says} of {board.name}"
        return
    cutting = job.cutting
    kept_in = (
        defect.start >= left + cutting.knot_from_end
        and defect.stop <= right - cutting.knot_from_end
        and near >= low + cutting.knot_from_edge
        and far <= high - cutting.knot_from_edge
    )
    if wanted.clear or not kept_in:
        yield f"the {defect.says} of {board.name} comes where {sawn.part} wants none"


def _demand(plan: Plan, wanted: Mapping[str, Wanted], job: Job) -> Iterator[str]:
    found: dict[str, list[Sawn]] = defaultdict(list)
    for section in plan.sections:
        for sawn in section.sawn:
            found[sawn.part].append(sawn)
    yield from (f"nobody wants {name}" for name in found if name not in wanted)
    for name in plan.short:
        if name not in wanted:
            yield f"{name} is short, and nobody wants it"
        elif name in found:
            yield f"{name} is called short and sawn all the same"
    for name, each in wanted.items():
        if name not in plan.short:
            yield from _once(each, found[name], job)


def _once(wanted: Wanted, found: Sequence[Sawn], job: Job) -> Iterator[str]:
    if not found:
        yield f"{wanted.part} is missing"
    elif wanted.glued_up:
        yield from _panel(wanted, found, job)
    elif len(found) > 1:
        yield f"{wanted.part} is sawn {len(found)} times"


def _panel(wanted: Wanted, strips: Sequence[Sawn], job: Job) -> Iterator[str]:
    cutting = job.cutting
    net = [strip.width - cutting.strip_joint for strip in strips]
    if any(width < min(cutting.narrowest_strip, wanted.width) for width in net):
        yield f"a strip of {wanted.part} is too narrow"
    if any(width > cutting.widest_strip for width in net):
        yield f"a strip of {wanted.part} is too wide"
    if sum(net, Fraction(0)) < wanted.width:
        yield f"the strips of {wanted.part} do not make up its width"
