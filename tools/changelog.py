"""Gathers the news fragments of changes/ into CHANGELOG.md under a version.

Usage: python tools/changelog.py VERSION DATE
"""

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
KINDS = ("added", "changed", "mended", "removed")  # in this order under each version
HEAD = "# Changes\n"


def fragments(folder: Path) -> dict[str, list[Path]]:
    """Fragment files by kind, `half-lap.added.md` being one of kind `added`.

    Raises:
        ValueError: A file of another name lies in the folder.
    """
    found: dict[str, list[Path]] = {kind: [] for kind in KINDS}
    for file in sorted(folder.glob("*.md")):
        if file.name == "README.md":
            continue
        kind = file.name.split(".")[-2]
        if kind not in found:
            raise ValueError(f"{file.name}: the kind is one of {', '.join(KINDS)}")
        found[kind].append(file)
    return found


def gathered(changelog: str, news: dict[str, list[str]], *, heading: str) -> str:
    """The changelog with a section for the news on top of the older ones."""
    older = changelog.removeprefix(HEAD).strip()
    parts = [HEAD.strip(), f"## {heading}"]
    for kind, sentences in news.items():
        if sentences:
            lines = "\n".join(f"- {sentence.strip()}" for sentence in sentences)
            parts.append(f"### {kind.capitalize()}\n\n{lines}")
    return "\n\n".join([*parts, *([older] if older else [])]) + "\n"


def main(version: str, date: str) -> None:
    """Write CHANGELOG.md anew and remove the fragments that went into it."""
    files = fragments(ROOT / "changes")
    news = {kind: [file.read_text() for file in found] for kind, found in files.items()}
    changelog = ROOT / "CHANGELOG.md"
    changelog.write_text(gathered(changelog.read_text(), news, heading=f"{version} - {date}"))
    for found in files.values():
        for file in found:
            file.unlink()


if __name__ == "__main__":
    main(*sys.argv[1:])
