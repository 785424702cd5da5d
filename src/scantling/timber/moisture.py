"""Moisture content of wood standing in air.

Wood left in air of steady temperature and humidity settles at one moisture content, much
the same for every species. Movement across the year starts from the figure found here.
"""

from dataclasses import dataclass

from scantling.errors import OutOfRangeError

HUMIDITY = (5.0, 95.0)  # [%] first and last column of table 4-2
TEMPERATURE = (-1.2, 93.4)  # [°C] 30 °F and 200 °F, the rows we have checked
CLOSE = 1e-3  # [%] to which a humidity is found


def equilibrium_moisture(*, humidity: float, temperature: float) -> float:
    """Moisture content at which wood neither gains nor loses water.

    Two-hydrate sorption model of Hailwood and Horrobin. One curve for all species; the
    data behind it are poorly documented [2], so do not read decimals into the result.

    Args:
        humidity: Relative humidity of the air. [%]
        temperature: Temperature of the air. [°C]

    Returns:
        Mass of water over oven-dry mass of wood. [%]

    Raises:
        OutOfRangeError: Humidity or temperature beyond the rows of [1] we have checked.

    References:
        [1] S. V. Glass and S. L. Zelinka, "Moisture relations and physical properties of
            wood", ch. 4 in Wood Handbook, FPL-GTR-190, 2010: eq. 4-5, table 4-2.
        [2] S. V. Glass, S. L. Zelinka and J. A. Johnson, FPL-GTR-229, 2014, abstract.
    """
    _within("humidity", humidity, HUMIDITY, "%")
    _within("temperature", temperature, TEMPERATURE, "°C")

    h, t = humidity / 100, temperature
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 7.36e-4 * t - 2.73e-6 * t**2
    k1 = 6.27 - 9.38e-3 * t - 3.03e-4 * t**2
    k2 = 1.91 + 0.0407 * t - 2.93e-4 * t**2

    kh = k * h
    dissolved = kh / (1 - kh)
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (dissolved + bound)


def humidity_for(*, moisture: float, temperature: float) -> float:
    """Humidity of the air that keeps wood at a moisture content: `equilibrium_moisture` undone.

    Found by halving, to a thousandth. Beyond what 5 or 95 % give, it is that end.

    Args:
        moisture: Moisture content of the wood. [%]
        temperature: Temperature of the air. [°C]

    Returns:
        Relative humidity. [%]

    Raises:
        OutOfRangeError: Temperature beyond the rows of table 4-2 we have checked.
    """
    low, high = HUMIDITY
    while high - low > CLOSE:
        middle = (low + high) / 2
        if equilibrium_moisture(humidity=middle, temperature=temperature) < moisture:
            low = middle
        else:
            high = middle
    return (low + high) / 2


@dataclass(frozen=True, kw_only=True)
class Season:
    """Air of a room at one end of its year."""

    humidity: float  # [%]
    temperature: float  # [°C]

    @property
    def moisture(self) -> float:
        """Moisture content wood would reach if the season lasted. [%]"""
        return equilibrium_moisture(humidity=self.humidity, temperature=self.temperature)


def _within(name: str, value: float, ends: tuple[float, float], unit: str) -> None:
    low, high = ends
    if not low <= value <= high:
        raise OutOfRangeError(f"{name} {value:g} {unit} lies outside {low:g} to {high:g} {unit}")
