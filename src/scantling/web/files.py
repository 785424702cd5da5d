"""The built page: its files by the name they are asked for under.

They are listed once. Only a listed name is answered, so no path out of the folder, no link and
no odd character can reach anything else.
"""

from __future__ import annotations

import gzip
import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

KINDS = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".woff2": "font/woff2",
}
MADE_ANEW = ("application/json", "model/gltf-binary")  # for each edit, and sent on loopback
FOR_EVER = "public, max-age=31536000, immutable"
ASK_AGAIN = "no-cache"


@dataclass(frozen=True)
class Kept:
    """Something to be handed out, and how long it may be kept."""

    content: bytes
    kind: str
    keep: str = ASK_AGAIN

    @cached_property
    def mark(self) -> str:
        """Differs whenever the content does."""
        return f'"{hashlib.sha256(self.content).hexdigest()[:32]}"'

    @cached_property
    def packed(self) -> bytes:
        """The content compressed, the same bytes each time."""
        return gzip.compress(self.content, 6, mtime=0)

    @property
    def is_worth_packing(self) -> bool:
        """Fonts are compressed already; what is made anew takes longer to pack than to send."""
        worth = self.kind not in {KINDS[".woff2"], *MADE_ANEW}
        return worth and len(self.content) > 1000


def built(folder: Path) -> Mapping[str, Kept]:
    """Files of the built page by their path below `/`; the first page under the empty path."""
    root = folder.resolve()
    found = {}
    for file in sorted(folder.rglob("*")):
        kind = KINDS.get(file.suffix)
        if kind is None or not file.is_file():
            continue
        if not file.resolve().is_relative_to(root):  # a link leads out of the folder
            continue
        name = file.relative_to(folder).as_posix()
        keep = FOR_EVER if name.startswith("assets/") else ASK_AGAIN  # their names carry a digest
        found[name] = Kept(file.read_bytes(), kind, keep)
    if "index.html" in found:
        found[""] = found["index.html"]
    return found
