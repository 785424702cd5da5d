"""Finding a wood by what people call it."""

import pytest

from scantling.errors import OutOfRangeError, UnknownNameError
from scantling.timber.species import Standing, all_species, nearest, species


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("white ash", "white ash"),
        ("ash, white", "white ash"),
        ("Ash white", "white ash"),
        ("yellow-poplar", "yellow-poplar"),
        ("Yellow Poplar", "yellow-poplar"),
        ("poplar", "yellow-poplar"),
        ("soft maple", "red maple"),
        ("red maple (soft)", "red maple"),
        ("maple red", "red maple"),
        ("walnut black", "black walnut"),
        ("oak white", "white oak"),
        ("eastern white pine", "eastern white pine"),
        ("Douglas-fir", "Douglas-fir"),
        ("douglas fir", "Douglas-fir"),
        ("Fraxinus americana", "white ash"),
        ("  hard   MAPLE ", "sugar maple"),
    ],
)
def test_a_wood_answers_to_its_trade_names(said: str, meant: str) -> None:
    assert species(said).name == meant


@pytest.mark.parametrize(
    ("said", "offered"),
    [
        ("whit ash", "white ash"),
        ("yelow poplar", "yellow-poplar"),
        ("maple", "red maple"),
        ("pine", "ponderosa pine"),
        ("douglas", "Douglas-fir"),
    ],
)
def test_an_unknown_wood_is_met_with_near_ones(said: str, offered: str) -> None:
    assert offered in nearest(said)
    with pytest.raises(UnknownNameError, match="nearest: "):
        species(said)


@pytest.mark.parametrize("said", ["", "  ", "xyzzy", "⅜", "=cmd"])
def test_nonsense_gets_no_suggestion(said: str) -> None:
    with pytest.raises(UnknownNameError) as caught:
        species(said)

    assert "nearest" not in str(caught.value)


def test_no_trade_name_stands_for_two_woods() -> None:
    for wood in all_species().values():
        for said in (wood.name, *wood.trade_names):
            assert species(said) is wood, said


def test_two_woods_share_one_botanical_name_and_the_first_answers() -> None:
    assert species("Sequoia sempervirens").name == "old-growth redwood"


def test_seventy_woods_each_with_a_source() -> None:
    assert len(all_species()) == 70
    assert all("Wood Handbook" in wood.source for wood in all_species().values())


def test_a_dry_board_of_walnut_weighs_what_the_table_implies() -> None:
    # By hand: G 0.55 at 12 %; a cubic metre at 8 % weighs 1000 x 0.55 x 1.08.
    assert species("black walnut").density(moisture=8) == pytest.approx(594)


def test_wood_without_a_dry_gravity_is_heavier_than_its_green_figure() -> None:
    sapele = species("sapele")

    assert sapele.gravity_12 is None
    # By hand: 0.55 / (1 - 0.265 x 0.6 x 0.55) = 0.55 / 0.91255.
    assert sapele.gravity == pytest.approx(0.6027, abs=0.0001)


def test_density_is_refused_where_the_wood_is_green() -> None:
    with pytest.raises(OutOfRangeError, match="outside 0 to 22 %"):
        species("teak").density(moisture=25)


def test_only_read_figures_count_as_read() -> None:
    assert [each for each in Standing if each.read] == [Standing.SEEN_TWICE, Standing.SEEN]
