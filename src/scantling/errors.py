"""Error classes: what the caller, the surroundings or the house itself got wrong.

A fault in the maker's own piece is no error: it is a `scantling.findings.Finding`, collected
with all the others. An error here means that a contract was broken or something is missing.
"""

from functools import partial
from typing import Any


class ScantlingError(Exception):
    """Root of every error raised on purpose."""


class OutOfRangeError(ScantlingError, ValueError):
    """A number lies beyond what the function can answer for."""


class LengthError(ScantlingError, ValueError):
    """A text is no length, or could be read as two different ones.

    Args:
        says: What is wrong, in a sentence without the cure.
        text: The whole text that was to be read.
        start: Offset of the first guilty character in `text`. [characters from 0]
        stop: Offset behind the last guilty character; equal to `start` when something
            is missing there. [characters from 0]
        cure: What to write instead.
    """

    def __init__(self, says: str, *, text: str, start: int, stop: int, cure: str) -> None:
        super().__init__(f"{says}; {cure}")
        self.says = says
        self.text = text
        self.start = start
        self.stop = stop
        self.cure = cure

    def __reduce__(self) -> tuple[Any, ...]:
        # Exception remembers positional arguments only; without this a copy loses the place.
        remade = partial(
            type(self),
            self.says,
            text=self.text,
            start=self.start,
            stop=self.stop,
            cure=self.cure,
        )
        return remade, ()


class UnknownNameError(ScantlingError, KeyError):
    """A name answers to nothing in the roster or table asked."""

    def __str__(self) -> str:
        # KeyError shows the repr of its argument; a sentence should stay a sentence.
        return Exception.__str__(self)


class EnvironmentMissingError(ScantlingError):
    """Something outside the package is not installed: a browser, an optional library."""


class InternalError(ScantlingError):
    """The house broke its own rule; always a bug, never the maker's doing."""
