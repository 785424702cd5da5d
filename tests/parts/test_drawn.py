"""Drawn dimensions of cuts: the figures a maker lays out by, and no more."""

from fractions import Fraction

from scantling.parts import Bore, Box, Corner, Cut, Profile, Shape, Span, Surface, Taper, drawn
from scantling.parts.drawn import Drawn

F = Fraction


def cut(shape: Shape, *, corner: Corner | None = None, **sized: str) -> Cut:
    words = tuple((word.replace("_", " "), name) for word, name in sized.items())
    return Cut(name="cut", owner="joint", shape=shape, corner=corner or Corner(), sized=words)


def figures(found: Drawn) -> dict[str, F]:
    return {row.word: row.value for row in found.measures}


def test_a_stopped_housing_is_drawn_by_place_width_stop_and_depth() -> None:
    housing = Box(along=Span(F(100), F(121)), across=Span(F(14), None), into=Span(None, F(6)))
    found = drawn(cut(housing, into_size="bottom in side.entry"))
    assert figures(found) == {
        "along start": 100,
        "along size": 21,
        "across start": 14,
        "into size": 6,
    }
    assert found.open_start == (False, False, True)
    assert found.open_stop == (False, True, False)
    by_word = {row.word: row for row in found.measures}
    assert by_word["into size"].dimension == "bottom in side.entry"
    assert by_word["into size"].from_surface is None
    assert by_word["along start"].from_surface is Surface.REFERENCE_END
    assert by_word["along start"].dimension is None


def test_a_figure_is_drawn_from_the_surface_the_cut_counts_from() -> None:
    corner = Corner(end=Surface.FAR_END, edge=Surface.BACK_EDGE)
    found = drawn(cut(Box(along=Span(F(30), F(58)), across=Span(F(9), F(17))), corner=corner))
    from_ = {row.word: row.from_surface for row in found.measures}
    assert from_["along start"] is Surface.FAR_END
    assert from_["across start"] is Surface.BACK_EDGE


def test_a_cut_that_starts_in_the_surface_needs_no_figure_for_it() -> None:
    found = drawn(cut(Box(along=Span(F(0), F(13)))))
    assert figures(found) == {"along size": 13}
    assert found.open_start == (False, True, True)


def test_a_socket_is_drawn_by_its_points_and_depth() -> None:
    points = ((F(0), F(20)), (F(0), F(26)), (F(15), F(57, 2)), (F(15), F(35, 2)))
    socket = Profile(axis=2, points=points, open_sides=frozenset({0}), span=Span(None, F(12)))
    found = drawn(cut(socket))
    assert found.form == "profile"
    assert found.sweep == 2
    assert found.open_sides == frozenset({0})
    assert len(found.measures) == 9
    assert figures(found)["point 2 along"] == 15
    assert figures(found)["point 2 across"] == F(57, 2)
    assert figures(found)["into size"] == 12


def test_a_hole_is_drawn_by_its_centre_diameter_and_depth() -> None:
    hole = Bore(axis=2, centre=(F(232), F(37)), radius=F(5, 2), span=Span(None, F(11)))
    assert figures(drawn(cut(hole))) == {
        "centre along": 232,
        "centre across": 37,
        "diameter": 5,
        "into size": 11,
    }


def test_a_taper_is_drawn_by_both_ends() -> None:
    taper = Taper(
        axis=1,
        first=((F(100), F(0)), (F(117), F(0)), (F(115), F(6))),
        last=((F(103), F(0)), (F(114), F(0)), (F(112), F(6))),
        start=F(2),
        stop=F(240),
        open_stop=True,
    )
    found = drawn(cut(taper))
    assert len(found.measures) == 14
    assert figures(found)["first point 1 along"] == 117
    assert figures(found)["last point 1 along"] == 114
    assert figures(found)["across start"] == 2
    assert figures(found)["across size"] == 238
    assert found.open_start[1] is False
    assert found.open_stop[1] is True
