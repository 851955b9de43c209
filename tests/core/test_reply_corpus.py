"""The labelled replies keep their own rules (format and conventions: fixtures/README.md, "Replies").

Nothing here imports the reader: the labels are judged against the text alone.
"""

import json
import re
import unicodedata
from collections import Counter
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from rapidfuzz.distance import OSA

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"
DEVELOPMENT = FIXTURES / "replies.jsonl"
ASIDE = FIXTURES / "replies_aside.jsonl"

Reply = dict[str, Any]

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
RECORD_FIELDS = {"reps", "load", "unit", "side", "reserve", "rpe", "seconds"}
FIELDS_OF_ACT = {
    "log": RECORD_FIELDS | {"same"},
    "amend": RECORD_FIELDS,
    "undo": set(),
    "start": set(),
    "pause": set(),
    "resume": set(),
    "finish": set(),
    "today": set(),
    "help": set(),
    "form": {"exercise"},
    "skip": {"what"},
    "swap": {"exercise"},
    "snooze": {"minutes", "at"},
    "remind": {"days", "at", "off"},
    "pain": {"place", "side", "urgent"},
    "feel": {"value"},
    "have": {"items"},
    "progress": {"exercise"},
    "units": {"unit"},
    "unclear": set(),
}
CONTEXT_KEYS = {"unit", "load", "target", "sides", "awaiting", "last", "today", "zone"}
ITEM_KINDS = {"dumbbell", "kettlebell", "handle", "plate", "band", "barbell", "bench"}
CLOCK = re.compile(r"(?:[01]\d|2[0-3]):[0-5]\d")
FEWEST_OF_ACT = {
    "log": 600,
    "unclear": 200,
    "pain": 150,
    "amend": 80,
    "remind": 80,
    "feel": 50,
    "have": 50,
    "snooze": 50,
}
FEWEST_OF_ANY_ACT = 20

