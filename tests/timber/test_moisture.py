"""Behaviour of equilibrium moisture."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.timber.moisture import (
    HUMIDITY,
    TEMPERATURE,
    Season,
    equilibrium_moisture,
    humidity_for,
)

air = st.floats(*HUMIDITY)
warmth = st.floats(*TEMPERATURE)


@given(one=air, other=air, temperature=warmth)
def test_damper_air_never_makes_drier_wood(one: float, other: float, temperature: float) -> None:
    dry, damp = sorted((one, other))

    assert equilibrium_moisture(humidity=dry, temperature=temperature) <= equilibrium_moisture(
        humidity=damp, temperature=temperature
    )


@given(humidity=air, one=st.floats(10, 93.4), other=st.floats(10, 93.4))
def test_warmer_air_never_makes_damper_wood(humidity: float, one: float, other: float) -> None:
    # Table 4-2 falls down every column from 50 °F on; below that it is flat within a tenth.
    cool, warm = sorted((one, other))

    assert (
        equilibrium_moisture(humidity=humidity, temperature=warm)
        <= equilibrium_moisture(humidity=humidity, temperature=cool) + 1e-9
    )


@pytest.mark.parametrize(
    ("humidity", "temperature", "named"),
    [
        (4.9, 20, "humidity 4.9 %"),
        (95.1, 20, "humidity 95.1 %"),
        (50, -1.3, "temperature -1.3 °C"),
        (50, 93.5, "temperature 93.5 °C"),
        (float("nan"), 20, "humidity nan"),
    ],
)
def test_air_beyond_the_table_is_refused(humidity: float, temperature: float, named: str) -> None:
    with pytest.raises(OutOfRangeError, match=named):
        equilibrium_moisture(humidity=humidity, temperature=temperature)


def test_refusal_is_also_a_value_error() -> None:
    with pytest.raises(ValueError, match="lies outside 5 to 95 %"):
        equilibrium_moisture(humidity=2, temperature=20)


def test_ends_of_the_table_are_inside() -> None:
    assert equilibrium_moisture(humidity=5, temperature=21.1) == pytest.approx(1.3, abs=0.06)
    assert equilibrium_moisture(humidity=95, temperature=21.1) == pytest.approx(23.9, abs=0.06)


def test_a_season_settles_at_the_moisture_of_its_air() -> None:
    # 7.5 % at 20 °C goes with 38.5 % humidity (compiled worked examples).
    assert Season(humidity=38.5, temperature=20).moisture == pytest.approx(7.5, abs=0.06)


@pytest.mark.parametrize(
    ("moisture", "temperature", "humidity"),
    [(6.2, 21.11, 30), (9.2, 21.11, 50), (14.4, 21.11, 75), (8.7, 37.78, 50), (14.9, -1.11, 75)],
)
def test_humidity_is_read_backwards_from_the_table(
    moisture: float, temperature: float, humidity: float
) -> None:
    # table 4-2 of the Wood Handbook; half a tenth of moisture is 0.3 % of humidity at most
    assert humidity_for(moisture=moisture, temperature=temperature) == pytest.approx(
        humidity, abs=0.4
    )


def test_beyond_the_table_humidity_is_its_end() -> None:
    assert humidity_for(moisture=40, temperature=20) == pytest.approx(95, abs=0.001)
    assert humidity_for(moisture=0, temperature=20) == pytest.approx(5, abs=0.001)
