"""Rosters: the members of a folder, one class per module, under their trade names.

A new joint or form is a new file. Nothing lists it by hand; the folder is the list.
"""

import difflib
import importlib
import pkgutil
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import is_dataclass
from functools import cache
from types import ModuleType

from scantling.errors import InternalError, UnknownNameError

LONGEST_NAME = 60  # [characters] nothing longer is close to a trade name


def plain_name(text: str) -> str:
    """A name with case, space, hyphen and underscore made equal: `Half-lap` is `half lap`."""
    return re.sub(r"[\s_\-\u2010\u2011]+", " ", text).strip().casefold()


def nearest(word: str, names: Iterable[str]) -> str | None:
    """The name a maker most likely meant, or None when none or several are close.

    Args:
        word: What he wrote.
        names: What he could have written.
    """
    known = {plain_name(name): name for name in names}
    wanted = plain_name(word)
    if not wanted or len(wanted) > LONGEST_NAME:
        return None
    if wanted in known:
        return known[wanted]
    # "pins" is far from "shelf pins" by letters; "dovetail" is in several names, and any of
    # them would be a guess.
    if holding := [name for plain, name in known.items() if f" {wanted} " in f" {plain} "]:
        return holding[0] if len(holding) == 1 else None
    close = difflib.get_close_matches(wanted, known, n=1)
    return known[close[0]] if close else None


class Roster(Mapping[str, type]):
    """Classes by trade name; asked for a name in any of its spellings."""

    def __init__(self, kind: str, classes: Mapping[str, type]) -> None:
        self._kind = kind
        self._classes = dict(sorted(classes.items()))
        self._titles = {plain_name(title): title for title in self._classes}

    def __getitem__(self, name: str) -> type:
        title = self._titles.get(plain_name(name))
        if title is None:
            meant = nearest(name, self._classes)
            hint = f"; perhaps {meant}" if meant else ""
            raise UnknownNameError(f"no {self._kind} is called {name!r}{hint}")
        return self._classes[title]

    def __iter__(self) -> Iterator[str]:
        return iter(self._classes)

    def __len__(self) -> int:
        return len(self._classes)


@cache
def public_modules(package: ModuleType) -> tuple[ModuleType, ...]:
    """Modules of a package without a leading underscore, imported, by file name."""
    names = sorted(found.name for found in pkgutil.iter_modules(package.__path__))
    return tuple(
        importlib.import_module(f"{package.__name__}.{name}")
        for name in names
        if not name.startswith("_")
    )


@cache
def members(package: ModuleType, *, base: type) -> Mapping[str, type]:
    """The roster of a folder: its one member per public module, sorted by title.

    A member is a class defined in the module, its name without a leading underscore, that
    inherits from `base` or carries a `title: ClassVar[str]`, its trade name in lower case.
    The answer is kept, and looks names up as `plain_name` makes them equal.

    Args:
        package: The folder, imported.
        base: What members derive from; a protocol is met by carrying a title.

    Raises:
        InternalError: A module has no member or more than one, a title is missing or not
            in lower case, or two members answer to one name.
    """
    found: dict[str, type] = {}
    owners: dict[str, str] = {}
    for module in public_modules(package):
        member = _only_member(module, base)
        title = _title(member)
        other = owners.setdefault(plain_name(title), module.__name__)
        if other != module.__name__:
            raise InternalError(f"{module.__name__} and {other} both answer to {title!r}")
        found[title] = member
    return Roster(base.__name__.lower(), found)


def _only_member(module: ModuleType, base: type) -> type:
    candidates = [
        value
        for name, value in vars(module).items()
        if isinstance(value, type)
        and value.__module__ == module.__name__
        and not name.startswith("_")
        and _belongs(value, base)
    ]
    if len(candidates) != 1:
        names = ", ".join(sorted(each.__name__ for each in candidates)) or "none"
        raise InternalError(f"{module.__name__} should hold one {base.__name__}, has {names}")
    return candidates[0]


def _belongs(candidate: type, base: type) -> bool:
    # The chain of ancestors, as issubclass would hold a protocol against mere attributes.
    if base in candidate.__mro__:
        return candidate is not base
    fields = candidate.__dataclass_fields__ if is_dataclass(candidate) else {}
    field = fields.get("title")
    is_field = field is not None and "_FIELD_CLASSVAR" not in str(field)
    return isinstance(getattr(candidate, "title", None), str) and not is_field


def _title(member: type) -> str:
    title = getattr(member, "title", None)
    if not isinstance(title, str) or not title.strip() or title != title.strip().casefold():
        raise InternalError(f"{member.__qualname__} needs a title in lower case, has {title!r}")
    return title
