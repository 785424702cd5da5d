"""What a solver and the joints would say of the cupboard in `cupboard.py`, in the page's words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from tests.web.cupboard import INCH, inch, model, parts
from tests.web.in_one_go import in_one_go

from scantling.findings import Finding, Place, Weight
from scantling.parts import Drawn, Part, drawn
from scantling.units import Unit, written
from scantling.web.workbench import Drawings, Workbench

AXES = ("along", "across", "into")
MEASURED = {"left side.thickness"}
LOOSE = {"shelf.length"}


def length(value: Fraction, *, about: bool = False) -> dict[str, Any]:
    text = written(value, unit=Unit.INCH)
    return {
        "mm": str(value),
        "value_mm": float(value),
        "as_written": f"about {text}" if about else text,
    }


def own(name: str, value: Fraction) -> dict[str, Any]:
    measured, loose = name in MEASURED, name in LOOSE
    return {
        **length(value, about=loose),
        "dimension": name,
        "set_out": "mate" if loose else "tape",
        "origin": "measured" if measured else "follows",
        "off_tape": loose,
        "because": "as the boards gave" if measured else "wide of the case less twice the side",
    }


def cut(found: Drawn) -> dict[str, Any]:
    return {
        "cut": found.cut,
        "owner": found.owner,
        "form": found.form,
        "sweep": None if found.sweep is None else AXES[found.sweep],
        "corner": [str(s) for s in found.corner],
        "open_start": list(found.open_start),
        "open_stop": list(found.open_stop),
        "open_sides": sorted(found.open_sides),
        "measures": [
            {
                "word": m.word,
                "axis": AXES[m.axis],
                "value": length(m.value),
                "from": m.from_surface and str(m.from_surface),
                "dimension": m.dimension,
            }
            for m in found.measures
        ],
    }


def part(each: Part, mark: int | None) -> dict[str, Any]:
    stand, size = each.placement, each.extent
    rough = [size.length + INCH, size.width + inch("1/4"), size.thickness + inch("1/4")]
    words = ("length", "width", "thickness")
    return {
        "name": each.name,
        "family": each.family,
        "mark": mark,
        "wood": each.wood,
        "cut": each.cut_of_wood,
        "hardware": each.hardware,
        "moves_with": each.moves_with,
        **{w: own(f"{each.name}.{w}", size[a]) for a, w in enumerate(words)},
        "rough": dict(zip(words, map(length, rough), strict=True)),
        "blank": "round" if each.is_round else "board",
        "horns": [length(Fraction(0)), length(Fraction(0))],
        "shown": [str(s) for s in each.show],
        "placement": {
            "along": str(stand.along),
            "across": str(stand.across),
            "into": str(stand.into),
            "at": [length(value) for value in stand.at],
        },
        "cuts": [cut(drawn(c)) for c in each.cuts],
    }


def joint(name: str, title: str, one: str, other: str, way: str) -> dict[str, Any]:
    figures = (("deep", "1/4", "back face"), ("from the floor end", "1 1/4", "reference end"))
    return {
        "name": name,
        "title": title,
        "parts": [one, other],
        "choice": {"width": "381/20"},
        "drawn": [
            {
                "word": word,
                "value": str(inch(value)),
                "unit": "mm",
                "as_written": value,
                "dimension": None,
                "reference": reference,
            }
            for word, value, reference in figures
        ],
        "contacts": [
            {
                "between": [one, other],
                "zone": "floor",
                "glue": "long grain crossing long grain",
                "fit": "slide",
                "area_mm2": 3387.1,
            }
        ],
        "presses": [],
        "moves": [
            {
                "role": "entering",
                "motion": "straight",
                "way": way.split(","),
                "about": None,
                "unlocked_by": "",
            }
        ],
    }


def joints() -> Iterable[dict[str, Any]]:
    for hand, way in (("left", "1,0,0"), ("right", "-1,0,0")):
        for board in ("bottom", "top"):
            name, side = f"{board} in {hand} side", f"{hand} side"
            yield joint(name, "housing", board, side, way)
        for rail in ("bottom rail", "top rail"):
            name, stile = f"{rail} in {hand} stile", f"{hand} stile"
            yield joint(name, "mortise and tenon", rail, stile, way)
            name = f"door {rail} in {hand} stile"
            yield joint(name, "mortise and tenon", f"door.{rail}", f"door.{hand} stile", way)
        yield joint(
            f"{hand} stile on side", "glued edge", f"{hand} stile", f"{hand} side", "0,-1,0"
        )


def line(mark: int, alike: Sequence[Part]) -> dict[str, Any]:
    first = part(alike[0], mark)
    return {
        "mark": mark,
        "part": first["family"],
        "parts": [each.name for each in alike],
        "wood": first["wood"],
        "how_many": len(alike),
        "long": first["length"],
        "wide": first["width"],
        "thick": first["thickness"],
        "rough": first["rough"],
        "set_out": "tape",
        "note": "",
    }


def months(damp: str, dry: str) -> list[dict[str, Any]]:
    """A gap from January to December, half of the way between in April and October."""
    way = ("1/16", "0", "1/16", "1/4", "1/2", "3/4", "15/16", "1", "15/16", "3/4", "1/2", "1/4")
    low, high = inch(dry), inch(damp)
    return [length(low + Fraction(share) * (high - low)) for share in way]


def fit(what: str, *, made: str, dry: str, damp: str, **words: Any) -> dict[str, Any]:  # noqa: ANN401 - JSON of any shape
    return {
        "what": what,
        "names": [what],
        "parts": ["door.left stile"],
        "place": "piece.toml 2:8",
        "made": length(inch(made)),
        "months": months(damp, dry),
        "in_damp": length(inch(damp)),
        "in_dry": length(inch(dry)),
        "moves": length(inch(damp) - inch(dry)),
        "least": length(inch("1/32")),
        "greatest": None,
        "make_least": length(inch("5/32")),
        "make_most": None,
        "because": "the stiles grow",
        "source": "Wood Handbook, FPL-GTR-190, 2010, eq. 13-2",
        **words,
    }


def year(gap: str) -> dict[str, Any]:
    """The year of the cupboard; a door that binds until its gap is made `1/4`."""
    air = [42.7, 40.0, 42.7, 49.2, 57.6, 65.9, 72.6, 75.0, 72.6, 65.9, 57.6, 49.2]
    wood = [8.21, 7.76, 8.21, 9.43, 11.11, 12.78, 14.0, 14.45, 14.0, 12.78, 11.11, 9.43]
    door = (
        fit("gap across the door", made="1/4", dry="1/4", damp="5/32", holds=True)
        if gap == "1/4"
        else fit("gap across the door", made="1/16", dry="1/16", damp="-1/32", holds=False)
    )
    door |= {
        "verdict": "The door binds in August by 1/32 in. Plane each stile 1/64 in.",
        "advice": "Make it 5/32 in or more today, not 1/16 in.",
    }
    return {
        "moisture": {
            "bench": 7.47,
            "driest": 7.76,
            "dampest": 14.45,
            "months": wood,
            "assumed": "The wood is taken to be driest in February and dampest in August.",
        },
        "air": {"bench": 38.0, "driest": 40.0, "dampest": 75.0, "months": air},
        "driest_in": "February",
        "dampest_in": "August",
        "fits": [
            door,
            fit(
                "room beside the panel",
                made="3/16",
                dry="3/16",
                damp="1/64",
                holds=True,
                verdict="Enough: 1/64 in is left in August, the least of the year.",
                advice="Made 3/16 in; 3/16 in or more will do today.",
            ),
            *(
                fit(
                    "gap between boards",
                    names=[f"gap {number}"],
                    parts=[f"board {number + 1}", f"board {number + 2}", *further],
                    made="1/8",
                    dry="1/8",
                    damp="1/16",
                    holds=True,
                    verdict="Enough: 1/16 in is left in August, the least of the year.",
                    advice="Made 1/8 in; 1/8 in or more will do today.",
                )
                for number, further in ((0, ()), (2, ("board 5", "board 6")))
            ),
            fit(
                "air behind the shelf",
                made="1 7/16",
                dry="1 7/16",
                damp="1 3/4",
                holds=True,
                verdict="Enough: it is never less than today.",
                advice="Made 1 7/16 in; 1/8 in or more will do today.",
            ),
        ],
        "wide_parts": [
            {
                "mark": 1,
                "part": "side",
                "parts": ["left side", "right side"],
                "wood": "white ash",
                "cut": "flat",
                "width": length(inch("7 1/4")),
                "coefficient": 0.00274,
                "grow": length(inch("1/8")),
                "shrink": length(-inch("1/64")),
                "swing": length(inch("7/64")),
                "source": "Wood Handbook, FPL-GTR-190, 2010, table 13-5",
            }
        ],
    }


def document(name: str, findings: Sequence[Finding] = ()) -> dict[str, Any]:
    """The cupboard under that name, as `setting-out.json` tells of it."""
    made = parts()
    families = list(dict.fromkeys(each.family for each in made if not each.hardware))
    marks = {family: place for place, family in enumerate(families, 1)}
    return {
        "format": 1,
        "kind": "setting-out",
        "piece": {
            "name": name,
            "file": "piece.toml",
            "measure": "mm",
            "finest_mm": float(INCH / 32),
            "overall": {
                "wide": length(inch("16")),
                "deep": length(inch("8")),
                "tall": length(inch("24")),
            },
        },
        "parts": [part(each, marks.get(each.family)) for each in made],
        "sizes": [],
        "joints": list(joints()),
        "cutting_list": [
            line(mark, [each for each in made if each.family == family])
            for family, mark in marks.items()
        ],
        "year": year("1/4" if name == "Eased cupboard" else "1/16"),
        "record": {"entries": [], "cut": [], "changed": []},
        "findings": [{"code": f.code} for f in findings],
        "shown": {
            "words": "US",
            "figures": "mm",
            "measure": "inch",
            "said": {"cutting list": "stock bill", "millimetres": "millimeters"},
        },
    }


BINDS = Finding(
    code="seasons.binds",
    weight=Weight.HALT,
    says="The door binds in August by 1/32.",
    cure="Plane each stile 1/64.",
    figure="-1/32 in",
    limit="0",
    source="Wood Handbook, FPL-GTR-190, eq. 13-2",
    parts=("door.left stile", "door.right stile"),
    place=Place(file="piece.toml", line=2, column=8, width=6),
)
KNOTTY = Finding(
    code="stock.knot",
    weight=Weight.NOTE,
    says="The shelf may show a pin knot.",
    cure="",
)


def work(path: Path) -> tuple[str | None, Sequence[Finding]]:
    """The name in the text's first line; a text with a `?` in it is broken there."""
    text = path.read_text()
    for number, each in enumerate(text.splitlines(), 1):
        if "?" in each:
            place = Place(file=path.name, line=number, column=each.index("?") + 1)
            found = Finding(
                code="piece.not-a-length",
                weight=Weight.HALT,
                says="This is no length.",
                cure='Write a number and a unit, such as "3/4 in".',
                place=place,
            )
            return None, (found,)
    return text.splitlines()[0].partition("=")[2].strip().strip('"'), (BINDS, KNOTTY)


def drawings() -> Drawings[str]:
    """The cupboard, whatever it is called."""
    return Drawings(document=document, model=lambda _: model(parts()), part=three_views)


def three_views(part: str, piece: str) -> dict[str, Any] | None:
    """A drawing of the left side alone: its outline, and the piece's name beside it."""
    if part != "left side":
        return None
    outline = [[0, 0], [30, 0], [30, 90], [0, 90], [0, 0]]
    name = {"says": f"7 1/4 {piece}", "at": [34, 45], "ends": False, "turned": False, "bold": False}
    return {
        "size": [80, 90],
        "scale": 8,
        "alt": f"The {part} of the {piece}",
        "strokes": [{"kind": "visible", "lines": [outline]}],
        "texts": [name],
        "line_types": {"visible": {"width": 0.35, "dashes": []}},
    }


def workbench(path: Path) -> Workbench[str]:
    """A workbench with the cupboard on it."""
    return Workbench(path, work=in_one_go(work), drawings=drawings())
