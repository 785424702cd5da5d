"""The setting-out for other programs: every word promised, every figure exact."""

import json
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from tests.house.tree import ROOT
from tests.papers.cupboard import cupboard

from scantling.papers import Sheet
from scantling.papers._document import schema
from scantling.papers.setting_out_json import SettingOutJson, document
from scantling.parts import Box, Corner, Cut, Span, Surface
from scantling.setting_out import SettingOut
from scantling.sizes.model import Kind, Sizes
from scantling.units import Unit, length

SCHEMA = ROOT / "docs" / "setting_out.schema.json"


def read_back(setting_out: SettingOut) -> Any:  # noqa: ANN401 - a file of any shape
    made = SettingOutJson.render(setting_out, sheet=Sheet.A4)
    return json.loads(made["setting-out.json"])


def lengths(node: object) -> list[dict[str, Any]]:
    """Every length in the document, wherever it stands."""
    if isinstance(node, list):
        return [found for each in node for found in lengths(each)]
    if not isinstance(node, dict):
        return []
    own = [node] if "value_mm" in node else []
    return own + [found for each in node.values() for found in lengths(each)]


def faults(found: object) -> list[str]:
    return [fault.message for fault in Draft202012Validator(schema()).iter_errors(found)]


def test_the_schema_is_the_approved_one(approved: Callable[[Path, bytes], None]) -> None:
    approved(SCHEMA, json.dumps(schema(), indent=1, ensure_ascii=False).encode() + b"\n")


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("measure", list(Unit))
def test_what_is_written_is_what_is_promised(measure: Unit) -> None:
    assert faults(read_back(cupboard(measure=measure))) == []


@pytest.mark.parametrize(
    "spoil",
    [
        pytest.param(lambda d: d.pop("findings"), id="a word is missing"),
        pytest.param(lambda d: d["parts"][0].update(colour="red"), id="a word too many"),
        pytest.param(lambda d: d["parts"][0]["length"].update(mm="1.5"), id="no exact length"),
        pytest.param(lambda d: d["parts"][0]["placement"].update(along="east"), id="no way"),
        pytest.param(lambda d: d["sizes"][0].update(set_out="laser"), id="no way to set out"),
        pytest.param(lambda d: d["findings"][0].update(weight="error"), id="no weight"),
        pytest.param(lambda d: d["findings"][0]["place"].update(line=0), id="line 0"),
        pytest.param(lambda d: d.update(format=2), id="another format"),
    ],
)
def test_a_broken_promise_is_noticed(spoil: Callable[[Any], object]) -> None:
    found = read_back(cupboard())
    spoil(found)
    assert faults(found)


@pytest.mark.parametrize("measure", list(Unit))
def test_every_length_says_the_same_three_times(measure: Unit) -> None:
    found = lengths(read_back(cupboard(measure=measure)))
    assert len(found) > 200
    for each in found:
        exact = Fraction(each["mm"])
        assert each["value_mm"] == float(exact)
        said = each["as_written"].removeprefix("about ")
        off = abs(length(said, unit=measure) - exact)
        if each["as_written"] == said:
            assert off == 0
        else:
            # half a 64th, the farthest that the nearest mark of a rule can lie
            assert off <= Fraction(127, 5) / 128


def test_a_part_carries_its_exact_size_place_and_cuts() -> None:
    side = read_back(cupboard())["parts"][0]
    assert (side["name"], side["family"], side["mark"]) == ("left side", "side", 1)
    assert side["length"]["mm"] == "3302/5"  # 26 in
    assert side["length"]["because"]
    assert [each["mm"] for each in side["placement"]["at"]] == ["0", "381/20", "0"]
    (housing,) = side["cuts"]
    start = housing["measures"][0]
    assert (start["word"], start["from"], start["dimension"]) == (
        "along start",
        "reference end",
        "left side.bottom up",
    )
    assert start["value"]["as_written"] == "1 1/4"


def test_what_the_work_gives_is_about() -> None:
    parts = {part["name"]: part for part in read_back(cupboard())["parts"]}
    panel = parts["door.panel"]["width"]
    assert panel["off_tape"]
    assert (panel["set_out"], panel["as_written"]) == ("mate", "about 13")


def test_a_cut_is_told_from_its_own_corner_with_what_runs_out() -> None:
    whole = cupboard()
    cut = Cut(
        name="stopped rabbet",
        owner="back",
        shape=Box(along=Span(Fraction(9), None), across=Span(None, Fraction(8)), into=Span()),
        corner=Corner(end=Surface.FAR_END, edge=Surface.BACK_EDGE),
    )
    side = replace(
        whole.parts[0],
        cuts=(cut,),
        horns=(Fraction(20), Fraction(15)),
        show=frozenset({Surface.FACE_EDGE, Surface.FAR_END}),
    )
    told = read_back(replace(whole, parts=(side, *whole.parts[1:])))["parts"][0]
    (rabbet,) = told["cuts"]
    assert rabbet["corner"] == ["far end", "back edge", "face side"]
    assert rabbet["open_start"] == [False, True, True]
    assert rabbet["open_stop"] == [True, False, True]
    assert [horn["mm"] for horn in told["horns"]] == ["20", "15"]
    assert told["shown"] == ["far end", "face edge"]


