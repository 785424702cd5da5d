"""The page is told in stages, and never more than is known of the text as it is."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from threading import Event, Thread

import pytest
from starlette.testclient import TestClient

from scantling.errors import OutOfRangeError
from scantling.findings import Finding, Weight
from scantling.setting_out import Pause, Stage
from scantling.web.app import app
from scantling.web.turns import OvertakenError, Turns
from scantling.web.workbench import Drawings, Workbench
from scantling.web.worked import Worked

OWN = "http://127.0.0.1:4000"


def finding(says: str) -> Finding:
    return Finding(code="proofs.odd", weight=Weight.HALT, says=says, cure="Plane it.")


@dataclass
class Work:
    """Stages of whatever the text says; its proof pauses as often as it is told to."""

    during: Callable[[Pause, str], None] = lambda pause, _: pause()
    begun: list[str] = field(default_factory=list)

    def __call__(self, path: Path, pause: Pause) -> Iterator[Worked[str]]:
        text = path.read_text()
        self.begun.append(text)
        if "?" in text:
            yield Worked(made=None, findings=(finding("broken"),))
            return
        sized = finding(f"{text} is sized")
        yield Worked(made=text, findings=(sized,), stage=Stage.SIZED)
        pause()
        yield Worked(made=f"{text} joined", findings=(sized,), stage=Stage.JOINED)
        self.during(pause, text)
        proven = finding(f"{text} is proven")
        yield Worked(made=f"{text} proven", findings=(sized, proven))


def document(made: str) -> dict[str, object]:
    name, _, stage = made.partition(" ")
    return {"parts": [name], "joints": [name] if stage else [], "year": [name] if stage else []}


DRAWINGS = Drawings[str](document=document, model=str.encode, part=lambda name, made: {made: name})


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "bench" / "piece.toml"
    found.parent.mkdir()
    found.write_text("oak")
    return found


def says(bench: Workbench[str]) -> Sequence[str]:
    return [each.says for each in bench.standing.findings]


def test_a_look_tells_sizes_and_leaves_the_rest(file: Path) -> None:
    bench = Workbench(file, work=Work(), drawings=DRAWINGS)
    bench.look()
    assert (bench.standing.stage, says(bench)) == (Stage.SIZED, ["oak is sized"])
    assert bench.unproven.is_set()
    numbers = [bench.standing.number]
    assert bench.prove()
    numbers.append(bench.standing.number)
    assert numbers == [1, 3]  # sized; joined and proven
    assert (bench.standing.stage, says(bench)) == (Stage.PROVEN, ["oak is sized", "oak is proven"])


def test_a_verdict_is_not_kept_for_another_text(file: Path) -> None:
    bench = Workbench(file, work=Work(), drawings=DRAWINGS)
    bench.look()
    bench.prove()
    file.write_text("ash!")
    bench.look()
    assert (bench.standing.stage, says(bench)) == (Stage.SIZED, ["ash! is sized"])
    # joints are those of the piece before, and the stage says so
    assert bench.standing.document == {"parts": ["ash!"], "joints": ["oak"], "year": ["oak"]}


def test_a_later_edit_ends_the_proof_of_an_earlier_one(file: Path) -> None:
    busy, ended = Event(), list[bool]()

    def until_overtaken(pause: Pause, text: str) -> None:
        while text == "oak":
            busy.set()
            pause()

    bench = Workbench(file, work=Work(during=until_overtaken), drawings=DRAWINGS)
    bench.look()
    proving = Thread(target=lambda: ended.append(bench.prove()), daemon=True)
    proving.start()
    assert busy.wait(timeout=10)
    file.write_text("ash!")
    assert bench.look()
    proving.join(timeout=10)
    assert ended == [False]
    assert (bench.standing.stage, says(bench)) == (Stage.SIZED, ["ash! is sized"])
    assert bench.prove()
    assert says(bench) == ["ash! is sized", "ash! is proven"]


def test_a_model_asked_for_during_a_proof_is_handed_out_at_once(file: Path) -> None:
    busy, over = Event(), Event()

    def long(pause: Pause, _: str) -> None:
        while not over.is_set():
            busy.set()
            pause()

    work = Work(during=long)
    bench = Workbench(file, work=work, drawings=DRAWINGS)
    bench.look()
    proving = Thread(target=bench.prove, daemon=True)
    proving.start()
    assert busy.wait(timeout=10)
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as client:
        assert client.get("/api/model.glb").content == b"oak joined"
        assert client.get("/api/setting-out").json()["stage"] == "joined"
    over.set()
    proving.join(timeout=10)
    assert work.begun == ["oak"]  # it went on where it was
    assert bench.standing.stage is Stage.PROVEN


def test_a_piece_is_proven_while_the_server_lives(file: Path) -> None:
    bench = Workbench(file, work=Work(), drawings=DRAWINGS)
    bench.look()
    with TestClient(app(bench, host="127.0.0.1", port=4000), base_url=OWN) as client:
        proving = Thread(target=bench.prove, daemon=True)
        proving.start()
        proving.join(timeout=10)
        assert client.get("/api/setting-out").json()["stage"] == "proven"


def test_a_broken_text_leaves_the_last_piece_whose_joints_have_answered(file: Path) -> None:
    bench = Workbench(file, work=Work(), drawings=DRAWINGS)
    bench.look()
    bench.prove()
    whole = bench.standing
    file.write_text("ash!")
    bench.look()
    assert bench.standing.piece != whole.piece
    file.write_text("?")
    bench.look()
    assert (bench.standing.stale, says(bench)) == (True, ["broken"])
    assert (bench.standing.document, bench.standing.piece) == (whole.document, whole.piece)
    model = bench.model()
    assert model
    assert model.content == b"oak proven"


def test_a_part_is_drawn_once_its_joints_have_answered(file: Path) -> None:
    bench = Workbench(file, work=Work(), drawings=DRAWINGS)
    bench.look()
    assert bench.part("oak") is None
    bench.prove()
    assert bench.part("oak") == {"oak proven": "oak"}


def test_a_broken_contract_in_a_proof_is_said_beside_what_was_found(file: Path) -> None:
    def breaks(_: Pause, __: str) -> None:
        raise OutOfRangeError("width -3 mm is below 0")

    bench = Workbench(file, work=Work(during=breaks), drawings=DRAWINGS)
    bench.look()
    assert bench.prove()
    assert (bench.standing.stage, bench.standing.stale) == (Stage.PROVEN, False)
    assert says(bench)[0] == "oak is sized"
    assert "width -3 mm is below 0" in says(bench)[1]


def test_whoever_waits_goes_before_whoever_can_wait() -> None:
    turns, order = Turns(), list[str]()
    inside, over = Event(), Event()

    def proof() -> None:
        with turns.last():
            inside.set()
            while not over.is_set():
                turns.give_way()
            order.append("proof")

    thread = Thread(target=proof, daemon=True)
    thread.start()
    assert inside.wait(timeout=10)
    with turns.attended():
        with turns.first():
            order.append("first")
        with turns.first():  # the proof has not come in between
            over.set()
            order.append("second")
    thread.join(timeout=10)
    assert order == ["first", "second", "proof"]


def test_an_error_leaves_the_bench_free() -> None:
    turns = Turns()
    with pytest.raises(OvertakenError), turns.last():
        raise OvertakenError
    with turns.first():
        pass
