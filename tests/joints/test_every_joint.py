"""What holds for every joint of the roster, by its own case on the bench."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, replace
from fractions import Fraction
from functools import cache, reduce
from pathlib import Path

import pytest
from tests.joints.on_the_bench import SHOP, Built, built, strains, woods

import scantling.joints
from scantling.findings import Finding
from scantling.joints._joint import QUESTIONS, Bench, Glue, Joint, Motion, Move, State, owed
from scantling.parts import Part
from scantling.parts.drawn import drawn
from scantling.parts.frame import WIDE
from scantling.parts.solid import finished, placed, turn
from scantling.proofs.claims import Claims
from scantling.proofs.contact import TrueContact
from scantling.proofs.interference import Interference
from scantling.proofs.one_solid import OneSolid
from scantling.proofs.takes_wood import TakesWood
from scantling.roster import members
from scantling.shop.habits import Habits
from scantling.solids.kernel import NOISE, standing
from scantling.solids.pairs import overlaps
from scantling.solids.store import Store

ROSTER: dict[str, type[Joint]] = dict(members(scantling.joints, base=Joint))
TABLE = Path(__file__).with_name("owed.txt")
ALWAYS = {"seats", "relations", "choose", "cuts", "loose", "contacts", "drawn"}
WHOLE = {"half lap", "half-blind dovetail", "shelf pins", "shiplap"}  # answer all thirteen

PROOFS = (Interference, OneSolid, Claims, TakesWood, TrueContact)
STEPS = (Fraction(1, 20), Fraction(2, 5), Fraction(2))  # [mm] how far a way out is tried

every_joint = pytest.mark.parametrize("title", ROSTER)


@cache
def on_bench(title: str) -> Built:
    return built(ROSTER[title].bench())


@cache
def on_the_other_hand(title: str) -> Built:
    return built(_mirrored(ROSTER[title].bench()))


def read_table(text: str) -> dict[str, tuple[str, ...]]:
    """Answers owed by joint, from lines like `housing: holds work`."""
    lines = [line for line in text.splitlines() if line and not line.startswith("#")]
    rows = (line.partition(":") for line in lines)
    return {title.strip(): tuple(words.split()) for title, _, words in rows}


def differences(
    table: Mapping[str, tuple[str, ...]], joints: dict[str, Iterable[str]]
) -> tuple[str, ...]:
    """Where the table and the joints part."""
    found = []
    for title, questions in joints.items():
        listed = set(table.get(title, ()))
        found += [f"{title} owes {q}, which is not in the table" for q in set(questions) - listed]
        found += [f"{title} has answered {q}: strike it out" for q in listed - set(questions)]
    found += [f"{title} is no joint" for title in table if title not in joints]
    return tuple(sorted(found))


def test_the_table_of_answers_owed_is_true() -> None:
    assert differences(read_table(TABLE.read_text()), {t: owed(c) for t, c in ROSTER.items()}) == ()


def test_a_new_debt_and_a_settled_one_are_noticed() -> None:
    table = {"housing": ("holds",), "tongue": ("work",)}
    assert differences(table, {"housing": ("work",)}) == (
        "housing has answered holds: strike it out",
        "housing owes work, which is not in the table",
        "tongue is no joint",
    )


@every_joint
def test_what_must_be_answered_is(title: str) -> None:
    wanted = set(QUESTIONS) if title in WHOLE else ALWAYS
    assert wanted & set(owed(ROSTER[title])) == set()


@every_joint
def test_seats_are_filled_as_the_joint_says(title: str) -> None:
    j = ROSTER[title].bench().joined
    roles = {seat.role: seat for seat in j.joint.seats()}
    assert set(j.seats) <= set(roles)
    for role, said in roles.items():
        count = len(j.row(role))
        assert said.least <= count
        assert said.most is None or count <= said.most


@every_joint
def test_each_own_dimension_stands_under_the_joints_name(title: str) -> None:
    j, found = ROSTER[title].bench().joined, on_bench(title)
    own = j.joint.relations(j, choice=found.choice, strains={}).dimensions
    assert all(dimension.name.startswith(f"{j.name}.") for dimension in own)


@every_joint
def test_every_length_a_maker_may_give_is_taken(title: str) -> None:
    joint = ROSTER[title].bench().joined.joint
    for each in fields(joint):
        assert each.name == "place" or each.metadata.get("says") or each.type != "Said | None"


@every_joint
@pytest.mark.parametrize("proof", PROOFS)
def test_the_bench_case_is_proven(title: str, proof: type) -> None:
    assert proof().findings(on_bench(title).case()) == ()


@every_joint
@pytest.mark.parametrize("proof", PROOFS)
def test_the_other_hand_is_proven_too(title: str, proof: type) -> None:
    assert proof().findings(on_the_other_hand(title).case()) == ()


def _mirrored(bench: Bench) -> Bench:
    """The case as it stands on the other side of the piece."""
    turned = []
    for part in bench.parts:
        along, across, into = (w.opposite if w.axis == WIDE else w for w in part.ways)
        at = (-part.at[0], part.at[1], part.at[2])
        turned.append(replace(part, ways=(along, across, into), at=at))
    return replace(bench, parts=tuple(turned))


@every_joint
def test_volumes_add_up(title: str) -> None:
    case = on_bench(title).case()
    bodies = [standing(case.solid(p), turn(p.placement)).body for p in case.parts]
    together = float(reduce(lambda one, other: one + other, bodies).volume())
    alone = sum(case.solid(part).volume for part in case.parts)
    meant = float(sum(press.volume for press in case.presses))
    assert together == pytest.approx(alone - meant, rel=1e-12)


@every_joint
def test_a_drawn_size_is_the_dimension_it_is_named_after(title: str) -> None:
    found = on_bench(title)
    for part in found.parts.values():
        for cut in part.cuts:
            for measure in drawn(cut).measures:
                if measure.dimension is not None:
                    assert found.sizes[measure.dimension] == measure.value, (cut.name, measure)


@every_joint
def test_each_cut_is_named_once_and_owned(title: str) -> None:
    found = on_bench(title)
    for part in found.parts.values():
        names = [cut.name for cut in part.cuts]
        assert len(set(names)) == len(names)
        assert {cut.owner for cut in part.cuts} <= {found.bench.joined.name}


@every_joint
def test_something_is_drawn_or_follows_from_the_parts(title: str) -> None:
    found = on_bench(title)
    figures = found.joint.drawn(found.bench.joined, sizes=found.sizes, choice=found.choice)
    assert len({figure.word for figure in figures}) == len(figures)
    for figure in figures:
        if figure.dimension is not None:
            assert found.sizes[figure.dimension] == figure.value, figure


@every_joint
def test_there_is_a_way_in(title: str) -> None:
    assert _ways(on_bench(title))


@every_joint
def test_every_way_out_is_free(title: str) -> None:
    found = on_bench(title)
    wood = {name: part for name, part in found.parts.items() if not part.hardware}
    for move in _ways(found):
        if move.motion is Motion.STRAIGHT:
            leaves = found.bench.joined.row(move.role)[-1].part
            for step in STEPS:
                moved = {**wood, leaves: _shifted(wood[leaves], move, step)}
                assert _collisions(moved.values()) == [], (move, step)


def _ways(found: Built) -> tuple[Move, ...]:
    j = found.bench.joined
    return j.joint.moves(j, state=State.OPEN, sizes=found.sizes, parts=found.parts)


def _shifted(part: Part, move: Move, step: Fraction) -> Part:
    x, y, z = (a + step * w for a, w in zip(part.placement.at, move.way, strict=True))
    return replace(part, placement=replace(part.placement, at=(x, y, z)))


def _collisions(parts: Iterable[Part]) -> list[tuple[str, str]]:
    store = Store()
    stood = [placed(part, finished(part, store=store)) for part in parts]
    return [lap.between for lap in overlaps(stood, store=store) if lap.volume > NOISE]


@every_joint
def test_contacts_are_between_parts_that_stand_there(title: str) -> None:
    found = on_bench(title)
    assert found.contacts
    for contact in found.contacts:
        assert contact.joined == found.bench.joined.name
        assert set(contact.between) <= set(found.parts)


@every_joint
def test_glue_on_end_grain_is_called_so(title: str) -> None:
    found = on_bench(title)
    for contact in found.contacts:
        normal = _normal(contact.patch)
        on_end = any(_square_to_grain(normal, found.parts[name]) for name in contact.between)
        if on_end and contact.glue is not Glue.DRY:
            assert contact.glue is Glue.END_GRAIN, contact.zone


def _normal(patch: tuple[tuple[Fraction, Fraction, Fraction], ...]) -> tuple[Fraction, ...]:
    (a, b, c), (d, e, f), (g, h, i) = patch[:3]
    u, v = (d - a, e - b, f - c), (g - a, h - b, i - c)
    return (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])


def _square_to_grain(normal: tuple[Fraction, ...], part: Part) -> bool:
    grain = part.placement.along.axis
    return all((n != 0) == (axis == grain) for axis, n in enumerate(normal))


@every_joint
def test_work_names_parts_sizes_and_tools_that_are_there(title: str) -> None:
    found = on_bench(title)
    j = found.bench.joined
    for done in j.joint.work(j, choice=found.choice, shop=SHOP, habits=Habits()):
        assert set(done.parts) <= set(found.parts)
        assert any(SHOP.owns(tool) for tool in (done.tool, *done.alternatives)), done.name
        assert set(done.setting.dimensions if done.setting else ()) <= set(found.sizes)


@every_joint
def test_gaps_hold_what_they_promise(title: str) -> None:
    found = on_bench(title)
    moving = strains(found.bench)
    for gap in found.joint.gaps(found.bench.joined, choice=found.choice):
        now = gap.at_bench.at(found.sizes)
        grown = sum(width.at(found.sizes) * moving[p].widest for p, width in gap.moving)
        shrunk = sum(width.at(found.sizes) * moving[p].narrowest for p, width in gap.moving)
        assert now - grown >= gap.least
        assert gap.greatest is None or now + shrunk <= gap.greatest


@every_joint
def test_findings_of_the_bench_case_carry_the_joints_name(title: str) -> None:
    for finding in _findings(on_bench(title)):
        assert finding.code.startswith(f"{title.replace(' ', '-')}.")


def _findings(found: Built) -> Iterator[Finding]:
    yield from found.joint.faults(
        found.bench.joined, sizes=found.sizes, choice=found.choice, shop=SHOP, parts=found.parts
    )


@every_joint
def test_estimates_are_above_nothing_and_say_on_what_they_stand(title: str) -> None:
    found = on_bench(title)
    j = found.bench.joined
    kinds = woods(found.bench)
    for each in j.joint.holds(j, sizes=found.sizes, choice=found.choice, woods=kinds):
        assert each.value >= 0
        assert each.basis
        assert each.weakest


@every_joint
def test_a_choice_once_made_is_made_again(title: str) -> None:
    found = on_bench(title)
    again = found.joint.choose(
        found.bench.joined,
        sizes=found.sizes,
        shop=SHOP,
        habits=Habits(),
        woods=woods(found.bench),
        strains=strains(found.bench),
    )
    assert again == found.choice
