"""The woods: what each shrinks, weighs and bears, and how well each figure is known.

The table is `species.csv` beside this module; a new wood is one more row with its source.
It keeps the printed inch-pound figures next to their metric values, so that either can be
checked against the page.
"""

import csv
import difflib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from scantling.errors import OutOfRangeError, UnknownNameError
from scantling.exact import Fraction, from_figures


class Kind(StrEnum):
    """Botanical class; says nothing of how hard the wood is."""

    HARDWOOD = "hardwood"
    SOFTWOOD = "softwood"


class Standing(StrEnum):
    """How well the figures of a group are known."""

    SEEN_TWICE = "seen twice"
    SEEN = "seen"
    SEEN_IN_PART = "seen in part"
    MEMORY_AGREES = "from memory, agrees"
    MEMORY = "from memory"
    DERIVED = "derived"

    @property
    def read(self) -> bool:
        """Whether every figure of the group was read in the source, not remembered."""
        return self in {Standing.SEEN_TWICE, Standing.SEEN}


@dataclass(frozen=True, kw_only=True)
class Species:
    """One wood, clear and straight-grained, as its table rows give it.

    Strength figures hold at 12 % moisture content. A figure the table lacks is `None`.

    References:
        Wood Handbook, FPL-GTR-190, 2010: table 13-5 (coefficients), tables 4-3 and 4-4
        (shrinkage), tables 5-3b and 5-5b (density and strength). Known weakness: some
        coefficients are those of a commercial group; `note` says where.
    """

    name: str
    trade_names: tuple[str, ...]
    botanical: str
    kind: Kind
    radial: Fraction  # change of size per 1 % of moisture content, across the rings
    tangential: Fraction  # the same along the rings
    shrinkage_radial: Fraction  # green to oven-dry [% of green size]
    shrinkage_tangential: Fraction  # [% of green size]
    shrinkage_volume: Fraction  # [% of green volume]
    shrinkage_start: Fraction  # moisture content below which the wood shrinks [%]
    gravity_green: float  # oven-dry mass, green volume [-]
    gravity_12: float | None  # oven-dry mass, volume at 12 % moisture [-]
    bending_strength: float  # modulus of rupture [MPa]
    elasticity: float  # modulus in bending along the grain [MPa]
    compression_across: float | None  # at the proportional limit [MPa]
    shear: float | None  # along the grain [MPa]
    side_hardness: float | None  # ball pressed in half way [N]
    coefficient_standing: Standing
    shrinkage_standing: Standing
    strength_standing: Standing
    note: str
    source: str

    @property
    def gravity(self) -> float:
        """Specific gravity on the volume at 12 % moisture. [-]

        Where the table has only the green figure, it is brought to 12 % by
        G = Gb / (1 - 0.265 a Gb), a = (30 - 12) / 30, from memory of Wood Handbook ch. 4.
        """
        if self.gravity_12 is not None:
            return self.gravity_12
        return self.gravity_green / (1 - 0.265 * 0.6 * self.gravity_green)

    def density(self, *, moisture: float) -> float:
        """Mass of a piece over its volume. [kg/m³]

        The volume is taken as that at 12 %, which errs by less than 2 % between 6 and 16 %.

        Args:
            moisture: Moisture content of the piece. [%]

        Raises:
            OutOfRangeError: Moisture below 0 or above the point where shrinkage starts.

        References:
            Wood Handbook, FPL-GTR-190, ch. 4: density = 1000 G (1 + M / 100).
        """
        if not 0 <= moisture <= self.shrinkage_start:
            limit = float(self.shrinkage_start)
            raise OutOfRangeError(f"moisture {moisture:g} % lies outside 0 to {limit:g} %")
        return 1000 * self.gravity * (1 + moisture / 100)