def test_a_bevel_tells_which_sides_run_out() -> None:
    top = next(part for part in read_back(cupboard())["parts"] if part["name"] == "top")
    (bevel,) = top["cuts"]
    assert (bevel["form"], bevel["sweep"], bevel["open_sides"]) == ("profile", "along", [0, 2])
    assert top["blank"] == {"glued_up": ["strip a", "strip b"]}


@pytest.mark.parametrize(
    ("kind", "off_tape", "said"),
    [
        (Kind.TAPE, False, "3/4"),
        (Kind.TAPE, True, "about 3/4"),
        (Kind.MATE, False, "about 3/4"),
        (Kind.TOOL, False, "3/4"),
    ],
)
def test_a_size_from_the_work_is_only_about(kind: Kind, said: str, *, off_tape: bool) -> None:
    whole = cupboard()
    size = replace(whole.sizes.size("left side.thickness"), kind=kind, off_tape=off_tape)
    changed = Sizes({**whole.sizes.by_name, size.name: size})
    found = read_back(replace(whole, sizes=changed))
    assert found["parts"][0]["thickness"]["as_written"] == said
    sizes = {each["name"]: each["value"]["as_written"] for each in found["sizes"]}
    assert sizes[size.name] == said


def test_bought_things_are_on_no_line_and_solved_by_nothing() -> None:
    whole = cupboard()
    bought = [part for part in read_back(whole)["parts"] if part["hardware"]]
    assert len(bought) == 2
    for part in bought:
        assert part["mark"] is part["rough"] is part["length"]["dimension"] is None
        assert part["blank"] == "round"


def test_marks_lead_from_a_part_to_its_line_and_back() -> None:
    found = read_back(cupboard())
    listed = {name: line["mark"] for line in found["cutting_list"] for name in line["parts"]}
    made = {part["name"]: part["mark"] for part in found["parts"] if not part["hardware"]}
    assert listed == made


def test_joints_tell_who_is_joined_what_is_drawn_and_how_they_part() -> None:
    lap, housing, _ = read_back(cupboard())["joints"]
    assert (lap["title"], lap["parts"]) == ("half lap", ["stile", "rail"])
    # E6 of the joints worked by hand for this project: depth 10 of 20, lap 45 by 60
    depth = next(each for each in lap["drawn"] if each["word"] == "lap depth")
    assert (depth["value"], depth["unit"]) == ("10", "mm")
    assert {each["area_mm2"] for each in lap["contacts"] if each["zone"] == "lap"} == {2700.0}
    assert all(move["motion"] == "straight" for move in housing["moves"])


def test_joints_tell_what_holds_them_how_much_and_how_they_are_made() -> None:
    lap, housing, dovetail = read_back(cupboard(measure=Unit.MM))["joints"]
    assert [(seat["role"], seat["parts"]) for seat in lap["seats"]] == [
        ("receives", ["stile"]),
        ("enters", ["rail"]),
    ]
    assert {fixing["by"] for fixing in lap["fixings"]} == {"glue"}
    (moment,) = lap["holds"]
    # a third of 8.205 MPa, shear of the softer yellow-poplar, on 2700 mm2 at 0.38 of its side
    assert moment["value"] == pytest.approx(8.205 / 3 * 2700 * 0.38 * 2700**0.5 / 1000, rel=0.05)
    assert moment["unit"] == "N m"
    lines = [each["setting"]["dimensions"] for each in lap["work"] if each["setting"]]
    assert ["rail on stile.depth"] in lines
    assert all(each["minutes_assumed"] > 0 for each in (*housing["work"], *dovetail["work"]))


def test_findings_keep_their_order_and_place() -> None:
    halt, mind, note = read_back(cupboard())["findings"]
    assert [each["weight"] for each in (halt, mind, note)] == ["halt", "mind", "note"]
    assert halt["place"] == {"file": "piece.toml", "line": 41, "column": 9, "width": 4}
    assert mind["place"] is None


def test_a_piece_that_could_not_be_worked_still_tells_why() -> None:
    empty = replace(cupboard(), parts=(), joints=(), lines=())
    found = read_back(empty)
    assert faults(found) == []
    assert found["parts"] == []
    assert len(found["findings"]) == 3


def test_the_document_is_the_file() -> None:
    whole = cupboard(name="Glaze “cupboard” — größer")
    assert json.loads(json.dumps(document(whole))) == read_back(whole)
