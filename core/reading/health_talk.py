"""How somebody is, what a pain is like and how hard it was, told when a workout asks or unasked in the middle of it.

Every function takes the text as it was typed and returns None, or false, when it says nothing of that.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Literal

from core.health import Feeling, Quality
from core.reading.whole_words import has, in_figures, is_denied, likely, place_of, plain

EFFORT_MAX = 10
FEVER_C, FEVER_F = 38.0, 100.4  # entry 46
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
_ONLY_REGRETS = re.compile(
    r"\bafraid (?:that )?(?:not|so|there|no|(?:it|that|this) (?:is|was)|i (?:could|can|cant|cannot|did|didnt|do|dont"
    r"|only|just|have|had|got|must|managed|need|shall|missed|forgot|lost|stopped|skipped|was))\b"
)
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
_SUPPOSING = r"(?:about|around|maybe|say|effort|an?|it was|rpe|i would say|i d say|id say|i think|probably|i reckon)"
EFFORT_WORDS = {
    "nothing": 0, "very easy": 2, "super easy": 2, "too easy": 2, "easy": 3, "moderate": 4, "medium": 5, "ok": 5, "okay": 5,
    "fine": 5, "somewhat hard": 5, "a bit hard": 5, "hard": 7, "tough": 7, "very hard": 8, "really hard": 8, "brutal": 9,
    "extremely hard": 9, "maximal": 10, "all out": 10, "max": 10, "everything": 10,
}  # fmt: skip


def read_feelings(text: str) -> tuple[Feeling, ...] | None:
    """How the trainee is today: what was named, empty for "fine", None when nothing was said of it."""
    said = plain(text)
    past = has(said, LONG_AGO)
    found: list[Feeling] = []
    throat = has(said, ("sore throat",))
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
        spots = [at for phrase in likely(said, phrases) if (at := place_of(said, phrase)) is not None]
        if feeling is Feeling.SORE and throat and spots == [place_of(said, "sore throat")]:
            continue
        present = [at for at in spots if not is_denied(said, at)]
        denied = denied or (bool(spots) and not present)
        if present and not (past and feeling in (Feeling.FEVER, Feeling.ILL, Feeling.COLD)):
            found.append(feeling)
    if _thermometer(said) and not past and Feeling.FEVER not in found:
        found.append(Feeling.FEVER)
    if Feeling.FEVER in found:
        found = [feeling for feeling in found if feeling not in (Feeling.ILL, Feeling.COLD)]
    elif Feeling.ILL in found and (Feeling.COLD in found or (denied and has(said, FEVER))):
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
    if has(said, GONE) and not has(said, ("still", "almost", "mostly", "not quite", "a bit", "a little", "but")):
        return True
    return False if has(said, NOT_GONE) else None


def read_quality(text: str) -> tuple[Quality | None, bool | None] | None:
    """How a pain feels, and whether it is known; None when nothing was said of either."""
    said = plain(text)
    quality: Quality | None = None
    if has(said, DULL) and not has(said, ("not dull",)):
        quality = Quality.DULL
    if has(said, SHARP) and not has(said, ("not sharp",)):
        quality = Quality.SHARP  # of both, the one to be careful about
    elif has(said, ("not sharp",)):
        quality = Quality.DULL
    known: bool | None = None
    if has(said, KNOWN) and said != "again":
        known = True
    if has(said, NEW):
        known = False
    return None if quality is None and known is None else (quality, known)


def feels_unwell(text: str) -> bool:
    """Whether somebody feels unwell or is frightened in a way that is no named sign; jokes and the past aside."""
    said = plain(text)
    at = next((at for phrase in likely(said, UNWELL) if (at := place_of(said, phrase)) is not None), None)
    return at is not None and not is_denied(said, at) and not has(said, (*JOKES, *LONG_AGO, "yesterday"))


def is_afraid(text: str) -> bool:
    """Whether somebody says, and means, that they are afraid; "I'm afraid I only did seven" is manners."""
    said = _ONLY_REGRETS.sub(" ", plain(text))
    at = next((at for phrase in likely(said, AFRAID) if (at := place_of(said, phrase)) is not None), None)
    return at is not None and not is_denied(said, at) and not has(said, (*JOKES, *LONG_AGO))


def denies_pain(text: str) -> bool:
    """Whether a text does nothing but deny signs or pain, as they are now; any word more, and it is not taken as that."""
    return "?" not in text and DENIED_ALONE.fullmatch(plain(text)) is not None


def is_burning(text: str) -> bool:
    """Whether muscles burn, or somebody groans, as in hard work; one side or a joint alone may be pain."""
    return "?" not in text and BURNING.fullmatch(plain(text)) is not None


def read_relief(text: str) -> Literal["rest", "lighter", "on"] | None:
    """What to do when it is too much: more rest, lighter, or on as it is."""
    said = plain(text)
    if has(said, LIGHTER):
        return "lighter"
    if has(said, REST) and not said.startswith("no ") and "rest of" not in said:
        return "rest"
    return "on" if said in ONWARD else None


def read_effort(text: str) -> Decimal | None:
    """How hard it was, 0 to 10."""
    said = in_figures(text)
    found = re.fullmatch(rf"(?:{_SUPPOSING} )*(\d{{1,2}}(?:\.5)?)(?: ?(?:/|out of|of) ?10)?", said)
    if found is not None and Decimal(found[1]) <= EFFORT_MAX:
        return Decimal(found[1])
    bare = re.sub(r"^(?:it was |that was |pretty |quite )+", "", said)
    return Decimal(EFFORT_WORDS[bare]) if bare in EFFORT_WORDS else None
