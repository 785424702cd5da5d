"""The page's interface: reads, a stream of news, and the built files."""

from __future__ import annotations

import json
from collections.abc import AsyncIterator, Mapping
from pathlib import Path
from typing import Any

from fastapi import FastAPI, Request, Response
from fastapi.responses import StreamingResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from scantling.web.files import Kept, built
from scantling.web.guard import Guard
from scantling.web.records import records
from scantling.web.told import told
from scantling.web.turns import Turns
from scantling.web.workbench import Workbench
from scantling.web.writes import shows, writes

PAGE = Path(__file__).parent / "page"
STILL_HERE = 15.0  # [s] after which a silent stream says that it lives
NEWS = "/api/events"
READ = ["GET", "HEAD"]


def app(workbench: Workbench[Any], *, host: str, port: int, page: Path = PAGE) -> ASGIApp:
    """The application, to be served at that address and under no other name.

    Args:
        workbench: The piece that is shown.
        host: Address it listens at, beside the names of loopback.
        port: Port it listens at; part of its name. [-]
        page: Folder of the built page.
    """
    site = FastAPI(docs_url=None, redoc_url=None, openapi_url=None)
    _reads(site, workbench)
    writes(site, workbench)
    shows(site, workbench)
    records(site, workbench)
    _built(site, page)
    return Guard(_Attended(site, workbench.turns), host=host, port=port)


class _Attended:
    """Lets proofs wait from when something is asked until the whole answer is on its way."""

    def __init__(self, site: ASGIApp, turns: Turns) -> None:
        self._site = site
        self._turns = turns

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if (
            scope["type"] != "http" or scope["path"] == NEWS
        ):  # neither the server's life nor news ends
            await self._site(scope, receive, send)
            return
        with self._turns.attended():
            await self._site(scope, receive, send)


def _reads(site: FastAPI, workbench: Workbench[Any]) -> None:
    @site.api_route("/api/setting-out", methods=READ)
    def setting_out(request: Request, since: str = "") -> Response:
        return answer(_as_json(told(workbench, since)), request)

    @site.api_route("/api/model.glb", methods=READ)
    def model(request: Request) -> Response:
        made = workbench.model()
        if made is None:
            return Response("nothing is worked out yet", status_code=404)
        return answer(Kept(made.content, "model/gltf-binary"), request)

    @site.api_route("/api/papers/{name}", methods=READ)
    def paper(name: str, request: Request) -> Response:
        made = workbench.paper(name)
        if made is None:
            return Response("there is no such paper, or not yet", status_code=404)
        kind = "application/pdf" if name.endswith(".pdf") else "text/csv; charset=utf-8"
        found = answer(Kept(made, kind), request)
        found.headers["content-disposition"] = f'attachment; filename="{name}"'
        return found

    @site.api_route("/api/part", methods=READ)
    def part(name: str, request: Request) -> Response:
        drawn = workbench.part(name)
        if drawn is None:
            return Response(status_code=204)  # a bought thing, or none of that name by now
        return answer(_as_json(drawn), request)

    @site.get(NEWS)
    async def events() -> StreamingResponse:
        headers = {"cache-control": "no-store", "x-accel-buffering": "no"}
        stream = _stream(workbench)
        return StreamingResponse(stream, media_type="text/event-stream", headers=headers)


def _as_json(content: Mapping[str, Any]) -> Kept:
    text = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
    return Kept(text.encode(), "application/json")


def _built(site: FastAPI, page: Path) -> None:
    files = built(page)

    @site.api_route("/{name:path}", methods=READ)
    def file(name: str, request: Request) -> Response:
        kept = files.get(name)
        if kept is None:
            return Response("there is nothing of that name here", status_code=404)
        return answer(kept, request)


def answer(kept: Kept, request: Request) -> Response:
    """What was asked for, packed if the browser can unpack it; nothing if it has it already.

    References:
        RFC 9110, 8.8.3 (ETag), 12.5.3 (Accept-Encoding), 13.1.2 (If-None-Match).
    """
    headers = {"cache-control": kept.keep, "etag": f"W/{kept.mark}", "vary": "accept-encoding"}
    known = request.headers.get("if-none-match", "")
    if kept.mark in (mark.strip().removeprefix("W/") for mark in known.split(",")):
        return Response(status_code=304, headers=headers)
    content = kept.content
    if kept.is_worth_packing and _unpacks(request):
        content = kept.packed
        headers["content-encoding"] = "gzip"
    headers["content-type"] = kept.kind
    return Response(content, headers=headers)


def _unpacks(request: Request) -> bool:
    for each in request.headers.get("accept-encoding", "").split(","):
        coding, _, weight = each.replace(" ", "").partition(";q=")
        if coding in {"gzip", "*"}:
            return weight.rstrip("0") not in {"0.", "0"} and weight != "0"
    return False


async def _stream(workbench: Workbench[Any]) -> AsyncIterator[str]:
    told_last = -1
    with workbench.news.listening() as ear:
        while not workbench.news.is_over:
            number = workbench.standing.number
            if number == told_last:
                yield ": still here\n\n"
            else:
                yield f'event: changed\nid: {number}\ndata: {{"number": {number}}}\n\n'
            told_last = number
            await ear.wait(at_most=STILL_HERE)
