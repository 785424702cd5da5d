"""A true piece as the page is given it, in either country's words and either measure."""

import re
from pathlib import Path
from shutil import copy
from typing import Any

import pytest
from starlette.testclient import TestClient

from scantling.cli import stager
from scantling.setting_out import SettingOut
from scantling.web.app import app
from scantling.web.serve import drawings
from scantling.web.workbench import Showing, Workbench

ROOT = Path(__file__).parents[2]
OWN = "http://127.0.0.1:4000"
PAGE = {"origin": OWN, "sec-fetch-site": "same-origin"}


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Workbench[SettingOut]:
    folder = tmp_path_factory.mktemp("bench")
    copy(ROOT / "pieces" / "shop.toml", folder)
    (folder / "cupboard").mkdir()
    file = Path(copy(ROOT / "pieces" / "glaze_cupboard" / "piece.toml", folder / "cupboard"))
    showing = Showing()
    bench = Workbench(file, work=stager(lambda: showing.now), drawings=drawings(), showing=showing)
    bench.look()
    return bench


@pytest.fixture(scope="module")
def client(bench: Workbench[SettingOut]) -> TestClient:
    return TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN)


def shown(
    client: TestClient, bench: Workbench[SettingOut], words: str, figures: str
) -> dict[str, Any]:
    """What is told once all is worked anew in those words and figures."""
    client.post("/api/show", json={"words": words, "figures": figures}, headers=PAGE)
    assert bench.prove()
    found: dict[str, Any] = client.get("/api/setting-out").json()
    return found


@pytest.mark.parametrize(
    ("asked", "titles", "wide"),
    [
        (("US", "inch"), {"dado", "rabbet", "half-blind dovetail"}, "43 1/2"),
        (("UK", "mm"), {"housing", "rebate", "lapped dovetail"}, "about 1105"),  # 1104.9
    ],
)
def test_titles_and_figures_are_those_asked_for(
    client: TestClient,
    bench: Workbench[SettingOut],
    asked: tuple[str, str],
    titles: set[str],
    wide: str,
) -> None:
    told = shown(client, bench, *asked)
    found = told["setting_out"]
    assert titles <= {joint["title"] for joint in found["joints"]}
    assert found["piece"]["overall"]["wide"]["as_written"] == wide
    assert found["shown"]["measure"] == "inch"
    assert (found["shown"]["words"], found["shown"]["figures"]) == asked
    unit = {"inch": " in", "mm": " mm"}[asked[1]]
    figured = [each["figure"] for each in told["findings"] if each["figure"]]
    assert figured
    # several figures name their parts; moisture is a share and has no measure
    units = [
        amount for each in figured for amount in re.findall(r"(?:\d|[/.]\d)( (?:in|mm|%))", each)
    ]
    assert len(units) >= len(figured)
    assert set(units) <= {unit, " %"}
    assert unit in units


def test_a_part_is_handed_out_in_three_views(
    client: TestClient, bench: Workbench[SettingOut]
) -> None:
    shown(client, bench, "UK", "mm")
    found = client.get("/api/part", params={"name": "top rail"})
    assert found.status_code == 200
    drawing = found.json()
    assert {"visible", "hidden"} <= {each["kind"] for each in drawing["strokes"]}
    assert all(each["kind"] in drawing["line_types"] for each in drawing["strokes"])
    points = [p for each in drawing["strokes"] for line in each["lines"] for p in line]
    assert all(
        -0.01 <= at <= high + 0.01
        for p in points
        for at, high in zip(p, drawing["size"], strict=True)
    )
    shown(client, bench, "US", "inch")
    says = {each["says"] for each in client.get("/api/part?name=top rail").json()["texts"]}
    assert "41" in says  # its length, by hand: 42 less 2 stiles of 1 3/4, and 2 tenons of 1 1/4
    assert client.get("/api/part?name=no such part").status_code == 204


def test_names_and_the_file_s_fields_are_the_same_in_both(
    client: TestClient, bench: Workbench[SettingOut]
) -> None:
    told = [shown(client, bench, w, f) for w, f in (("US", "inch"), ("UK", "mm"))]
    names = [
        [part["name"] for part in each["setting_out"]["parts"]]
        + [size["name"] for size in each["setting_out"]["sizes"]]
        + [joint["name"] for joint in each["setting_out"]["joints"]]
        for each in told
    ]
    assert names[0] == names[1]
    assert "centre kicker" in names[0]
    assert told[0]["file"] == told[1]["file"]


def test_rows_that_stay_are_not_made_again(
    client: TestClient, bench: Workbench[SettingOut]
) -> None:
    shown(client, bench, "US", "inch")
    before = bench.standing.document
    shown(client, bench, "US", "inch")
    now = bench.standing.document
    assert before
    assert now
    assert before is not now
    for section in ("parts", "sizes", "joints"):
        assert all(a is b for a, b in zip(before[section], now[section], strict=True))


def test_a_page_that_knows_the_last_document_is_told_what_has_changed(
    client: TestClient, bench: Workbench[SettingOut]
) -> None:
    mark = shown(client, bench, "US", "inch")["mark"]
    told = client.get("/api/setting-out", params={"since": mark}).json()
    assert told["setting_out"] is None
    assert told["changes"]["since"] == mark
    assert told["changes"]["sections"] == {}
    assert not any(each["changed"] for each in told["changes"]["rows"].values())
    shown(client, bench, "US", "mm")
    told = client.get("/api/setting-out", params={"since": mark}).json()
    assert told["changes"]["sections"]["shown"]["figures"] == "mm"
    assert told["changes"]["rows"]["parts"]["order"] is None
    assert client.get("/api/setting-out?since=of another server").json()["changes"] is None
