"""What a form may be told: the kinds of value, and the section they stand in.

A form declares a `Section` with typed fields. What it gets knows its place in the file: a
`Length` is a `Said`, a `Word` a str and a `Count` an int that carry a `place`;
`section.at("field")` is the place of any field. Space, hyphen, underscore and capitals are
equal in the maker's words.

- `Length` above 0, `Outside` at least 2 in, `Gap` at least 0, `Offset` of any sign, `Ratio`
  such as "1:6": all `Said`.
- `Thick` is a `Said`, or `AsBoardsGive`. `Tall` is a `Said`, or nothing where "equal" is said.
- `Annotated[Word, among("front", "behind")]`: one of these, in their own spelling.
- `Annotated[Length | None, spelt("depth")]`: the field answers to further words.
- `Load` is "50 lb/ft2", `TwoLengths` "2 1/2 x 1 3/8", `Truth` a bool.
- `tuple[Word, ...]`, `tuple[OtherSection, ...]`: rows. `OtherSection`: a table.
- `JointWanted` is a name or a table of a joint's own options. What else may stand in that
  table is declared: `Annotated[JointWanted, also("top_face", count=Count, usual="housing")]`
  and asked for by `said("top_face")`, `count("count")`, `word(...)`. A joint field that has
  no default but a usual joint need not be said.
- A section whose field is called `joint` hands it every word it does not know itself, so
  options may stand beside it. A word that is both is the section's.
"""

from scantling.joints._joint import Said
from scantling.piece._file.joint import JointWanted, also
from scantling.piece._file.kinds import (
    AsBoardsGive,
    Count,
    Gap,
    Length,
    Load,
    Offset,
    Outside,
    Ratio,
    Tall,
    Thick,
    Truth,
    TwoLengths,
    Word,
    among,
    spelt,
)
from scantling.piece._file.section import Section

__all__ = [
    "AsBoardsGive",
    "Count",
    "Gap",
    "JointWanted",
    "Length",
    "Load",
    "Offset",
    "Outside",
    "Ratio",
    "Said",
    "Section",
    "Tall",
    "Thick",
    "Truth",
    "TwoLengths",
    "Word",
    "also",
    "among",
    "spelt",
]
