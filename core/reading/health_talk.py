"""Answers to the questions about health, which the general reader does not know: read only while such a question is open.

Every function takes the text as it was typed and returns None when it says nothing about the question. Nothing is guessed: a bare
"yes" where places or signs are asked for is no answer. Words are matched whole, one slip of the finger allowed in longer ones.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, Literal, TypeVar

from rapidfuzz.distance import OSA

from core.circuit import Side
from core.health import AgeBand, Condition, Feeling, Injury, Quality, Symptom, Topic

if TYPE_CHECKING:
    from collections.abc import Mapping

SLIP_FROM = 6  # letters; shorter words must be spelt right
ADULT_FROM, MIDDLE_FROM, OLDER_FROM, OLDEST = 18, 40, 65, 110
EFFORT_MAX = 10
FEVER_C, FEVER_F = 38.0, 100.4  # entry 46
DENIED_WITHIN = 4  # words

YES = {
    "yes", "y", "yeah", "yep", "yup", "yea", "aye", "sure", "ok", "okay", "true", "correct", "i do", "i am", "i have", "i did",
}  # fmt: skip
NO = {"no", "n", "nope", "nah", "none", "never", "nothing", "neither", "nil", "false", "zero", "0"}
NO_STARTS = ("no ", "none ", "nope ", "nah ", "not ", "nothing ", "never ", "i dont", "i do not", "i am not", "im not", "dont ")
UNSURE = ("not sure", "dont know", "do not know", "no idea", "unsure", "maybe", "what", "why", "unclear", "idk", "not certain")
SKIPS = ("skip", "pass", "rather not", "prefer not", "no comment", "next", "wont say", "private")
LEAVES = ("later", "stop", "not now", "enough", "cancel", "quit", "exit")
STARTS = {"go", "start", "begin", "lets go", "ready", "go go", "just go"}
DENIALS = {"no", "not", "never", "without", "nor", "isnt", "arent", "dont", "havent", "hasnt", "none", "neither", "n"}

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

BAD_SLEEP = (
    "slept badly", "slept bad", "bad sleep", "badly slept", "poor sleep", "slept poorly", "no sleep", "barely slept",
    "hardly slept",
    "didnt sleep", "did not sleep", "not slept", "couldnt sleep", "could not sleep", "slept little", "little sleep",
    "awake all night",
    "bad night", "rough night", "sleep was bad", "sleepless", "tired", "exhausted", "insomnia", "knackered",
    "shattered", "hungover",
)  # fmt: skip
SORE = ("sore", "stiff", "doms", "aching", "achy", "tender", "muscle ache")
FEVER = (
    "fever", "feverish", "a temperature", "high temperature", "temperature is up", "chills", "flu", "covid", "stomach bug",
    "stomach", "vomiting", "vomited", "threw up", "throwing up", "diarrhea", "diarrhoea", "body aches", "body ache",
    "aching all over",
    "chesty", "chest infection", "bronchitis", "pneumonia", "nausea", "nauseous",
)  # fmt: skip
COLD = ("a cold", "head cold", "runny nose", "stuffy nose", "sniffles", "sore throat", "blocked nose", "bit of a cold", "sneezing")
ILL = ("ill", "sick", "unwell", "not well", "under the weather", "coming down with", "poorly", "not feeling well", "infection")
HOT = ("hot", "heat", "heatwave", "humid", "boiling", "sweltering", "stuffy in here", "stuffy room", "scorching", "warm in here")
FINE = {
    "fine",
    "good",
    "great",
    "ok",
    "okay",
    "well",
    "all good",
    "all fine",
    "im good",
    "im fine",
    "i am fine",
    "slept well",
    "rested",
}
LONG_AGO = ("last week", "last month", "last year", "weeks ago", "months ago")

UNWELL = (
    "feel sick", "feeling sick", "nauseous", "nausea", "throw up", "throwing up", "vomit", "puke", "feel weird", "feel strange",
    "feel off", "feel awful", "feel terrible", "feel unwell", "dont feel well", "dont feel good", "not feeling well", "feel bad",
    "feel funny", "feel faintish", "shaky", "trembling", "overheating",
    "overheated", "shivering", "confused", "i think im dying", "something is wrong", "somethings wrong", "bleeding",
    "so out of breath", "very out of breath", "really out of breath", "is that normal", "is this normal", "cut myself", "i fell",
    "fell over", "dropped the dumbbell", "dropped a dumbbell", "dropped the weight", "dropped a weight", "dropped it on",
)  # fmt: skip
AFRAID = ("scared", "frightened", "afraid", "panicking", "panic", "nervous", "anxious", "worried", "terrified")
JOKES = ("lol", "haha", "hahaha", "jk", "kidding", "joking", "lmao", "rofl", "xd")
GONE = (
    "fine now", "gone", "better now", "all better", "no pain", "pain free", "painfree", "ok now", "okay now", "good now", "healed",
    "its fine", "it is fine", "doesnt hurt", "does not hurt", "no longer hurts", "no more pain", "its ok", "its good", "its better",
    "all good", "recovered", "fully better", "completely fine", "feels fine", "feels good", "feels ok", "both fine", "all fine",
)  # fmt: skip
NOT_GONE = (
    "still hurts", "still hurting", "still sore", "still there", "not gone", "not better", "still painful", "still bad", "not yet",
    "hurts", "worse", "not fine", "not ok", "not good", "still", "a bit", "a little", "sort of", "almost", "not quite", "mostly",
)  # fmt: skip
SHARP = ("sharp", "stabbing", "shooting", "stab", "pinching", "pinch", "electric", "tearing", "pop", "popped", "snapped", "acute")
DULL = ("dull", "ache", "achy", "aching", "stiff", "sore", "mild", "niggle", "nagging", "tight", "throbbing")
NEW = (
    "new",
    "first time",
    "never had",
    "never before",
    "just started",
    "just now",
    "suddenly",
    "unknown",
    "unfamiliar",
    "not known",
)
KNOWN = (
    "known",
    "old",
    "usual",
    "again",
    "familiar",
    "had it before",
    "before",
    "always",
    "chronic",
    "same as",
    "i know it",
    "know it",
)
REST = ("more rest", "longer rest", "rest longer", "extra rest", "longer rests", "rest", "a break", "more time", "longer break")
LIGHTER = ("lighter", "go lighter", "less weight", "easier", "lighter please", "go light", "lower weight", "reduce")
ONWARD = ("carry on", "keep going", "go on", "continue", "as it is", "im ok", "im fine", "no thanks", "no", "as is", "same", "fine")
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
_LAUGH = r"(?:lol|haha+|hehe|lmao|xd)"
_SIGN = (
    r"(?:dizzy|dizziness|faint|fainting|lightheaded|breathless|short of breath|numb|numbness|sick|hurt|hurting|injured"
    r"|in (?:any )?pain|(?:(?:chest|jaw|arm|joint|knee|back|shoulder) )?pains?)"
)
DENIED_ALONE = re.compile(
    r"(?:(?:no|nope|nah|relax|dont worry|no worries|im (?:ok|okay|fine|good)|all good) )*"
    rf"(?:(?:im |i am |i do |i )?(?:not|no|dont (?:feel|have)|have no|feel no) (?:feeling |really |any |at all )?{_SIGN}"
    rf"(?: (?:or|nor|and no|and not|no|not) {_SIGN})*|(?:it |that )?doesnt hurt|does not hurt|nothing hurts)"
    rf"(?: (?:at all|here|anywhere|promise|{_LAUGH}|thanks|thank you))*"
)
_MUSCLES = (
    r"(?:arms|legs|quads|glutes|abs|core|shoulders|calves|thighs|biceps|triceps|forearms|hamstrings|lats|butt|muscles|everything)"
)
BURNING = re.compile(
    rf"(?:(?:{_LAUGH}|ok|okay|wow|whoa|ouch|phew|man|omg|oh|my|god|the|and) )*"
    rf"(?:(?:both )?(?:my )?{_MUSCLES}(?: and (?:my )?{_MUSCLES})?(?: is| are| feels?| feel like| are like| s)?"
    r"(?: so| really| totally| all| like| just)?"
    r" (?:on fire|burn|burns|burning|jelly|noodles|toast|cooked|fried|smoked|screaming|wobbly|killing me)"
    rf"|(?:(?:this|that|it|these) (?:is |are |s )?(?:killing|kills) me|i(?:m| am) (?:dead|dying)) {_LAUGH})"
    rf"(?: (?:now|already|today|{_LAUGH}|man|wow))*"
)
EFFORT_WORDS = {
    "nothing": 0, "very easy": 2, "super easy": 2, "too easy": 2, "easy": 3, "moderate": 4, "medium": 5, "ok": 5, "okay": 5,
    "fine": 5, "somewhat hard": 5, "a bit hard": 5, "hard": 7, "tough": 7, "very hard": 8, "really hard": 8, "brutal": 9,
    "extremely hard": 9, "maximal": 10, "all out": 10, "max": 10, "everything": 10,
}  # fmt: skip
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


def plain(text: str) -> str:
    """Lower case, no apostrophes, single spaces, nothing but letters, digits and what numbers need."""
    lowered = text.lower().replace("’", "").replace("'", "")
    return " ".join(re.sub(r"[^a-z0-9.+/\-]+", " ", lowered).replace(" - ", " ").split()).strip(". ")


def _has(said: str, phrases: tuple[str, ...]) -> bool:
    return any(_at(said, phrase) is not None for phrase in _likely(said, phrases))


def _likely(said: str, phrases: tuple[str, ...]) -> list[str]:
    """The phrases that begin as a word of the text does, in their order: a slip never changes the first letter."""
    of = _by_letter(phrases)
    return [phrase for _, phrase in sorted(entry for letter in _words(said)[1] if letter in of for entry in of[letter])]


@lru_cache(maxsize=256)
def _by_letter(phrases: tuple[str, ...]) -> dict[str, list[tuple[int, str]]]:
    of: dict[str, list[tuple[int, str]]] = {}
    for place, phrase in enumerate(phrases):
        of.setdefault(phrase[0], []).append((place, phrase))
    return of


def _at(said: str, phrase: str) -> int | None:
    """Where a phrase begins, in words; a longer single word may have a slip."""
    words = _words(said)[0]
    wanted = _parts(phrase)
    for first in range(len(words) - len(wanted) + 1):
        if all(_alike(words[first + i], word) for i, word in enumerate(wanted)):
            return first
    return None


@lru_cache(maxsize=64)
def _words(said: str) -> tuple[tuple[str, ...], frozenset[str]]:
    """The words of a text, and the letters they begin with; one text is looked at for hundreds of phrases."""
    words = tuple(word.strip(".") for word in said.split())
    return words, frozenset(word[:1] for word in words)


@lru_cache(maxsize=4096)
def _parts(phrase: str) -> tuple[str, ...]:
    return tuple(phrase.split())


def _alike(word: str, wanted: str) -> bool:
    if word == wanted:
        return True
    return len(wanted) >= SLIP_FROM and word[:1] == wanted[:1] and OSA.distance(word, wanted) <= 1


def _denied(said: str, at: int) -> bool:
    """Whether a denial stands shortly before, with no "but" or comma's worth in between."""
    before = said.split()[max(0, at - DENIED_WITHIN) : at]
    if "but" in before:
        before = before[before.index("but") + 1 :]
    return any(word in DENIALS for word in before)


