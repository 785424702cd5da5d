"""Rooms of the demo workshop: figures worked by hand for the pieces that stand in them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.timber.moisture import Season
from scantling.timber.room import Room

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
