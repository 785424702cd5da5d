"""Reads `shop.toml`, the maker's own workshop, one file for all his pieces.

Whatever is wrong with the file is a finding and the rest is read on. A tool that is not
written is not owned; a habit that is not written is the usual one.
"""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache
from importlib.resources import files
from typing import Any

from scantling.errors import InternalError
from scantling.exact import Fraction
from scantling.findings import Finding, Place, Weight
from scantling.shop._fields import Desk, Table
from scantling.shop._lines import places
from scantling.shop._measure import is_of_other_measure, measure
from scantling.shop.habits import Habits, Sizing
from scantling.shop.tools import (
    PLANES,
    SAWS,
    SMALL,
    Bench,
    Cauls,
    Clamp,
    ClampKind,
    Gauges,
    Glue,
    Plane,
    Saw,
    Shop,
)
from scantling.units import INCH, Unit
from scantling.wording import Speech

FORMAT = 1
_LONGEST = 100_000  # [characters] more is no workshop
_FAULTS = 50  # syntax faults after which the rest is not read on

# Limits that catch a slip of unit, not of taste: a chisel of 8 inches was meant as 8 mm.
_EDGE = (Fraction(1, 2), Fraction(60))  # width of an iron or chisel, diameter of a bit [mm]
_KERF = (Fraction(1, 10), Fraction(6))  # [mm]
_MARK = (Fraction(1, 10), Fraction(5))  # smallest mark of a rule [mm]
_SPAN = (Fraction(10), Fraction(20_000))  # of a plane, clamp [mm]
_BENCH = (Fraction(250), Fraction(20_000))  # length and width of a bench, and what turns [mm]
_SAW = (Fraction(100), Fraction(2_000))  # length of a saw [mm]
_HABIT_LENGTHS = {  # [mm] least and most
    "horn": (Fraction(0), Fraction(100)),
    "rough_length": (Fraction(0), Fraction(200)),
    "rough_width": (Fraction(0), Fraction(50)),
    "rough_thickness": (Fraction(0), Fraction(25)),
    "widest_strip": (Fraction(25), Fraction(1000)),
    "narrowest_strip": (Fraction(5), Fraction(300)),
    "strip_joint": (Fraction(0), Fraction(25)),
    "end_trim": (Fraction(0), Fraction(300)),
    "knot_from_end": (Fraction(0), Fraction(500)),
    "knot_from_edge": (Fraction(0), Fraction(100)),
    "planing": (Fraction(0), Fraction(25)),
}

_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
_BARE_FRACTION = re.compile(r"=.*?\d\s*/\s*\d")
_OPENS = re.compile(r"\s*[\w.\"' -]+=|\s*\[+[\w.\"' -]+\]")
_AT = re.compile(r"\(at line (\d+), column (\d+)\)")


@dataclass(frozen=True, kw_only=True)
class ShopReading:
    """What a shop file says, as far as it could be read."""

    shop: Shop
    habits: Habits
    findings: tuple[Finding, ...]


def read(text: str, *, file: str = "shop.toml") -> ShopReading:
    """The workshop a file describes.

    Args:
        text: The whole file.
        file: Its name, for the places of findings.
    """
    said, sound, faults = _parsed(text.removeprefix("\ufeff"), file=file)
    desk = Desk(places=places(sound, file=file), findings=faults, blanked=bool(faults))
    top = Table(said, path=(), desk=desk)
    _format(top)
    desk.unit = measure(top)
    shop = _shop(top)
    habits = _habits(top.table("habits"))
    top.rest()
    if not is_of_other_measure(top):
        _absent(shop, desk)
    return ShopReading(shop=shop, habits=habits, findings=tuple(desk.findings))


@cache
def default_shop() -> Shop:
    """The workshop that ships with the house: hand tools, one bench, one maker."""
    return _default().shop


@cache
def default_text() -> str:
    """The file of the workshop that ships, to start one's own from."""
    return files("scantling.shop").joinpath("shop.toml").read_text(encoding="utf-8")


@cache
def _default() -> ShopReading:
    reading = read(default_text(), file="the shop that ships")
    if reading.findings:
        raise InternalError(f"the shop that ships has a fault: {reading.findings[0].says}")
    return reading


