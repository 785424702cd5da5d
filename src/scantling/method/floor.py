"""The shop floor while an order is carried out: what has been done to every part so far.

Written apart from the planner: it reads the job and nothing the planner made of it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property

from scantling.method.job import Job, JobJoint, Step
from scantling.shop.habits import Sizing
from scantling.shop.operations import Operation, State, word

GLUES = frozenset({"glue case", "glue frame", "glue drawer"})
BENCH = frozenset({"marking", "joints", "fitting", "before glue"})
STANDING = frozenset({"after glue", "doors", "drawers", "back and top"})
SIZED = {
    Sizing.WIDTH: ("plane to width",),
    Sizing.THICKNESS: ("plane to thickness",),
    Sizing.LENGTH: ("square one end", "cut to length"),
}
Asked = tuple[str, int]  # a joint, and which operation of its work


@dataclass(frozen=True)
class Facts:
    """What a job asks for, whatever the order."""

    job: Job

    @cached_property
    def on(self) -> dict[str, list[tuple[Asked, Operation]]]:
        """Operations that joints ask for on each part."""
        rows: dict[str, list[tuple[Asked, Operation]]] = defaultdict(list)
        for joint in self.job.joints:
            for place, each in enumerate(joint.work):
                for part in each.parts:
                    rows[part].append(((joint.name, place), each))
        return rows

    @cached_property
    def glued_with(self) -> dict[str, frozenset[str]]:
        """By part, all parts of its glue-up; parts that no glue holds are not in it."""
        home: dict[str, set[str]] = {}
        for joint in self.job.joints:
            if not joint.glued or joint.own_glue:
                continue
            whole: set[str] = set(joint.parts)
            for part in joint.parts:
                whole |= home.get(part, set())
            for part in whole:
                home[part] = whole
        return {part: frozenset(whole) for part, whole in home.items()}

    @cached_property
    def tied(self) -> tuple[JobJoint, ...]:
        """Joints glued by an operation of their own."""
        return tuple(joint for joint in self.job.joints if joint.own_glue)

    @cached_property
    def tied_names(self) -> frozenset[str]:
        """Their names."""
        return frozenset(joint.name for joint in self.tied)

    @cached_property
    def drawers(self) -> frozenset[str]:
        """Assemblies that slide: some joint asks for a step of drawer making on their parts."""
        return self._opening("drawers")

    @cached_property
    def doors(self) -> frozenset[str]:
        """Assemblies that swing."""
        return self._opening("doors") - self.drawers

    def _opening(self, stage: str) -> frozenset[str]:
        found = set()
        for part in self.job.parts:
            if part.moves_with and any(word(o.name).stage == stage for _, o in self.on[part.name]):
                found.add(part.moves_with)
        return frozenset(found)

    def in_drawer(self, part: str) -> bool:
        """Whether a part is glued into a drawer."""
        return part in self.glued_with and self.job.by_name[part].moves_with in self.drawers

    @cached_property
    def due(self) -> dict[tuple[str, str], int]:
        """How often each word is done to each part beside the joints' own work."""
        found: dict[tuple[str, str], int] = {}
        for part in self.job.by_name:
            for name in (*self.prepared(part), *self.closed(part), *self.finished(part)):
                found[name, part] = found.get((name, part), 0) + 1
        for joint in self.job.joints:
            for each in joint.work:
                if each.name == "take off hardware":
                    for part in each.parts:
                        found["refit hardware", part] = found.get(("refit hardware", part), 0) + 1
        return found

    def prepared(self, part: str) -> tuple[str, ...]:
        """What brings a part to size, in this maker's order, and then to its shape."""
        panel = self.job.strips(part) > 0
        rows = ["order strips", "mate edges", "glue panel", "rest panel"] if panel else []
        rows += ["flatten panel" if panel else "true face", "shoot edge"]
        for sizing in self.job.habits.sizing:
            rows += SIZED[sizing]
        if self.in_drawer(part):
            rows[rows.index("cut to length")] = "fit to opening"
        return (*rows, *("shape" for _ in self.job.shapings(part)))

    def closed(self, part: str) -> tuple[str, ...]:
        """What a part goes through with its glue-up, in order."""
        whole = self.glued_with.get(part)
        if whole is None:
            return ()
        if self.in_drawer(part):
            ends: tuple[str, ...] = ("run drawer", "fit stops")
            rows = ["dry assemble", "smooth inside", "lay out glue-up", "glue drawer"]
            return (*rows, "clean squeeze-out", *ends)
        rows = ["dry assemble", "smooth inside", "prefinish", "lay out glue-up"]
        rows += [self.glue(whole), "clean squeeze-out", "flush"]
        if self.job.by_name[part].moves_with in self.doors:
            rows.append("shoot door")
        return tuple(rows)

    def glue(self, whole: frozenset[str]) -> str:
        """What closes a glue-up: a frame where all its joints are mortised."""
        joints = [j for j in self.job.joints if j.glued and whole.issuperset(j.parts)]
        inner = [j for j in joints if not j.own_glue]
        framed = all(any(o.name == "chop mortise" for o in j.work) for j in inner)
        return "glue frame" if framed else "glue case"

    def finished(self, part: str) -> tuple[str, ...]:
        """Last shavings and coats."""
        free = part not in self.glued_with
        asked = [o for _, o in self.on[part]]
        early = any(o.name == "prefinish" for o in asked)
        wanted = any(o.state_before is State.PREFINISHED for o in asked)
        rows: tuple[str, ...] = ("smooth",) if free else ()
        if free and (early or wanted):
            return rows if early else (*rows, "prefinish")
        if not self.job.by_name[part].show:
            return rows
        if not free and not self.in_drawer(part):
            rows = ("smooth",)
        return (*rows, "coat", "rub down")


@dataclass
class Floor:
    """What has been done so far."""

    facts: Facts
    words: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))  # by part
    answered: set[Asked] = field(default_factory=set)
    shut: set[str] = field(default_factory=set)  # parts glued, and parts caught by the glue

    @property
    def job(self) -> Job:
        """The job carried out."""
        return self.facts.job

    def note(self, step: Step) -> None:
        """A step has been done."""
        self.answered.update(step.answers)
        if not step.answers:
            for part in step.parts:
                self.words[part].add(step.name)
        if step.name in GLUES:
            inside = set(step.parts)
            caught = (p for p, by in self.job.captured.items() if inside.issuperset(by))
            self.shut |= inside | set(caught)

    def lacks(self, part: str, names: Iterable[str]) -> Iterator[str]:
        """Which of these words are due on a part and not done yet."""
        done, due = self.words[part], self.facts.due
        return (n for n in names if n not in done and (n, part) in due)

    def lacks_size(self, part: str, sizings: Iterable[Sizing] = Sizing) -> Iterator[str]:
        """Which sizes a part has not been brought to."""
        names = [n for sizing in sizings for n in SIZED[sizing]]
        return self.lacks(part, [*names, "fit to opening"] if "cut to length" in names else names)

    def waiting(self, part: str, *names: str) -> Iterator[Asked]:
        """Operations of those words that joints ask for on a part and that are not done yet."""
        for asked, each in self.facts.on[part]:
            if each.name in names and asked not in self.answered:
                yield asked
