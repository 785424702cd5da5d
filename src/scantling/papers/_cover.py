"""The cover: what it is, how large, of what wood, for which room, and how it stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.papers._cautions import weight, weight_reads
from scantling.papers._drawing.line_types import SCALES, Kind, Spot
from scantling.papers._drawing.piece import PieceDrawing, on_paper, piece_drawing
from scantling.papers._names import listed
from scantling.papers._overall import box_of, openings, sizes_in_words
from scantling.papers._paper import Rule, Sheet, rule_of
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut
from scantling.solids.views import Cabinet

MARGIN = 18.0  # [mm] at both sides of the sheet
STICK = 42.0  # [mm] left of the drawing, for the story stick and its figures
DEEP_END = 14.0  # [mm] right of it, for the figure of the depth
DRAWN_TALL = 0.5  # of the sheet, the most that the drawing takes up
CLOSE = 0.4  # [mm] on paper, where two marks of the stick are one
APART = 4.2  # [mm] on paper, the least that two figures need
FRONT = 30.0  # [mm] how far behind the foremost edge, the overhang, a part still makes the front

TOP_FACE, UNDERSIDE = "top face", "underside"  # rows of figures on the stick

_DRAWN_IN_ORDER = (Kind.GRAIN, Kind.EDGE, Kind.OUTLINE)  # what covers comes later
_COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten")
_ENDINGS = {
    Weight.HALT: ("halts the work until it is settled", "halt the work until they are settled"),
    Weight.MIND: ("is to mind", "are to mind"),
    Weight.NOTE: ("is a note worth knowing", "are notes worth knowing"),
}


def cover(setting_out: SettingOut, *, sheet: Sheet) -> dict[str, Plain]:
    """What the first page shows."""
    rule = rule_of(setting_out)
    return {
        "name": setting_out.piece.name,
        "measure": "inches" if rule.unit.sign == "in" else "millimetres",
        "woods": _sentence(woods_of(setting_out)),
        "made_of": _made_of(setting_out),
        "alt": _alt(setting_out, rule),
        "room": _room(setting_out),
        "sizes": list(sizes_in_words(setting_out, rule)),
        "notes": [*setting_out.piece.notes, *_not_reckoned(setting_out)],
        "found": list(found_in_words(setting_out.findings)),
        "drawing": _drawn(setting_out, rule, sheet=sheet) if setting_out.made else None,
    }


def woods_of(setting_out: SettingOut) -> tuple[str, ...]:
    """Woods of the parts made, as they come."""
    return tuple(dict.fromkeys(part.wood for part in setting_out.made))


def found_in_words(findings: Iterable[Finding]) -> Iterator[str]:
    """`One finding halts the work until it is settled.` and so on; never silence."""
    counts = dict.fromkeys(Weight, 0)
    for finding in findings:
        counts[finding.weight] += 1
    if not any(counts.values()):
        yield "Nothing was found that speaks against it."
    for weight_, (one, many) in _ENDINGS.items():
        count = counts[weight_]
        if count:
            number = _COUNTS[count] if count < len(_COUNTS) else str(count)
            yield f"{number} finding{'' if count == 1 else 's'} {one if count == 1 else many}."


def halted_in_words(findings: Iterable[Finding]) -> str:
    """What stands over every sheet of a piece that must not be cut; empty where it may be."""
    halts = sum(finding.weight is Weight.HALT for finding in findings)
    if not halts:
        return ""
    said = "finding halts" if halts == 1 else "findings halt"
    return f"NOT TO BE CUT FROM: {halts} {said} the work"


def _sentence(words: Iterable[str]) -> str:
    *most, last = tuple(words) or ("no wood",)
    return f"{', '.join(most)} and {last}" if most else last


def _made_of(setting_out: SettingOut) -> str:
    joints = len(setting_out.joints)
    found = f"{setting_out.counted}, {joints} joint{'' if joints == 1 else 's'}"
    mass = weight(setting_out)
    if mass is not None:
        found += f", about {weight_reads(mass, unit=rule_of(setting_out).unit)} of wood"
    return found


def _alt(setting_out: SettingOut, rule: Rule) -> str:
    """The drawing in words, for one who cannot see it."""
    if not setting_out.made:
        return ""
    wide, deep, tall = (f"{rule.reads(size)} {rule.unit.sign}" for size in setting_out.overall)
    return (
        f"{setting_out.piece.name} from the front, the right and above: "
        f"{wide} wide, {deep} deep, {tall} tall"
    )


def _room(setting_out: SettingOut) -> str:
    room = setting_out.piece.whole.room
    low, high, now = (round(x, 1) for x in (room.driest, room.dampest, room.made_at))
    return (
        f"Worked at the bench with the wood at about {now:g}\u00a0% moisture; where it will stand "
        f"the wood settles between {low:g}\u00a0% and {high:g}\u00a0% through the year."
    )


def _drawn(setting_out: SettingOut, rule: Rule, *, sheet: Sheet) -> dict[str, Plain]:
    picture = piece_drawing(setting_out, view=Cabinet())
    scale = _scale(picture, sheet=sheet)
    wide, deep, tall = setting_out.overall
    low, high = _corners(setting_out)
    feet = [box_of(part)[0][1] for part in setting_out.made if box_of(part)[0][2] == low[2]]
    return {
        "scale": scale,
        "size": _flat(picture, picture.high, scale),
        "strokes": _strokes(picture, scale),
        "front": [
            *_flat(picture, on_paper(low), scale),
            *_flat(picture, on_paper((high[0], low[1], high[2])), scale),
        ],
        # the story stick stands where the feet do, not under the overhang of a top
        "floor": _flat(picture, on_paper((low[0], float(min(feet)), low[2])), scale)[1],
        "behind": _flat(picture, on_paper((high[0], high[1], low[2])), scale),
        "wide": rule.reads(wide),
        "deep": rule.reads(deep),
        "tall": rule.reads(tall),
        "case": _case(setting_out, picture, rule, scale),
        "openings": _openings(setting_out, picture, rule, scale),
        "stick": list(_stick(setting_out, rule, scale)),
    }


def _not_reckoned(setting_out: SettingOut) -> Iterator[str]:
    """What the maker wrote that no proof looks at yet."""
    sections = setting_out.piece.sections
    loaded = [each.name for each in sections if getattr(each.said, "load", None) is not None]
    if loaded:
        yield (
            f"The load said for {listed(loaded)} is kept, and not yet reckoned with: "
            "no sag is worked out, and no shelf is proven to bear it."
        )


def _case(
    setting_out: SettingOut, picture: PieceDrawing, rule: Rule, scale: int
) -> dict[str, Plain] | None:
    """The case's own width, where the piece is wider."""
    known = setting_out.sizes
    sides = [box_of(part) for part in setting_out.made if part.family == "side"]
    if "case.wide" not in known or known["case.wide"] == setting_out.overall[0] or not sides:
        return None
    left, right = (choose(float(box[i][0]) for box in sides) for i, choose in ((0, min), (1, max)))
    foot = min(sides, key=lambda box: box[0][0])[0]
    ends = [on_paper((x, float(foot[1]), float(foot[2]))) for x in (left, right)]
    return {
        "from": _flat(picture, ends[0], scale)[0],
        "to": _flat(picture, ends[1], scale)[0],
        "reads": rule.reads(known["case.wide"]),
    }


