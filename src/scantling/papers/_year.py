"""The year of a piece as papers and the page tell it: moisture, fits, wide parts."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.exact import Fraction
from scantling.papers import _document_year as doc
from scantling.papers._document_length import Length
from scantling.papers._names import listed
from scantling.papers._paper import Rule, rule_of
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut, YearFit, YearMove, year_fits, year_moves
from scantling.timber.room import MONTHS, Room


def year(setting_out: SettingOut) -> doc.Year:
    """What the year of the room does to the piece."""
    rule, room = rule_of(setting_out), setting_out.piece.whole.room
    return {
        "moisture": _moisture(room),
        "air": _air(room),
        "driest_in": MONTHS[room.dry_month],
        "dampest_in": MONTHS[room.damp_month],
        "fits": [_fit(fit, rule) for fit in year_fits(setting_out)],
        "wide_parts": [_wide(move, rule) for move in year_moves(setting_out)],
    }


def _moisture(room: Room) -> doc.Moisture:
    return {
        "bench": _percent(room.made_at),
        "driest": _percent(room.driest),
        "dampest": _percent(room.dampest),
        "months": [_percent(moisture) for moisture in room.by_month],
        "assumed": _assumed(room),
    }


def _assumed(room: Room) -> str:
    """What of the year nobody has measured."""
    return (
        "The file tells the room's driest and dampest spell. The wood is taken to be driest in"
        f" {MONTHS[room.dry_month]} and dampest in {MONTHS[room.damp_month]}, with a sine wave"
        " between, and to have settled each time: thick or finished parts move less."
    )


def _air(room: Room) -> doc.Air:
    return {
        "bench": _percent(room.bench.humidity),
        "driest": _percent(room.dry.humidity),
        "dampest": _percent(room.damp.humidity),
        "months": [_percent(humidity) for humidity in room.humidity_by_month],
    }


def _percent(moisture: float) -> float:
    return round(moisture, 2)


def length_of(value: Fraction, rule: Rule, *, loose: bool = False) -> Length:
    """A length exact, as a number, and as the maker reads it."""
    return {
        "mm": str(value),
        "value_mm": float(value),
        "as_written": rule.reads(value, loose=loose),
    }


def _fit(fit: YearFit, rule: Rule) -> doc.Fit:
    make_least, make_most = fit.make
    return {
        "what": fit.what,
        "names": list(fit.names),
        "parts": list(fit.parts),
        "place": None if fit.place is None else str(fit.place),
        "made": length_of(fit.made, rule),
        "months": [length_of(open_then, rule) for open_then in fit.months],
        "in_damp": length_of(fit.in_damp, rule),
        "in_dry": length_of(fit.in_dry, rule),
        "moves": length_of(fit.moves, rule),
        "least": length_of(fit.least, rule),
        "greatest": None if fit.greatest is None else length_of(fit.greatest, rule),
        "make_least": length_of(make_least, rule),
        "make_most": None if make_most is None else length_of(make_most, rule),
        "holds": fit.holds,
        "verdict": fit.verdict,
        "advice": fit.advice,
        "because": fit.because,
        "source": fit.source,
    }


def _wide(move: YearMove, rule: Rule) -> doc.WidePart:
    return {
        "mark": move.mark,
        "part": move.family,
        "parts": list(move.parts),
        "wood": move.wood,
        "cut": move.cut,
        "width": length_of(move.width, rule),
        "coefficient": float(move.coefficient),
        "grow": length_of(move.grow, rule),
        "shrink": length_of(move.shrink, rule),
        "swing": length_of(move.swing, rule),
        "source": move.source,
    }


def year_page(setting_out: SettingOut) -> Plain:
    """The year as the packet draws it; nothing where no fit works through it. [mm]"""
    rule, room = rule_of(setting_out), setting_out.piece.whole.room
    fits = year_fits(setting_out)
    if not fits:
        return None
    return {
        "bench": f"{room.made_at:.1f} %",
        "driest": f"{room.driest:.1f} %",
        "dampest": f"{room.dampest:.1f} %",
        "assumed": _assumed(room),
        "fits": _alike(fits, rule),
        "moves": [_told(move, rule) for move in year_moves(setting_out)],
    }


def _alike(fits: Sequence[YearFit], rule: Rule) -> list[Plain]:
    """Fits that read the same, once, with all the parts they hold for; the tightest is drawn."""
    found: dict[tuple[str, ...], list[YearFit]] = {}
    for fit in fits:
        read = (fit.in_dry, fit.in_damp, fit.least)
        key = (fit.what, fit.verdict, fit.advice, *(rule.reads(each) for each in read))
        found.setdefault((*key, str(fit.place)), []).append(fit)
    return [_drawn(alike, rule) for alike in found.values()]


def _drawn(alike: Sequence[YearFit], rule: Rule) -> dict[str, Plain]:
    fit = min(alike, key=lambda each: min(each.in_dry, each.in_damp))
    parts = [part for each in alike for part in each.parts]
    return {
        "what": fit.what,
        "where": listed(parts, most=len(parts)),
        "times": sum(len(each.names) for each in alike),
        "made": float(fit.made),
        "months": [float(open_then) for open_then in fit.months],
        "least": float(fit.least),
        "holds": fit.holds,
        "verdict": fit.verdict,
        "advice": fit.advice,
        "dry": rule.reads(fit.in_dry),
        "damp": rule.reads(fit.in_damp),
        "wanted": rule.reads(fit.least),
        "place": "" if fit.place is None else str(fit.place),
    }


def _told(move: YearMove, rule: Rule) -> Plain:
    return {
        "mark": move.mark,
        "part": move.family,
        "wood": f"{move.wood}, {move.cut}",
        "wide": rule.reads(move.width),
        "grow": _moved(move.grow, rule),
        "shrink": _moved(-move.shrink, rule),
        "swing": rule.reads(move.swing).removeprefix("about "),
    }


def _moved(change: Fraction, rule: Rule) -> str:
    """`+0.363`: how much wider than made, or narrower."""
    sign = "+" if change > 0 else "\u2212" if change < 0 else ""
    return sign + rule.reads(abs(change)).removeprefix("about ")
