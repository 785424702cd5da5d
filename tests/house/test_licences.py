"""What is installed or shipped with the program is listed with its licence."""

import re
from importlib.metadata import PackageNotFoundError, metadata

from tests.house.tree import ROOT, tracked

LISTS = ROOT / "licences"
FONT = {".ttf", ".otf", ".woff", ".woff2"}


def rows(text: str) -> dict[str, str]:
    """First and second column of the tables in a page."""
    return dict(re.findall(r"(?m)^\| ([^|]+?) \| ([^|]+?) \|", text))


def unlisted(packages: set[str], listed: dict[str, str]) -> set[str]:
    return packages - listed.keys()


def unlisted_fonts(files: list[str], families: set[str]) -> list[str]:
    plain = {re.sub(r"\W", "", family).casefold() for family in families}
    return [f for f in files if not re.sub(r"[^\w]", "", f).casefold().startswith(tuple(plain))]


def test_every_package_we_install_is_listed() -> None:
    locked = (ROOT / "requirements/run.txt").read_text()
    packages = set(re.findall(r"(?m)^([\w.-]+)==", locked))
    assert unlisted(packages, rows((LISTS / "third-party.md").read_text())) == set()


def test_the_listed_licence_is_the_one_the_package_declares() -> None:
    for package, licence in rows((LISTS / "third-party.md").read_text()).items():
        try:
            declared = metadata(package).json.get("license_expression")
        except PackageNotFoundError:
            continue  # of another system, or a heading
        assert declared in {None, licence}, package


def test_every_font_we_ship_is_listed() -> None:
    fonts = [f.name for f in tracked() if f.suffix in FONT]
    assert unlisted_fonts(fonts, set(rows((LISTS / "fonts.md").read_text()))) == []


def test_an_unlisted_package_or_font_is_noticed() -> None:
    listed = rows("| package | licence |\n|---|---|\n| elm | MIT |\n")
    assert unlisted({"elm", "oak"}, listed) == {"oak"}
    assert unlisted_fonts(["ElmSans-Bold.ttf", "Oak.otf"], {"Elm Sans"}) == ["Oak.otf"]
