"""`stationcall demo`: a month of invented people through the real program, and what is shown of it."""

from __future__ import annotations

import os
import re
import sqlite3
import subprocess
import sys
import textwrap
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.bootstrap import demo, demo_text, opened_store
from bot.month.cast import FILE, read_month
from bot.month.run import FOLDER, MARK
from bot.settings import SQLITE_NAME, read_settings

ROOT = Path(__file__).parents[2]
MONTH = read_month(demo_text(FILE))
EXCERPTS = (*MONTH.trained, *MONTH.reviewed, *MONTH.owned)


PROMISED = {
    "The first workout begins light.": ("Warm-up, 3 min", "Light today", "> 8 at 4kg", "8 at 4 kg, noted"),
    "A recent birth: others decide first.": ("pregnant, or did you give birth", "> yes", "decide what fits"),
    "And then she may.": ("Coach Wren says: you may train.",),
    "A load goes up.": ("Next round: 30 lb",),
    "Reps in a hurry.": ("19 is fast: at this tempo",),
    "Sore, so something kinder.": ("Sharp or dull?", "Glute bridge instead of Goblet squat"),
    "A question in the middle of it.": ("Passed on to Coach Wren",),
    "And its answer, after the last set.": ("You asked:", "knees are fine"),
    "What the coach wrote on a card.": ("Coach Wren: elbows in, you know why",),
    "Whenever somebody asks.": ("wat do i do today", "Today: ", "pictures/"),
    "A night too short.": ("We go lighter today",),
    "A reminder, missed days, a come-back.": ("Yesterday went by", "Whenever you like", "> go"),
    "How it goes.": ("Strength, estimated", "lb", "pictures/"),
    "A circuit, as one would say it.": ("2 rounds. In each:", "Put it in force?", "In force for"),
    "Who needs a word? Yara may train.": ("Yara: waits for a clearance", "Yara may train"),
    "Who needs a word? Pavel.": ("Pavel: 3 days missed in a row",),
    "A question, and its answer.": ("Edda asks:", "At Raised push-up", "Send it?"),
    "A plan for one of them.": ("> plan Kitchen seven, Staircase six, Market day", "take turns", "In force for Callum"),
    "A note that goes on a card.": ('"elbows in, you know why"', "Do it?", "Done."),
    "How is one of them doing? A swap, a load held back.": ("knee pain", "Glute bridge instead of Goblet squat", "at most 8 kg"),
    "The week, on Sunday at six.": (
        "• trained:",
        "• loads:",
        "• effort:",
        "• days missed:",
        "• a word first: Ines",
        "files/",
        "pictures/",
    ),
    "A new circuit from Monday, and back.": ("Put it in force?", "Mon 30 Mar on", "> undo", "Taken back"),
    "A message to all, looked at first.": ("Edda (12)", "Send it?", "> yes", "On its way to"),
    "How was my week?": ("Your week: 2 of 2 days", "pictures/"),
    "My records, and who sees this?": ("files/", ".csv", "Coach Wren sees:"),
    "Forget me.": ("Erase everything about you?", "Everything about you is erased"),
}


@dataclass(frozen=True)
class Shown:
    """What a run printed, and the folder it filled."""

    text: str
    folder: Path

    def scene(self, title: str) -> str:
        """What stands under a heading, up to the next one."""
        heading = "\n".join(textwrap.wrap(title, 40))
        return self.text.split(f"\n{heading}\n", 1)[1].split("\n\n", 1)[0]


