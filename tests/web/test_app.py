"""What the page is given."""

import gzip
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient
from tests.web.in_one_go import in_one_go
from tests.web.told import drawings, work, workbench

from scantling.errors import OutOfRangeError
from scantling.findings import Finding, Place, Weight
from scantling.web.app import app
from scantling.web.told import _cut_out
from scantling.web.workbench import Drawings, Workbench

OWN = "http://127.0.0.1:4000"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "bench" / "piece.toml"
    found.parent.mkdir()
    found.write_text('name = "Cupboard"\nwide = 16 1/4\n')
    return found


@pytest.fixture
def bench(file: Path) -> Workbench[str]:
    return workbench(file)


@pytest.fixture
def client(bench: Workbench[str], tmp_path: Path) -> Iterator[TestClient]:
    page = tmp_path / "page"
    (page / "assets").mkdir(parents=True)
    (page / "index.html").write_text("<!doctype html>" + "a" * 2000)
    (page / "assets" / "hand-77.woff2").write_bytes(b"wOF2" + b"\0" * 2000)
    with TestClient(app(bench, host="127.0.0.1", port=4000, page=page), base_url=OWN) as found:
        yield found


def told(client: TestClient) -> dict[str, Any]:
    found: dict[str, Any] = client.get("/api/setting-out").json()
    return found


def test_before_the_first_look_there_is_nothing(client: TestClient) -> None:
    found = told(client)
    assert (found["number"], found["stale"], found["setting_out"]) == (0, False, None)
    assert (found["findings"], found["file"]["fields"]) == ([], [])
    assert client.get("/api/model.glb").status_code == 404


def test_the_document_comes_with_the_findings_of_the_moment(
    client: TestClient, bench: Workbench[str]
) -> None:
    bench.look()
    found = told(client)
    assert found["number"] == 1
    assert not found["stale"]
    assert found["setting_out"]["piece"]["name"] == "Cupboard"
    assert [each["weight"] for each in found["findings"]] == ["halt", "note"]


def test_the_guilty_text_is_cut_out_of_its_line(client: TestClient, bench: Workbench[str]) -> None:
    bench.look()
    place = told(client)["findings"][0]["place"]
    assert (place["line"], place["column"]) == (2, 8)
    assert (place["before"], place["guilty"], place["after"]) == ("wide = ", "16 1/4", "")


def test_of_a_line_without_end_the_neighbourhood_of_the_guilty_text_is_shown() -> None:
    line = "a" * 5000 + "wied" + "b" * 5000
    before, guilty, after = _cut_out(
        f"first\n{line}\nlast", Place(file="piece.toml", line=2, column=5001, width=4)
    )
    assert (before[0], guilty, after[-1]) == ("…", "wied", "…")
    assert 20 < len(before) < 500
    assert 20 < len(after) < 500
    assert _cut_out("wied = 1", Place(file="piece.toml", line=1, column=1, width=4)) == (
        "",
        "wied",
        " = 1",
    )


def test_of_a_guilty_text_without_end_its_beginning_is_shown(file: Path) -> None:
    file.write_text(f"wide = {'1' * 5000}")
    where = Place(file=file.name, line=1, column=8, width=5000)
    said = Finding(code="piece.odd", weight=Weight.HALT, says="So.", cure="Cut it.", place=where)
    bench = Workbench[str](file, work=in_one_go(lambda _: (None, (said,))), drawings=drawings())
    bench.look()
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as client:
        place = told(client)["findings"][0]["place"]
    assert (place["before"], place["guilty"][:4], place["after"][-1]) == ("wide = ", "1111", "…")
    # the page wraps lines: a thousand characters are a paragraph, five thousand hide the cure
    assert sum(len(place[word]) for word in ("before", "guilty", "after")) < 1000


