"""Behaviour of equilibrium moisture."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.timber.moisture import HUMIDITY, TEMPERATURE, Season, equilibrium_moisture

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
