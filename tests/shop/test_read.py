"""Reading the shop file: what it says, and every fault with its place."""

import random
import time
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.findings import Weight, underlined
from scantling.shop.habits import Habits, Sizing
from scantling.shop.read import default_shop, default_text, read
from scantling.shop.tools import Bench, Clamp, ClampKind, Gauges, Glue, Tool
from scantling.units import INCH, Unit
from scantling.wording import Speech

PIECES = Path(__file__).parents[2] / "pieces"
HEAD = 'format = 1\nmeasure = "inch"\n'


def faults(text: str) -> list[tuple[str, str]]:
    """Codes of the findings of weight halt, each with the text it underlines."""
    found = []
    for each in read(text).findings:
        if each.weight is Weight.HALT:
            assert each.place is not None
            line = text.split("\n")[each.place.line - 1]
            begin = each.place.column - 1
            found.append((each.code, line[begin : begin + each.place.width]))
    return found


def test_the_shop_beside_the_pieces_is_the_one_that_ships() -> None:
    assert (PIECES / "shop.toml").read_text(encoding="utf-8") == default_text()


def test_the_workshop_as_described() -> None:
    shop = default_shop()

    assert shop.unit is Unit.INCH
    assert shop.finest == INCH / 32
    assert shop.bench == Bench(length=84 * INCH, width=24 * INCH, vise=9 * INCH, turns=84 * INCH)
    assert [each / INCH for each in shop.chisels] == [
        Fraction(text) for text in ("1/8", "1/4", "3/8", "1/2", "3/4", "1", "5/4")
    ]
    assert [each / INCH for each in shop.plough_irons] == [
        Fraction(text) for text in ("1/8", "3/16", "1/4", "5/16", "3/8", "1/2")
    ]
    assert shop.gauges == Gauges(
        pin=2, wheel=1, cutting=1, mortise=1, panel=1, panel_reach=24 * INCH
    )
    assert shop.clamps[0] == Clamp(kind=ClampKind.BAR, count=8, reach=24 * INCH)
    assert shop.glues[0] == Glue(
        name="yellow PVA", open_minutes=5, close_minutes=10, plan_minutes=8, coldest=10
    )
    assert shop.lifts == pytest.approx(22.68, abs=0.005)  # 50 lb


def test_a_glue_with_one_figure_is_closed_within_it() -> None:
    hide = default_shop().glues[1]

    assert (hide.open_minutes, hide.close_minutes, hide.plan_minutes) == (25, 25, 25)


@pytest.mark.parametrize(
    ("said", "celsius"), [("10 C", 10), ("50 F", 10), ("5.5 °C", 5.5), ("14 F", -10)]
)
def test_the_coldest_a_glue_bears_in_either_scale(said: str, celsius: float) -> None:
    reading = read(HEAD + f'[[glues]]\nname = "hide"\nopen = 9\ncoldest = "{said}"\n')

    assert reading.shop.glues[0].coldest == pytest.approx(celsius)


@pytest.mark.parametrize(("said", "kilograms"), [("23 kg", 23), ("50 lb", 22.679619)])
def test_what_a_maker_lifts_in_either_unit(said: str, kilograms: float) -> None:
    assert read(HEAD + f'[body]\nlifts = "{said}"\n').shop.lifts == pytest.approx(kilograms)


def test_habits_that_are_not_written_are_the_usual_ones() -> None:
    assert read(HEAD).habits == Habits()
    assert read(default_text()).habits == Habits()


def test_habits_that_are_written_count() -> None:
    habits = read(
        HEAD
        + """[habits]
"tails first" = false
horn = 0
sizing = ["thickness", "width", "length"]
slope-softwood = "1:5"
pin_holes_before_glue = false
"""
    ).habits

    assert habits == Habits(
        tails_first=False,
        horn=Fraction(0),
        sizing=(Sizing.THICKNESS, Sizing.WIDTH, Sizing.LENGTH),
        slope_softwood=Fraction(1, 5),
        pin_holes_before_glue=False,
    )


