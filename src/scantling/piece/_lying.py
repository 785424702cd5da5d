"""A frame member glued to the front edge of the case behind it."""

from __future__ import annotations

from scantling.joints._joint import Joined, Seat
from scantling.joints.face_frame_to_carcase import FaceFrameToCarcase


def lying_on(member: str, case: str) -> Joined:
    """A frame member that lies on a front edge of the case."""
    return Joined(
        name=f"{member} on {case}",
        joint=FaceFrameToCarcase(),
        seats={"frame": (Seat(part=member),), "case": (Seat(part=case),)},
    )
