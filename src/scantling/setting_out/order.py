"""The order of work, from what the chain has found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from scantling.findings import Finding, Weight, in_order
from scantling.joints._joint import Fit, Glue
from scantling.method.assemblies import connected
from scantling.method.captured import captured
from scantling.method.job import Job, JobJoint
from scantling.method.order import Order, order_of_work
from scantling.method.ordering import CycleError
from scantling.parts import Part
from scantling.setting_out.answer import SetJoint, SettingOut
from scantling.solids.store import Store

HELD_BY_GLUE = frozenset({Fit.PRESS, Fit.TOUCH})  # what slides, runs or floats is left dry


def with_order(found: SettingOut, *, before: SettingOut | None) -> SettingOut:
    """The piece with its order of work; an earlier order where nothing it follows from changed."""
    asked = job(found)
    if before is not None and before.order.job == asked:
        order = before.order
    else:
        try:
            order = order_of_work(asked)
        except CycleError as ring:
            order = Order(job=asked, findings=(_in_a_ring(ring),))
    return replace(found, order=order, findings=in_order((*found.findings, *order.findings)))


def _in_a_ring(ring: CycleError) -> Finding:
    return Finding(
        code="method.goes-in-a-ring",
        weight=Weight.MIND,
        says=str(ring),
        cure="Turn round one of your habits that meet here, or work these steps by your own order.",
    )


def job(setting_out: SettingOut) -> Job:
    """The facts that the order of work follows from."""
    made = setting_out.made
    names = {part.name for part in made}
    joints = tuple(_joint(each, names) for each in setting_out.joints)
    return Job(
        parts=made,
        joints=joints,
        shop=setting_out.shop,
        habits=setting_out.habits,
        sizes=setting_out.sizes,
        captured=_captured(made, joints, store=setting_out.store),
    )


def _joint(each: SetJoint, made: set[str]) -> JobJoint:
    return JobJoint(
        name=each.joined.name,
        parts=tuple(part for part in each.joined.parts if part in made),
        work=each.work,
        glued=_glued(each, made),
    )


def _glued(each: SetJoint, made: set[str]) -> bool:
    """Whether glue holds made parts together: held there, and pressed or lying close."""
    holds = any(made.issuperset(fixing.between) for fixing in each.fixings)
    return holds and any(
        c.glue is not Glue.DRY and c.fit in HELD_BY_GLUE and made.issuperset(c.between)
        for c in each.contacts
    )


def _captured(
    made: Sequence[Part], joints: Sequence[JobJoint], *, store: Store
) -> Mapping[str, tuple[str, ...]]:
    """Parts held dry by several members of one glue-up that cannot leave it afterwards."""
    groups = connected([j.parts for j in joints if j.glued and not j.own_glue])
    held: dict[str, tuple[str, ...]] = {}
    for joint in joints:
        for part in joint.parts if not joint.glued else ():
            others = tuple(p for p in joint.parts if p != part)
            if len(others) > 1 and any(g.issuperset(others) and part not in g for g in groups):
                held[part] = others
    return captured(made, held=held, store=store)
