"""What a maker says at the bench, held against the piece before it is kept."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.errors import LengthError
from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.record.asking import doubtful, size_meant
from scantling.record.entry import Correction, Done, Note, Reading, Record
from scantling.roster import nearest, plain_name
from scantling.setting_out.answer import SettingOut
from scantling.setting_out.recorded import cut_sizes
from scantling.units import Unit, length, written_with_unit

NO_READING = Finding(
    code="record.no-reading",
    weight=Weight.HALT,
    says="Nothing was read.",
    cure='Say what the rule shows, as in 0.71 or "18 mm"; several readings one after the other.',
)


def measured(
    piece: SettingOut, *, size: str, readings: Sequence[str], sure: bool = False
) -> Reading | Finding:
    """That a made thing was measured.

    Args:
        piece: As it stands now.
        size: What was measured, as in "left side thickness".
        readings: As read; without a unit they are in the measure of the piece.
        sure: Whether a figure that looks like a slip is true.

    Returns:
        What is to be kept, or why it cannot be.
    """
    name = size_meant(size, piece.sizes)
    if isinstance(name, Finding):
        return name
    if not readings:
        return NO_READING
    unit = piece.piece.whole.measure
    try:
        values = tuple(length(text, unit=unit) for text in readings)
    except LengthError as fault:
        return _no_length(fault)
    texts = tuple(_with_unit(text, unit) for text in readings)
    found = Reading(name=name, texts=texts, values=values)
    doubt = None if sure else doubtful(found, planned=piece.sizes[name])
    return doubt or found


def _no_length(fault: LengthError) -> Finding:
    return Finding(
        code="record.no-length", weight=Weight.HALT, says=f"{fault.says}.", cure=f"{fault.cure}."
    )


def _with_unit(text: str, unit: Unit) -> str:
    """The text as typed, so that it says the same whatever the measure of the piece."""
    value = length(text, unit=unit)
    for said in (text.strip(), f"{text.strip()} {unit.sign}"):
        if _reads_as(said, value):
            return said
    return written_with_unit(value, unit=unit)


def _reads_as(text: str, value: Fraction) -> bool:
    try:
        return all(length(text, unit=unit) == value for unit in Unit)
    except LengthError:
        return False


def done(piece: SettingOut, *, part: str) -> Done | Finding:
    """That a part is cut: it keeps the sizes it has now.

    Args:
        piece: As it stands now.
        part: Its name.
    """
    known = {plain_name(p.name): p.name for p in piece.made}
    name = known.get(plain_name(part))
    if name is None:
        near = nearest(part, known.values())
        return Finding(
            code="record.no-such-part",
            weight=Weight.HALT,
            says=f"No part of this piece is called {part}.",
            cure=f"Perhaps {near}." if near else "The list of parts has the names there are.",
        )
    return Done(what=f"{name} cut", part=name, sizes=cut_sizes(name, piece.sizes))


def correction(
    record: Record, *, number: int, instead: Reading | Done | Note | None = None
) -> Correction | Finding:
    """That an earlier entry was wrong.

    Args:
        record: What was kept so far.
        number: Of the entry, as the record counts them.
        instead: What is true. None: the entry is taken back.
    """
    wrong = next((entry for entry in record.entries if entry.number == number), None)
    if wrong is None or isinstance(wrong.said, Correction):
        return Finding(
            code="record.no-such-entry",
            weight=Weight.HALT,
            says=f"The record has no entry {number} that could be corrected.",
            cure="Each entry says its number when it is kept; the file has it first in a line.",
        )
    return Correction(of=wrong.id, instead=instead)
