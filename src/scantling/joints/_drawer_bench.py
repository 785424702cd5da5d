"""A drawer on the bench, its corners butted, for its bottom alone."""

from __future__ import annotations

from scantling.exact import Fraction
from scantling.joints._joint import Bench, Beside, Joined, Joint, Seat
from scantling.parts import Way
from scantling.parts.planned import PlannedPart
from scantling.sizes.linear import ZERO, Linear, size_of
from scantling.sizes.model import Equation, Relations, Stated

DROP = Fraction(4)  # [mm] the back stays below the sides
STATED = {
    "front.length": 412,
    "front.width": 138,
    "front.thickness": 20,
    "left.length": 235,
    "left.width": 138,
    "left.thickness": 12,
    "right.length": 235,
    "right.width": 138,
    "right.thickness": 14,
    "back.thickness": 11,
    "bottom.thickness": 9,
}
LYING = {
    "bottom": (Way.RIGHT, Way.BACK, Way.DOWN),
    "front": (Way.RIGHT, Way.UP, Way.FRONT),
    "left": (Way.BACK, Way.UP, Way.LEFT),
    "right": (Way.BACK, Way.UP, Way.RIGHT),
    "back": (Way.RIGHT, Way.UP, Way.BACK),
}


def drawer_bench(joint: Joint, *, name: str, beside: tuple[Beside, ...] = ()) -> Bench:
    """Front, sides butted behind it, back between them, bottom in its grooves."""
    seats = {role: (Seat(part=role),) for role in LYING}
    j = Joined(name=name, joint=joint, seats=seats, beside=beside)
    front, left = size_of("front.thickness"), size_of("left.thickness")
    upper = j.size("set up") + j.size("groove")
    rear = front + size_of("left.length")
    at: dict[str, tuple[Linear, Linear, Linear]] = {
        "bottom": (left - j.size("depth") + j.size("end ease"), front - j.size("depth"), upper),
        "front": (ZERO, front, ZERO),
        "left": (left, front, ZERO),
        "right": (size_of("front.length") - size_of("right.thickness"), front, ZERO),
        "back": (left, rear - size_of("back.thickness"), upper),
    }
    parts = tuple(
        PlannedPart(
            name=role,
            family=f"drawer {role}",
            wood="white ash" if role == "front" else "yellow-poplar",
            ways=ways,
            at=at[role],
        )
        for role, ways in LYING.items()
    )
    relations = Relations(equations=_equations(j))
    for part in parts:
        relations += part.relations()
    stated = tuple(Stated(name=n, value=Fraction(v)) for n, v in STATED.items())
    return Bench(parts=parts, joined=j, relations=relations, stated=(*stated, *joint.stated(j)))


def _equations(j: Joined) -> tuple[Equation, ...]:
    """What the form of a drawer says."""
    inside = size_of("front.length") - size_of("left.thickness") - size_of("right.thickness")
    upper = j.size("set up") + j.size("groove")
    reach = 2 * (j.size("depth") - j.size("end ease"))
    sums = {
        "the back stands between the sides": size_of("back.length") - inside,
        "the back stands on the bottom": size_of("back.width")
        + upper
        + DROP
        - size_of("left.width"),
        "the bottom reaches into both sides": size_of("bottom.length") - inside - reach,
        "the bottom ends under the back": size_of("bottom.width")
        - size_of("left.length")
        - j.size("depth"),
    }
    return tuple(Equation(sum=total, because=because) for because, total in sums.items())
