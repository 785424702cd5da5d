"""The whole setting-out for other programs, and for the page: `setting-out.json`."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, replace
from itertools import zip_longest
from typing import ClassVar, Literal

from scantling.exact import Fraction
from scantling.findings import Finding
from scantling.joints._joint import Contact, DrawnSize, Estimate, Fixing, Move, Press
from scantling.papers import _document as doc
from scantling.papers._boards import on_boards
from scantling.papers._document_order import order_told
from scantling.papers._document_record import record_told
from scantling.papers._paper import (
    OWN_SIZES,
    OwnSize,
    Rule,
    Sheet,
    figure_reads,
    is_loose,
    own_sizes,
    rule_of,
    set_out_words,
)
from scantling.papers._year import length_of, year
from scantling.parts import Drawn, GluedUp, Part, Placement, Round, Surface, Way, drawn
from scantling.setting_out import Line, SetGap, SetJoint, SettingOut
from scantling.shop.operations import Operation
from scantling.sizes.model import Size
from scantling.solids.contact import patch_area


class SettingOutJson:
    """Setting-out in JSON: everything found, exact, in a documented format."""

    title: ClassVar[str] = "setting-out"

    @classmethod
    def render(cls, setting_out: SettingOut, *, sheet: Sheet) -> Mapping[str, bytes]:
        """`setting-out.json`, as `docs/setting_out.schema.json` promises it."""
        del sheet  # data have no pages
        own = replace(setting_out, habits=replace(setting_out.habits, figures=None))
        text = json.dumps(document(own), ensure_ascii=False, indent=1)
        return {"setting-out.json": text.encode() + b"\n"}


def document(setting_out: SettingOut) -> doc.Document:
    """The setting-out as plain tables and lists, ready for JSON."""
    rule = setting_out.memory.same(("rule",), rule_of(setting_out))
    lines = {part.name: line for line in setting_out.lines for part in line.parts}
    return {
        "format": 1,
        "kind": "setting-out",
        "piece": _piece(setting_out, rule),
        "parts": [
            _kept_part(part, setting_out, rule, lines.get(part.name)) for part in setting_out.parts
        ],
        "sizes": [
            _kept_size(size, setting_out, rule) for size in setting_out.sizes.by_name.values()
        ],
        "joints": [_kept_joint(joint, setting_out, rule) for joint in setting_out.joints],
        "cutting_list": [_line(line, setting_out, rule) for line in setting_out.lines],
        "year": year(setting_out),
        "boards": on_boards(setting_out),
        "record": record_told(setting_out),
        "order": order_told(setting_out),
        "findings": [_finding(finding) for finding in setting_out.findings],
    }


def _kept_part(part: Part, setting_out: SettingOut, rule: Rule, line: Line | None) -> doc.Part:
    """The part's row; the same one again while nothing in it has changed."""
    memory = setting_out.memory
    return memory.answer(
        ("row of part", part.name),
        asked=(part, memory.same(("line of", part.name), line), rule),
        sizes=setting_out.sizes,
        ask=lambda sizes, _: _part(part, replace(setting_out, sizes=sizes), rule, line),
    )


def _kept_size(size: Size, setting_out: SettingOut, rule: Rule) -> doc.Size:
    memory = setting_out.memory
    own = memory.same(("size", size.name), size)
    return memory.made(("row of size", size.name), of=(own, rule), make=lambda: _size(size, rule))


def _kept_joint(joint: SetJoint, setting_out: SettingOut, rule: Rule) -> doc.Joint:
    memory = setting_out.memory
    proven = bool(joint.areas)  # there is one row before the proofs, and one after
    areas = memory.same(("areas", joint.name, proven), joint.areas)
    answers = (getattr(joint, each.name) for each in fields(joint) if each.name != "areas")
    return memory.made(
        ("row of joint", joint.name, proven),
        of=(*answers, areas, rule),
        make=lambda: _joint(joint, rule),
    )


