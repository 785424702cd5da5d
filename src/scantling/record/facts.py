"""What the record says of the piece: sizes as they were measured, parts as they were cut."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from scantling.exact import Fraction
from scantling.findings import Finding, Weight
from scantling.record.entry import Correction, Done, Entry, Reading, Record
from scantling.sizes.model import Measured


@dataclass(frozen=True, kw_only=True)
class Facts:
    """What holds, corrections made."""

    measured: tuple[Measured, ...] = ()
    cut: Mapping[str, Mapping[str, Fraction]] = field(
        default_factory=dict
    )  # by part, the sizes it was cut to [mm]
    done: frozenset[str] = frozenset()  # steps
    findings: tuple[Finding, ...] = ()


NO_FACTS = Facts()


def facts(record: Record) -> Facts:
    """What the record says: of several readings of a size the least and the greatest.

    Readings taken at different times are one fact, unless one is corrected. All are at the
    moisture of the bench; wood measured wetter or drier is not brought there yet.
    """
    standing, findings = _corrected(record.entries)
    readings: dict[str, list[tuple[Reading, Entry]]] = {}
    cut: dict[str, Mapping[str, Fraction]] = {}
    done = set()
    for entry in standing:
        said = entry.said
        if isinstance(said, Reading):
            readings.setdefault(said.name, []).append((said, entry))
        elif isinstance(said, Done):
            done.add(said.what)
            if said.part:
                cut[said.part] = said.sizes
    return Facts(
        measured=tuple(_measured(name, several) for name, several in readings.items()),
        cut=cut,
        done=frozenset(done),
        findings=(*record.findings, *findings),
    )


def _measured(name: str, several: Iterable[tuple[Reading, Entry]]) -> Measured:
    said = list(several)
    values = [value for reading, _ in said for value in reading.values]
    return Measured(name=name, least=min(values), greatest=max(values), place=said[-1][1].place)


def _corrected(entries: Iterable[Entry]) -> tuple[list[Entry], list[Finding]]:
    """Entries that hold; a later correction of the same entry takes the place of an earlier."""
    standing: dict[str, Entry | None] = {}
    findings = []
    for entry in entries:
        said = entry.said
        if not isinstance(said, Correction):
            standing[entry.id] = entry
        elif said.of not in standing:
            findings.append(_corrects_nothing(entry, said.of))
        else:
            standing[said.of] = None if said.instead is None else replace(entry, said=said.instead)
    return [entry for entry in standing.values() if entry is not None], findings


def _corrects_nothing(entry: Entry, of: str) -> Finding:
    return Finding(
        code="record.corrects-nothing",
        weight=Weight.MIND,
        says=f"A correction in the record is of an entry there is not, {of}.",
        cure="Say of which entry it is; the record shows their names.",
        place=entry.place,
    )
