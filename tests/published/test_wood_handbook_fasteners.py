"""Wood Handbook, FPL-GTR-190 (2010), ch. 8: nails and screws; figures in pounds and inches.

The nail table is that of an extension leaflet, for a sixpenny nail 0.113 in thick, in pounds for
each inch of depth; specific gravities stand beside it. The screw of number 10 is a worked example
of a reference site, which gives the older rule for design, 2850 G^2 D.
"""

import pytest

from scantling.joints._strength import nail_pull, screw_pull, screw_push
from scantling.timber.species import species

POUND = 4.448222  # [N] NIST SP 811 (2008), appendix B.8
INCH = 25.4

SIXPENNY = [  # specific gravity [-], lb for each inch
    ("hard maple", 0.63, 279),
    ("silver maple", 0.47, 134),
    ("yellow birch", 0.62, 268),
    ("paper birch", 0.55, 199),
    ("beech", 0.64, 291),
    ("white ash", 0.60, 247),
    ("red oak", 0.63, 279),
    ("white oak", 0.68, 338),
]


@pytest.mark.parametrize(("wood", "gravity", "printed"), SIXPENNY)
def test_a_sixpenny_nail_holds_what_the_table_prints(
    wood: str, gravity: float, printed: int
) -> None:
    pull = nail_pull(gravity=gravity, shank=0.113 * INCH, deep=INCH) / POUND
    assert pull == pytest.approx(printed, abs=0.5), wood


def test_a_screw_holds_five_to_six_times_what_the_older_rule_lets_it_bear() -> None:
    # the worked example: gravity 0.45, number 10 (0.190 in): 109 lb for each inch of thread
    pull = screw_pull(gravity=0.45, shank=0.190 * INCH, thread=INCH) / POUND
    assert pull == pytest.approx(15_700 * 0.45**2 * 0.190, rel=1e-3)
    assert pull / 109 == pytest.approx(5.5, abs=0.05)


# lateral coefficient, lb and in, of table 8-4; from memory, as the code's metric column is
LATERAL = [
    ("yellow-poplar", 0.42, 3360),
    ("black walnut", 0.55, 4640),
    ("white ash", 0.60, 6400),
    ("eastern white pine", 0.35, 3360),
    ("Douglas-fir", 0.48, 5280),
]


@pytest.mark.parametrize(("name", "gravity", "k"), LATERAL)
def test_a_screw_deep_in_the_wood_bears_sideways_by_its_class(
    name: str, gravity: float, k: int
) -> None:
    wood = species(name)
    assert wood.gravity == pytest.approx(gravity)
    push = screw_push(wood, shank=0.138 * INCH, deep=INCH)  # number 6, 7.2 diameters deep
    assert push is not None
    assert push / POUND == pytest.approx(k * 0.138**2, rel=1e-3)


def test_a_short_screw_bears_in_proportion_and_a_stub_not_at_all() -> None:
    ash = species("white ash")
    deep = screw_push(ash, shank=4, deep=28)
    assert deep is not None
    assert screw_push(ash, shank=4, deep=40) == deep
    assert screw_push(ash, shank=4, deep=21) == pytest.approx(deep * 3 / 4)
    assert screw_push(ash, shank=4, deep=15) == 0
