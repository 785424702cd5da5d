"""Every case of a request that must not be answered, and what each answer must carry."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient
from tests.web.told import workbench

from scantling.web.app import app
from scantling.web.guard import LARGEST_BODY

OWN = "http://127.0.0.1:4000"
WRITES = {"origin": OWN, "sec-fetch-site": "same-origin"}


@pytest.fixture
def page(tmp_path: Path) -> Path:
    folder = tmp_path / "page"
    (folder / "assets").mkdir(parents=True)
    (folder / "index.html").write_text("<!doctype html><title>piece</title>" + " " * 2000)
    (folder / "assets" / "page-1a2b.js").write_text("export const marks = 11;\n")
    (folder / "digest.md").write_text("of no known kind")
    (tmp_path / "secret.txt").write_text("not for the page")
    (folder / "linked.txt").symlink_to(tmp_path / "secret.txt")
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "notes.txt").write_text("not for the page")
    (folder / "away").symlink_to(tmp_path / "elsewhere")
    return folder


@pytest.fixture
def client(tmp_path: Path, page: Path) -> Iterator[TestClient]:
    file = tmp_path / "piece.toml"
    file.write_text('name = "Cupboard"\nwide = 16 1/4\n')
    bench = workbench(file)
    bench.look()
    site = app(bench, host="127.0.0.1", port=4000, page=page)
    with TestClient(site, base_url=OWN) as found:
        yield found


@pytest.mark.parametrize("host", ["127.0.0.1:4000", "localhost:4000", "[::1]:4000"])
def test_the_names_of_loopback_are_ours(client: TestClient, host: str) -> None:
    assert client.get("/", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "host",
    ["evil.example:4000", "127.0.0.1", "127.0.0.1:4001", "127.0.0.1.evil.example:4000", "", "@"],
)
@pytest.mark.parametrize("path", ["/", "/api/setting-out", "/api/events", "/none"])
def test_another_name_is_misdirected(client: TestClient, host: str, path: str) -> None:
    assert client.get(path, headers={"host": host}).status_code == 421


def test_two_names_at_once_are_misdirected(client: TestClient) -> None:
    both = [("host", "127.0.0.1:4000"), ("host", "evil.example:4000")]
    assert client.get("/", headers=both).status_code == 421


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"origin": OWN},
        {"sec-fetch-site": "same-origin"},
        {"origin": "null", "sec-fetch-site": "same-origin"},
        {"origin": "http://evil.example", "sec-fetch-site": "same-origin"},
        {"origin": "https://127.0.0.1:4000", "sec-fetch-site": "same-origin"},
        {"origin": "http://127.0.0.1:4001", "sec-fetch-site": "same-origin"},
        {"origin": OWN, "sec-fetch-site": "cross-site"},
        {"origin": OWN, "sec-fetch-site": "same-site"},
        {"origin": OWN, "sec-fetch-site": "none"},
    ],
)
@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS"])
def test_only_the_page_itself_may_write(
    client: TestClient, method: str, headers: dict[str, str]
) -> None:
    assert client.request(method, "/api/setting-out", headers=headers).status_code == 403


def test_the_page_itself_gets_past_the_guard(client: TestClient) -> None:
    # nothing can be written yet: the method is what is refused, not the writer
    assert client.post("/api/setting-out", headers=WRITES).status_code == 405


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
@pytest.mark.parametrize("path", ["/api/setting-out", "/api/model.glb", "/api/events"])
def test_another_site_may_not_read(client: TestClient, path: str, site: str) -> None:
    assert client.get(path, headers={"sec-fetch-site": site}).status_code == 403


def test_a_link_from_elsewhere_still_opens_the_page(client: TestClient) -> None:
    assert client.get("/", headers={"sec-fetch-site": "cross-site"}).status_code == 200


def test_a_long_body_is_refused(client: TestClient) -> None:
    fits, long = b"x" * LARGEST_BODY, b"x" * (LARGEST_BODY + 1)
    assert client.post("/api/setting-out", content=fits, headers=WRITES).status_code == 405
    assert client.post("/api/setting-out", content=long, headers=WRITES).status_code == 413


def test_a_long_body_in_chunks_is_refused(client: TestClient) -> None:
    def chunks(count: int) -> Iterator[bytes]:
        for _ in range(count):
            yield b"x" * 1024

    fits, long = LARGEST_BODY // 1024, LARGEST_BODY // 1024 + 1
    assert client.post("/api/none", content=chunks(fits), headers=WRITES).status_code == 405
    assert client.post("/api/none", content=chunks(long), headers=WRITES).status_code == 413


@pytest.mark.parametrize("length", ["-1", "1e3", "9" * 30, "0x10"])
def test_an_odd_content_length_is_refused(client: TestClient, length: str) -> None:
    headers = {**WRITES, "content-length": length}
    assert client.post("/api/none", content=b"x", headers=headers).status_code == 413


@pytest.mark.parametrize(
    "path",
    [
        "/linked.txt",
        "/away/notes.txt",
        "/digest.md",
        "/../secret.txt",
        "/assets/../../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/..%5csecret.txt",
        "/assets/..;/secret.txt",
        "/%00",
        "/index.html%00.txt",
        "/assets",
        "/assets/",
    ],
)
def test_nothing_outside_the_built_page_is_handed_out(client: TestClient, path: str) -> None:
    found = client.get(path)
    assert found.status_code == 404
    assert "not for the page" not in found.text


@pytest.mark.parametrize("path", ["/", "/assets/page-1a2b.js", "/api/setting-out", "/none", "/%00"])
def test_every_answer_carries_the_policy(client: TestClient, path: str) -> None:
    carried = client.get(path).headers
    policy = dict(each.split(" ", 1) for each in carried["content-security-policy"].split("; "))
    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == policy["connect-src"] == "'self'"
    assert "unsafe" not in carried["content-security-policy"]
    assert policy["frame-ancestors"] == policy["worker-src"] == policy["form-action"] == "'none'"
    assert carried["x-content-type-options"] == "nosniff"
    assert carried["referrer-policy"] == "no-referrer"
    assert carried["cross-origin-resource-policy"] == "same-origin"
    assert "access-control-allow-origin" not in carried


def test_a_refusal_carries_the_policy_too(client: TestClient) -> None:
    for refused in (client.get("/", headers={"host": "x"}), client.post("/")):
        assert refused.status_code in {403, 421}
        assert "default-src 'none'" in refused.headers["content-security-policy"]
        assert refused.headers["cache-control"] == "no-store"


def test_no_description_of_the_interface_is_served(client: TestClient) -> None:
    for path in ("/docs", "/redoc", "/openapi.json"):
        assert client.get(path).status_code == 404
