"""Mistakes of the trade planned into the order of the demo, each found with its own sentence.

The list is common practice; the mistakes stand beside the operations of the vocabulary.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.method.orders import (
    Spoiled,
    after,
    asked,
    before,
    ordered,
    otherwise,
    without_part,
)

from scantling.findings import Weight
from scantling.method.carry_out import carry_out
from scantling.method.job import Step
from scantling.shop.operations import Reference


def _from_the_edge(step: Step) -> Step:
    return replace(step, operation=replace(step.operation, reference=Reference.FACE_EDGE))


def _by_eye(step: Step) -> Step:
    return replace(step, operation=replace(step.operation, setting=None))


def _nothing_inside(step: Step) -> Step:
    return replace(step, holds=())


MISTAKES: dict[str, tuple[Spoiled, str, str]] = {
    "pin holes after glue": (
        after(("bore pin holes",), ("glue case",)),
        "method.pin-holes-after-glue",
        "no room for brace and template inside",
    ),
    "panel unfinished when it is caught": (
        after(("prefinish", "left door.panel"), ("glue frame", "left door.left stile")),
        "method.panel-caught-unfinished",
        "the left door.panel is caught while it still waits for prefinish",
    ),
    "panel left outside": (
        otherwise(("glue frame", "left door.left stile"), _nothing_inside),
        "method.caught-part-outside",
        "the left door.panel is left outside",
    ),
    "panel sized from the drawing": (
        before(("cut to length", "left door.panel"), ("dry assemble", "left door.left stile")),
        "method.panel-from-the-drawing",
        "sized before its real frame has told the size",
    ),
    "panel flattened the day after its glue": (
        after(("rest panel", "deck"), ("flatten panel", "deck")),
        "method.panel-not-rested",
        "the glue of the deck has not let go of its water",
    ),
    "inside smoothed after closing": (
        after(("smooth inside", "deck"), ("glue case",)),
        "method.inside-after-glue",
        "no plane or brush reaches the corners",
    ),
    "inside finished after closing": (
        after(("prefinish", "deck"), ("glue case",)),
        "method.inside-after-glue",
        "no plane or brush reaches the corners",
    ),
    "no dry run": (
        after(("dry assemble", "deck"), ("glue case",)),
        "method.no-dry-run",
        "its first assembly was the one with glue on",
    ),
    "groove from two faces": (
        otherwise(("plough groove", "left door.left stile"), _from_the_edge),
        "method.worked-from-two-faces",
        "it is worked from the face edge and its mate from the face side",
    ),
    "horns off before the mortise": (
        before(("flush", "left door.left stile"), ("chop mortise", "left door.left stile")),
        "method.horns-off-before-mortise",
        "the horns of the left door.left stile are sawn off",
    ),
    "groove after the shoulder": (
        after(("plough groove", "left door.top rail"), ("saw tenon", "left door.top rail")),
        "method.groove-after-shoulder",
        "cut away before the plough has run along it",
    ),
    "mortise before the groove that guides it": (
        before(("chop mortise", "left door.left stile"), ("plough groove", "left door.left stile")),
        "method.guide-cut-later",
        "the cut that guides it on the left door.left stile is not made yet",
    ),
    "pins before their tails": (
        before(("transfer", "left side", "sub-top rail"), ("cut tails", "front sub-top rail")),
        "method.mate-not-ready",
        "taken from its real mate, which still waits for cut tails",
    ),
    "baseline set from the drawing": (
        after(
            ("plane to thickness", "drawer 1.left side"),
            ("gauge baseline", "drawer 1.front", "drawer 1.front at"),
        ),
        "method.not-to-size",
        "the drawer 1.left side is not to size yet",
    ),
    "edge before face": (
        before(("shoot edge", "left stile"), ("true face", "left stile")),
        "method.no-reference",
        "worked from the face side of the left stile, which is not made yet",
    ),
    "joints marked before the part is to size": (
        before(("knife shoulders", "mullion"), ("plane to width", "mullion")),
        "method.not-to-size",
        "the mullion is not to size yet, it waits for plane to width",
    ),
    "a pair marked apart": (
        after(("cut to length", "right side"), ("mark pair across", "left side")),
        "method.pair-apart",
        "the right side belongs beside it",
    ),
    "slots left till after the glue": (
        after(("cut slot", "rear sub-top rail"), ("glue case",)),
        "method.shut-in",
        "the rear sub-top rail is glued already",
    ),
    "back rabbet left till after the glue": (
        after(("cut rabbet", "left side"), ("glue case",)),
        "method.shut-in",
        "the left side is glued already",
    ),
    "guides before the face frame": (
        before(("fit guide", "left side"), ("glue frame to case",)),
        "method.fitted-before-it-stands",
        "it waits for glue frame to case",
    ),
    "drawer parts cut from the drawing": (
        before(("fit to opening", "drawer 1.front"), ("glue frame to case",)),
        "method.opening-not-final",
        "its real opening is not final",
    ),
    "frame glued on before it is level": (
        after(("flush", "left stile", "left stile and"), ("glue frame to case",)),
        "method.glued-on-too-early",
        "one side is not glued and level yet, it waits for flush",
    ),
    "a part left out of the glue-up": (
        otherwise(("glue case",), without_part("partition")),
        "method.part-left-out-of-glue-up",
        "the partition is left out and cannot be brought in afterwards",
    ),
    "hinges let in before the door is shot": (
        before(("cut gain", "left door.left stile"), ("shoot door", "left door.left stile")),
        "method.fitted-before-it-stands",
        "it waits for shoot door",
    ),
    "finished with the hardware on": (
        after(("take off hardware", "left door.left stile"), ("coat", "left door.left stile")),
        "method.finished-with-hardware-on",
        "the hardware sits on the left door.left stile still",
    ),
    "hardware back before the coats are hard": (
        before(("refit hardware", "left door.left stile"), ("rub down", "left door.left stile")),
        "method.finish-out-of-order",
        "the finish is not hard yet",
    ),
    "top fastened before it is finished all round": (
        before(("fasten top", "top"), ("coat", "top")),
        "method.finish-out-of-order",
        "fastened before it is finished all round",
    ),
    "last shavings before the joints": (
        before(("smooth", "drawer 1.bottom"), ("cut slot", "drawer 1.bottom")),
        "method.smoothed-too-early",
        "the drawer 1.bottom still waits for cut slot",
    ),
    "thickness set from the drawing": (
        after(
            ("plane to thickness", "front sub-top rail"),
            ("transfer", "left side", "sub-top rail"),
        ),
        "method.gauge-from-the-drawing",
        "its gauge is set from the real front sub-top rail, which has no thickness yet",
    ),
    "width before the edge it is gauged from": (
        before(("plane to width", "left stile"), ("shoot edge", "left stile")),
        "method.size-before-reference",
        "the left stile still waits for shoot edge",
    ),
    "fitted before it is cut": (
        before(("fit joint", "mullion"), ("saw tenon", "mullion")),
        "method.joint-out-of-order",
        "it comes before saw tenon",
    ),
    "assembled before it is fitted": (
        before(("dry assemble", "deck"), ("fit joint", "deck")),
        "method.joint-not-made",
        "still waits for fit joint",
    ),
    "back boards on before they are finished": (
        after(("prefinish", "back board 1"), ("fit back board", "back board 1")),
        "method.state-skipped",
        "the back board 1 has to be prefinished and waits for prefinish",
    ),
    "coat before the guides are in": (
        before(("coat", "left side"), ("fit guide", "left side")),
        "method.coat-too-early",
        "the left side still waits for fit guide",
    ),
    "rabbets worked by eye": (
        otherwise(("cut rabbet", "left side"), _by_eye),
        "method.not-as-the-joint-asks",
        "the joint back in left side asks for it otherwise",
    ),
    "stops before the drawer runs": (
        before(("fit stops", "drawer 1.front"), ("run drawer", "drawer 1.front")),
        "method.glue-up-out-of-order",
        "the drawer 1.front still waits for run drawer",
    ),
}


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_of_the_trade_is_told_in_its_own_sentence(mistake: str) -> None:
    spoil, code, sentence = MISTAKES[mistake]
    told = carry_out(asked(), spoil(ordered().steps))
    said = [each for each in told if each.code == code and sentence in each.says]
    assert said
    assert said[0].weight is Weight.HALT
    assert said[0].cure


def test_the_order_itself_makes_none_of_them() -> None:
    assert carry_out(asked(), ordered().steps) == ()
