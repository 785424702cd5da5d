"""Shiplap: all thirteen answers, by hand-worked figures, limits and their clean twins."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.joints.on_the_bench import SHOP, Built, built

from scantling.joints._joint import Bench, Beside, Joined, Said, Seat, State, owed
from scantling.joints.shiplap import Shiplap
from scantling.parts import ACROSS, Way
from scantling.parts.planned import PlannedPart
from scantling.shop.habits import Habits
from scantling.shop.tools import Plane, Tool
from scantling.sizes.linear import ZERO, exactly
from scantling.sizes.model import Alike, Relations, Stated
from scantling.solids.contact import patch_area
from scantling.timber.movement import Strain
from scantling.units import INCH

NAME = "back boards"


def said(value: int | str | Fraction) -> Said:
    return Said(value=Fraction(value), text=str(value))


def row(
    joint: Shiplap, *, count: int, opening: Fraction | int, thick: Fraction | int = 12
) -> Bench:
    """Boards alike in an opening, 300 long."""
    names = tuple(f"board {i + 1}" for i in range(count))
    opens = Beside(
        what="opening",
        owner="case",
        role="boards",
        axis=ACROSS,
        start=ZERO,
        size=exactly(opening),
        depth=ZERO,
    )
    j = Joined(
        name=NAME,
        joint=joint,
        seats={"boards": tuple(Seat(part=name) for name in names)},
        beside=(opens,),
    )
    boards: list[PlannedPart] = []
    start = j.size("edge gap")
    for name in names:
        ways = (Way.UP, Way.RIGHT, Way.BACK)
        board = PlannedPart(
            name=name,
            family="back board",
            wood="yellow-poplar",
            ways=ways,
            at=(start, ZERO, ZERO),
        )
        boards.append(board)
        start += board.width - j.size("lap") + j.size("gap")
    widths = tuple(f"{name}.width" for name in names)
    fixed = {"length": Fraction(300), "thickness": Fraction(thick)}
    return Bench(
        parts=tuple(boards),
        joined=j,
        relations=Relations(alike=(Alike(names=widths, because="alike"),)),
        stated=tuple(
            Stated(name=f"{name}.{word}", value=value)
            for name in names
            for word, value in fixed.items()
        ),
    )


def moving(bench: Bench, *, grow: str, shrink: str) -> Mapping[str, Strain]:
    strain = Strain(grow=Fraction(grow), shrink=Fraction(shrink))
    return {part.name: strain for part in bench.parts}


def told(found: Built, *, shop: object = SHOP) -> set[str]:
    return {
        finding.code
        for finding in found.joint.faults(
            found.bench.joined,
            sizes=found.sizes,
            choice=found.choice,
            shop=shop,  # type: ignore[arg-type]  # a shop with another plane
            parts=found.parts,
        )
    }


def drawn(found: Built) -> Mapping[str, Fraction]:
    j = found.bench.joined
    return {d.word: d.value for d in j.joint.drawn(j, sizes=found.sizes, choice=found.choice)}


def gaps(found: Built) -> Mapping[str, tuple[Fraction, Fraction]]:
    """Each gap in the dampest and the driest spell, 3 points of moisture either way."""
    coefficient = Fraction("0.00212") * 3
    answers = {}
    for gap in found.joint.gaps(found.bench.joined, choice=found.choice):
        now = gap.at_bench.at(found.sizes)
        works = sum(w.at(found.sizes) * coefficient for _, w in gap.moving)
        answers[gap.name.removeprefix(f"{NAME}.")] = (now - works, now + works)
    return answers


# Six boards in an opening of 754, laps 9, gaps 1.5, 1 beside the row, C 0.00212, 3 points either
# way; by hand: width 1579/12, pitch 1489/12, gap 0.66313 to 2.33687, least cover 6.66313.
SIX = Shiplap(lap=said(9), gap=said("1.5"), edge_gap=said(1))
EXACT = Fraction(1, 12)  # [mm] a rule on which the hand-worked widths fall


def six() -> Built:
    bench = row(SIX, count=6, opening=754)
    return built(bench, grid=EXACT, moving=moving(bench, grow="0.00636", shrink="0.00636"))


def test_all_thirteen_are_answered() -> None:
    assert owed(Shiplap) == ()


def test_boards_fill_their_opening_as_worked_by_hand() -> None:
    found = six()
    assert {found.sizes[f"board {i + 1}.width"] for i in range(6)} == {Fraction(1579, 12)}
    assert drawn(found)["pitch from board 3"] == Fraction(1489, 12)


def test_gap_and_cover_through_the_year_as_worked_by_hand() -> None:
    through = gaps(six())
    damp, dry = through["gap between board 2 and board 3"]
    assert float(damp) == pytest.approx(0.66313, abs=5e-6)
    assert float(dry) == pytest.approx(2.33687, abs=5e-6)
    _, least = through["cover of board 2 over board 3"]
    assert float(least) == pytest.approx(6.66313, abs=5e-6)
    assert float(through["edge gap at board 1"][0]) == pytest.approx(1 - 0.83687 / 2, abs=5e-6)


def test_a_cupboard_back_of_six_boards_comes_out_on_a_rule_of_32nds() -> None:
    # opening 41 1/4 in; poplar grows 0.00274 a point, 6.95 points: 0.019 of the width, so the gap
    # must be over 0.14 in: 5/32; edge half of it; widths 7 1/32. Worked by hand.
    opening = 41 * INCH + INCH / 4
    bench = row(Shiplap(), count=6, opening=opening, thick=INCH / 2)
    found = built(bench, grid=INCH / 32, moving=moving(bench, grow="0.019043", shrink="0"))
    sizes = found.sizes
    assert sizes[f"{NAME}.lap"] == INCH * 3 / 8
    assert sizes[f"{NAME}.depth"] == INCH / 4
    assert sizes[f"{NAME}.gap"] == INCH * 5 / 32
    assert sizes[f"{NAME}.edge gap"] == INCH * 5 / 64
    assert {sizes[f"board {i + 1}.width"] for i in range(6)} == {INCH * (7 + Fraction(1, 32))}
    assert found.breaches == ()


def test_damper_air_asks_for_wider_gaps_and_narrower_boards() -> None:
    found = []
    for grow in ("0.001", "0.02"):
        bench = row(Shiplap(), count=4, opening=500)
        found.append(built(bench, moving=moving(bench, grow=grow, shrink="0")).sizes)
    assert found[0][f"{NAME}.gap"] < found[1][f"{NAME}.gap"]
    assert found[0]["board 2.width"] > found[1]["board 2.width"] - found[1][f"{NAME}.gap"]


def test_laps_take_half_the_wood_in_front_and_behind() -> None:
    # laps 9 by 6 by 300: the first and the last board have one, the others two
    found = six()
    wide = Fraction(1579, 12)
    for i, laps in enumerate((1, 2, 2, 2, 2, 1)):
        whole = float(wide * 300 * 12)
        assert whole - found.volume(f"board {i + 1}") == pytest.approx(laps * 9 * 6 * 300)
    assert [cut.name for cut in found.parts["board 1"].cuts] == ["lap"]
    assert [cut.name for cut in found.parts["board 6"].cuts] == ["under lap"]


def test_a_thicker_board_is_lapped_as_deep_as_the_thinnest() -> None:
    bench = row(SIX, count=6, opening=754)
    found = built(bench, grid=EXACT, stated={"board 4.thickness": Fraction(14)}, moving={})
    assert found.sizes[f"{NAME}.depth"] == 6
    thin = built(bench, grid=EXACT, stated={"board 4.thickness": Fraction(10)}, moving={})
    assert thin.sizes[f"{NAME}.depth"] == 5
    assert thin.choice.count("thinnest") == 3


def test_laps_lie_on_each_other_but_for_the_gap() -> None:
    found = six()
    assert [patch_area(c.patch) for c in found.contacts] == pytest.approx([(9 - 1.5) * 300] * 5)
    assert {c.patch[0][1] for c in found.contacts} == {6}


def test_each_board_leaves_backwards_onwards_and_along() -> None:
    found = six()
    j = found.bench.joined
    moves = j.joint.moves(j, state=State.OPEN, sizes=found.sizes, parts=found.parts)
    assert sorted(tuple(map(int, m.way)) for m in moves) == [
        (0, 0, -1),
        (0, 0, 1),
        (0, 1, 0),
        (1, 0, 0),
    ]
    assert j.joint.moves(j, state=State.LOCKED, sizes=found.sizes, parts=found.parts) == ()


def test_a_lap_holds_forwards_only() -> None:
    found = six()
    first = found.joint.fixings(
        found.bench.joined, sizes=found.sizes, choice=found.choice, parts=found.parts
    )[0]
    assert first.holds == {Way.FRONT}
    assert first.free == frozenset(Way) - {Way.FRONT}
    # 1 beside the row, 131.58 wide, less half of the 7.5 that laps
    assert float(first.at[0]) == pytest.approx(1 + 1579 / 12 - 3.75)


def test_it_is_said_that_nothing_racks() -> None:
    found = six()
    (estimate,) = found.joint.holds(
        found.bench.joined, sizes=found.sizes, choice=found.choice, woods={}
    )
    assert estimate.value == 0


def test_all_front_laps_are_cut_at_one_setting_and_then_the_back_ones() -> None:
    found = six()
    j = found.bench.joined
    before, behind = j.joint.work(j, choice=found.choice, shop=SHOP, habits=Habits())
    names = tuple(f"board {i + 1}" for i in range(6))
    assert (before.parts, behind.parts) == (names[1:], names[:-1])
    assert before.setting is not None
    assert before.setting.dimensions == (f"{NAME}.lap", f"{NAME}.depth")
    assert behind.setting is not None
    assert behind.setting.dimensions == (f"{NAME}.lap",)
    assert before.tool is behind.tool is Tool.FILLISTER


def test_two_boards_are_the_least() -> None:
    found = built(row(SIX, count=2, opening=200), grid=EXACT)
    assert len(found.contacts) == 1


def finding(joint: Shiplap, **sizes: int | str) -> set[str]:
    bench = row(joint, count=3, opening=400)
    stated = {name.replace("_", " "): Fraction(value) for name, value in sizes.items()}
    return told(built(bench, stated=stated, moving={}))


@pytest.mark.parametrize(
    ("code", "guilty", "twin"),
    [
        ("thin-lap", {"deep": said("3.9")}, {"deep": said(4)}),
        ("thin-lap", {"deep": said("8.1")}, {"deep": said(8)}),
        ("lap-width", {"lap": said("5.9")}, {"lap": said(6)}),
        ("lap-width", {"lap": said("19.1")}, {"lap": said(19)}),
    ],
)
def test_limits_of_a_lap(code: str, guilty: dict[str, Said], twin: dict[str, Said]) -> None:
    found = [f"shiplap.{code}" in finding(replace(Shiplap(), **o)) for o in (guilty, twin)]  # type: ignore[arg-type]  # options of one joint
    assert found == [True, False]


def test_a_board_under_half_the_widest_is_told() -> None:
    # 400 and twice the 7.5 that a lap covers make 415: 166, 166 and 83
    joint = Shiplap(lap=said(9), gap=said("1.5"), edge_gap=said(0))
    for first, last, narrow in ((167, 82, True), (166, 83, False)):
        sizes: dict[str, int | str] = {"board 1.width": first, "board 3.width": last}
        assert ("shiplap.narrow-board" in finding(joint, **sizes)) is narrow


@pytest.mark.parametrize(("width", "missing"), [("8.9", True), ("9", False), (None, False)])
def test_a_plane_too_narrow_for_the_lap_is_told(width: str | None, *, missing: bool) -> None:
    plane = Plane(tool=Tool.FILLISTER, width=Fraction(width) if width else None)
    shop = replace(SHOP, planes=(plane,))
    assert ("shiplap.no-plane" in told(six(), shop=shop)) is missing
    assert "shiplap.no-plane" in told(six(), shop=replace(SHOP, planes=()))


@pytest.mark.parametrize(
    ("code", "grow", "shrink", "gap", "edge", "wide"),
    [
        # of 135, 1.2 is what 1.5 leaves over 0.3
        ("jams", Fraction("1.2") / 135, 0, "1.5", 5, 135),
        # of 135, 4.5 is what a cover of 7.5 leaves over 3
        ("opens", 0, Fraction("4.5") / 135, "1.5", 5, 135),
        # of half of 136 2/3, 0.85 is what 1 leaves over 0.15
        ("pushes", Fraction("0.85") * 2 / Fraction(410, 3), 0, 3, 1, Fraction(410, 3)),
    ],
)
def test_limits_of_the_year(
    code: str,
    *,
    grow: Fraction | int,
    shrink: Fraction | int,
    gap: str | int,
    edge: int,
    wide: Fraction | int,
) -> None:
    joint = Shiplap(lap=said(9), gap=said(gap), edge_gap=said(edge))
    stated = {f"board {i + 1}.width": Fraction(wide) for i in range(3)}
    breaches = []
    for more in (Fraction("1.01"), Fraction(1)):
        bench = row(joint, count=3, opening=400)
        strain = Strain(grow=grow * more, shrink=shrink * more)
        found = built(bench, stated=stated, moving={part.name: strain for part in bench.parts})
        breaches.append(f"shiplap.{code}" in found.breaches)
    assert breaches == [True, False]