ONES = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18,
    "nineteen": 19,
}  # fmt: skip
TENS = {"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
# What dictation writes for a number that sounds the same, and words that stand for one.
SOUNDS_LIKE = {"ate": 8, "for": 4, "to": 2, "too": 2, "won": 1, "wan": 1, "single": 1, "yin": 1, "ane": 1, "twa": 2}
STANDS_FOR = {"dozen": 12, "couple": 2, "cpl": 2, "tne": 10}
SAYS_NOUGHT = re.compile(
    r"fail|fali|faield|nothing|nothign|nothng|no way|no strength|cudnt|not one|single one|gave up|no reps|"
    r"naethin|nae reps|nuhin|hee haw|thing left|"
    r"nothin\b|nowt|none|no more|maxed|max\b|limit|empty|could(?:n.t| not)|no weight|without|unweighted|"
    r"body\s*wei|bodywi|bdywt|\bbw\b|w/o|body only|no use|no carry|not used|no dey|not happen|out of the question|no remain|"
    r"not able|wouldn.t have|another|no fit|\bnil\b|nthn|notjing|do any|force is finished|0",
)


def replies_in(path: Path) -> list[Reply]:
    """Every reply of one file, in its order."""
    return [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line]


def all_replies() -> list[Reply]:
    """The development replies and those kept aside, together."""
    return replies_in(DEVELOPMENT) + replies_in(ASIDE)


def word_value(word: str) -> int | None:
    """The number a word spells, a plural ("sixteens") or a near miss ("twleve") included."""
    table = ONES | TENS
    for candidate in (word, word.removesuffix("s"), word.removesuffix("es"), word.removesuffix("ies") + "y"):
        if candidate in table:
            return table[candidate]
    if len(word) < len("ten"):
        return None
    near = [name for name in table if OSA.distance(word, name) == 1]
    return table[near[0]] if len(near) == 1 else None


def numbers_in_words(shown: str) -> set[float]:
    """Every number that lower-case text spells out: "twenty two point five", "a dozen", a homophone."""
    said: set[float] = set()
    words = re.findall(r"[a-z']+", shown)
    for first, second in pairwise([*words, ""]):
        value = word_value(first)
        if value is None:
            value = SOUNDS_LIKE.get(first, STANDS_FOR.get(first))
        if value is None:
            continue
        said.add(value)
        unit = word_value(second)
        if first in TENS and unit is not None and unit < 10:
            said.add(value + unit)
    for before, whole, part in re.findall(r"(?:(\w+) )?(\w+) point (\w+)", shown):
        whole_value = ONES.get(whole, TENS.get(whole, SOUNDS_LIKE.get(whole)))
        if whole_value is not None and part in ONES:
            said.add(TENS.get(before, 0) + whole_value + ONES[part] / 10)
    if "baker's" in words:
        said.add(13)
    return said


def numbers_said(text: str) -> set[float]:
    """Every number that `text` holds as digits, words, fractions or their plain combinations; a half also rounded down."""
    shown = "".join(c for c in unicodedata.normalize("NFKC", text) if unicodedata.category(c) not in {"Cf", "Me", "Mn"}).lower()
    shown = shown.replace("\N{FRACTION SLASH}", "/")  # what NFKC makes of a one-sign half: "17" and it become "171/2"
    said = numbers_in_words(shown)
    for match in re.finditer(r"\d+(?:[.,]\d+)?", shown):
        said.add(float(match[0].replace(",", ".")))
        said.update(float(part) for part in re.split(r"[.,]", match[0]))
    said.update(int(whole) + 0.5 for whole in re.findall(r"(\d+) ?1/2", shown))
    said.update(int(whole) + int(part) / 4 for whole, part in re.findall(r"(\d+?) ?([13])/4", shown))
    if re.search(r"\bhalf\b", shown):
        said.update({number + 0.5 for number in said} | {6, 90})
    if re.search(r"\bhalf a min|\bhalf minute", shown):
        said.add(30)
    if re.search(r"\bthree quarters of a minute", shown):
        said.add(45)
    return said | {int(number) for number in said}


def is_grounded(field: str, number: float, reply: Reply) -> bool:
    """Whether the text (or the context) holds the number that a label claims for a field."""
    said = numbers_said(reply["text"])
    context = reply["context"]
    said |= {float(context[key]) for key in ("load", "target") if key in context}
    if number in said:
        return True
    if field in {"reps", "load", "reserve"} and number == 0:
        return SAYS_NOUGHT.search(reply["text"].lower()) is not None or number in said
    if field == "reserve":  # "one or two left" is the middle of the two
        return any((low + low + 1) / 2 == number and low + 1 in said for low in said)
    if field == "seconds" and re.search(r"min|:|\dm", reply["text"].lower()):
        return any(60 * minutes + rest == number for minutes in said | {1.0} for rest in said | {0.0})
    return False


def faults_of_record(act: Reply, name: str) -> list[str]:
    """What is wrong with the fields of a log or an amend."""
    faults = []
    checks = {
        "reps": lambda v: isinstance(v, int) and 0 <= v <= 200,
        "load": lambda v: isinstance(v, int | float) and 0 <= v <= 440,
        "unit": lambda v: v in {"kg", "lb"},
        "side": lambda v: v in {"left", "right", "each"},
        "reserve": lambda v: 0 <= v <= 20 and v * 2 == int(v * 2),
        "rpe": lambda v: 1 <= v <= 10,
        "seconds": lambda v: isinstance(v, int) and 0 < v <= 600,
        "same": lambda v: v is True,
    }
    for field, value in act.items():
        if field != "act" and not checks[field](value):
            faults.append(f"{name}.{field}={value!r}")
        if isinstance(value, float) and value == int(value):
            faults.append(f"{name}.{field}={value!r} should be whole")
    if len(act) == 1:
        faults.append(f"{name} without a field")
    return faults


def faults_of_item(item: Reply) -> list[str]:
    """What is wrong with one thing that a trainee has."""
    faults = [f"item key {key}" for key in item.keys() - {"kind", "load", "unit", "count"}]
    if not item or item.get("kind", "band") not in ITEM_KINDS:
        faults.append(f"item {item}")
    if item.get("unit", "kg") not in {"kg", "lb"} or ("unit" in item and "load" not in item):
        faults.append(f"item unit {item}")
    if not isinstance(item.get("count", 1), int):
        faults.append(f"item count {item}")
    return faults


def faults_of_act(act: Reply) -> list[str]:
    """What is wrong with one act of a label."""
    name = act.get("act", "")
    if name not in FIELDS_OF_ACT:
        return [f"act {name!r}"]
    faults = [f"{name}.{key}" for key in act.keys() - {"act"} - FIELDS_OF_ACT[name]]
    if faults:
        return faults
    if name in {"log", "amend"}:
        return faults_of_record(act, name)
    if name == "have":
        return [fault for item in act["items"] for fault in faults_of_item(item)]
    days = act.get("days", [])
    holds = (
        name != "skip" or act.get("what") in {"station", "day"},
        name != "feel" or act.get("value") in {"heavy", "light", "right"},
        name != "units" or act.get("unit") in {"kg", "lb"},
        name != "snooze" or len(act) <= 2,
        name != "remind" or len(act) > 1,
        act.get("minutes", 1) > 0,
        "at" not in act or CLOCK.fullmatch(act["at"]),
        days == sorted(set(days) & set(DAYS), key=DAYS.index),
        act.get("off", True) is True,
        act.get("urgent", True) is True,
        act.get("side", "left") in {"left", "right"},
        act.get("place", "knee") == act.get("place", "knee").strip().lower() != "",
        act.get("exercise", "row").strip() == act.get("exercise", "row") != "",
    )
    return [] if all(holds) else [f"{act}"]


def faults_of_context(context: Reply) -> list[str]:
    """What is wrong with the circumstances that a reply was sent in."""
    faults = [f"context.{key}" for key in context.keys() - CONTEXT_KEYS]
    if context.get("unit", "kg") not in {"kg", "lb"}:
        faults.append("context.unit")
    if context.get("awaiting", "go") not in {"reps", "go", "none"}:
        faults.append("context.awaiting")
    if not isinstance(context.get("sides", True), bool):
        faults.append("context.sides")
    if context.get("last", {"reps": 1}).keys() - RECORD_FIELDS:
        faults.append("context.last")
    return faults


@pytest.mark.parametrize("path", [DEVELOPMENT, ASIDE], ids=lambda path: path.stem)
def test_every_reply_keeps_to_the_format(path: Path) -> None:
    """Each line has the five keys, and only acts, fields, values and context keys that the contract knows."""
    faults = []
    for number, reply in enumerate(replies_in(path), 1):
        found = faults_of_context(reply["context"])
        found += [fault for act in reply["acts"] for fault in faults_of_act(act)]
        if list(reply) != ["text", "context", "acts", "writer", "tags"]:
            found.append("keys")
        if not reply["text"] or not reply["acts"] or not reply["writer"] or not reply["tags"]:
            found.append("empty")
        if found:
            faults.append((number, reply["text"], found))
    assert faults == []


def test_no_reply_is_labelled_twice() -> None:
    """A text under the same circumstances occurs once in the two files together."""
    seen = Counter((reply["text"], json.dumps(reply["context"], sort_keys=True)) for reply in all_replies())
    assert [key for key, times in seen.items() if times > 1] == []


def test_every_act_is_well_covered() -> None:
    """There are enough replies of each act, of urgent pain and of traps to measure a reader by."""
    replies = all_replies()
    acts = Counter(name for reply in replies for name in {act["act"] for act in reply["acts"]})
    assert len(replies) >= 1400
    assert {name: acts[name] for name, fewest in FEWEST_OF_ACT.items() if acts[name] < fewest} == {}
    assert {name: acts[name] for name in FIELDS_OF_ACT if acts[name] < FEWEST_OF_ANY_ACT} == {}
    assert sum(any(act.get("urgent") for act in reply["acts"]) for reply in replies) >= 60
    assert sum("trap" in reply["tags"] or reply["acts"] == [{"act": "unclear"}] for reply in replies) >= 200


def test_the_part_kept_aside_covers_everything() -> None:
    """A good part is kept aside, with every act, every field and every writer in both parts."""
    parts = replies_in(DEVELOPMENT), replies_in(ASIDE)
    share = len(parts[1]) / (len(parts[0]) + len(parts[1]))
    assert 0.18 <= share <= 0.22
    for part in parts:
        shown = {(act["act"], field) for reply in part for act in reply["acts"] for field in act}
        for name, fields in FIELDS_OF_ACT.items():
            assert {(name, field) for field in fields} <= shown, name
    assert {reply["writer"] for reply in parts[0]} == {reply["writer"] for reply in parts[1]}


def test_every_number_of_a_record_was_said() -> None:
    """A number in a log or amend label stands in the text or the context as digits, word or fraction."""
    numeric = ("reps", "load", "reserve", "rpe", "seconds")
    ungrounded = [
        (reply["text"], field, act[field])
        for reply in all_replies()
        for act in reply["acts"]
        if act["act"] in {"log", "amend"}
        for field in numeric
        if field in act and not is_grounded(field, act[field], reply)
    ]
    assert ungrounded == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("11 at 20kg", {11, 20}),
        ("17½ kg", {17.5}),
        ("twenty two point five", {22.5}),
        ("twleve and a half", {12, 12.5}),
        ("17,5kg", {17.5}),
    ],
)
def test_the_numbers_said_are_found(text: str, said: set[float]) -> None:
    """The check above finds digits, fractions, words, near misses and decimal commas."""
    assert said <= numbers_said(text)


def test_a_number_that_was_not_said_is_noticed() -> None:
    """The check above rejects a label whose number is nowhere in the text."""
    assert not is_grounded("reps", 12, {"text": "eleven at 20kg, to failure", "context": {"load": 20}})
    assert not is_grounded("reserve", 2.5, {"text": "11 at 20kg, one or two left", "context": {}})
    assert not is_grounded("load", 0, {"text": "11 reps", "context": {}})
