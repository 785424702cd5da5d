"""The page's writes, as the page sends them, on a true piece."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient
from tests.web.stating import stating

from scantling.shop.habits import Display
from scantling.units import Unit
from scantling.web.app import app
from scantling.web.workbench import Workbench
from scantling.wording import Speech

OWN = "http://127.0.0.1:4000"
PAGE = {"origin": OWN, "sec-fetch-site": "same-origin"}
TEXT = 'format = 1\nname = "Cupboard"  # for the hall\nmeasure = "inch"\n\n[case]\nwide = 16\n'
WIDE = ["case", "wide"]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "piece.toml"
    found.write_text(TEXT)
    return found


@pytest.fixture
def bench(file: Path) -> Workbench[str]:
    found = stating(file)
    found.look()
    return found


@pytest.fixture
def client(bench: Workbench[str]) -> Iterator[TestClient]:
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as found:
        yield found


def file_told(client: TestClient) -> dict[str, Any]:
    found: dict[str, Any] = client.get("/api/setting-out").json()["file"]
    return found


def test_lengths_that_state_a_size_are_told_as_fields(client: TestClient) -> None:
    (field,) = file_told(client)["fields"]
    assert field == {
        "path": WIDE,
        "label": WIDE,
        "amount": "16",
        "unit": "",
        "line": 6,
        "says": "wide = 16",
        "names": ["case.wide"],
    }


def test_of_a_line_without_end_a_field_shows_the_beginning(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    file.write_text(TEXT.replace("wide = 16", f"wide = 16  # {'so ' * 2000}"))
    bench.look()
    (field,) = file_told(client)["fields"]
    assert field["says"].startswith("wide = 16")
    assert len(field["says"]) < 1000


def test_a_write_answers_with_what_is_new(client: TestClient, file: Path) -> None:
    mark = file_told(client)["mark"]
    wish = {"path": WIDE, "value": "16 1/2", "over": mark}
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 200
    assert answer.json()["number"] == 2
    assert answer.json()["file"]["fields"][0]["amount"] == "16 1/2"
    assert answer.json()["file"]["take_back"] == "case wide: 16, now 16 1/2"
    assert file.read_text() == TEXT.replace("16", '"16 1/2"')
    assert client.get("/api/setting-out").json() == answer.json()


def test_a_wrong_length_comes_back_with_its_line(client: TestClient, file: Path) -> None:
    wish = {"path": WIDE, "value": "wide", "over": file_told(client)["mark"]}
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 422
    wrong = answer.json()["wrong"]
    assert wrong["says"] == "This word is no unit of length."
    assert (wrong["place"]["before"], wrong["place"]["guilty"]) == ('wide = "', "wide")
    assert file.read_text() == TEXT


def test_over_an_outside_edit_the_new_text_is_told_and_nothing_written(
    client: TestClient, file: Path
) -> None:
    wish = {"path": WIDE, "value": "17", "over": file_told(client)["mark"]}
    theirs = TEXT.replace("16", "18")
    file.write_text(theirs)
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 409
    assert answer.json()["file"]["fields"][0]["amount"] == "18"
    assert file.read_text() == theirs
    wish["over"] = answer.json()["file"]["mark"]
    assert client.post("/api/write", json=wish, headers=PAGE).status_code == 200
    assert file.read_text() == TEXT.replace("16", "17")


def test_an_edit_is_taken_back_and_put_again(client: TestClient, file: Path) -> None:
    wish = {"path": WIDE, "value": "17", "over": file_told(client)["mark"]}
    client.post("/api/write", json=wish, headers=PAGE)
    back = client.post("/api/take-back", headers=PAGE)
    assert (back.status_code, file.read_text()) == (200, TEXT)
    assert back.json()["file"]["put_again"] == "case wide: 16, now 17"
    assert client.post("/api/take-back", headers=PAGE).status_code == 409
    assert client.post("/api/put-again", headers=PAGE).status_code == 200
    assert file.read_text() == TEXT.replace("16", "17")


def test_fields_outlive_a_fault_elsewhere_in_the_file(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    file.write_text(TEXT.replace("wide = 16", "wide = 19\ndeep = ?"))
    bench.look()
    (field,) = file_told(client)["fields"]
    assert field["amount"] == "19"


@pytest.mark.parametrize("path", ["/api/write", "/api/take-back", "/api/put-again"])
def test_another_site_may_not_write(client: TestClient, file: Path, path: str) -> None:
    for headers in ({}, {"origin": "http://evil.example", "sec-fetch-site": "cross-site"}):
        assert client.post(path, json={}, headers=headers).status_code == 403
    assert file.read_text() == TEXT


@pytest.mark.parametrize(
    "wish",
    [
        {},
        {"path": [], "value": "3", "over": ""},
        {"path": WIDE, "value": 3, "over": ""},
        {"path": WIDE, "value": "3"},
        {"path": WIDE, "value": "3" * 200, "over": ""},
        {"path": [["case"]], "value": "3", "over": ""},
        {"path": ["x"] * 30, "value": "3", "over": ""},
        {"path": WIDE, "value": "3", "over": "", "file": "/etc/passwd"},
    ],
)
def test_an_odd_wish_is_refused(client: TestClient, file: Path, wish: dict[str, Any]) -> None:
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 422
    assert "wrong" not in answer.json()
    assert file.read_text() == TEXT


def test_words_and_figures_are_shown_otherwise_and_no_file_hears_of_it(
    client: TestClient, bench: Workbench[str], file: Path
) -> None:
    before = file_told(client)
    wish = {"words": "UK", "figures": "mm"}
    answer = client.post("/api/show", json=wish, headers=PAGE)
    assert answer.status_code == 200
    assert answer.json()["number"] == 2  # worked anew, in those figures
    assert bench.showing.now == Display(words=Speech.UK, figures=Unit.MM)
    assert (answer.json()["file"], file.read_text()) == (before, TEXT)
    assert client.post("/api/show", json=wish).status_code == 403
    assert client.post("/api/show", json={"words": "FR"}, headers=PAGE).status_code == 422


def test_a_bare_figure_that_fits_the_shown_measure_better_is_asked_about(
    client: TestClient, file: Path
) -> None:
    # millimetres are shown, the file is in inches, and 16 stands there
    wish = {"path": WIDE, "value": "400", "over": file_told(client)["mark"]}
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 422
    wrong = answer.json()["wrong"]
    assert (wrong["code"], wrong["cure"]) == ("page.unit-unsaid", "Write 400 in or 400 mm.")
    assert file.read_text() == TEXT


@pytest.mark.parametrize(("value", "written"), [("17", "17"), ("400 mm", '"400 mm"')])
def test_a_figure_that_can_be_meant_one_way_is_written(
    client: TestClient, file: Path, value: str, written: str
) -> None:
    wish = {"path": WIDE, "value": value, "over": file_told(client)["mark"]}
    assert client.post("/api/write", json=wish, headers=PAGE).status_code == 200
    assert f"wide = {written}" in file.read_text()


def test_a_bare_figure_under_another_unit_of_the_file_is_asked_about(
    client: TestClient, file: Path, bench: Workbench[str]
) -> None:
    file.write_text(TEXT.replace("wide = 16", 'wide = "30 cm"'))
    bench.look()
    wish = {"path": WIDE, "value": "310", "over": file_told(client)["mark"]}
    answer = client.post("/api/write", json=wish, headers=PAGE)
    assert answer.status_code == 422
    assert answer.json()["wrong"]["cure"] == "Write 310 cm or 310 mm."
