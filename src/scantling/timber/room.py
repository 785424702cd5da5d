"""The room a piece will stand in, and the bench it is made at."""

from dataclasses import dataclass
from math import cos, pi

from scantling.errors import OutOfRangeError
from scantling.exact import Fraction, from_figures
from scantling.timber.moisture import Season, humidity_for

MONTHS = (
    *("January", "February", "March", "April", "May", "June", "July"),
    *("August", "September", "October", "November", "December"),
)
# UNSOURCED: a room's file may tell the two ends alone, and this is a guess at when they come in a
# heated house north of the equator, and at what lies between.
USUAL_DRY, USUAL_DAMP = MONTHS.index("February"), MONTHS.index("August")


def wave(*, dry: int, damp: int) -> tuple[Fraction, ...]:
    """Of the way from the driest month to the dampest, from January to December. [-]

    Half a sine wave up and half a one down, to three decimals.

    Args:
        dry: The driest month, January being 0. [-]
        damp: The dampest. [-]

    Raises:
        OutOfRangeError: They are one month.
    """
    rises = (damp - dry) % 12
    if rises == 0:
        raise OutOfRangeError(f"{MONTHS[dry]} is both the driest month and the dampest")
    falls = 12 - rises
    since = ((month - dry) % 12 for month in range(12))
    ways = (each / rises if each <= rises else (12 - each) / falls for each in since)
    return tuple(from_figures(f"{(1 - cos(pi * way)) / 2:.3f}") for way in ways)


@dataclass(frozen=True, kw_only=True)
class Room:
    """Driest and dampest spell of the room, and the air at the bench.

    Each is taken as lasting long enough for the wood to settle, which overstates the
    movement of thick or finished parts: a cautious figure, never a bold one.
    """

    dry: Season
    damp: Season
    bench: Season
    dry_month: int = USUAL_DRY  # January is 0
    damp_month: int = USUAL_DAMP

    @property
    def driest(self) -> float:
        """Moisture content the wood falls to in the dry spell. [%]"""
        return self.dry.moisture

    @property
    def dampest(self) -> float:
        """Moisture content the wood rises to in the damp spell. [%]"""
        return self.damp.moisture

    @property
    def dampness(self) -> tuple[Fraction, ...]:
        """Of the way from the driest month to the dampest, from January to December. [-]

        Raises:
            OutOfRangeError: They are one month.
        """
        return wave(dry=self.dry_month, damp=self.damp_month)

    @property
    def by_month(self) -> tuple[float, ...]:
        """Moisture content from January to December, a sine wave between the two ends. [%]"""
        return tuple(self.driest + float(share) * self.swing for share in self.dampness)

    @property
    def humidity_by_month(self) -> tuple[float, ...]:
        """Of the air that keeps wood at the moisture of `by_month`. [%]

        The warmth goes from that of the dry spell to that of the damp one in the same wave.
        """
        warmer = self.damp.temperature - self.dry.temperature
        return tuple(
            humidity_for(
                moisture=moisture, temperature=self.dry.temperature + float(share) * warmer
            )
            for share, moisture in zip(self.dampness, self.by_month, strict=True)
        )

    @property
    def made_at(self) -> float:
        """Moisture content of the wood while it is worked. [%]"""
        return self.bench.moisture

    @property
    def swing(self) -> float:
        """From the driest to the dampest of the year. [points of % moisture content]"""
        return self.dampest - self.driest

    @property
    def gain(self) -> float:
        """From the bench to the dampest; below 0 where the bench is damper. [points of %]"""
        return self.dampest - self.made_at

    @property
    def loss(self) -> float:
        """From the bench to the driest; below 0 where the bench is drier. [points of %]"""
        return self.made_at - self.driest
