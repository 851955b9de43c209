"""Answers to the questions about health, which the general reader does not know: read only while such a question is open.

Every function takes the text as it was typed and returns None when it says nothing about the question. Nothing is guessed: a bare
"yes" where places or signs are asked for is no answer.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, TypeVar

from core.circuit import Side
from core.health import AgeBand, Condition, Injury, Symptom, Topic
from core.reading.whole_words import has, in_figures, is_denied, likely, place_of, plain, yes_or_no

if TYPE_CHECKING:
    from collections.abc import Mapping

YOUNGEST, ADULT_FROM, MIDDLE_FROM, OLDER_FROM, OLDEST = 10, 18, 40, 65, 110
SKIPS = ("skip", "pass", "rather not", "prefer not", "no comment", "next", "wont say", "private")
LEAVES = ("later", "stop", "not now", "enough", "cancel", "quit", "exit")
CONDITIONS: Mapping[Condition, tuple[str, ...]] = {
    Condition.HEART: (
        "heart", "cardiac", "angina", "stent", "bypass", "stroke", "tia", "pacemaker", "arrhythmia",
        "fibrillation", "afib", "valve",
        "artery", "arteries", "vascular", "circulation", "clot", "thrombosis", "aneurysm",
    ),
    Condition.METABOLIC: ("diabetes", "diabetic", "metabolic", "insulin", "type 1", "type 2"),
    Condition.KIDNEY: ("kidney", "kidneys", "renal", "dialysis"),
}  # fmt: skip
SYMPTOMS: Mapping[Symptom, tuple[str, ...]] = {
    Symptom.CHEST: ("chest", "jaw", "arm pain", "pressure"),
    Symptom.BREATH: ("breathless", "short of breath", "shortness of breath", "out of breath", "winded", "breathing"),
    Symptom.DIZZY: ("dizzy", "dizziness", "faint", "fainted", "fainting", "passed out", "blackout", "lightheaded", "vertigo"),
    Symptom.NIGHT_BREATH: ("at night", "lying down", "wake up breathless", "waking up breathless"),
    Symptom.ANKLES: ("ankle", "ankles", "swelling", "swollen"),
    Symptom.HEARTBEAT: ("racing", "palpitations", "palpitation", "irregular", "skips", "fluttering", "heartbeat", "heart beats"),
    Symptom.CALF: ("calf", "calves", "leg pain walking"),
    Symptom.MURMUR: ("murmur",),
    Symptom.FATIGUE: ("fatigue", "tired", "exhausted", "worn out", "exhaustion"),
}  # fmt: skip
PLACES = (
    "lower back", "upper back", "knee", "hip", "back", "shoulder", "elbow", "wrist", "neck", "ankle", "foot", "hand", "groin",
    "hamstring", "calf", "thigh",
)  # fmt: skip
PLURALS = {
    "knees": "knee", "hips": "hip", "shoulders": "shoulder", "elbows": "elbow", "wrists": "wrist", "ankles": "ankle",
    "feet": "foot",
    "hands": "hand", "hamstrings": "hamstring", "calves": "calf", "thighs": "thigh", "lowerback": "lower back",
}  # fmt: skip
TAKES = re.compile(
    r"\b(?:i take|i am on|im on|i use|taking|on)\b.*"
    r"\b(?:tablets?|pills?|medicines?|medications?|meds|blockers?|thinners?|inhalers?|drops)\b"
    r"|\bbeta ?blockers?\b|\b(?:blood pressure|heart|thyroid) (?:tablets?|pills?|medicines?|medications?|meds)\b"
)
_DOCTOR = r"(?:doctor|doc|gp|physician|clinician|cardiologist|hospital)"
_YES_OF_DOCTOR = r"(?:all clear|clearance|medical clearance)"
CLEARED = re.compile(
    r"\b(?:i am|im|ive been|i have been|i was|i got|got|been|fully|now) (?:\w+ ){0,2}?clear(?:ed|ance)\b"
    rf"|^cleared(?: by (?:my |the |a )?{_DOCTOR})?$"
    rf"|\bclear(?:ed)? (?:me|by) (?:\w+ )?(?:to train|{_DOCTOR})\b"
    rf"|\b{_DOCTOR} (?:has |have |just )?(?:cleared me|gave me (?:the |my )?(?:{_YES_OF_DOCTOR}|ok|okay))\b"
    rf"|\b(?:i have|ive got|got|have got|i got) (?:my |the |a )?(?:doctors )?{_YES_OF_DOCTOR}\b"
)
NOT_CLEARED = re.compile(
    r"\b(?:not|isnt|arent|wasnt|havent|hasnt|didnt|no|never|without|until|till|when|once|if|unless|am i|should|wont|cant|will|need"
    r"|want|wish|almost|nearly|soon|tomorrow|kidding|joking|jk|lol|haha|pretend|lie)\b"
)
SOMETIMES = (
    "sometimes", "often", "now and then", "at times", "occasionally", "when i", "on stairs", "on the stairs", "upstairs", "used to",
    "last week", "last month", "last year", "weeks ago", "months ago", "years ago", "in the past", "from time to time", "usually",
    "when walking", "once in a while", "last winter", "last summer", "as a child", "as a kid",
)  # fmt: skip
RIGHT_NOW = ("now", "at the moment", "help", "currently", "today", "minute", "minutes", "hour", "hours", "this morning", "worse")


Key = TypeVar("Key")


@dataclass(frozen=True)
class Left:
    """The question was left out on purpose."""


@dataclass(frozen=True)
class Stopped:
    """The questions are to wait."""


Answer = AgeBand | tuple[Condition, ...] | tuple[Symptom, ...] | tuple[Injury, ...] | bool


def wants_health(text: str) -> Literal["ask", "change"] | None:
    """Whether the health questions are asked for, or their answers are to be changed."""
    said = plain(text)
    if re.search(r"\b(?:change|update|redo|revise|edit|correct)\b.*\b(?:health|medical)\b", said):
        return "change"
    if re.search(r"\bmy health (?:has )?changed\b", said):
        return "change"
    if said in {"health", "health questions", "questions", "the health questions", "ask me", "ask the questions", "my health"}:
        return "ask"
    return None


def says_cleared(text: str) -> bool:
    """A clear "I am cleared": nobody's hope, condition, question or joke."""
    said = plain(text)
    return "?" not in text and CLEARED.search(said) is not None and NOT_CLEARED.search(said) is None


