"""Digest of the page's sources, kept beside the built page.

The page is built with Node and committed; nobody else needs Node. Who changes the sources
without building again is told so here.
"""

import argparse
import hashlib
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BY_MACHINE = {"node_modules", "dist", ".vite"}  # folders that no hand writes


def sources(frontend: Path) -> list[Path]:
    """Every file a hand wrote under `frontend`, in the order of their names."""
    files = (path for path in frontend.rglob("*") if path.is_file())
    mine = [f for f in files if not BY_MACHINE.intersection(f.relative_to(frontend).parts)]
    return sorted(mine, key=lambda f: f.relative_to(frontend).as_posix())


def digest(frontend: Path) -> str:
    """SHA-256 over names and contents of the sources, as 64 hexadecimal digits."""
    total = hashlib.sha256()
    for file in sources(frontend):
        name = file.relative_to(frontend).as_posix().encode()
        content = file.read_bytes()
        total.update(b"%d %s %d " % (len(name), name, len(content)))
        total.update(content)
    return total.hexdigest()


def fault(root: Path) -> str:
    """One sentence if the page under `root` was not built from its sources, else nothing."""
    frontend, kept = root / "frontend", root / "src/scantling/web/page/digest.txt"
    if not frontend.is_dir():
        return ""
    if not kept.is_file():
        return f"{kept.relative_to(root)} is missing: build the page with `make page`"
    if kept.read_text().strip() != digest(frontend):
        return "frontend/ has changed since the page was built: build it with `make page`"
    return ""


def main() -> int:
    """Check the digest or write it; 1 if the check fails."""
    words = argparse.ArgumentParser(description=__doc__)
    act = words.add_mutually_exclusive_group(required=True)
    act.add_argument("--check", action="store_true")
    act.add_argument("--write", action="store_true")
    if words.parse_args().write:
        kept = ROOT / "src/scantling/web/page/digest.txt"
        kept.write_text(digest(ROOT / "frontend") + "\n")
        return 0
    said = fault(ROOT)
    if said:
        print(said, file=sys.stderr)
    return 1 if said else 0


if __name__ == "__main__":
    sys.exit(main())
