"""The boards as they are cut up: outline, knots, and where each part comes from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scantling.exact import Fraction
from scantling.papers._drawing.line_types import Drawing, Kind, Spot, Stroke, Text
from scantling.papers._paper import Rule, Sheet, rule_of
from scantling.papers._part_pages import MARGIN, drawn
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut
from scantling.stock.boards import Board, Harm
from scantling.stock.plan import Section
from scantling.stock.verdict import told, verdict
from scantling.units import FINEST_INCH, Unit, rounded

NUMBERS = 3.0  # [mm] of paper, the least height of a strip that its number is written in


def boards_page(setting_out: SettingOut, *, sheet: Sheet) -> dict[str, Plain] | None:
    """Verdicts, boards with their parts, and what to buy; None where none were surveyed."""
    found = setting_out.boards
    if found is None:
        return None
    plan, rule = found.laid.plan, rule_of(setting_out)
    marks = {part.name: line.mark for line in setting_out.lines for part in line.parts}
    cut = [board for board in found.laid.job.boards if board.name in plan.boards]
    longest = max((board.length for board in cut), default=Fraction(1))
    scale = float(longest) / (float(sheet.size[0]) - 2 * MARGIN)
    return {
        "verdicts": [{"wood": each.wood, "says": verdict(each)} for each in found.laid.woods],
        "buy": [told(each) for each in found.shopping.bought],
        "boards": [
            _board(board, [s for s in plan.sections if s.board == board.name], marks, rule, scale)
            for board in cut
        ],
    }


def _board(
    board: Board, sections: Sequence[Section], marks: Mapping[str, int], rule: Rule, scale: float
) -> dict[str, Plain]:
    tall = float(board.widest) / scale
    drawing = Drawing(
        strokes=tuple(_strokes(board, sections, scale=scale, tall=tall)),
        texts=tuple(_numbers(sections, marks, scale=scale, tall=tall)),
        size=(float(board.length) / scale, tall),
        scale=round(scale),
        alt=f"board {board.name} from end a, its edge a above",
    )
    return {
        "name": board.name,
        "wood": board.wood,
        "drawing": drawn(drawing),
        "cuts": [_told(section, marks, rule) for section in sections],
    }


def _strokes(
    board: Board, sections: Sequence[Section], *, scale: float, tall: float
) -> Iterator[Stroke]:
    def spot(along: Fraction, across: Fraction) -> Spot:
        return float(along) / scale, tall - float(across) / scale

    zero = Fraction(0)
    outline = [(zero, zero), (board.length, zero), (board.length, board.width_b)]
    outline += [(zero, board.width_a), (zero, zero)]
    yield Stroke(kind=Kind.EDGE, points=tuple(spot(x, y) for x, y in outline))
    for each in board.defects:
        if each.harm is not Harm.LOOK:
            far = min(each.far, board.widest)
            sides = _round(each.start, each.stop, max(each.near, zero), far)
            if each.harm is Harm.SPOILS:
                sides.append(sides[2])  # crossed out
            yield Stroke(kind=Kind.MARK, points=tuple(spot(x, y) for x, y in sides))
    for section in sections:
        for sawn in section.sawn:
            stop, far = sawn.start + sawn.length, sawn.near + sawn.width
            sides = _round(sawn.start, stop, sawn.near, far)
            yield Stroke(kind=Kind.VISIBLE, points=tuple(spot(x, y) for x, y in sides))


def _round(*sides: Fraction) -> list[tuple[Fraction, Fraction]]:
    start, stop, near, far = sides
    return [(start, near), (stop, near), (stop, far), (start, far), (start, near)]


def _numbers(
    sections: Sequence[Section], marks: Mapping[str, int], *, scale: float, tall: float
) -> Iterator[Text]:
    """The mark of each part on it, where there is room to write one."""
    for section in sections:
        for sawn in section.sawn:
            if float(sawn.width) / scale >= NUMBERS:
                middle = float(sawn.near + sawn.width / 2) / scale
                at = float(sawn.start) / scale + 1.0, tall - middle
                yield Text(says=str(marks[sawn.part]), at=at, bold=True)


def _told(section: Section, marks: Mapping[str, int], rule: Rule) -> dict[str, Plain]:
    """Where a section lies from end a, and what is ripped from it, from edge a on."""
    strips = [
        f"{marks[sawn.part]} {sawn.part.replace('.', ' ')}, {_near(sawn.width, rule)} wide"
        for sawn in section.sawn
    ]
    return {
        "from": _near(section.start, rule),
        "to": _near(section.stop, rule),
        "strips": "; ".join(strips),
    }


def _near(value: Fraction, rule: Rule) -> str:
    """A distance to chalk; a saw follows no mark closer than this."""
    return rule.plain(rounded(value, to=4 * FINEST_INCH if rule.unit is Unit.INCH else Fraction(1)))