def yes_or_no(text: str) -> bool | None:
    """A plain yes or no, None when it is neither or unsure."""
    said = plain(text)
    if any(said.startswith((word, f"i {word}", f"im {word}")) for word in UNSURE):
        return None
    if said in NO or said.startswith(NO_STARTS):
        return False
    first = said.split(" ", 1)[0] if said else ""
    if said in YES or first in {"yes", "yeah", "yep", "yup", "yea", "sure"}:
        return True
    return None


def says_start(text: str) -> bool:
    """Whether it plainly asks to start, and does not just agree to something."""
    said = plain(text)
    return said in STARTS or said.startswith(("go ", "start ", "lets go"))


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
            return _age(said)
        case Topic.CONDITIONS:
            return _listed(said, CONDITIONS, also_no=("blood pressure", "cholesterol", "asthma", "thyroid"))
        case Topic.SYMPTOMS:
            return _symptoms(said)
        case Topic.INJURIES:
            return _injuries(said)
        case Topic.PREGNANCY:
            if re.search(r"\b(?:male|man|guy|n/a|not applicable|menopause)\b", said):
                return False
            if re.search(r"\b(?:pregnant|weeks along|gave birth|given birth|had a baby|postpartum|expecting|months ago)\b", said):
                return yes_or_no(text) is not False
            return yes_or_no(text)
        case Topic.ACTIVITY | Topic.CHECKED | Topic.MEDICINE | Topic.SHARE:
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
    if len(numbers) != 1 or not 1 <= numbers[0] <= OLDEST:
        return None
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
        for phrase in _likely(said, phrases):
            at = _at(said, phrase)
            if at is None:
                continue
            if _denied(said, at):
                denied = True
            elif key not in found:
                found.append(key)
    if found:
        return tuple(found)
    if (
        denied
        or _has(said, also_no)
        or yes_or_no(said) is False
        or re.search(r"\b(?:none|healthy|nothing|not that i know)\b", said)
    ):
        return ()
    return None