def _parsed(text: str, *, file: str) -> tuple[Mapping[str, object], str, list[Finding]]:
    """The file as tables, the text that was read at last, and its faults of syntax.

    A guilty line is blanked and the rest read on, so that every fault is told at once.
    """
    faults: list[Finding] = []
    if len(text) > _LONGEST:
        says = f"the file has more than {_LONGEST} characters"
        return {}, "", [_unreadable(says, "one workshop is a page or two", file=file)]
    while len(faults) < _FAULTS:
        try:
            # Decimals stay text: a length never passes through a float.
            return tomllib.loads(text, parse_float=str), text, faults
        except tomllib.TOMLDecodeError as wrong:
            line, column = _where(str(wrong), text)
            place = Place(file=file, line=line, column=column)
            faults.append(_syntax(text.split("\n")[line - 1], place, str(wrong)))
            text = _blanked(text, line, upto=_said(str(wrong), text)[0])
        except (RecursionError, ValueError):
            # Brackets nested without end, or a number of thousands of digits.
            says = "something in the file is too deep or too long to read"
            return {}, "", [*faults, _unreadable(says, "take it out", file=file)]
    return {}, "", faults


def _unreadable(says: str, cure: str, *, file: str) -> Finding:
    place = Place(file=file, line=1, column=1)
    return Finding(code="shop.not-readable", weight=Weight.HALT, says=says, cure=cure, place=place)


def _where(message: str, text: str) -> tuple[int, int]:
    """Line and column to blame: of a list that is never closed, the line that opens it."""
    line, column = _said(message, text)
    lines = text.split("\n")
    depth = 0
    # The parser trips over the next word; the list was left open further up.
    for back in range(line - 1, 0, -1):
        above = lines[back - 1]
        depth += above.count("[") - above.count("]")
        if _OPENS.match(above):
            open_above = depth > 0 and "[" in above
            return (back, above.rindex("[") + 1) if open_above else (line, column)
    return line, column


def _said(message: str, text: str) -> tuple[int, int]:
    found = _AT.search(message)
    if found:
        return int(found[1]), int(found[2])
    # "at end of document"
    lines = text.rstrip().split("\n")
    return len(lines), max(1, len(lines[-1]))


def _syntax(guilty: str, place: Place, message: str) -> Finding:
    if _BARE_FRACTION.search(_QUOTED.sub("", guilty).partition("#")[0]):
        says, cure = "a fraction stands without quotes", 'put quotes round it: "3/4"'
    elif guilty.count("[") > guilty.count("]"):
        says, cure = "a list is opened here and never closed", "close it with ]"
    else:
        says = f"this line cannot be read: {message.split(' (at ', maxsplit=1)[0].lower()}"
        cure = 'a line is a word, = and a value; words and fractions in quotes: kind = "bar"'
    return Finding(code="shop.not-readable", weight=Weight.HALT, says=says, cure=cure, place=place)


def _blanked(text: str, line: int, *, upto: int) -> str:
    """The text without the line to blame, and without what follows it up to where it hurt."""
    lines = text.split("\n")
    for at in range(line, max(line + 1, upto)):
        lines[at - 1] = ""
    if not any(lines[line - 1 :]):
        lines = lines[: line - 1]
    return "\n".join(lines)


def _format(top: Table) -> None:
    number = top.count("format", least=1)
    top.missing("format")
    if number is not None and number != FORMAT:
        says = f"the file is of format {number}, this house reads format {FORMAT}"
        top.desk.fault("unknown-format", top.place("format"), says, f"write format = {FORMAT}")


def _shop(top: Table) -> Shop:
    chisels, irons, boring = top.table("chisels"), top.table("irons"), top.table("boring")
    body, small = top.table("body"), top.table("small_tools")
    usual = INCH / 32 if top.desk.unit is Unit.INCH else Fraction(1, 2)
    shop = Shop(
        name=top.text("name") or "the workshop",
        unit=top.desk.unit,
        finest=top.length("finest", least=_MARK[0], most=_MARK[1]) or usual,
        bench=_bench(top.table("bench")),
        chisels=_edges(chisels, "bevel_edge"),
        mortise_chisels=_edges(chisels, "mortise"),
        plough_irons=_edges(irons, "plough"),
        router_irons=_edges(irons, "router"),
        bits=_edges(boring, "bits"),
        drills=_edges(boring, "drills"),
        saws=tuple(saw for row in top.rows("saws") if (saw := _saw(row))),
        planes=tuple(plane for row in top.rows("planes") if (plane := _plane(row))),
        gauges=_gauges(top.table("gauges")),
        clamps=tuple(clamp for row in top.rows("clamps") if (clamp := _clamp(row))),
        cauls=_cauls(top.table("cauls")),
        glues=tuple(glue for row in top.rows("glues") if (glue := _glue(row))),
        small_tools=small.words("owned", SMALL),
        lifts=body.mass("lifts"),
    )
    for table in (chisels, irons, boring, body, small):
        table.rest()
    return shop


def _edges(table: Table, key: str) -> tuple[Fraction, ...]:
    return table.lengths(key, least=_EDGE[0], most=_EDGE[1])


def _span(table: Table, key: str) -> Fraction | None:
    return table.length(key, least=_SPAN[0], most=_SPAN[1])


