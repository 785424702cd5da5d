"""A page is told what has changed since it was told last, and comes to the same document."""

from copy import deepcopy
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from scantling.web.changes import BY_NAME, REMEMBERED, Remembered, changes

Doc = dict[str, Any]

rows = st.lists(
    st.fixed_dictionaries({"name": st.sampled_from("abcdef"), "long": st.integers(0, 3)}),
    unique_by=lambda row: row["name"],
)
documents = st.fixed_dictionaries(
    {
        "piece": st.integers(0, 2),
        "year": st.lists(st.integers(0, 1)),
        **dict.fromkeys(BY_NAME, rows),
    }
)


def made(before: Doc, told: Doc) -> Doc:
    """What the page makes of it, in the fewest words."""
    now = {**before, **told["sections"]}
    for section, each in told["rows"].items():
        known = {row["name"]: row for row in (*before[section], *each["changed"])}
        order = each["order"] or [row["name"] for row in before[section]]
        now[section] = [] if each["order"] == [] else [known[name] for name in order]
    return now


@given(before=documents, now=documents)
def test_the_changes_lead_from_one_document_to_the_other(before: Doc, now: Doc) -> None:
    assert made(before, changes(before, now)) == now


@given(now=documents)
def test_of_a_document_that_stays_nothing_is_told(now: Doc) -> None:
    told = changes(now, deepcopy(now))
    assert told["sections"] == {}
    assert all(each == {"order": None, "changed": []} for each in told["rows"].values())


def test_a_row_that_stays_is_not_sent() -> None:
    one, other = {"name": "side", "long": 24}, {"name": "top", "long": 15}
    told = changes({"parts": [one, other]}, {"parts": [one, {**other, "long": 16}]})
    assert told["rows"]["parts"] == {"order": None, "changed": [{"name": "top", "long": 16}]}


def test_the_oldest_documents_are_forgotten() -> None:
    kept = Remembered()
    for number in range(1, REMEMBERED + 2):
        kept.keep(number, {"piece": number})
    assert kept.under(kept.mark(1)) is None
    assert kept.under(kept.mark(2)) == {"piece": 2}


def test_a_mark_of_another_server_is_not_known() -> None:
    one, other = Remembered(), Remembered()
    one.keep(1, {"piece": 1})
    assert other.under(one.mark(1)) is None
    other.keep(1, {"piece": 2})
    assert other.under(one.mark(1)) is None
