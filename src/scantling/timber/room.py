"""The room a piece will stand in, and the bench it is made at."""

from dataclasses import dataclass

from scantling.exact import from_figures
from scantling.timber.moisture import Season

MONTHS = (
    *("January", "February", "March", "April", "May", "June", "July"),
    *("August", "September", "October", "November", "December"),
)
# Of the way from the driest month to the dampest, by month: a sine wave, driest in February and
# dampest in August. UNSOURCED: a room's file tells the two ends alone, and this is a guess at
# when they come in a heated house north of the equator.
DAMPNESS = tuple(
    from_figures(share)
    for share in (
        *("0.067", "0", "0.067", "0.25", "0.5", "0.75"),
        *("0.933", "1", "0.933", "0.75", "0.5", "0.25"),
    )
)


@dataclass(frozen=True, kw_only=True)
class Room:
    """Driest and dampest spell of the room, and the air at the bench.

    Each is taken as lasting long enough for the wood to settle, which overstates the
    movement of thick or finished parts: a cautious figure, never a bold one.
    """

    dry: Season
    damp: Season
    bench: Season

    @property
    def driest(self) -> float:
        """Moisture content the wood falls to in the dry spell. [%]"""
        return self.dry.moisture

    @property
    def dampest(self) -> float:
        """Moisture content the wood rises to in the damp spell. [%]"""
        return self.damp.moisture

    @property
    def by_month(self) -> tuple[float, ...]:
        """Moisture content from January to December, a sine wave between the two ends. [%]"""
        return tuple(self.driest + float(share) * self.swing for share in DAMPNESS)

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