def _symptoms(said: str) -> tuple[Symptom, ...] | None:
    found = _listed(said, SYMPTOMS)
    if found and Symptom.NIGHT_BREATH in found and not _has(said, ("breathless", "breath", "breathing", "short of breath")):
        rest = tuple(symptom for symptom in found if symptom is not Symptom.NIGHT_BREATH)
        return rest or None
    return found


def _injuries(said: str) -> tuple[Injury, ...] | None:
    words = [PLURALS.get(word, word) for word in said.split()]
    line = " ".join(words)
    found: list[Injury] = []
    for place in PLACES:
        at = _at(line, place)
        if at is None or _denied(line, at) or (place == "back" and any(one.place.endswith("back") for one in found)):
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
    return _has(said, SOMETIMES) and not _has(said.replace("now and then", ""), RIGHT_NOW)


def read_feelings(text: str) -> tuple[Feeling, ...] | None:
    """How the trainee is today: what was named, empty for "fine", None when nothing was said of it."""
    said = plain(text)
    past = _has(said, LONG_AGO)
    found: list[Feeling] = []
    throat = _has(said, ("sore throat",))
    named = {
        Feeling.BAD_SLEEP: BAD_SLEEP,
        Feeling.FEVER: FEVER,
        Feeling.COLD: COLD,
        Feeling.ILL: ILL,
        Feeling.HOT: HOT,
        Feeling.SORE: SORE,
    }
    denied = False
    for feeling, phrases in named.items():
        spots = [at for phrase in _likely(said, phrases) if (at := _at(said, phrase)) is not None]
        if feeling is Feeling.SORE and throat and spots == [_at(said, "sore throat")]:
            continue
        present = [at for at in spots if not _denied(said, at)]
        denied = denied or (bool(spots) and not present)
        if present and not (past and feeling in (Feeling.FEVER, Feeling.ILL, Feeling.COLD)):
            found.append(feeling)
    if _thermometer(said) and not past and Feeling.FEVER not in found:
        found.append(Feeling.FEVER)
    if Feeling.FEVER in found:
        found = [feeling for feeling in found if feeling not in (Feeling.ILL, Feeling.COLD)]
    elif Feeling.ILL in found and (Feeling.COLD in found or (denied and _has(said, FEVER))):
        found = [Feeling.COLD if feeling is Feeling.ILL else feeling for feeling in found if feeling is not Feeling.COLD]
    if found:
        return tuple(found)
    if said in FINE or denied:
        return ()
    return None


