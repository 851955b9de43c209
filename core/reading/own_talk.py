"""What a trainee says of what is theirs: their records, who sees them, having them erased, their week, a question to the coach.

A message is read only as a whole: every word of it must have its place, else it is left to the reader, so that nothing here takes
a report for itself ("my week was hard, 11 at 20kg"). Only what is asked of the coach may be anything: it is passed on as typed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from core.reading.acts import Unclear
from core.reading.normal import normalise
from core.reading.reader import read
from core.reading.token import Kind
from core.reading.tokens import tokenise
from core.reading.whole_words import plain
from core.records_file import Form

LONGEST = 120  # characters: nothing here but a question to the coach is longer


@dataclass(frozen=True)
class MyRecords:
    """The trainee wants their records, in these forms."""

    forms: tuple[Form, ...]


@dataclass(frozen=True)
class OwnWord:
    """The trainee asks who sees this, wants to be forgotten, or asks how the week was or which weights are noted."""

    word: Literal["seen", "forget", "week", "weights"]


@dataclass(frozen=True)
class ForCoach:
    """The trainee asks the coach something, as typed; None: what it is was not said. `before` is what was said before it."""

    question: str | None
    before: str = ""


OwnTalk = MyRecords | OwnWord | ForCoach

_COURTESY = re.compile(r"\b(?:please|pls|thanks|thank you|hey|hi|hello|ok|okay|just|now|then|actually|and|so|also|again)\b")

_ASKS = (
    r"(?:(?:can|could|may) (?:i|you|we) |(?:i )?(?:want|need|would like|d like|id like) (?:you )?(?:to )?)?"
    r"(?:(?:have|see|get|show|send|give|download|export|save)(?: me)? )?"
)
_FORM = r"(?P<form>csv json|json csv|csv or json|csv|json|spreadsheet|table)(?: file)?"
_MINE = r"(?:all )?(?:of )?(?:my |the )(?:own |whole |full |training |workout )*"
_AS = r"(?: (?:as|in|to|into)(?: an?)?)?"
_DIARY = rf"{_MINE}(?:sets|history|logs?|diary|workouts)"
_RECORDS = (
    rf"{_ASKS}(?:a copy of |an export of )?{_MINE}(?:records|data)(?:{_AS} {_FORM})?",
    rf"{_ASKS}(?:a copy of |an export of )?{_DIARY}{_AS} {_FORM}",
    rf"(?:can i |could i |can you )?(?:export|download)(?: (?:everything|it all|all|{_DIARY}))?(?:{_AS} {_FORM})?",
    rf"{_ASKS}(?:(?:it|that|them|everything|as|in|an?) )*{_FORM}",
    r"(?:what|everything|show me what|tell me what)(?: data)? (?:do )?you (?:have|hold|keep|know|store)(?: on| about| of)? me",
)

_THIS = (
    r"(?:this|that|it|these|me|my (?:data|records?|messages?|answers?|health|health answers?|sets|stuff|workouts?)"
    r"|what i (?:say|write|type|tell you|send|text)|all (?:of )?(?:this|that|it)|this (?:stuff|data|chat))"
)
_ANYBODY = r"(?:coach|anyone|anybody|somebody|someone)(?: else)?"
_SEEN = (
    rf"who (?:else )?(?:can |could |is |gets to |is able to )?(?:sees?|reads?|reading|seeing|looks? at|knows?) {_THIS}",
    r"who (?:else )?has access(?: to (?:this|that|it|my (?:data|records?|health answers?)))?",
    rf"(?:can |does |will |is )(?:my |the )?{_ANYBODY} (?:see|sees|read|reading) {_THIS}",
    r"what (?:can|does|do|will) (?:my |the )?coach (?:see|get|know|read)(?: of (?:this|it|me)| about me)?",
    r"(?:is |are )(?:this|that|it|my (?:data|records?|answers?|messages?)|this chat)(?: all)? (?:private|safe|secret|confidential)",
    r"where (?:is|are|does|do) (?:this|it|that|my (?:data|records?|answers?))(?: all)? (?:kept|stored|saved|go|going|live)",
    r"(?:do|will) you share (?:this|it|my (?:data|records?|answers?))(?: with (?:anyone|anybody|others))?",
    r"privacy|data protection|who sees what",
)

_WANTS = r"(?:(?:can|could|will) you |i (?:want|would like|d like|need) (?:you )?to |you (?:can|should) )?"
_ERASE = r"(?:forget|delete|erase|remove|wipe)"
_ABOUT_ME = r"(?:about me|of mine|you (?:have|know|keep|hold)(?: on| about| of)? me)"
_FORGET = (
    rf"{_WANTS}{_ERASE} me(?: completely| entirely| forever| for good)?",
    rf"{_WANTS}{_ERASE} (?:all )?(?:of )?my (?:data|account|records|stuff|profile|information)(?: for good| forever)?",
    rf"{_WANTS}{_ERASE} (?:everything|all of it|it all|what|all)(?: that)? {_ABOUT_ME}",
    rf"{_WANTS}{_ERASE} everything",
    r"i (?:want|would like|d like|need) (?:to be|everything|my data|it all) (?:forgotten|erased|deleted)",
)

_GOING = r"(?: (?:go|going|gone|been|look|looking|so far|been going|been so far|going so far|look so far))?"
_WEEK = (
    r"(?:(?:show|tell|give|send)(?: me)? |(?:can|could|may) i (?:see|have) )?my (?:training |past )?week(?: so far)?",
    rf"(?:how|hows|how is|how was|how has|how did)(?: is| was| has)? (?:my|this|the)(?: training)? week{_GOING}",
    r"how did i do this week|how am i doing this week|what did i do this week|how was i this week",
)

_GEAR = r"(?:weights|dumbbells|kettlebells|equipment|kit|gear|rack)"
_WEIGHTS = (
    rf"(?:what|which) {_GEAR} (?:do (?:i|we) (?:have|own)|have (?:i|we)(?: got)?|ve i got|(?:have|did) (?:i|we) (?:told|tell) you)",
    rf"(?:what|which) {_GEAR} (?:do|have) you (?:have|know|got|noted|think i have|saved)(?: noted| down| for me| of mine| about)?",
    rf"(?:(?:show|list|tell)(?: me)? )?my {_GEAR}(?: list)?",
)

_LEAD = (
    r"(?:(?:can|could|would|will) (?:you|u) )?(?:please |pls )?(?:ask|check with) {coach}",
    r"(?:i(?:'ve| have)? (?:got )?|got )?(?:an? |one |my |another |quick |little )*question (?:for|to) {coach}",
    r"i(?:'d| would)? (?:want|like|need|love)(?: to|ed to)? ask {coach}",
    r"let me ask {coach}",
    r"(?:message |note )?(?:for|to) {coach}(?=\s*:)",
)
_TELLING = (
    r"(?:(?:can|could|would|will) (?:you|u) )?(?:please |pls )?(?:tell|inform) {coach}(?: that| about)?",
    r"(?:(?:can|could|would|will) (?:you|u) )?(?:please |pls )?let {coach} know(?: that| about)?",
)
_OPENING = r"(?:(?:hey|hi|hello|ok|okay|please|pls|and|also|oh|so)[,!]? )*"
_NOTHING = re.compile(r"(?:please|pls|something|a question|this|that|it|for me|thanks|thank you|[\s,.!?])*", re.IGNORECASE)
_YES = re.compile(
    r"yes(?: i am sure| im sure| i do| i want (?:that|to)| do (?:it|that)| go ahead"
    r"|(?: (?:erase|delete|forget|remove|wipe))(?: (?:it|me|all|everything|all of it|it all|my data|everything about me))?)?"
)
_NO = re.compile(
    r"(?:no|nope|nah|no no|not now|cancel|never ?mind|keep)(?: (?:dont|do not|dont do it|keep))?"
    r"(?: (?:it|it all|all|everything|me))?"
)


def own_talk(text: str, coach: str) -> OwnTalk | None:
    """What a message says of the trainee's own, or asks the coach of this name; None when it says something else."""
    asked = _for_coach(text, coach)
    if asked is not None or len(text) > LONGEST:
        return asked
    line = _plain(text)
    if any(re.fullmatch(form, line) for form in _FORGET):
        return OwnWord("forget")
    if any(re.fullmatch(form, line) for form in _SEEN):
        return OwnWord("seen")
    if any(re.fullmatch(form, line) for form in _WEEK):
        return OwnWord("week")
    if any(re.fullmatch(form, line) for form in _WEIGHTS):
        return OwnWord("weights")
    return _records(line)


