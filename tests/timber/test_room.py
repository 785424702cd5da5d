"""Rooms of the demo workshop: figures worked by hand for the pieces that stand in them."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import OutOfRangeError
from scantling.timber.moisture import Season
from scantling.timber.room import Room, wave

BENCH = Season(humidity=38, temperature=17)
GLAZING = Room(
    dry=Season(humidity=40, temperature=18), damp=Season(humidity=75, temperature=20), bench=BENCH
)
SHOP = Room(
    dry=Season(humidity=28, temperature=21), damp=Season(humidity=60, temperature=22), bench=BENCH
)
air = st.builds(Season, humidity=st.floats(5, 95), temperature=st.floats(0, 40))


def test_glazing_room_as_worked_by_hand() -> None:
    assert GLAZING.driest == pytest.approx(7.8, abs=0.05)
    assert GLAZING.dampest == pytest.approx(14.45, abs=0.005)
    assert GLAZING.made_at == pytest.approx(7.5, abs=0.05)
    # By hand from the rounded 7.5: 14.45 - 7.5 = 6.95.
    assert GLAZING.gain == pytest.approx(6.95, abs=0.03)


def test_shop_as_worked_by_hand() -> None:
    assert SHOP.driest == pytest.approx(5.9, abs=0.05)
    assert SHOP.dampest == pytest.approx(10.9, abs=0.05)
    # By hand from the rounded 7.5, 5.85 and 10.94.
    assert SHOP.gain == pytest.approx(3.44, abs=0.03)
    assert SHOP.loss == pytest.approx(1.65, abs=0.035)
    assert SHOP.swing == pytest.approx(5.09, abs=0.01)


def test_glazing_room_never_gets_drier_than_the_bench() -> None:
    assert GLAZING.loss < 0


@given(dry=air, damp=air, bench=air)
def test_gain_and_loss_add_up_to_the_swing(dry: Season, damp: Season, bench: Season) -> None:
    room = Room(dry=dry, damp=damp, bench=bench)

    assert room.gain + room.loss == pytest.approx(room.swing, abs=1e-9)


def test_a_year_south_of_the_equator_is_the_same_half_a_year_later() -> None:
    south = replace(GLAZING, dry_month=7, damp_month=1)
    assert south.by_month == (*GLAZING.by_month[6:], *GLAZING.by_month[:6])
    assert south.by_month[1] == GLAZING.dampest


def test_the_year_is_a_wave_from_february_to_august() -> None:
    # half of 1 - cos(30 degrees) is 0.067, of 1 - cos(60 degrees) 0.25
    said = ("0.067", "0", "0.067", "0.25", "0.5", "0.75", "0.933", "1")
    assert [float(share) for share in GLAZING.dampness[:8]] == [float(each) for each in said]
    assert GLAZING.dampness[8:] == GLAZING.dampness[3:7][::-1], "and down again"


def test_a_quick_rise_goes_down_slowly() -> None:
    # a monsoon: driest in May, dampest in July
    shares = wave(dry=4, damp=6)
    assert [float(share) for share in shares[4:7]] == [0, 0.5, 1]
    down = [shares[month % 12] for month in range(6, 17)]
    assert down == sorted(down, reverse=True)
    assert float(down[5]) == 0.5, "five months of ten behind the dampest"


def test_one_month_is_not_both() -> None:
    with pytest.raises(OutOfRangeError, match="July is both"):
        wave(dry=6, damp=6)


def test_the_air_of_each_month_keeps_the_wood_at_its_moisture() -> None:
    air = GLAZING.humidity_by_month
    assert (air[1], air[7]) == pytest.approx((40, 75), abs=0.001)
    for share, humidity, moisture in zip(GLAZING.dampness, air, GLAZING.by_month, strict=True):
        warmth = 18 + 2 * float(share)
        settled = Season(humidity=humidity, temperature=warmth).moisture
        assert settled == pytest.approx(moisture, abs=0.001)