def _bench(table: Table) -> Bench:
    bench = Bench(
        length=table.length("long", least=_BENCH[0], most=_BENCH[1]),
        width=table.length("wide", least=_BENCH[0], most=_BENCH[1]),
        vise=_span(table, "vise"),
        turns=table.length("turns", least=_BENCH[0], most=_BENCH[1]),
    )
    table.rest()
    return bench


def _saw(row: Table) -> Saw | None:
    tool = row.word("tool", SAWS)
    kerf = row.length("kerf", least=_KERF[0], most=_KERF[1])
    length = row.length("long", least=_SAW[0], most=_SAW[1])
    teeth = row.count("teeth", least=1)
    deepest = _span(row, "deepest")
    row.missing("tool")
    row.missing("kerf")
    row.rest()
    if tool is None or kerf is None:
        return None
    return Saw(tool=tool, length=length, teeth=teeth, kerf=kerf, deepest=deepest)


def _plane(row: Table) -> Plane | None:
    tool = row.word("tool", PLANES)
    length = _span(row, "long")
    width = row.length("wide", least=_EDGE[0], most=_EDGE[1])
    fits = row.lengths("fits", least=_EDGE[0], most=_EDGE[1])
    row.missing("tool")
    row.rest()
    return None if tool is None else Plane(tool=tool, length=length, width=width, fits=fits)


def _gauges(table: Table) -> Gauges:
    gauges = Gauges(
        pin=table.count("pin") or 0,
        wheel=table.count("wheel") or 0,
        cutting=table.count("cutting") or 0,
        mortise=table.count("mortise") or 0,
        panel=table.count("panel") or 0,
        panel_reach=_span(table, "panel_reach"),
    )
    table.rest()
    return gauges


def _clamp(row: Table) -> Clamp | None:
    kind, count = row.word("kind", list(ClampKind)), row.count("count", least=1)
    reach = _span(row, "reach")
    row.missing("kind")
    row.missing("count")
    row.rest()
    return None if kind is None or count is None else Clamp(kind=kind, count=count, reach=reach)


def _cauls(table: Table) -> Cauls:
    cauls = Cauls(count=table.count("count") or 0, length=_span(table, "long"))
    table.rest()
    return cauls


def _glue(row: Table) -> Glue | None:
    name, spread = row.text("name"), row.count("open", least=1)
    # A glue sold with one figure only must be closed within it.
    close = row.count("close", least=1) or spread
    plan = row.count("plan", least=1) or close
    coldest = row.warmth("coldest")
    for key in ("name", "open"):
        row.missing(key)
    row.rest()
    if name is None or spread is None or close is None or plan is None:
        return None
    if not spread <= close or not plan <= close:
        says = f"{name}: open {spread}, plan {plan}, close {close} min do not follow each other"
        row.desk.fault("glue-times", row.place("close"), says, "close must be the longest")
        return None
    return Glue(
        name=name,
        open_minutes=spread,
        close_minutes=close,
        plan_minutes=plan,
        # Common practice for water-based wood glues where the maker says nothing.
        coldest=10.0 if coldest is None else coldest,
    )


def _habits(table: Table) -> Habits:
    usual = Habits()
    lengths: dict[str, Any] = {
        name: getattr(usual, name) if said is None else said
        for name, (least, most) in _HABIT_LENGTHS.items()
        for said in [table.length(name, least=least, most=most)]
    }
    sizing = table.words("sizing", list(Sizing)) or usual.sizing
    if len(sizing) != len(Sizing):
        cure = 'write all three, such as ["width", "thickness", "length"]'
        table.desk.fault("sizing", table.place("sizing"), "a step of the sizing is missing", cure)
        sizing = usual.sizing
    yes_or_no: dict[str, Any] = {
        each.name: usual_one if (said := table.yes(each.name)) is None else said
        for each in fields(Habits)
        if isinstance(usual_one := getattr(usual, each.name), bool)
    }
    habits = Habits(
        **lengths,
        sizing=sizing,
        slope_softwood=table.slope("slope_softwood") or usual.slope_softwood,
        slope_hardwood=table.slope("slope_hardwood") or usual.slope_hardwood,
        words=table.word("words", list(Speech)),
        figures=table.word("figures", list(Unit)),
        **yes_or_no,
    )
    table.rest()
    return habits


def _absent(shop: Shop, desk: Desk) -> None:
    """Say what the file is silent on, for silence is read as not owned."""
    silent = {
        "mortise chisels": shop.mortise_chisels,
        "plough irons": shop.plough_irons,
        "chisels": shop.chisels,
        "saws": shop.saws,
        "planes": shop.planes,
        "clamps": shop.clamps,
        "glues": shop.glues,
    }
    none = [name for name, owned in silent.items() if not owned]
    if none:
        desk.note("not-owned", f"the file lists no readable {', '.join(none)}: taken as not owned")
