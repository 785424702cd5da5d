"""What is asked before an entry is kept: which size is meant, and whether a figure can be right."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.record.entry import Reading
from scantling.roster import nearest, plain_name
from scantling.units import INCH

TIMES = 2  # [-] more or less than planned by this is more likely a slip than wood
SLIGHT = Fraction(3)  # [mm] nearer than this to what was planned it may well be so
IN_INCHES = INCH * Fraction(7, 8), INCH * Fraction(9, 8)  # [-] times: millimetres read as inches


def size_meant(said: str, names: Iterable[str]) -> str | Finding:
    """The size a maker means by "left side thickness": point, hyphen and space are equal.

    Args:
        said: As he says it.
        names: Of all sizes, such as `left side.thickness`.

    Returns:
        Its name, or what is wrong with what he said.
    """
    known = {plain_name(name.replace(".", " ")): name for name in names}
    found = known.get(plain_name(said.replace(".", " ")))
    if found is not None:
        return found
    near = nearest(said.replace(".", " "), known)
    return Finding(
        code="record.no-such-size",
        weight=Weight.HALT,
        says=f"No size of this piece is called {said}.",
        cure=f"Perhaps {known[near]}." if near else "The list of parts shows every size.",
    )


def doubtful(reading: Reading, *, planned: Fraction) -> Finding | None:
    """Whether a reading is off by what a slip of the pen is off by, and not by the plane.

    Args:
        reading: What was read.
        planned: The size as it was to be. [mm]
    """
    for text, value in zip(reading.texts, reading.values, strict=True):
        more, less = max(value, planned), min(value, planned)
        if more - less > SLIGHT and more > TIMES * less:
            return _far_off(reading, text, more=value == more, times=more / less if less else None)
    return None


def _far_off(reading: Reading, text: str, *, more: bool, times: Fraction | None) -> Finding:
    by = "far" if times is None else f"{float(times):.3g} times"
    unit = times is not None and IN_INCHES[0] <= times <= IN_INCHES[1]
    return Finding(
        code="record.far-off",
        weight=Weight.HALT,
        says=f"{reading.name} reads {text}, {by} {'more' if more else 'less'} than planned.",
        cure=f"Look at {'the unit' if unit else 'the figure'}; if the wood is so, say that you"
        " are sure.",
        figure=by,
        limit=f"{TIMES} times",
        parts=(reading.name.rpartition(".")[0],),
    )