def test_a_metric_shop_reads_bare_numbers_as_millimetres() -> None:
    reading = read('format = 1\nmeasure = "mm"\n[chisels]\nmortise = [6, 8.5, "3/8 in"]\n')

    assert reading.shop.mortise_chisels == (Fraction(6), Fraction(17, 2), Fraction(381, 40))
    assert reading.shop.finest == Fraction(1, 2)


def test_decimals_are_read_as_written() -> None:
    reading = read(HEAD + "[irons]\nplough = [0.1]\n")

    assert reading.shop.plough_irons == (INCH / 10,)


def test_sizes_are_sorted_and_each_once() -> None:
    reading = read(HEAD + '[irons]\nplough = ["1/2", "1/4", "2/8"]\n')

    assert reading.shop.plough_irons == (INCH / 4, INCH / 2)


def test_a_tool_that_is_not_written_is_not_owned_and_that_is_said() -> None:
    reading = read(HEAD + '[chisels]\nbevel_edge = ["1/4"]\n')

    assert reading.shop.tools == {Tool.CHISEL}
    (note,) = reading.findings
    assert (note.code, note.weight) == ("shop.not-owned", Weight.NOTE)
    assert "mortise chisels" in note.says
    assert " chisels, saws" not in note.says


FAULTS = [
    ('[chisels]\nmortise = ["1/4", "3/0"]', "shop.not-a-length", "3/0"),
    ('[chisels]\nmortise = ["1/4 cubit"]', "shop.not-a-length", "cubit"),
    ("[chisels]\nmortise = [true]", "shop.not-a-length", "true"),
    ("[chisels]\nmortise = [8]", "shop.out-of-range", "8"),  # inches: meant as millimetres
    ('[chisels]\nmortise = "0"', "shop.out-of-range", '"0"'),
    ('[chisels]\nmortice = ["1/4"]', "shop.unknown-word", "mortice"),
    ('[irons]\nplough = ["1/4"]\n"Plough" = ["1/2"]', "shop.said-twice", '"Plough"'),
    ('[[saws]]\ntool = "rip saww"\nkerf = "1 mm"', "shop.unknown-name", '"rip saww"'),
    ('[[saws]]\ntool = "jack plane"\nkerf = "1 mm"', "shop.unknown-name", '"jack plane"'),
    ('[[saws]]\ntool = "rip saw"', "shop.not-said", "saws"),
    ('[[saws]]\ntool = "rip saw"\nkerf = "1 in"', "shop.out-of-range", '"1 in"'),
    ('[[clamps]]\nkind = "bar"\ncount = 2.5', "shop.not-a-count", "2.5"),
    ('[[clamps]]\nkind = "bar"\ncount = 0', "shop.not-a-count", "0"),
    ('[clamps]\nkind = "bar"', "shop.no-table", "clamps"),
    ("bench = 84", "shop.no-table", "bench"),
    ('[small_tools]\nowned = ["knife", "chisel"]', "shop.unknown-name", '"chisel"'),
    ('[[glues]]\nname = "hide"\nopen = 9\nclose = 4', "shop.glue-times", "close"),
    ('[[glues]]\nname = "hide"\nopen = 9\ncoldest = "warm"', "shop.not-a-temperature", '"warm"'),
    ("[[glues]]\nname = 7\nopen = 9", "shop.not-text", "7"),
    ('[body]\nlifts = "50 stone"', "shop.not-a-weight", '"50 stone"'),
    ('[habits]\nslope_softwood = "6:1"', "shop.not-a-slope", '"6:1"'),
    ('[habits]\nslope_softwood = "1:2"', "shop.not-a-slope", '"1:2"'),
    ('[habits]\nslope_softwood = "1:0"', "shop.not-a-slope", '"1:0"'),
    ('[habits]\ntails_first = "no"', "shop.not-true-or-false", '"no"'),
    ('[habits]\nsizing = ["width", "length"]', "shop.sizing", "sizing"),
    ('["drill press"]\nx = 1', "shop.unknown-word", '"drill press"'),
]


