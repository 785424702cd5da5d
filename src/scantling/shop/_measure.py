"""The measure of a shop file, and whether its figures are of another."""

from scantling.shop._fields import Table
from scantling.units import Unit

_STRAYS = 3  # figures out of reason that tell of another measure, not of slips


def measure(top: Table) -> Unit:
    """The unit of lengths that say none; inches where it cannot be read."""
    word = top.text("measure")
    top.missing("measure")
    try:
        return Unit(word) if word else Unit.INCH
    except ValueError:
        place = top.desk.places.value(("measure",))
        top.desk.fault(
            "unknown-name", place, f"'{word}' is no unit known here", 'write "inch" or "mm"'
        )
        return Unit.INCH


def is_of_other_measure(top: Table) -> bool:
    """Whether many figures make sense in the other measure only; told once, at the measure."""
    desk = top.desk
    if len(desk.strays) < _STRAYS or not top.has("measure"):
        return False
    desk.findings[:] = [found for found in desk.findings if found not in desk.strays]
    other = Unit.INCH if desk.unit is Unit.MM else Unit.MM
    words = {Unit.INCH: "inches", Unit.MM: "millimetres"}
    first = desk.strays[0]
    desk.fault(
        "other-measure",
        desk.places.value(("measure",)),
        f"these figures read like {words[other]}: {len(desk.strays)} of them make no sense in"
        f" {words[desk.unit]}; the first is at line {first.place.line if first.place else 1}",
        f'write measure = "{other}", or give all figures in {words[desk.unit]}',
    )
    return True
