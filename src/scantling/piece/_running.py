"""How a drawer runs: what it lies on, and what should guide it and keep it from tipping."""

from __future__ import annotations

from scantling.findings import Place
from scantling.parts.pulled import Pulled, Remedy, Slide
from scantling.piece._form import Opening, Sketch
from scantling.piece._kicker import RAILS, under_the_top


def running(
    sketch: Sketch,
    name: str,
    opening: Opening,
    *,
    fill: Place | None,
    section: Place | None,
    guides: Place | None,
    kickers: Place | None,
) -> Pulled:
    """A drawer as it slides, and the lines that would see to its running.

    Args:
        sketch: With partitions and shelves.
        name: The drawer.
        opening: What it fills.
        fill: Where the file says which opening it fills.
        section: Where the file speaks of drawers at all.
        guides: Where it speaks of guides; None where it does not.
        kickers: Where it speaks of kickers; None where it does not.
    """
    left, right = (
        Slide(
            part=f"{name}.{side} side",
            on_left=side == "left",
            behind="stiles" if member.endswith("stile") else member,
            unguided=_post_missing(sketch, opening, member) or _guiding(guides, section),
            tips=_cannot_hang(sketch, opening, section)
            or _post_missing(sketch, opening, member)
            or _kicking(kickers, section),
        )
        for side, member in (("left", opening.left_part), ("right", opening.right_part))
    )
    rail = opening.below_part
    return Pulled(
        name=name,
        over=rail,
        under=opening.above_part,
        slides=(left, right),
        not_carried=Remedy(
            cure=f'Let a fixed shelf carry them: flush_with = "{rail}".', place=fill
        ),
    )


def _post_missing(sketch: Sketch, opening: Opening, member: str) -> Remedy | None:
    """No partition behind a mullion: the partitions' own line is at fault, or else the row's."""
    if member.endswith("stile") or f"behind {member}" in sketch.landings:
        return None
    mullions = {o.right_part for o in sketch.openings.values() if o.place == opening.place}
    standing = (sketch.landings.get(f"behind {mullion}") for mullion in sorted(mullions))
    place = next((p.place for p in standing if p is not None), opening.place)
    cure = f"Stand a partition behind the {member}, with its kicker: one behind each mullion."
    return Remedy(cure=cure, place=place)


def _cannot_hang(sketch: Sketch, opening: Opening, section: Place | None) -> Remedy | None:
    if under_the_top(sketch, opening):
        return None
    if any(rail not in sketch.landings for rail in RAILS):
        return Remedy(
            cure="Write rails_under_top in [case]: kickers hang from them.", place=section
        )
    return Remedy(
        cure="Make the row of drawers the highest opening of the front: kickers hang from the "
        "rails under the top.",
        place=opening.place,
    )


def _guiding(said: Place | None, section: Place | None) -> Remedy:
    if said is None:
        cure = "Write guides in [drawers]: strips as thick as the frame stands inside the case."
        return Remedy(cure=cure, place=section)
    return Remedy(cure="Make the guides longer, or the gap beside the drawer smaller.", place=said)


def _kicking(said: Place | None, section: Place | None) -> Remedy:
    if said is None:
        return Remedy(cure="Write kickers in [drawers].", place=section)
    return Remedy(cure="Make the kickers wider, till they lie over the sides.", place=said)
