"""What is asked before an entry is kept: which size is meant, and whether a figure can be right."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.record.entry import Reading
from scantling.roster import nearest, plain_name

INCH_FOR_MM = Fraction(254, 10)  # what a figure in the wrong measure is off by
NEAR = Fraction(3, 100)  # [-] share within which it is taken to be just that
FAR_OFF = (INCH_FOR_MM, 1 / INCH_FOR_MM, Fraction(10), Fraction(1, 10), Fraction(12))


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
    for value in reading.values:
        by = value / planned if planned > 0 else Fraction(1)
        if any(abs(by / far - 1) <= NEAR for far in FAR_OFF):
            return Finding(
                code="record.in-another-measure",
                weight=Weight.HALT,
                says=f"{reading.name} reads {reading.texts[0]}, {_times(by)} what was planned.",
                cure="Look at the unit or the point; if the wood is so, say that you are sure.",
                figure=f"{float(by):.3g} times",
                limit=f"{float(1 + NEAR):.3g} times",
                parts=(reading.name.rpartition(".")[0],),
            )
    return None


def _times(by: Fraction) -> str:
    return f"{float(by):.3g} times" if by > 1 else f"one part in {float(1 / by):.3g} of"
