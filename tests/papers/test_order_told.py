"""The order of work as other programs and the page read it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from tests.pieces.worked import worked

from scantling.method import precedence
from scantling.method.desk import Desk
from scantling.method.job import Before
from scantling.papers._document_order import order_told
from scantling.setting_out.order import with_order
from scantling.shop.habits import Habits


def test_settings_that_steps_name_stand_on_the_gauge_card_at_that_step() -> None:
    told = order_told(worked())
    wanted = [(step["number"], step["setting"]) for step in told["steps"] if step["setting"]]
    for number, letter in wanted:
        assert any(
            held["setting"] == letter and held["first"] <= number <= held["last"]
            for held in told["gauge_card"]
        )
    assert len(wanted) > 100


def test_the_list_before_a_glue_up_names_steps_that_come_before_it() -> None:
    told = order_told(worked())
    words = [told["steps"][each["step"] - 1]["does"] for each in told["before_glue"]]
    assert sorted(words) == [
        "glue case",
        "glue drawer",
        "glue drawer",
        "glue frame",
        "glue frame",
        "glue frame",
    ]
    assert all(
        line["step"] < each["step"] for each in told["before_glue"] for line in each["lines"]
    )


def test_an_order_is_kept_where_nothing_it_follows_from_has_changed() -> None:
    found = worked()
    assert with_order(found, before=found).order is found.order
    other = replace(found, habits=Habits(groove_after_mortise=True))
    assert with_order(other, before=found).order != found.order


def test_a_piece_of_contradicting_rules_has_a_finding_and_no_order(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def ring(_: Desk) -> Iterator[Before]:
        yield Before(first=0, then=1, because="one way")
        yield Before(first=1, then=0, because="and the other")

    monkeypatch.setattr(precedence, "RULES", (*precedence.RULES, ring))
    found = with_order(worked(), before=None)
    assert found.order.steps == ()
    told = [each for each in found.findings if each.code == "method.goes-in-a-ring"]
    assert ["and the other" in each.says for each in told] == [True]