def _thermometer(said: str) -> bool:
    """A body temperature above 38.0 °C or 100.4 °F (entry 46)."""
    for number in re.findall(r"(?<![\d.])\d{2,3}\.\d(?!\d)", said):
        degrees = float(number)
        if FEVER_C < degrees < 43 or FEVER_F < degrees < 110:  # noqa: PLR2004 - beyond these it is no body
            return True
    return False


def read_gone(text: str) -> bool | None:
    """Whether the pain asked about is gone; anything half is not."""
    said = plain(text)
    if re.search(r"\b(?:not|isnt|no) (?:gone|fine|better|ok|okay|good)\b", said):
        return False
    if _has(said, GONE) and not _has(said, ("still", "almost", "mostly", "not quite", "a bit", "a little", "but")):
        return True
    return False if _has(said, NOT_GONE) else None


def read_quality(text: str) -> tuple[Quality | None, bool | None] | None:
    """How a pain feels, and whether it is known; None when nothing was said of either."""
    said = plain(text)
    quality: Quality | None = None
    if _has(said, DULL) and not _has(said, ("not dull",)):
        quality = Quality.DULL
    if _has(said, SHARP) and not _has(said, ("not sharp",)):
        quality = Quality.SHARP  # of both, the one to be careful about
    elif _has(said, ("not sharp",)):
        quality = Quality.DULL
    known: bool | None = None
    if _has(said, KNOWN) and said != "again":
        known = True
    if _has(said, NEW):
        known = False
    return None if quality is None and known is None else (quality, known)


