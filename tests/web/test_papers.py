"""Papers are fetched from the page as they are written by the command line, once all is proven."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from scantling.cli import stager
from scantling.web.app import app
from scantling.web.serve import TO_PRINT, drawings
from scantling.web.workbench import Workbench

ROOT = Path(__file__).parents[2]
OWN = "http://127.0.0.1:4000"


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Workbench[object]:
    folder = tmp_path_factory.mktemp("bench")
    text = (ROOT / "pieces" / "bookcase" / "piece.toml").read_text(encoding="utf-8")
    (folder / "piece.toml").write_text(text.replace('"../shop.toml"', '"shop.toml"'))
    (folder / "shop.toml").write_bytes((ROOT / "pieces" / "shop.toml").read_bytes())
    return Workbench(folder / "piece.toml", work=stager(), drawings=drawings())  # type: ignore[arg-type] # of true pieces


@pytest.fixture(scope="module")
def client(bench: Workbench[object]) -> Iterator[TestClient]:
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as found:
        yield found


def test_papers_come_when_the_piece_is_proven_and_not_before(
    client: TestClient, bench: Workbench[object]
) -> None:
    bench.look()
    assert client.get("/api/papers/packet.pdf").status_code == 404
    assert bench.prove()
    answer = client.get("/api/papers/packet.pdf")
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.headers["content-disposition"] == 'attachment; filename="packet.pdf"'
    assert answer.content.startswith(b"%PDF")


@pytest.mark.parametrize("name", TO_PRINT)
def test_every_file_that_is_offered_is_there(
    client: TestClient, bench: Workbench[object], name: str
) -> None:
    bench.look()
    bench.prove()
    assert client.get(f"/api/papers/{name}").content


@pytest.mark.parametrize("name", ["piece.toml", "..%2Fpiece.toml", "packet", "setting-out.json"])
def test_nothing_else_is_given_away(client: TestClient, name: str) -> None:
    assert client.get(f"/api/papers/{name}").status_code == 404
