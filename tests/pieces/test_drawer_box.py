"""The corners of a drawer hide the groove of its bottom, or it is told how far it shows."""

from __future__ import annotations

from tests.pieces.edited import edited, with_line

SHOWS = "half-blind-dovetail.groove-shows"
# slope 1:8 through sides of 1/2: a half pin of 1/4 at the tip is 5/16 at the base, where the
# first tail begins; the groove is 1/4 wide
FRONT = ('front_joint  = { joint = "half-blind dovetail", lap = "1/4" }', 'half_pin = "1/4"')


def groove(set_up: str) -> list[tuple[str, str]]:
    """What is told of a groove that begins so far up: amount, and the parts it is told of."""
    text, _ = with_line(FRONT[0], FRONT[0].replace(" }", f', {FRONT[1]}, slope = "1:8" }}'))
    old = 'bottom_joint = { joint = "drawer bottom" }'
    assert text.count(old) == 1
    text = text.replace(old, old.replace(" }", f', set_up = "{set_up}" }}'))
    found = edited(text)
    return [
        (f.figure, part)
        for f in found.findings
        if f.code == SHOWS
        for part in f.parts
        if part.endswith("1.left side")
    ]


def test_a_groove_that_begins_with_the_first_tail_is_hidden() -> None:
    assert groove("5/16") == []


def test_a_groove_below_the_first_tail_shows_by_what_it_is_too_low() -> None:
    # 5/16 less 3/16
    assert groove("3/16") == [("1/8 in", "drawer 1.left side")]