def _scale(picture: PieceDrawing, *, sheet: Sheet) -> int:
    wide, tall = (float(x) for x in sheet.size)
    room = (wide - 2 * MARGIN - STICK - DEEP_END, tall * DRAWN_TALL)
    for scale in SCALES:
        if all((picture.high[i] - picture.low[i]) / scale <= room[i] for i in (0, 1)):
            return scale
    return SCALES[-1]


def _strokes(picture: PieceDrawing, scale: int) -> list[Plain]:
    by_kind: dict[Kind, list[Plain]] = {kind: [] for kind in _DRAWN_IN_ORDER}
    for stroke in picture.strokes:
        by_kind[stroke.kind].append([_flat(picture, spot, scale) for spot in stroke.points])
    return [{"kind": kind, "lines": lines} for kind, lines in by_kind.items()]


def _flat(picture: PieceDrawing, point: Spot, scale: int) -> list[Plain]:
    """A point on the sheet, from the lower left of the drawing. [mm]"""
    return [round((point[i] - picture.low[i]) / scale, 2) for i in (0, 1)]


def _corners(setting_out: SettingOut) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Lowest and highest of everything made: wide, deep, tall. [mm]"""
    boxes = [box_of(part) for part in setting_out.made]
    return (
        tuple(min(float(low[axis]) for low, _ in boxes) for axis in range(3)),
        tuple(max(float(high[axis]) for _, high in boxes) for axis in range(3)),
    )


def _stick(setting_out: SettingOut, rule: Rule, scale: int) -> Iterator[dict[str, Plain]]:
    """Marks of the story stick: top faces and undersides of the front, from the floor.

    Figures that would touch the one below are left out, each row by itself; the highest stays.
    """
    floor = min(box_of(part)[0][2] for part in setting_out.made)
    for row, levels in _levels(setting_out, floor=floor, scale=scale).items():
        written = -APART
        for level in levels:
            at, top = float(level) / scale, float(levels[-1]) / scale
            fits = at - written >= APART and (top - at >= APART or level == levels[-1])
            written = at if fits else written
            yield {
                "at": round(at, 2),
                "row": row,
                "reads": rule.reads(level) if fits else "",
                "whole": level == setting_out.overall[2],
            }


def _levels(setting_out: SettingOut, *, floor: Fraction, scale: int) -> dict[str, list[Fraction]]:
    """Heights of the front that do not open, one where several run together. [mm]"""
    front = min(box_of(part)[0][1] for part in setting_out.made)
    boxes = [box_of(part) for part in setting_out.made if not part.moves_with]
    ends = [(low[2], high[2]) for low, high in boxes if low[1] - front <= FRONT]
    undersides, tops = ({end[i] - floor for end in ends} for i in (0, 1))
    return {
        TOP_FACE: _apart(tops | {setting_out.overall[2]}, scale=scale),
        UNDERSIDE: _apart(undersides, scale=scale),
    }


def _apart(levels: Iterable[Fraction], *, scale: int) -> list[Fraction]:
    found: list[Fraction] = []
    for level in sorted(levels):
        if level > 0 and (not found or float(level - found[-1]) / scale > CLOSE):
            found.append(level)
    return found


def _openings(
    setting_out: SettingOut, picture: PieceDrawing, rule: Rule, scale: int
) -> list[Plain]:
    """Where the front shows how far it is from board to board, and how far that is."""
    return [
        {
            "at": _flat(
                picture,
                on_paper([float(x) for x in (each.middle, each.front, each.low + each.tall / 2)]),
                scale,
            ),
            "reads": rule.reads(each.tall),
        }
        for each in openings(setting_out)
        if float(each.tall) / scale > APART
    ]
