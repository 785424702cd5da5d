"""Every value of a file by its path, its place and what a reader calls it."""

from scantling.piece._file.spots import spots

TEXT = """format = 1
[face_frame]
rows = [
  { rail = "top rail", tall = "1 1/2" },
  { foot = 1 },
  { tall = 2, wide = 3 },
]
[top]
under_bevel = { sides = ["front", "left"] }  # two
[also]
"left side.thickness" = "7/8"
deep = nine
"""


def test_values_are_found_in_the_order_of_the_file() -> None:
    found = {spot.path: spot.text for spot in spots(TEXT)}
    assert found == {
        ("format",): "1",
        ("face_frame", "rows", 0, "rail"): "top rail",
        ("face_frame", "rows", 0, "tall"): "1 1/2",
        ("face_frame", "rows", 1, "foot"): "1",
        ("face_frame", "rows", 2, "tall"): "2",
        ("face_frame", "rows", 2, "wide"): "3",
        ("top", "under_bevel", "sides", 0): "front",
        ("top", "under_bevel", "sides", 1): "left",
        ("also", "left side.thickness"): "7/8",
    }


def test_an_item_of_a_row_is_called_by_its_first_word() -> None:
    labels = [" ".join(spot.label) for spot in spots(TEXT)]
    assert "face_frame top rail tall" in labels
    assert "face_frame foot" in labels
    assert "face_frame 3 tall" in labels


def test_places_are_those_of_the_signs_whatever_the_line_ends() -> None:
    for text in (TEXT, "\ufeff" + TEXT.replace("\n", "\r\n")):
        by_path = {spot.path: spot for spot in spots(text)}
        tall = by_path["face_frame", "rows", 0, "tall"]
        assert (tall.place.line, tall.place.column, tall.place.width) == (4, 32, 5)
        key = by_path["also", "left side.thickness"].key
        assert key
        assert (key.line, key.column) == (11, 2)
