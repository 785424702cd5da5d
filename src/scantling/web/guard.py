"""What every request must satisfy, and what every answer carries.

The page is on loopback, but so is every other page in the maker's browser: a foreign site can
make it send requests here, under any name it has pointed at 127.0.0.1.

References:
    [1] RFC 9110, HTTP Semantics, 2022: 7.2 (Host), 15.5.14 (413), 15.5.20 (421).
    [2] W3C, Fetch Metadata Request Headers: Sec-Fetch-Site.
    [3] W3C, Content Security Policy Level 3.
"""

from __future__ import annotations

from collections.abc import Iterable

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LARGEST_BODY = 64 * 1024  # [bytes]
READS = frozenset({"GET", "HEAD"})
LOOPBACK = ("127.0.0.1", "localhost", "::1")

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; worker-src 'none'; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'; "
    "require-trusted-types-for 'script'; trusted-types svelte-trusted-html"
)
CARRIED = {
    "content-security-policy": POLICY,
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
}


class Guard:
    """Stands before the whole application."""

    def __init__(self, app: ASGIApp, *, host: str, port: int) -> None:
        self._app = app
        self._hosts = frozenset(_authorities((*LOOPBACK, host), port=port))
        self._origins = frozenset(f"http://{name}" for name in self._hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request, as ASGI hands it over."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
            return
        if scope["type"] != "http":  # nothing here speaks anything else
            await send({"type": "websocket.close", "code": 1008})
            return
        send = _carrying(send)
        status, reason = self._refusal(scope)
        if status:
            await PlainTextResponse(reason, status_code=status)(scope, receive, send)
            return
        body = await _body(scope, receive)
        if body is None:
            await PlainTextResponse("too long", status_code=413)(scope, receive, send)
            return
        await self._app(scope, _again(body, receive), send)

    def _refusal(self, scope: Scope) -> tuple[int, str]:
        """Status and reason; status 0 if nothing speaks against it."""
        headers = Headers(scope=scope)
        if headers.getlist("host") == [] or not self._hosts.issuperset(headers.getlist("host")):
            return 421, "this is not the server of that name"
        site = headers.get("sec-fetch-site")
        if scope["method"] in READS:
            if scope["path"].startswith("/api/") and site in {"cross-site", "same-site"}:
                return 403, "another site may not read this"
            return 0, ""
        if site != "same-origin" or not self._origins.issuperset(headers.getlist("origin")):
            return 403, "only the page itself may write"
        return (0, "") if headers.getlist("origin") else (403, "only the page itself may write")


def _authorities(names: Iterable[str], *, port: int) -> Iterable[str]:
    for name in names:
        written = f"[{name}]" if ":" in name else name
        yield f"{written}:{port}"
        if port == 80:
            yield written


def _carrying(send: Send) -> Send:
    async def carried(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in CARRIED.items():
                headers[name] = value
            headers.setdefault("cache-control", "no-store")
        await send(message)

    return carried


async def _body(scope: Scope, receive: Receive) -> bytes | None:
    """The whole body, or None once it is longer than it may be, whatever it says of itself."""
    headers = Headers(scope=scope)
    said = headers.get("content-length", "0")
    if not said.isdecimal() or int(said) > LARGEST_BODY:
        return None
    if said == "0" and "transfer-encoding" not in headers:
        return b""
    body = bytearray()
    while True:
        message = await receive()
        if message["type"] != "http.request":
            return bytes(body)
        body += message.get("body", b"")
        if len(body) > LARGEST_BODY:
            return None
        if not message.get("more_body", False):
            return bytes(body)


def _again(body: bytes, receive: Receive) -> Receive:
    """The body once more, then whatever comes after it."""
    handed = False

    async def received() -> Message:
        nonlocal handed
        if handed:
            return await receive()
        handed = True
        return {"type": "http.request", "body": body, "more_body": False}

    return received
