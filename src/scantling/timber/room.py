"""The room a piece will stand in, and the bench it is made at."""

from dataclasses import dataclass

from scantling.timber.moisture import Season


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