@pytest.mark.parametrize(("text", "code", "guilty"), FAULTS)
def test_a_fault_underlines_the_guilty_text(text: str, code: str, guilty: str) -> None:
    assert faults(HEAD + text + "\n") == [(code, guilty)]


@pytest.mark.parametrize(
    ("text", "code", "guilty"),
    [
        ('measure = "inch"\n', "shop.not-said", "m"),
        ('format = 2\nmeasure = "inch"\n', "shop.unknown-format", "format"),
        ("format = 1\n", "shop.not-said", "f"),
        ('format = 1\nmeasure = "ell"\n', "shop.unknown-name", '"ell"'),
    ],
)
def test_the_head_of_the_file_is_wanted(text: str, code: str, guilty: str) -> None:
    assert faults(text) == [(code, guilty)]


def test_every_fault_of_a_broken_file_is_told_at_once() -> None:
    text = (
        HEAD
        + """[irons]
plough = ["1/8",
router = ["1/4"]
[chisels]
mortise = [3/8, 5]
bevel_edge = 1/2
[[clamps]]
kind = bar
count = 2
[gauges]
pin = -1
"""
    )

    reading = read(text)

    halts = [each for each in reading.findings if each.weight is Weight.HALT]
    assert [each.place.line for each in halts if each.place] == [4, 7, 8, 10, 13]
    assert "never closed" in halts[0].says
    assert [each.cure for each in halts[1:3]] == ['put quotes round it: "3/4"'] * 2
    assert reading.shop.router_irons == (INCH / 4,)


def test_a_list_over_several_lines_keeps_its_places() -> None:
    text = HEAD + '[irons]\nplough = [\n  "1/4",  # the one I like\n\t"1/3 ells",\n]\n'

    (fault,) = (each for each in read(text).findings if each.weight is Weight.HALT)

    assert fault.place is not None
    assert (fault.place.line, fault.place.column) == (6, 7)
    assert underlined(text, fault.place) == '\t"1/3 ells",\n\t     ^^^^'


def test_windows_line_ends_and_a_byte_order_mark_do_not_matter() -> None:
    assert read("\ufeff" + default_text().replace("\n", "\r\n")).shop == default_shop()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "x=" + "[" * 20_000,
        "format = " + "1" * 6_000,
        "a" * 200_000,
        "=\n" * 5_000,
        'x = """\n' * 300,
        "[[[[",
        "\x00",
        "d = 2024-13-45",
        "a.b.c = 1\na.b = 2\n",
    ],
    ids=lambda text: repr(text[:12]),
)
def test_nonsense_is_met_quickly_and_without_a_crash(text: str) -> None:
    began = time.process_time()

    reading = read(text)

    assert reading.findings
    assert time.process_time() - began < 2


@settings(max_examples=300, deadline=None)
@given(seed=st.integers(0, 10**9))
def test_a_shop_file_damaged_at_random_never_crashes_the_reader(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311  # a reproducible bruise, no secret
    text = default_text()
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(text))
        cut = chance.randrange(0, 12)
        text = text[:at] + "".join(chance.choices("\"[]=/,#{}\n'x1 .\\", k=3)) + text[at + cut :]

    reading = read(text)

    lines = text.split("\n")
    for each in reading.findings:
        if each.place is not None:
            assert each.place.line <= len(lines)
            assert underlined(text, each.place)


def test_words_and_figures_are_habits() -> None:
    text = default_text().replace("[habits] ", '[habits]\nwords = "uk"\nfigures = "mm"\n#')
    habits = read(text).habits
    assert (habits.words, habits.figures) == (Speech.UK, Unit.MM)
    assert (read(default_text()).habits.words, read(default_text()).habits.figures) == (None, None)


def test_words_of_no_country_are_told() -> None:
    text = default_text().replace("[habits] ", '[habits]\nwords = "French"\n#')
    (finding,) = read(text).findings
    assert finding.code == "shop.unknown-name"
    assert "UK, US" in finding.cure
