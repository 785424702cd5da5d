"""Every joint's case on the bench can be ordered and carried out, whatever it is."""

from __future__ import annotations

import pytest
from tests.house.test_every_answer_counts import ROSTER, every_joint, worked

from scantling.method.carry_out import carry_out
from scantling.setting_out.order import job


@every_joint
def test_a_joint_by_itself_has_an_order_that_can_be_carried_out(title: str) -> None:
    found = worked(ROSTER[title].bench())
    asked = job(found)
    assert carry_out(asked, found.order.steps) == ()
    answered = {answer for step in found.order.steps for answer in step.answers}
    assert answered == {(j.name, i) for j in asked.joints for i in range(len(j.work))}


@pytest.mark.parametrize("title", ["shiplap", "groove", "rabbet"])
def test_what_lies_dry_is_in_no_glue_up(title: str) -> None:
    assert worked(ROSTER[title].bench()).order.glue_ups == ()
