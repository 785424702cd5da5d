"""Everything that is shown, in the words of the maker's country. The one place where that is done.

It comes last, over what a paper or the page is about to show: rooms below write as the house
does, and what is stored for other programs stays so.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any, TypeVar

from scantling.findings import Finding
from scantling.papers._paper import names_in, speech_of
from scantling.setting_out import SettingOut
from scantling.wording import Speech, spoken

T = TypeVar("T")

# names, codes, figures, and titles of others' books: no display setting reaches them
KEPT = frozenset(
    (
        *("name", "family", "wood", "part", "parts", "owner", "where", "file", "moves_with"),
        *("moving", "between", "role", "roles", "dimension", "dimensions", "names", "path"),
        *("code", "weight", "source", "mm", "as_written", "placement", "corner", "contacts"),
        *("presses", "moves", "fixings", "choice", "alternatives", "label"),
    )
)
DRAWN = frozenset(("strokes", "line_types", "angle"))  # tables for the pen, not for the eye
LENGTH = {"mm", "value_mm", "as_written"}


def in_words(shown: T, setting_out: SettingOut) -> T:
    """Text, or tables and lists of it, in the words the maker wants."""
    speech = speech_of(setting_out)
    return _all(shown, speech, _at_risk(setting_out, speech))


def rows_in_words(
    rows: Sequence[Mapping[str, Any]], setting_out: SettingOut, *, section: str
) -> list[Mapping[str, Any]]:
    """Rows with names of their own; what is as it was last time is the same object again."""
    speech = speech_of(setting_out)
    at_risk = _at_risk(setting_out, speech)

    def said(row: Mapping[str, Any]) -> Mapping[str, Any]:
        return setting_out.memory.made(
            ("in words", section, row["name"]),
            of=(row, speech, at_risk),
            make=lambda: _all(row, speech, at_risk),
        )

    return [said(row) for row in rows]


def finding_in_words(finding: Finding, setting_out: SettingOut) -> Finding:
    """A finding in the words the maker wants; its code, place and source stay."""
    says, cure = in_words([finding.says, finding.cure], setting_out)
    return replace(finding, says=says, cure=cure)


def _at_risk(setting_out: SettingOut, speech: Speech) -> frozenset[str]:
    """Names that would be put into other words if nobody minded; the same set while they stay."""

    def found() -> frozenset[str]:
        names = _said_names(setting_out)
        return frozenset(name for name in names if spoken(name, speech) != name)

    of = (setting_out.piece, setting_out.parts, setting_out.joints, setting_out.sizes, speech)
    memory = setting_out.memory
    return memory.same(("names at risk",), memory.made(("names", speech), of=of, make=found))


def _said_names(setting_out: SettingOut) -> frozenset[str]:
    """Names as they are written, and as papers say them: `left door top rail`."""
    names = names_in(setting_out)
    return names | {name.replace(".", " ") for name in names}


def _stays(key: object, value: object) -> bool:
    """Whether a value is a name, or a list of names; a table under such a word is gone through."""
    if value is None or isinstance(value, int | float) or key in DRAWN:
        return True
    lone = value if not isinstance(value, list | tuple) else next(iter(value), "")
    return key in KEPT and not isinstance(lone, dict)


def _all(shown: T, speech: Speech, names: Collection[str]) -> T:
    made: object = shown
    if isinstance(shown, str):
        made = spoken(shown, speech, names=names)
    elif isinstance(shown, dict) and len(shown) == len(LENGTH) and shown.keys() == LENGTH:
        return shown  # by far the most of the tables there are, and never a word in them
    elif isinstance(shown, dict):
        made = {k: v if _stays(k, v) else _all(v, speech, names) for k, v in shown.items()}
    elif isinstance(shown, list | tuple):
        made = [_all(each, speech, names) for each in shown]
    return made  # type: ignore[return-value]  # of the same kind, text for text
