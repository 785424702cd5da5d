"""What was measured, and what is therefore no more as it was planned."""

from __future__ import annotations

from scantling.papers._paper import Rule, rule_of
from scantling.papers._typeset import Plain
from scantling.setting_out import SettingOut
from scantling.setting_out.recorded import Changed
from scantling.sizes.rows import part_of


def changes_page(setting_out: SettingOut) -> Plain:
    """Sizes that changed, facts first, and the parts that are cut; None before any is."""
    if not setting_out.changed and not setting_out.facts.cut:
        return None
    rule = rule_of(setting_out)
    facts = [_row(each, rule) for each in setting_out.changed if each.is_fact]
    follow = [_row(each, rule) for each in setting_out.changed if not each.is_fact]
    return {"facts": facts, "follow": follow, "cut": [*sorted(setting_out.facts.cut)]}


def _row(changed: Changed, rule: Rule) -> Plain:
    owner, size = part_of(changed.name), changed.name.rpartition(".")[2]
    return {
        "what": f"{owner.replace('.', ' ')}, {size}",
        "was": rule.reads(changed.was),
        "is": reads_now(changed, rule),
        "because": changed.because,
    }


def reads_now(changed: Changed, rule: Rule) -> str:
    """What a size is now; what was read off the wood is as it was read. [mm]"""
    return rule.reads(changed.value).removeprefix("about " if changed.is_fact else "")