def _piece(setting_out: SettingOut, rule: Rule) -> doc.Piece:
    piece = setting_out.piece
    # nothing made has no size over all
    wide, deep, tall = setting_out.overall if setting_out.made else (Fraction(0),) * 3
    return {
        "name": piece.whole.name,
        "file": piece.file,
        "measure": rule.unit,
        "finest_mm": float(piece.whole.finest),
        "overall": {
            "wide": length_of(wide, rule),
            "deep": length_of(deep, rule),
            "tall": length_of(tall, rule),
        },
    }


def _part(part: Part, setting_out: SettingOut, rule: Rule, line: Line | None) -> doc.Part:
    length, width, thickness = (
        _own(f"{part.name}.{word}", own, rule)
        for word, own in zip(OWN_SIZES, own_sizes(setting_out, part), strict=True)
    )
    return {
        "name": part.name,
        "family": part.family,
        "mark": line.mark if line else None,
        "wood": part.wood,
        "cut": part.cut_of_wood,
        "hardware": part.hardware,
        "moves_with": part.moves_with,
        "length": length,
        "width": width,
        "thickness": thickness,
        "rough": _rough(line, rule) if line else None,
        "blank": _blank(part),
        "horns": [length_of(horn, rule) for horn in part.horns],
        "shown": [s for s in Surface if s in part.show],
        "placement": _placement(part.placement, rule),
        "cuts": [_cut(drawn(cut), rule) for cut in part.cuts],
    }


def _own(name: str, own: OwnSize, rule: Rule) -> doc.OwnLength:
    size = own.size
    return {
        **length_of(own.value, rule, loose=own.loose),
        "dimension": name if size else None,
        "set_out": own.set_out,
        "origin": own.origin,
        "off_tape": size.off_tape if size else False,
        "because": size.because if size else "",
    }


def _rough(line: Line, rule: Rule) -> doc.Rough:
    length, width, thickness = (length_of(value, rule) for value in line.rough)
    return {"length": length, "width": width, "thickness": thickness}


def _blank(part: Part) -> Literal["board", "round"] | doc.GluedUp:
    match part.blank:
        case GluedUp(strips=strips):
            return {"glued_up": [strip.name for strip in strips]}
        case Round():
            return "round"
        case _:
            return "board"


def _placement(placement: Placement, rule: Rule) -> doc.Placement:
    return {
        "along": placement.along,
        "across": placement.across,
        "into": placement.into,
        "at": [length_of(value, rule) for value in placement.at],
    }


def _cut(cut: Drawn, rule: Rule) -> doc.Cut:
    return {
        "cut": cut.cut,
        "owner": cut.owner,
        "form": cut.form,
        "sweep": None if cut.sweep is None else doc.AXES[cut.sweep],
        "corner": list(cut.corner),
        "open_start": list(cut.open_start),
        "open_stop": list(cut.open_stop),
        "open_sides": sorted(cut.open_sides),
        "measures": [
            {
                "word": measure.word,
                "axis": doc.AXES[measure.axis],
                "value": length_of(measure.value, rule),
                "from": measure.from_surface,
                "dimension": measure.dimension,
            }
            for measure in cut.measures
        ],
    }


def _size(size: Size, rule: Rule) -> doc.Size:
    return {
        "name": size.name,
        "value": length_of(size.value, rule, loose=is_loose(size)),
        "set_out": size.kind,
        "origin": size.origin,
        "off_tape": size.off_tape,
        "because": size.because,
    }


def _joint(joint: SetJoint, rule: Rule) -> doc.Joint:
    return {
        "name": joint.name,
        "title": joint.title,
        "parts": list(joint.joined.parts),
        "roles": {role: [seat.part for seat in row] for role, row in joint.joined.seats.items()},
        "seats": [
            {
                "role": seat.role,
                "means": seat.means,
                "parts": [each.part for each in joint.joined.row(seat.role)],
            }
            for seat in type(joint.joined.joint).seats()
        ],
        "choice": {word: str(value) for word, value in joint.choice.values},
        "drawn": [_figure(figure, rule) for figure in joint.drawn],
        "contacts": [
            _contact(contact, area) for contact, area in zip_longest(joint.contacts, joint.areas)
        ],
        "presses": [_press(press) for press in joint.presses],
        "moves": [_move(move, rule) for move in joint.moves],
        "fixings": [_fixing(fixing, rule) for fixing in joint.fixings],
        "gaps": [_gap(gap, rule) for gap in joint.gaps],
        "holds": [_estimate(estimate) for estimate in joint.holds],
        "work": [_operation(done) for done in joint.work],
    }