def feels_unwell(text: str) -> bool:
    """Whether somebody feels unwell or is frightened in a way that is no named sign; jokes and the past aside."""
    said = plain(text)
    at = next((at for phrase in _likely(said, UNWELL) if (at := _at(said, phrase)) is not None), None)
    return at is not None and not _denied(said, at) and not _has(said, (*JOKES, *LONG_AGO, "yesterday"))


def is_afraid(text: str) -> bool:
    """Whether somebody says, and means, that they are afraid."""
    said = plain(text)
    at = next((at for phrase in _likely(said, AFRAID) if (at := _at(said, phrase)) is not None), None)
    return at is not None and not _denied(said, at) and not _has(said, (*JOKES, *LONG_AGO))


def denies_pain(text: str) -> bool:
    """Whether a text does nothing but deny signs or pain, as they are now; any word more, and it is not taken as that."""
    return "?" not in text and DENIED_ALONE.fullmatch(plain(text)) is not None


def is_burning(text: str) -> bool:
    """Whether muscles burn, or somebody groans, as in hard work; one side or a joint alone may be pain."""
    return "?" not in text and BURNING.fullmatch(plain(text)) is not None


def read_relief(text: str) -> Literal["rest", "lighter", "on"] | None:
    """What to do when it is too much: more rest, lighter, or on as it is."""
    said = plain(text)
    if _has(said, LIGHTER):
        return "lighter"
    if _has(said, REST) and not said.startswith("no "):
        return "rest"
    return "on" if said in ONWARD else None


def read_effort(text: str) -> Decimal | None:
    """How hard it was, 0 to 10."""
    said = plain(text)
    found = re.fullmatch(
        r"(?:(?:about|around|maybe|say|effort|an?|it was|rpe|i d say|id say) )*(\d{1,2}(?:\.5)?)(?: ?(?:/|out of|of) ?10)?", said
    )
    if found is not None and Decimal(found[1]) <= EFFORT_MAX:
        return Decimal(found[1])
    bare = re.sub(r"^(?:it was |that was |pretty |quite )+", "", said)
    return Decimal(EFFORT_WORDS[bare]) if bare in EFFORT_WORDS else None