def run_apart(folder: Path, hash_seed: str) -> subprocess.Popen[str]:
    """The command as people start it, in a folder of its own, with the order of sets shaken up."""
    return subprocess.Popen(
        [sys.executable, "-m", "bot", "demo", "--data", "data"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": hash_seed, "STATIONCALL_DATA": "elsewhere"},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        encoding="utf-8",
    )


@pytest.fixture(scope="module")
def runs(tmp_path_factory) -> tuple[Shown, Shown]:
    """The month twice, side by side, in two folders and two processes."""
    folders = [tmp_path_factory.mktemp(name) for name in ("first", "second")]
    running = [run_apart(folder, seed) for folder, seed in zip(folders, ("1", "2"), strict=True)]
    shown = []
    for folder, process in zip(folders, running, strict=True):
        out, err = process.communicate(timeout=600)
        assert (process.returncode, err) == (0, "")
        shown.append(Shown(out, folder / "data" / FOLDER))
    return shown[0], shown[1]


@pytest.fixture(scope="module")
def shown(runs) -> Shown:
    """The month, once."""
    return runs[0]


@pytest.fixture
async def records(shown):
    """Every set that was kept, by name, oldest first."""
    async with opened_store(read_settings(str(shown.folder), {})) as store:
        kept = await store.records(None)
    return {name: [record for of, record in kept if of == name] for name in {of for of, _ in kept}}


def test_the_same_month_gives_the_same_bytes(runs):
    """What is printed, every picture and every file, whatever the hash seed and the folder; the wall clock has no say."""
    first, second = runs
    assert first.text == second.text
    made = [
        {str(file.relative_to(run.folder)): file.read_bytes() for file in run.folder.rglob("*") if file.is_file()} for run in runs
    ]
    assert set(made[0]) == set(made[1])
    assert {name for name in made[0] if made[0][name] != made[1][name]} <= {"stationcall.log"}


def test_no_line_is_wider_than_a_phone(shown):
    """Forty columns."""
    assert [line for line in shown.text.splitlines() if len(line) > 40] == []


@pytest.mark.parametrize("title", PROMISED)
def test_every_promise_is_shown(shown, title):
    """Under its heading, with somebody's name and a day: the words that matter, said by the program."""
    scene = shown.scene(title)
    assert re.match(r"- [A-Z][\w ]+, \w{3} \d+ Mar -*\n", scene)
    told = " ".join(scene.split())
    assert [words for words in PROMISED[title] if words not in told] == []


def test_every_excerpt_is_promised():
    """A moment that is added to the file is added here, too."""
    assert [excerpt.title for excerpt in EXCERPTS] == list(PROMISED)


def test_twelve_people_have_a_given_name_and_nothing_more(shown):
    """All of them invented, each another kind of person, and told at the head."""
    names = [person.name for person in MONTH.people]
    assert len(set(names)) == 12
    assert all(re.fullmatch(r"[A-Z][a-z]+", name) for name in names)
    for person in MONTH.people:
        assert f"\n{person.name}: {person.what}\n" in shown.text


def test_every_file_that_is_named_is_there(shown):
    """Pictures are PNG files of more than a few bytes."""
    named = re.findall(r"^  ((?:pictures|files)/\S+)$", shown.text, re.MULTILINE)
    assert len(named) >= 3
    for name in named:
        assert (shown.folder / name).stat().st_size > 500, name
        if name.endswith(".png"):
            assert (shown.folder / name).read_bytes().startswith(b"\x89PNG")


def test_nothing_else_is_drawn(shown):
    """A picture that is not shown costs no time."""
    drawn = {str(file.relative_to(shown.folder)) for file in shown.folder.rglob("*.png")}
    assert drawn == set(re.findall(r"pictures/\S+\.png", shown.text))


def test_nothing_went_wrong_inside(shown):
    """The program's log of a month is empty."""
    assert (shown.folder / "stationcall.log").read_text(encoding="utf-8") == ""


async def test_the_months_records_tell_the_same_stories(records):
    """Loads of Salome fall, Bruno's stand still, Mia's rise; Pavel has a gap; Yara waits; Ines spares a knee; Dana lifts pounds."""

    def heaviest(name: str, exercise: str, first: int, last: int) -> float:
        sets = [record for record in records[name] if record.exercise == exercise and first <= record.at.day <= last]
        return max(float(record.load.amount) for record in sets)

    assert heaviest("Salome", "floor-press", 22, 29) < heaviest("Salome", "floor-press", 3, 15)
    assert heaviest("Bruno", "goblet-squat", 4, 7) == heaviest("Bruno", "goblet-squat", 22, 29)
    assert heaviest("Mia", "goblet-squat", 22, 29) > heaviest("Mia", "goblet-squat", 3, 8)
    assert not [record for record in records["Pavel"] if 7 <= record.at.day <= 15]
    assert [record for record in records["Pavel"] if record.at.day >= 16]
    assert min(record.at.day for record in records["Yara"]) > 3
    assert {record.exercise for record in records["Ines"] if record.at.day == 23} >= {"glute-bridge"}
    assert {str(record.load.unit) for record in records["Dana"] if record.load is not None} == {"lb"}
    assert any(str(record.load.amount) == "14.5" for record in records["Tomas"])
    assert {record.circuit for record in records["Callum"]} == {"Iron four", *(circuit.name for circuit in demo().plan.circuits)}


def test_what_was_texted_was_read_the_first_time(shown):
    """No set and no coach's word had to be said twice: typos, words for numbers, pounds and all."""
    with closing(sqlite3.connect(shown.folder / SQLITE_NAME)) as database:
        kinds = {kind for (kind,) in database.execute("SELECT DISTINCT kind FROM outbox")}
    assert kinds >= {"Card", "Noted", "Summary", "WeekTold", "CoachAnswers"}
    assert not kinds & {"SetNotRead", "WhichOne", "PartMissing", "NotUnderstood", "CoachNotUnderstood", "ToMend", "WhoMeant"}


async def test_who_was_forgotten_is_gone(shown, records):
    """Nkechi has no record left, and no byte of the file holds the name; the eleven others have theirs."""
    assert set(records) == {person.name for person in MONTH.people} - {"Nkechi"}
    assert b"Nkechi" not in (shown.folder / SQLITE_NAME).read_bytes()


def test_the_sheet_holds_everybody_and_loads_nothing(shown):
    """The twelve by name, with no address of anything elsewhere."""
    (file,) = re.findall(r"files/\S+\.html", shown.text)
    page = (shown.folder / file).read_text(encoding="utf-8")
    assert all(person.name in page for person in MONTH.people)
    assert re.findall(r"(?:src|href)=.(?:https?:)?//", page) == []


def test_who_needs_a_word_are_those_who_were_meant_to(shown):
    """A sore knee, strength that falls, three weeks of the same: these three, and nobody else of the twelve."""
    asked = shown.scene("The week, on Sunday at six.").split("> who needs a word?")[1].split(" > hows")[0]
    assert re.findall(r"• (\w+):", asked) == ["Ines", "Salome", "Bruno"]


def test_a_real_diary_beside_it_is_not_touched(tmp_path, capsys):
    """What lies in the data folder itself stays; what lies in its folder `demo` and is no demo's is refused."""
    (tmp_path / SQLITE_NAME).write_text("a diary", encoding="utf-8")
    other = tmp_path / FOLDER
    other.mkdir()
    (other / SQLITE_NAME).write_text("another diary", encoding="utf-8")
    assert main(["demo", "--data", str(tmp_path)]) == 2
    assert capsys.readouterr().err == (
        f"stationcall: the folder {other} holds something else than a demo: give --data another folder\n"
    )
    assert (other / SQLITE_NAME).read_text(encoding="utf-8") == "another diary"
    assert not (other / MARK).exists()
    assert (tmp_path / SQLITE_NAME).read_text(encoding="utf-8") == "a diary"