def _figure(figure: DrawnSize, rule: Rule) -> doc.Figure:
    return {
        "word": figure.word,
        "value": str(figure.value),
        "unit": figure.unit,
        "as_written": figure_reads(figure, rule, has_steps=True),
        "dimension": figure.dimension,
        "reference": figure.reference,
    }


def _contact(contact: Contact, area: float | None) -> doc.Contact:
    declared = patch_area(contact.patch)
    return {
        "between": list(contact.between),
        "zone": contact.zone,
        "glue": contact.glue,
        "fit": contact.fit,
        "area_mm2": float(f"{declared if area is None else area:.6g}"),
        "declared_mm2": float(f"{declared:.6g}"),
    }


def _press(press: Press) -> doc.Press:
    return {
        "between": list(press.between),
        "volume_mm3": str(press.volume),
        "because": press.because,
    }


def _move(move: Move, rule: Rule) -> doc.Move:
    return {
        "role": move.role,
        "motion": move.motion,
        "way": [str(share) for share in move.way],
        "about": None if move.about is None else [length_of(v, rule) for v in move.about],
        "unlocked_by": move.unlocked_by,
    }


def _fixing(fixing: Fixing, rule: Rule) -> doc.Fixing:
    return {
        "between": list(fixing.between),
        "at": [length_of(value, rule) for value in fixing.at],
        "holds": [way for way in Way if way in fixing.holds],
        "free": [way for way in Way if way in fixing.free],
        "by": fixing.by,
    }


def _gap(found: SetGap, rule: Rule) -> doc.Gap:
    gap = found.gap
    return {
        "name": gap.name,
        "at_bench": length_of(found.at_bench, rule),
        "dampest": length_of(found.dampest, rule),
        "driest": length_of(found.driest, rule),
        "moving": [part for part, _ in gap.moving],
        "least": length_of(gap.least, rule),
        "greatest": None if gap.greatest is None else length_of(gap.greatest, rule),
        "because": gap.because,
        "source": gap.source,
    }


def _estimate(estimate: Estimate) -> doc.Estimate:
    return {
        "what": estimate.what,
        "value": float(f"{estimate.value:.3g}"),
        "unit": estimate.unit,
        "basis": estimate.basis,
        "weakest": estimate.weakest,
    }


def _operation(done: Operation) -> doc.Operation:
    setting = done.setting
    return {
        "name": done.name,
        "parts": list(done.parts),
        "tool": done.tool,
        "alternatives": list(done.alternatives),
        "setting": None
        if setting is None
        else {
            "dimensions": list(setting.dimensions),
            "marks": [each.marks for each in setting.to],
            "references": [each.reference for each in setting.to],
            "held_by": setting.held_by,
        },
        "reference": done.reference,
        "state_before": done.state_before,
        "state_after": done.state_after,
        "mate_first": done.mate_first,
        "minutes_assumed": float(f"{done.minutes_assumed:.3g}"),
        "note": done.note,
    }


def _line(line: Line, setting_out: SettingOut, rule: Rule) -> doc.Line:
    long, wide, thick = (
        length_of(own.value, rule, loose=own.loose) for own in own_sizes(setting_out, line.part)
    )
    return {
        "mark": line.mark,
        "part": line.family,
        "parts": [part.name for part in line.parts],
        "wood": line.part.wood,
        "how_many": len(line.parts),
        "long": long,
        "wide": wide,
        "thick": thick,
        "rough": _rough(line, rule),
        "set_out": set_out_words(line, setting_out),
        "note": line.note,
    }


def _finding(finding: Finding) -> doc.Finding:
    place = finding.place
    return {
        "code": finding.code,
        "weight": finding.weight,
        "says": finding.says,
        "cure": finding.cure,
        "figure": finding.figure,
        "limit": finding.limit,
        "source": finding.source,
        "parts": list(finding.parts),
        "place": None
        if place is None
        else {
            "file": place.file,
            "line": place.line,
            "column": place.column,
            "width": place.width,
        },
    }