def test_a_broken_text_leaves_the_last_good_piece(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    bench.look()
    model = client.get("/api/model.glb").content
    file.write_text('name = "Chest"\nwide = sixteen?\n')
    assert bench.look()
    found = told(client)
    assert found["stale"]
    assert found["setting_out"]["piece"]["name"] == "Cupboard"
    (fault,) = found["findings"]
    assert fault["place"]["before"] + fault["place"]["guilty"] == "wide = sixteen?"
    assert client.get("/api/model.glb").content == model


def test_a_mended_text_replaces_it(client: TestClient, bench: Workbench[str], file: Path) -> None:
    bench.look()
    file.write_text("?")
    bench.look()
    file.write_text('name = "Chest"\nwide = 17\n')
    bench.look()
    found = told(client)
    assert (found["number"], found["stale"]) == (3, False)
    assert found["setting_out"]["piece"]["name"] == "Chest"


def test_a_text_broken_from_the_start_shows_its_fault(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    file.write_text("wide = ?\n")
    bench.look()
    found = told(client)
    assert (found["setting_out"], found["stale"]) == (None, False)
    assert found["findings"][0]["says"] == "This is no length."


def test_a_file_taken_away_is_said_and_its_return_noticed(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    bench.look()
    kept = file.read_text()
    file.unlink()
    assert bench.look()
    (gone,) = told(client)["findings"]
    assert (gone["code"], gone["says"]) == ("page.no-file", "piece.toml is not where it was.")
    assert told(client)["stale"]
    file.write_text(kept)
    assert bench.look()
    assert not told(client)["stale"]


def test_an_untouched_file_is_not_worked_again(bench: Workbench[str]) -> None:
    assert bench.look()
    assert not bench.look()


def test_the_workshop_beside_or_above_the_piece_is_looked_at(
    bench: Workbench[str], file: Path
) -> None:
    bench.look()
    for folder in (file.parent, file.parent.parent):
        (folder / "shop.toml").write_text("[planes]\n")
        assert bench.look()
        assert not bench.look()


def test_a_broken_contract_is_said_and_does_not_stop_the_page(file: Path) -> None:
    def breaks(path: Path) -> tuple[str | None, tuple[Finding, ...]]:
        if "?" in path.read_text():
            raise OutOfRangeError("width -3 mm is below 0")
        return "Cupboard", ()

    drawings = Drawings[str](document=lambda name: {"parts": [name]}, model=str.encode)
    bench = Workbench(file, work=in_one_go(breaks), drawings=drawings)
    bench.look()
    file.write_text("?")
    bench.look()
    assert bench.standing.stale
    assert bench.standing.findings[0].code == "page.not-worked"
    assert "width -3 mm is below 0" in bench.standing.findings[0].says


def test_a_piece_without_parts_does_not_replace_a_good_one(file: Path) -> None:
    drawings = Drawings[str](
        document=lambda name: {"parts": [] if name == "Nothing" else [name]}, model=str.encode
    )
    bench = Workbench(file, work=in_one_go(work), drawings=drawings)
    bench.look()
    file.write_text('name = "Nothing"\n')
    bench.look()
    assert bench.standing.document == {"parts": ["Cupboard"]}
    assert bench.standing.stale


def test_the_model_is_sent_once(client: TestClient, bench: Workbench[str]) -> None:
    bench.look()
    first = client.get("/api/model.glb")
    assert first.content[:4] == b"glTF"
    assert first.headers["content-type"] == "model/gltf-binary"
    mark = first.headers["etag"]
    again = client.get("/api/model.glb", headers={"if-none-match": mark})
    assert (again.status_code, again.content) == (304, b"")
    other = client.get("/api/model.glb", headers={"if-none-match": '"another"'})
    assert other.status_code == 200


def test_a_changed_piece_has_another_model(file: Path) -> None:
    changing = Workbench(
        file,
        work=in_one_go(work),
        drawings=Drawings[str](document=lambda name: {"parts": [name]}, model=str.encode),
    )
    changing.look()
    first = changing.model()
    file.write_text('name = "Chest"\n')
    changing.look()
    second = changing.model()
    assert first
    assert second
    assert (first.content, second.content) == (b"Cupboard", b"Chest")
    assert first.mark != second.mark


def test_what_is_made_for_each_edit_goes_out_as_it_is(
    client: TestClient, bench: Workbench[str]
) -> None:
    bench.look()
    for name in ("setting-out", "model.glb"):
        found = client.get(f"/api/{name}", headers={"accept-encoding": "gzip"})
        assert len(found.content) > 10_000
        assert "content-encoding" not in found.headers


def test_files_named_by_their_digest_are_kept_and_the_page_is_asked_for_again(
    client: TestClient,
) -> None:
    assert client.get("/").headers["cache-control"] == "no-cache"
    assert "immutable" in client.get("/assets/hand-77.woff2").headers["cache-control"]
    assert client.get("/assets/hand-77.woff2").headers["content-type"] == "font/woff2"


@pytest.mark.parametrize(
    ("asked", "packed"),
    [("gzip", True), ("br, gzip;q=0.5", True), ("gzip;q=0", False), ("gzip;q=0.0", False),
     ("identity", False), ("", False)],
)  # fmt: skip
def test_the_page_is_packed_for_whoever_can_unpack_it(
    client: TestClient, asked: str, *, packed: bool
) -> None:
    with client.stream("GET", "/", headers={"accept-encoding": asked}) as found:
        raw = b"".join(found.iter_raw())
    assert (found.headers.get("content-encoding") == "gzip") is packed
    plain = gzip.decompress(raw) if packed else raw
    assert plain.startswith(b"<!doctype html>")
    assert found.headers["vary"] == "accept-encoding"


def test_the_head_of_an_answer_can_be_asked_for_alone(client: TestClient) -> None:
    for path in ("/", "/api/setting-out"):
        found = client.head(path)
        assert (found.status_code, found.content) == (200, b"")
