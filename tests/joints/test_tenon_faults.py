"""What is said of a tenon at fault, each with a clean twin just inside the limit."""

from dataclasses import replace
from fractions import Fraction

from tests.joints.sawn import SHOP, said, sawn

from scantling.joints._frame import frame_bench
from scantling.joints._joint import Bench
from scantling.joints.mortise_and_tenon import MortiseAndTenon
from scantling.parts import Extent
from scantling.shop.tools import Shop


def size(length: int, width: int, thickness: int) -> Extent:
    return Extent(length=Fraction(length), width=Fraction(width), thickness=Fraction(thickness))


def tee(joint: MortiseAndTenon, *, stile: Extent, rail: Extent, up: int = 110) -> Bench:
    return frame_bench(joint, name="rail in stile", stile=stile, rail=rail, up=Fraction(up))


def codes(joint: MortiseAndTenon, *, stile: int = 55, rail: int = 46, up: int = 110) -> list[str]:
    made = sawn(tee(joint, stile=size(300, stile, 22), rail=size(240, rail, 22), up=up))
    return made.codes()


def test_plain_tee_has_no_fault() -> None:
    assert codes(MortiseAndTenon()) == []


def test_mortise_close_to_breaking_through_is_said() -> None:
    assert codes(MortiseAndTenon(tenon=said(49))) == ["mortise-and-tenon.thin-floor"]
    assert codes(MortiseAndTenon(tenon=said("97/2"))) == []  # 48 1/2 and 2 of 55 leaves 4 1/2


def test_thin_wood_beside_the_mortise_is_said() -> None:
    assert codes(MortiseAndTenon(set_in=said("11/2"))) == ["mortise-and-tenon.thin-cheek"]
    assert codes(MortiseAndTenon(set_in=said(6))) == []  # 0.7 of 8 is 5.6


def test_thickness_without_a_chisel_is_said() -> None:
    assert codes(MortiseAndTenon(thickness=said(7)), rail=41) == ["mortise-and-tenon.no-chisel"]
    assert codes(MortiseAndTenon(thickness=said(8)), rail=41) == []


def test_short_wood_beyond_a_mortise_is_said() -> None:
    assert codes(MortiseAndTenon(), up=8) == ["mortise-and-tenon.short-end"]
    assert codes(MortiseAndTenon(), up=9) == []  # 9 and a shoulder of 3


def test_short_wood_at_the_other_end_is_said_too() -> None:
    # 300 less the rail of 46 leaves 8 or 9 above, and a shoulder of 3
    assert codes(MortiseAndTenon(), up=246) == ["mortise-and-tenon.short-end"]
    assert codes(MortiseAndTenon(), up=245) == []


def test_narrow_haunch_is_said() -> None:
    narrow = MortiseAndTenon(haunched=True, haunch=said("23/2"))
    assert codes(narrow, up=0) == ["mortise-and-tenon.short-end"]
    assert codes(MortiseAndTenon(haunched=True, haunch=said(12)), up=0) == []


def test_wide_tenon_is_said() -> None:
    assert codes(MortiseAndTenon(), rail=82) == ["mortise-and-tenon.wide-glue"]
    assert codes(MortiseAndTenon(), rail=81) == ["mortise-and-tenon.broad"]


def without_chisels(shop: Shop) -> Shop:
    return replace(shop, mortise_chisels=())


def test_shop_without_chisels_falls_back_on_a_third() -> None:
    bench = tee(MortiseAndTenon(), stile=size(300, 55, 21), rail=size(240, 46, 21))
    assert sawn(bench, shop=without_chisels(SHOP)).own("thickness") == 7
