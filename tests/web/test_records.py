"""What the page says for the record is kept once, refused with its cure, and shown at once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from scantling.cli import stager
from scantling.record.reading import read
from scantling.web.app import app
from scantling.web.serve import drawings
from scantling.web.workbench import Workbench

ROOT = Path(__file__).parents[2]
OWN = "http://127.0.0.1:4000"
AT = "2026-11-25T10:00:00Z"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("bench")
    text = (ROOT / "pieces" / "bookcase" / "piece.toml").read_text(encoding="utf-8")
    (found / "piece.toml").write_text(text.replace('"../shop.toml"', '"shop.toml"'))
    (found / "shop.toml").write_bytes((ROOT / "pieces" / "shop.toml").read_bytes())
    return found


@pytest.fixture(scope="module")
def client(folder: Path) -> Iterator[TestClient]:
    bench = Workbench(folder / "piece.toml", work=stager(), drawings=drawings())
    bench.look()
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as found:
        yield found


@pytest.fixture(autouse=True)
def nothing_recorded(folder: Path) -> None:
    (folder / "record.jsonl").unlink(missing_ok=True)


def said(client: TestClient, name: str, **wish: object) -> Any:  # noqa: ANN401 - whatever the client answers with
    headers = {"origin": OWN, "sec-fetch-site": "same-origin"}
    body = {"id": f"page-{name}-0001", "at": AT, **wish}
    return client.post("/api/record", json=body, headers=headers)


SIDE = {"size": "left side thickness", "readings": ["0.71"]}


def test_a_reading_is_kept_and_what_follows_is_shown_at_once(
    client: TestClient, folder: Path
) -> None:
    answer = said(client, "a", measured=SIDE)
    assert answer.status_code == 200
    record = answer.json()["setting_out"]["record"]
    assert [(e["number"], e["says"]) for e in record["entries"]] == [
        (1, "left side thickness reads 0.71 in")
    ]
    changed = {c["name"]: c for c in record["changed"]}
    assert changed["left side.thickness"]["measured"]
    assert changed["left side.thickness"]["now"]["as_written"] == "0.71"
    assert "bottom.length" in changed
    (entry,) = read((folder / "record.jsonl").read_bytes()).entries
    assert (entry.id, entry.at) == ("page-a-0001", AT)


def test_a_message_sent_again_is_kept_once(client: TestClient, folder: Path) -> None:
    for _ in range(3):
        assert said(client, "b", note="a knot in the left side").status_code == 200
    assert len(read((folder / "record.jsonl").read_bytes()).entries) == 1


def test_a_part_cut_and_an_entry_taken_back_are_shown(client: TestClient) -> None:
    assert said(client, "c", done="bottom").json()["setting_out"]["record"]["cut"] == ["bottom"]
    record = said(client, "d", correct=1).json()["setting_out"]["record"]
    assert record["cut"] == []
    assert [e["holds"] for e in record["entries"]] == [False, True]


@pytest.mark.parametrize(
    ("wish", "code"),
    [
        ({"measured": {"size": "left sid thickness", "readings": ["0.71"]}}, "record.no-such-size"),
        ({"measured": {**SIDE, "readings": ["18"]}}, "record.far-off"),
        ({"measured": {**SIDE, "readings": ["0,71,3"]}}, "record.no-length"),
        ({"done": "botom"}, "record.no-such-part"),
        ({"correct": 9}, "record.no-such-entry"),
    ],
)
def test_what_cannot_be_kept_says_why_and_nothing_is_written(
    client: TestClient, folder: Path, wish: dict[str, Any], code: str
) -> None:
    answer = said(client, "e", **wish)
    assert answer.status_code == 422
    assert answer.json()["wrong"]["code"] == code
    assert answer.json()["wrong"]["cure"]
    assert not (folder / "record.jsonl").exists()


def test_the_maker_may_be_sure(client: TestClient) -> None:
    sure = {"size": "left side thickness", "readings": ["0.3"], "sure": True}
    assert said(client, "f", measured=sure).status_code == 200


@pytest.mark.parametrize(
    "wish",
    [{}, {"note": "a", "done": "bottom"}, {"note": "x" * 3000}, {"done": 1}, {"odd": "a"}],
)
def test_an_odd_wish_is_refused(client: TestClient, folder: Path, wish: dict[str, Any]) -> None:
    assert said(client, "g", **wish).status_code == 422
    assert not (folder / "record.jsonl").exists()


def test_another_site_may_say_nothing(client: TestClient, folder: Path) -> None:
    body = {"id": "evil-0001", "at": AT, "note": "burn it"}
    answer = client.post("/api/record", json=body, headers={"origin": "http://evil.example"})
    assert answer.status_code == 403
    assert not (folder / "record.jsonl").exists()


def test_a_record_that_cannot_be_written_is_said(client: TestClient, folder: Path) -> None:
    (folder / "record.jsonl").mkdir()
    try:
        answer = said(client, "h", note="a")
        assert answer.status_code == 422
        assert answer.json()["wrong"]["code"] == "record.not-kept"
    finally:
        (folder / "record.jsonl").rmdir()


def test_before_there_is_a_piece_nothing_can_be_said_of_it(tmp_path: Path) -> None:
    bench = Workbench(tmp_path / "piece.toml", work=stager(), drawings=drawings())
    bench.look()
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as client:
        answer = said(client, "i", note="a")
    assert answer.status_code == 422
    assert answer.json()["wrong"]["code"] == "record.no-piece"