def says_yes(text: str) -> bool:
    """Whether a message is a clear yes to having everything erased, and nothing else."""
    return len(text) <= LONGEST and _YES.fullmatch(_plain(text)) is not None


def says_no(text: str) -> bool:
    """Whether a message is a no to that, and nothing else."""
    return len(text) <= LONGEST and _NO.fullmatch(_plain(text)) is not None


def _plain(text: str) -> str:
    """Lower case, letters and digits, no courtesies, single spaces."""
    return " ".join(_COURTESY.sub(" ", plain(text)).split())


def _records(line: str) -> MyRecords | None:
    found = next((found for form in _RECORDS if (found := re.fullmatch(form, line)) is not None), None)
    if found is None:
        return None
    match found.groupdict().get("form"):
        case "csv" | "spreadsheet" | "table":
            return MyRecords((Form.CSV,))
        case "json":
            return MyRecords((Form.JSON,))
        case _:
            return MyRecords((Form.CSV, Form.JSON))


def _for_coach(text: str, coach: str) -> ForCoach | None:
    """What is asked of the coach, from where they are named to the end; what stands before it is said on its own."""
    bare = re.sub(r"^coach\s+", "", coach, flags=re.IGNORECASE)
    named = rf"(?:(?:my|the|your) )?(?:coach(?: {re.escape(bare)})?|{re.escape(bare)})\b"
    leads = "|".join(lead.format(coach=named) for lead in (*_LEAD, *_TELLING))
    found = re.search(rf"(?:^\s*|[.!?;,\n]\s*){_OPENING}(?:{leads})\s*[:;,.!?-]*\s*", text.replace("’", "'"), re.IGNORECASE)
    if found is None:
        return None
    before, question = text[: found.start()].strip(), text[found.end() :].strip()
    if any(re.search(lead.format(coach=named), found.group(), re.IGNORECASE) for lead in _TELLING) and not _is_only_told(text):
        return None  # "tell coach I did 11 at 20kg" is a set, "tell coach I can't train today" a day off
    if _NOTHING.fullmatch(question) is None:
        return ForCoach(question, before)
    if before and not any(letter.isdigit() for letter in before):  # "elbows in or out? can you ask the coach?"
        return ForCoach(before + text[found.start()].strip(",;"))
    return ForCoach(None, before)


def _is_only_told(text: str) -> bool:
    """Whether a text holds no number, and nothing that the reader knows."""
    counted = any(token.kind is Kind.NUMBER for token in tokenise(normalise(text)))
    return not counted and all(isinstance(act, Unclear) for act in read(text))