def species(name: str) -> Species:
    """The wood known by a trade name.

    The order of the words, capitals, hyphens and brackets do not count: "ash, white",
    "White Ash" and "white ash" are one wood.

    Raises:
        UnknownNameError: No such wood in the table; the message names the nearest.
    """
    found = _by_key().get(_key(name))
    if found is None:
        raise UnknownNameError(_unknown(name))
    return found


def nearest(name: str) -> tuple[str, ...]:
    """Names of the table that a misspelt or too short name may have meant, likeliest first.

    Where woods have every word that was said ("pine"), these are all, and no others.
    """
    said = set(_key(name))
    if holding := [each for each, words in _words().items() if said and said <= words]:
        return tuple(holding)
    sharing = [each.name for each in all_species().values() if said & set(_key(each.name))]
    close = difflib.get_close_matches(_plain(name), _spellings(), n=3, cutoff=0.6)
    spelt = [_spellings()[text] for text in close]
    return tuple(dict.fromkeys([*spelt, *sharing]))


@cache
def all_species() -> Mapping[str, Species]:
    """Every wood of the table by its name, in the order of the table."""
    text = files("scantling.timber").joinpath("species.csv").read_text(encoding="utf-8")
    return MappingProxyType(
        {row["name"]: _species(row) for row in csv.DictReader(text.splitlines())}
    )


def _species(row: Mapping[str, str]) -> Species:
    return Species(
        name=row["name"],
        trade_names=tuple(filter(None, row["trade_names"].split("; "))),
        botanical=row["botanical"],
        kind=Kind(row["kind"]),
        radial=from_figures(row["radial_per_pct"]),
        tangential=from_figures(row["tangential_per_pct"]),
        shrinkage_radial=from_figures(row["shrinkage_radial_pct"]),
        shrinkage_tangential=from_figures(row["shrinkage_tangential_pct"]),
        shrinkage_volume=from_figures(row["shrinkage_volume_pct"]),
        shrinkage_start=from_figures(row["shrinkage_start_pct"]),
        gravity_green=float(row["gravity_green"]),
        gravity_12=_figure(row["gravity_12"]),
        bending_strength=float(row["bending_strength_MPa"]),
        elasticity=float(row["elasticity_MPa"]),
        compression_across=_figure(row["compression_across_MPa"]),
        shear=_figure(row["shear_MPa"]),
        side_hardness=_figure(row["side_hardness_N"]),
        coefficient_standing=Standing(row["coefficient_status"]),
        shrinkage_standing=Standing(row["shrinkage_status"]),
        strength_standing=Standing(row["strength_status"]),
        note=row["note"],
        source=row["source"],
    )


def _figure(text: str) -> float | None:
    return float(text) if text else None


def _plain(name: str) -> str:
    return " ".join(re.findall(r"[^\W_]+", name.casefold()))


def _key(name: str) -> tuple[str, ...]:
    # Merchants write "ash, white", boards are marked "ash white": only the set of words counts.
    return tuple(sorted(_plain(name).split()))


@cache
def _by_key() -> Mapping[tuple[str, ...], Species]:
    found: dict[tuple[str, ...], Species] = {}
    for each in all_species().values():
        for text in (each.name, each.botanical, *each.trade_names):
            found.setdefault(_key(text), each)
    return MappingProxyType(found)


@cache
def _words() -> Mapping[str, frozenset[str]]:
    """All words of a wood's names."""
    return MappingProxyType(
        {
            each.name: frozenset(w for text in (each.name, *each.trade_names) for w in _key(text))
            for each in all_species().values()
        }
    )


@cache
def _spellings() -> Mapping[str, str]:
    return MappingProxyType(
        {
            _plain(text): each.name
            for each in all_species().values()
            for text in (each.name, *each.trade_names)
        }
    )


def _unknown(name: str) -> str:
    near = nearest(name)[:3]
    if not near:
        return f"no wood called {name!r} in the table"
    return f"no wood called {name!r} in the table; nearest: {', '.join(near)}"