def read_topic(text: str, topic: Topic) -> Answer | Left | Stopped | None:
    """The answer to one question of the health talk."""
    said = plain(text)
    if said in SKIPS or said.startswith(SKIPS[2:4]):
        return Left()
    if said in LEAVES:
        return Stopped()
    match topic:
        case Topic.AGE:
            return _age(in_figures(text))
        case Topic.CONDITIONS:
            return _listed(in_figures(text), CONDITIONS, also_no=("blood pressure", "cholesterol", "asthma", "thyroid"))
        case Topic.SYMPTOMS:
            return _symptoms(in_figures(text))
        case Topic.INJURIES:
            return _injuries(said)
        case Topic.PREGNANCY:
            if re.search(r"\b(?:male|man|guy|n/a|not applicable|menopause)\b", said):
                return False
            if re.search(r"\b(?:pregnant|weeks along|gave birth|given birth|had a baby|postpartum|expecting|months ago)\b", said):
                return yes_or_no(text) is not False
            return yes_or_no(text)
        case Topic.MEDICINE:
            told = yes_or_no(text)
            return True if told is None and TAKES.search(said) and not is_denied(said, len(said.split())) else told
        case Topic.ACTIVITY | Topic.CHECKED | Topic.SHARE:
            return yes_or_no(text)


def _age(said: str) -> AgeBand | None:
    if re.search(r"\b(?:under|below|not yet|younger than) 18\b|\bminor\b|\bteen(?:ager)?\b", said):
        return AgeBand.UNDER_18
    for band in (AgeBand.ADULT, AgeBand.MIDDLE):
        if band.value in said.replace(" to ", "-"):
            return band
    if re.search(r"\b65 ?(?:\+|plus|or (?:over|older|more))|\b(?:over|above) 65\b", said):
        return AgeBand.OLDER
    numbers = [int(number) for number in re.findall(r"(?<![\d.])\d{1,3}(?![\d.])", said)]
    if len(numbers) != 1 or not YOUNGEST <= numbers[0] <= OLDEST or re.search(r"\b60 ?s\b", said):
        return None  # who is in the sixties may be on either side of 65
    age = numbers[0]
    if age < ADULT_FROM:
        return AgeBand.UNDER_18
    if age < MIDDLE_FROM:
        return AgeBand.ADULT
    return AgeBand.MIDDLE if age < OLDER_FROM else AgeBand.OLDER


def _listed(said: str, words: Mapping[Key, tuple[str, ...]], also_no: tuple[str, ...] = ()) -> tuple[Key, ...] | None:
    """What is named, by number or in words; empty when nothing but denials, None when nothing was said."""
    keys = tuple(words)
    if re.fullmatch(r"(?:(?:number|no|nr)\.? )?\d(?:(?: |, ?| and | & |\+|/)+\d)*", said):
        picked = [int(number) for number in re.findall(r"\d", said)]
        if picked == [0]:
            return ()
        return tuple(keys[number - 1] for number in sorted(set(picked))) if all(1 <= n <= len(keys) for n in picked) else None
    found, denied = [], False
    for key, phrases in words.items():
        for phrase in likely(said, phrases):
            at = place_of(said, phrase)
            if at is None:
                continue
            if is_denied(said, at):
                denied = True
            elif key not in found:
                found.append(key)
    if found:
        return tuple(found)
    if denied or has(said, also_no) or yes_or_no(said) is False or re.search(r"\b(?:none|healthy|nothing|not that i know)\b", said):
        return ()
    return None


def _symptoms(said: str) -> tuple[Symptom, ...] | None:
    found = _listed(said, SYMPTOMS)
    if found and Symptom.NIGHT_BREATH in found and not has(said, ("breathless", "breath", "breathing", "short of breath")):
        rest = tuple(symptom for symptom in found if symptom is not Symptom.NIGHT_BREATH)
        return rest or None
    return found


def _injuries(said: str) -> tuple[Injury, ...] | None:
    words = [PLURALS.get(word, word) for word in said.split()]
    line = " ".join(words)
    found: list[Injury] = []
    for place in PLACES:
        at = place_of(line, place)
        if at is None or is_denied(line, at) or (place == "back" and any(one.place.endswith("back") for one in found)):
            continue
        before = line.split()[max(0, at - 2) : at]
        side = Side.LEFT if "left" in before else Side.RIGHT if "right" in before else None
        found.append(Injury(place, side))
    if found:
        return tuple(found)
    return () if yes_or_no(said) is False or re.search(r"\b(?:none|nothing|healthy|no injur)", said) else None


def is_history(text: str) -> bool:
    """Whether a sign told as an answer is one that comes and goes, and not one that is there now."""
    said = plain(text)
    return has(said, SOMETIMES) and not has(said.replace("now and then", ""), RIGHT_NOW)
