"""The order of the chain."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import islice
from types import MappingProxyType

import scantling.proofs
from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight, in_order
from scantling.joints._joint import Choice
from scantling.parts import Part
from scantling.piece import Piece
from scantling.piece._drafting import draft
from scantling.piece._form import Sketch
from scantling.proofs._proof import Case, Proof
from scantling.record.entry import NOTHING_RECORDED, Record
from scantling.record.facts import NO_FACTS, facts
from scantling.roster import members
from scantling.setting_out.answer import SetJoint, SettingOut, Stage
from scantling.setting_out.bench import NO_SIZES, Bench
from scantling.setting_out.fit import unmatched
from scantling.setting_out.lines import lines
from scantling.setting_out.memory import Memory
from scantling.setting_out.order import with_order
from scantling.setting_out.pausing import Pause, PausingMemory, PausingStore, at_no_time
from scantling.setting_out.recorded import Plan, changes, gone, kept
from scantling.setting_out.told import together
from scantling.setting_out.unsaid import told_of
from scantling.setting_out.year import gaps_of, through_the_year
from scantling.shop.habits import Habits
from scantling.shop.tools import Shop
from scantling.sizes.model import Measured, Sizes
from scantling.sizes.rows import Kept
from scantling.sizes.settle import Settled, settle
from scantling.sizes.solving import solve
from scantling.sizes.stopping import CountedWork, Stop
from scantling.solids.store import Store
from scantling.units import Unit

ENOUGH = 1500  # nodes looked at; the demo needs 20 at most
# a line that names no size is passed over; the others hold
LEAVE_SIZES_SOUND = ("unknown-name", "derived")  # of the room `sizes`
# what leaves a section out, so that the parts there are would stand for another piece
LEAVE_PARTS_OUT = (  # of `piece`
    "joint-does-not-fit",
    "name-taken",
    "nothing-to-stand-on",
    "row-stands-wrong",
)

NO_BOARDS: Mapping[str, Sequence[Fraction]] = MappingProxyType({})


def set_out(
    piece: Piece,
    *,
    shop: Shop,
    habits: Habits,
    measured: Sequence[Measured] = (),
    record: Record = NOTHING_RECORDED,
    store: Store | None = None,
    before: SettingOut | None = None,
    heard: Sequence[Finding] = (),
    attainable: Mapping[str, Sequence[Fraction]] = NO_BOARDS,
    stop: Stop | None = None,
) -> SettingOut:
    """The piece worked through: sizes, parts, joints, proofs.

    Args:
        piece: The piece as read.
        shop: Tools owned.
        habits: How the maker works.
        measured: Sizes of made parts, beside those of the record.
        record: What was measured and cut so far.
        store: Solids already worked out; kept between calls by whoever calls often.
        before: An earlier answer; what of it still applies is not worked out again.
        heard: What was found already, in the shop's file for one.
        attainable: By species, the thickness each board of the survey can be brought to. [mm]
        stop: When to leave off looking for better sizes. None: after the work that a piece of
            sensible figures never needs.

    Returns:
        Everything that follows, with all that was found. Same piece, same answer.
    """
    *_, last = stages(
        piece,
        shop=shop,
        habits=habits,
        measured=measured,
        record=record,
        store=store,
        before=before,
        heard=heard,
        attainable=attainable,
        stop=stop,
    )
    return last


def stages(
    piece: Piece,
    *,
    shop: Shop,
    habits: Habits,
    measured: Sequence[Measured] = (),
    record: Record = NOTHING_RECORDED,
    store: Store | None = None,
    before: SettingOut | None = None,
    heard: Sequence[Finding] = (),
    attainable: Mapping[str, Sequence[Fraction]] = NO_BOARDS,
    stop: Stop | None = None,
    pause: Pause = at_no_time,
) -> Iterator[SettingOut]:
    """The same piece as far as it has come: sized, then joined, then proven.

    Each answer holds for what it tells, and `stage` says what it does not tell yet. The last
    is that of `set_out`. What cannot be worked is told at once, and nothing comes after it.

    Args:
        piece: As for `set_out`, and so are all the others but the last.
        shop: Tools owned.
        habits: How the maker works.
        measured: Sizes of made parts, beside those of the record.
        record: What was measured and cut so far.
        store: Solids already worked out.
        before: An earlier answer, of whatever stage.
        heard: What was found already.
        attainable: By species, what its boards can be brought to. [mm]
        stop: When to leave off looking for better sizes.
        pause: Called often once the sizes are told; what it raises ends the stages.
    """
    store = store if store is not None else Store()
    told = facts(record)
    measured = (*measured, *told.measured)
    sketch = draft(piece, measured)
    memory = before.memory if before is not None else Memory()
    measure = piece.whole.measure
    shop = replace(shop, figures=habits.figures or measure, bought=measure)
    bench = Bench.of(sketch, piece, shop, habits, attainable=attainable, memory=memory)
    earlier = _earlier(before, bench)
    misdrawn = (*sketch.findings, *unmatched(bench, _to_begin_with(bench, earlier)))
    halted = _halt(f for f in misdrawn if f.code.removeprefix("piece.") in LEAVE_PARTS_OUT)
    # what a section that was left out would have made is not unknown
    findings = (
        *heard,
        *told.findings,
        *piece.findings,
        *misdrawn,
        *(() if halted else bench.findings),
    )
    nothing = SettingOut(
        piece=piece,
        shop=shop,
        habits=habits,
        sizes=NO_SIZES,
        parts=(),
        joints=(),
        lines=(),
        findings=in_order(together(findings)),
        stated=bench.stated(),
        record=record,
        facts=told,
        joined=bench.joined,
        store=store,
        memory=memory,
    )
    if not sketch.parts or halted:
        yield nothing
        return
    stop = CountedWork(most=ENOUGH) if stop is None else stop
    plan = None
    if told.measured or told.cut:
        plan = _planned(piece, shop, habits, attainable, before=before, stop=stop)
    settled = settled_sizes(
        bench, measured, earlier, kept=None if plan is None else kept(plan, told), stop=stop
    )
    solved, chosen = settled.solved, settled.choice
    findings += (*settled.findings, *solved.findings)
    nothing = replace(
        nothing,
        sizes=solved.sizes,
        settled=settled,
        plan=plan,
        changed=() if plan is None else tuple(changes(plan, solved.sizes, told=told)),
        findings=in_order(together(findings)),
    )
    if not solved.sizes:
        yield nothing
        return
    known = {line.name for line in bench.stated()} | {fact.name for fact in measured}
    findings += tuple(told_of(sketch.not_said, solved=solved, known=known))
    parts = bench.parts(solved.sizes, chosen, widest=habits.widest_strip)
    findings += tuple(gone(told, parts))
    # of sizes that do not hold, whatever else is wrong with them is no news
    sound = not _halt(
        f for f in solved.findings if f.code.removeprefix("sizes.") not in LEAVE_SIZES_SOUND
    )
    faults = bench.faults(solved.sizes, chosen, parts) if sound else ()
    findings += faults
    if lost := tuple(_lost(p, _places(sketch)) for p in parts if _least(p) <= 0):
        yield replace(nothing, findings=in_order(together((*findings, *lost))))
        return
    gaps = gaps_of(sketch.fittings, sizes=solved.sizes, strains=bench.strains)
    sized = replace(
        nothing,
        parts=parts,
        lines=lines(parts, habits),
        gaps=gaps,
        findings=in_order(together(findings)),
        stage=Stage.SIZED,
    )
    yield sized
    bench = replace(bench, memory=PausingMemory(memory, pause))
    joints = bench.joints(solved.sizes, chosen, parts)
    yield replace(sized, joints=joints, stage=Stage.JOINED)
    unit = habits.figures or piece.whole.measure
    case = _case(
        parts,
        joints,
        solved.sizes,
        sketch=sketch,
        unit=unit,
        store=PausingStore(store, pause),
    )
    if sound:
        findings += tuple(_proven(case, without={f.place for f in faults if _halt([f])}))
        findings += tuple(through_the_year(sketch.fittings, gaps, room=piece.whole.room, unit=unit))
    proven = replace(
        sized,
        joints=_touching(case, joints),
        findings=in_order(together(findings)),
        stage=Stage.PROVEN,
    )
    found = with_order(proven, before=before) if sound else proven
    store.next_round()
    yield found


def _halt(findings: Iterable[Finding]) -> bool:
    return any(finding.weight is Weight.HALT for finding in findings)


def _least(part: Part) -> Fraction:
    return min(part.extent.length, part.extent.width, part.extent.thickness)


def _lost(part: Part, places: Mapping[str, Place]) -> Finding:
    return Finding(
        code="proofs.part-has-no-size",
        weight=Weight.HALT,
        says=f"nothing is left of the {part.name}: one of its sizes is gone",
        cure="Look at the sizes said of it and of what holds it.",
        place=places.get(part.name),
        parts=(part.name,),
    )


def _planned(
    piece: Piece,
    shop: Shop,
    habits: Habits,
    attainable: Mapping[str, Sequence[Fraction]],
    *,
    before: SettingOut | None,
    stop: Stop,
) -> Plan:
    """The piece as it would be if nothing had been measured; an earlier plan where it still is."""
    made_from = (piece.text, shop, habits, tuple(attainable.items()))
    if before is not None and before.plan is not None and before.plan.of == made_from:
        return before.plan
    if before is not None and before.plan is None and before.settled is not None:
        were = (before.piece.text, before.shop, before.habits, made_from[-1])
        if were == made_from and before.facts == NO_FACTS:
            return Plan(of=made_from, settled=before.settled)
    memory = Memory() if before is None or before.plan is None else before.plan.memory
    bench = Bench.of(draft(piece), piece, shop, habits, attainable=attainable, memory=memory)
    earlier = None if before is None or before.plan is None else before.plan.settled
    settled = settled_sizes(bench, (), earlier, stop=stop)
    return Plan(of=made_from, settled=settled, memory=memory)


def settled_sizes(
    bench: Bench,
    measured: Sequence[Measured],
    before: Settled[dict[str, Choice]] | None,
    *,
    kept: Kept | None = None,
    stop: Stop | None = None,
) -> Settled[dict[str, Choice]]:
    """Sizes and choices that agree."""
    stated = bench.stated()
    return settle(
        _to_begin_with(bench, before),
        bench.relations,
        lambda solved, _: bench.choose(solved.sizes),
        solved_for=lambda relations, last: solve(
            relations,
            stated=stated,
            measured=measured,
            grid=bench.piece.finest,
            kept=kept,
            before=last,
            stop=stop,
            figures=bench.habits.figures or bench.piece.whole.measure,
        ),
        before=before.solved if before is not None else None,
    )


def _earlier(before: SettingOut | None, bench: Bench) -> Settled[dict[str, Choice]] | None:
    """What an earlier answer settled; its choices only where every joint is of the kind it was."""
    if before is None or before.settled is None:
        return None
    were = {joined.name: type(joined.joint) for joined in before.joined}
    if were == {j.name: type(j.joint) for j in bench.joined}:
        return before.settled
    return replace(before.settled, choice={})


def _to_begin_with(bench: Bench, before: Settled[dict[str, Choice]] | None) -> dict[str, Choice]:
    """The choices of an earlier answer, where there is one for the same joints.

    Joints choose by sizes alone, so it matters for nothing but time where they begin.
    """
    if before is not None and before.choice.keys() == {j.name for j in bench.joined}:
        return before.choice
    return bench.choose(None)


def _case(
    parts: Sequence[Part],
    joints: Sequence[SetJoint],
    sizes: Sizes,
    *,
    sketch: Sketch,
    unit: Unit,
    store: Store,
) -> Case:
    """What the proofs may ask."""
    return Case(
        parts=tuple(parts),
        store=store,
        contacts=tuple(c for j in joints for c in j.contacts),
        presses=tuple(p for j in joints for p in j.presses),
        sizes=sizes,
        places=_places(sketch),
        pulled=sketch.pulled,
        unit=unit,
    )


def _touching(case: Case, joints: Sequence[SetJoint]) -> tuple[SetJoint, ...]:
    """The joints with what truly touches of each of their contacts."""
    areas = iter(case.touched)
    return tuple(replace(j, areas=tuple(islice(areas, len(j.contacts)))) for j in joints)


def _proven(case: Case, *, without: Collection[Place | None]) -> Iterator[Finding]:
    """What the proofs find, one after the other.

    Args:
        case: What is proven.
        without: Places where a joint has told already why it cannot be made: what the proofs find
            there follows from it.
    """
    proofs = members(scantling.proofs, base=Proof)
    found = (finding for proof in proofs.values() for finding in proof().findings(case))
    return (each for each in found if each.place is None or each.place not in without)


def _places(sketch: Sketch) -> Mapping[str, Place]:
    """Where in the file each part and joint was asked for."""
    parts = {part.name: part.place for part in sketch.parts if part.place}
    return parts | {j.name: j.place for j in sketch.joined if j.place}
