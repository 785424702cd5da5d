"""Parts of the demo measured off their plan: which, by how much, and what must hold then."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path

from tests.pieces.edited import STORE

from scantling.piece import read
from scantling.piece._drafting import draft
from scantling.setting_out import SettingOut, set_out
from scantling.setting_out.bench import Bench
from scantling.setting_out.chain import NO_BOARDS
from scantling.sizes.linear import Linear
from scantling.sizes.model import Measured, Relations, Sizes, Yields
from scantling.units import INCH

DEMO = Path(__file__).parents[2] / "pieces" / "glaze_cupboard" / "piece.toml"

Off = Mapping[str, Fraction]  # by name of a size, what it was found to be off [in]

WORDS = ("length", "width", "thickness")
# hundredths of an inch: what a plane or a saw is off by, one after the other down the list
AMOUNTS = tuple(Fraction(n, 100) for n in (1, 2, 5, 10))
OTHER = {"left": "right", "front": "rear", "1": "2"}  # one of a pair, and its fellow
TOOL_STEP = INCH / 4  # bought screws and nails, and a groove's depth by the iron


def sawn() -> list[str]:
    """Every part made in the shop, in the order of the cutting list."""
    sketch = draft(read(DEMO.read_text(encoding="utf-8")))
    return [part.name for part in sketch.parts if not part.hardware]


def thinner() -> Iterator[dict[str, Fraction]]:
    """Each size of each part, too little."""
    for i, part in enumerate(sawn()):
        for k, word in enumerate(WORDS):
            yield {f"{part}.{word}": -AMOUNTS[(i + k) % len(AMOUNTS)]}


def thicker() -> Iterator[dict[str, Fraction]]:
    """The thickness of every fourth part, too much."""
    for part in sawn()[::4]:
        yield {f"{part}.thickness": AMOUNTS[1]}


def pairs() -> Iterator[dict[str, Fraction]]:
    """Each size of each two parts that are fellows, off by unlike amounts."""
    names = sawn()
    for one in names:
        for other in names:
            if _fellows(one, other):
                for word in WORDS:
                    yield {f"{one}.{word}": -AMOUNTS[1], f"{other}.{word}": -AMOUNTS[2]}


def _fellows(one: str, other: str) -> bool:
    """Names that differ in one word: left and right, front and rear, 1 and 2."""
    if one.count(" ") != other.count(" "):
        return False
    both = zip(one.replace(".", " ").split(), other.replace(".", " ").split(), strict=False)
    unlike = [(a, b) for a, b in both if a != b]
    return len(unlike) == 1 and OTHER.get(unlike[0][0]) == unlike[0][1]


def told(off: Off) -> str:
    """A case in words, to call its test by."""
    return ", ".join(f"{name} {float(by):+}" for name, by in off.items())


def facts(off: Off, base: SettingOut) -> list[Measured]:
    """What was measured, against the sizes that were planned."""
    found = {name: base.sizes[name] + by * INCH for name, by in off.items()}
    return [Measured(name=n, least=value, greatest=value) for n, value in found.items()]


def made(measured: Sequence[Measured], base: SettingOut) -> SettingOut:
    """The demo with those parts as they are."""
    return set_out(
        base.piece,
        shop=base.shop,
        habits=base.habits,
        measured=measured,
        store=STORE,
        before=base,
    )


def relations(measured: Sequence[Measured], found: SettingOut) -> Relations:
    """What forms and joints say of that piece, under what was chosen."""
    assert found.settled is not None
    bench = Bench.of(
        draft(found.piece, measured),
        found.piece,
        found.shop,
        found.habits,
        attainable=NO_BOARDS,
        memory=found.memory,
    )
    return bench.relations(found.settled.choice)


def open_sums(said: Relations, sizes: Sizes) -> list[str]:
    """Equations that do not close and physical bounds that are broken, added up term by term."""
    found = [
        f"{equation.because}: {left} mm"
        for equation in said.equations
        if (left := _added_up(equation.sum, sizes)) != 0
    ]
    found += [
        f"{bound.because}: {left} mm"
        for bound in said.bounds
        if bound.yields is Yields.NEVER and (left := _added_up(bound.sum, sizes)) < 0
    ]
    return found


def _added_up(sums: Linear, sizes: Sizes) -> Fraction:
    return sums.constant + sum((c * sizes[n] for n, c in sums.terms), Fraction(0))


def moved(base: SettingOut, found: SettingOut) -> dict[str, Fraction]:
    """What each size that both have is off its plan. [mm]"""
    return {
        name: found.sizes[name] - base.sizes[name]
        for name in base.sizes
        if name in found.sizes and found.sizes[name] != base.sizes[name]
    }


def too_far(off: Off, base: SettingOut, found: SettingOut) -> dict[str, float]:
    """Sizes that moved further than what was measured accounts for. [in]

    A size may follow by all that was measured, and then to the next mark of the rule. What a
    measured part is joined with by a joint of its own may also take the next tool: a shorter
    screw, a shallower groove.
    """
    parts = {name.rpartition(".")[0] for name in off}
    joints = [j for j in found.joints if parts & set(j.joined.parts)]
    near = {j.name for j in joints} | {p for j in joints for p in j.joined.parts}
    whole = sum((abs(by) for by in off.values()), Fraction(0)) * INCH
    finest = base.piece.finest
    limit = -(-whole // finest) * finest
    return {
        name: float(by / INCH)
        for name, by in moved(base, found).items()
        if abs(by) > (TOOL_STEP if name.rpartition(".")[0] in near or _bought(name) else limit)
    }


def _bought(name: str) -> bool:
    """Screws and nails go by what the shop sells."""
    return name.rpartition(".")[2] in {"screw", "nail"}
