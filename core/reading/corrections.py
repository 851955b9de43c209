"""Whether the numbers of a message correct the last record, and which of them is given up."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Act, Awaiting, Context, Unclear
from core.reading.amends import amend
from core.reading.assembly import Open
from core.reading.corrected_parts import LONGEST_NOTE, NOTERS, field_confirmed, is_what_was_noted, with_former
from core.reading.lexicon import AMOUNTS, COURTESY, listed
from core.reading.parts import Part
from core.reading.spans import SENTENCE_ENDS
from core.reading.token import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said

_WITH_A_LOAD = listed("words_records", "with_a_load")
_SOFT = {"reserve", "more", "effort", "either"}

NUMERIC = {Kind.NUMBER, Kind.ODD, Kind.CLOCK}
QUANTITIES = {"bare", "reps", "load", "reserve", "more", "effort", "either", "duration", "set_count"}
_SILENT_AMENDS = {"left_side", "left", "right", "each", "bodyweight", "failure", "unit_only"}
_EXCHANGING = frozenset({"change", "replace", "swap", "correct", "switch", "amend", "update", "exchange"})
_BESIDE_EXCHANGE = frozenset(
    {"my", "the", "that", "this", "it", "from", "reps", "rep", "a", "last", "set", "one", "entry", "number", "record"}
)
_CHANGING = frozenset({"meant", "mean", "make", "change", "correction", "edit", "should", "typo", "replace", "amend", "update"})
ABSENT = listed("words_records", "absent")
"""What a "no" says is not there."""

_SAYS_A_FIELD = frozenset({"kg", "lb", "left", "right", "each", "both", "bodyweight", "failure"})
_TOLD_OF = listed("words_records", "told_of")
"""What "was" may tell of when it corrects a record."""

_AFTER_SHOULD = listed("words_records", "after_should")
_RECORDED = frozenset({"weight", "load", "reps"})
_WEIGHED = frozenset(
    {"dumbbell", "dumbbells", "kettlebell", "kettlebells", "bell", "bells", "plate", "plates", "pair", "ones", "bar"}
)
_PUTTING = frozenset({"put", "say", "enter", "log", "write", "record", "note", "use", "read"})
_OF_A_BODY = frozenset({"lose", "loses", "losing", "lost", "gain", "gained", "gaining", "body"})
_OF_SPEECH = frozenset({"shedding", "off", "of"})
_REACH_OF_FACT = 4
"""How far before "in fact" the quantity stands that it puts right: "14 reps in fact"."""


def field_named(tokens: Sequence[Token]) -> str:
    """What a correction speaks of: "load" ("change the weight to 18"), "rpe", "reserve", or "" when it does not say."""
    confirmed = field_confirmed(tokens)
    if confirmed is not None and tokens[confirmed].text in {"reps", "rep", "repetitions", "count"}:
        return "load"  # "the reps are right but it was 8"
    words = {token.text for at, token in enumerate(tokens) if at != confirmed}
    if words & {"reps", "rep"}:
        return ""
    if _names_a_weight(tokens, confirmed) or any(t.text == "wrong" and after.text in _WEIGHED for t, after in pairwise(tokens)):
        return "load"
    return "rpe" if words & AMOUNTS["rpe"] else "reserve" if words & {"reserve", "rir"} else ""


def _names_a_weight(tokens: Sequence[Token], confirmed: int | None) -> bool:
    """Whether a weight that was lifted is named, and no body's nor a figure of speech: "lose weight", "a load off my mind".

    What stands at `confirmed` is said to be right.
    """
    around = zip(["", *(t.text for t in tokens)], tokens, [*(t.text for t in tokens[1:]), ""], strict=False)
    return any(
        at != confirmed and token.text in {"weight", "load", "weights"} and before not in _OF_A_BODY and after not in _OF_SPEECH
        for at, (before, token, after) in enumerate(around)
    )


def exchanged(tokens: Sequence[Token], context: Context) -> tuple[int, Act] | None:
    """Such as "change 11 to 12": the number given up, and the one for it."""
    for at, verb in enumerate(tokens):
        if verb.text not in _EXCHANGING:
            continue
        units = [token.text for token in tokens[at + 1 :] if token.text in {"kg", "lb"}]
        others = [token for token in tokens[at + 1 :] if token.text not in _BESIDE_EXCHANGE | {"kg", "lb"}][:3]
        if len(others) < len(("11", "to", "12")):
            continue
        rejected, link, meant = others
        beside = [tokens[i + 1].text for i, t in enumerate(tokens[:-1]) if t in (rejected, meant)]
        if len(beside) > 1 and beside[0] in AMOUNTS["reps"] and beside[1] in {"kg", "lb"}:
            return None  # "update 10 reps with 7 kg"
        numbers = rejected.kind is Kind.NUMBER and meant.kind is Kind.NUMBER and sum(t.kind in NUMERIC for t in tokens) == len("ab")
        if numbers and link.text in {"to", "for", "with", "by", "into"}:
            load = context.last is not None and context.last.load == rejected.value and context.last.reps != rejected.value
            try:
                given = Part("load", (meant.value,), Unit(units[-1])) if units else Part("bare", (meant.value,))
                said = [Part("not"), Part("bare", (rejected.value,)), given]
                return at, amend(said, context, about="load" if load else "")
            except Open:
                return at, Unclear()
    return None


def notes_another(tokens: Sequence[Token], parts: Sequence[Part], context: Context) -> bool:
    """Whether what somebody is told to have down is not what the last record holds: "you got it down as 12kg", of 10 kg."""
    last, numbers = context.last, [part for part in parts if part.numbers]
    if last is None or context.awaiting is Awaiting.REPS or len(numbers) != len("ab"):
        return False
    former = numbers[0]
    fields = {"load": (last.load,), "reps": (last.reps,), "bare": (last.reps, last.load)}
    own = tokens[max(0, former.at - LONGEST_NOTE) : former.at]
    theirs = former.kind in fields and any(token.text in NOTERS - {"it", "record", "log"} for token in own)
    return theirs and former.numbers[0] not in fields[former.kind] and is_what_was_noted(tokens, former.at)


def corrects(
    tokens: Sequence[Token], parts: Sequence[Part], marks: dict[str, Said], said: Mapping[int, Said], context: Context
) -> bool:
    """Whether the numbers correct the last record rather than make a new one."""
    if is_starred(tokens) or with_former(tokens, list(parts), context) is not None:
        return True
    counted = [part for part in parts if part.kind in QUANTITIES or part.kind in _SILENT_AMENDS]
    fresh = context.awaiting is Awaiting.REPS and context.last is None
    kinds = {part.kind for part in _without_not(parts)}
    if fresh and kinds & {"load", "bodyweight"} and kinds & {"bare", "reps"} and not _said_to_change(tokens, marks):
        return False  # nothing was recorded that "14 at 7kg, in fact" could correct
    if fresh and "mark-amend" in marks and _only_blames(tokens, marks["mark-amend"], counted):
        return False
    rejecting = any(part.kind == "not" for part in parts)
    if fresh and kinds & {"bare", "reps"} and not rejecting and not _changes_between(tokens, marks, counted):
        return False  # "12 at 9kg. Was meant to be the easy day", "autocorrect! I said 12 reps"
    if any(part.kind == "not" for part in parts) and len(counted) > 1:
        return True
    begun = min((part.at for part in counted), default=0)
    undone = any(one.meaning == "undo" and one.first < begun for one in said.values())
    if undone and ("mark-amend" not in marks or (marks["mark-amend"].first < begun and _are_full(parts))):
        return False  # "scratch that, I read it wrong. 9 with 30 lb"
    guessed = "mark-amend" in marks and tokens[marks["mark-amend"].first].text in {"must", "ought"} and context.last is None
    if "mark-amend" in marks and not guessed and _corrects_by(tokens, marks["mark-amend"], counted, context):
        return True
    awaited = context.awaiting is Awaiting.REPS
    if context.last is not None and not awaited and _puts_instead(tokens, counted):
        return True
    if context.last is not None and not awaited and _adds(tokens, parts, counted):
        return True
    full = _are_full(parts)
    if context.last is not None and not awaited and counted and not full and field_confirmed(tokens) is not None:
        return True
    sorry = marks.get("mark-sorry")
    told = [one for one in said.values() if one.meaning == "mark-was"]
    told = [one for one in told if _of_the_record(tokens, one)]
    was = next((one for one in told if _followed(parts, tokens, one)), None)
    named = any(
        token.text in {"weight", "load", "reps", "repetitions", "count", "kg", "lb", "rir", "reserve", *AMOUNTS["rpe"]}
        and following.text in {"was", "were"}
        for token, following in pairwise(tokens)
    )
    both = sum(t.text in _RECORDED and after.text in {"was", "were"} for t, after in pairwise(tokens)) > 1
    if named and context.last is not None and not awaited and (both or not full):
        return True
    if was is not None:
        if awaited and (sorry is None or full or context.last is None):
            of_a_set = {"bare", "reps", "load"} if context.last is None else {"bare", "reps"}
            return not any(part.kind in of_a_set for part in parts)
        return not full or context.last is not None
    if sorry is None or not counted:
        return False
    if tokens[sorry.first].text in {"no", "nope", "nah", "wait"} and not _governs(tokens, sorry, counted):
        return False
    if any(part.kind in QUANTITIES and part.at < sorry.first for part in parts):
        trailing = not any(part.kind in QUANTITIES and part.at > sorry.first for part in parts)
        trailing = trailing and not any(_is_beyond(tokens[i]) for i in range(begun, sorry.first))
        return trailing and not full and (context.last is not None or not awaited)
    if full and (awaited or context.last is None or _apart(tokens, sorry)):
        return False
    if awaited:
        return context.last is not None and not _apart(tokens, sorry)
    return context.last is not None or not full


def _are_full(parts: Sequence[Part]) -> bool:
    """Whether a count and a load are told."""
    return any(part.kind in {"bare", "reps"} for part in parts) and any(part.kind == "load" for part in parts)


def stresses(tokens: Sequence[Token], said: Said) -> bool:
    """Whether an "I mean" after a number only stresses it, and gives nothing else for it: "9, and I mean absolute max"."""
    if said.meaning != "mark-amend" or not any(token.text == "mean" for token in tokens[said.first : said.last]):
        return False
    if not any(token.kind is Kind.NUMBER for token in tokens[: said.first]):
        return False
    end = next((i for i in range(said.last, len(tokens)) if tokens[i].kind is Kind.MARK or tokens[i].apart), len(tokens))
    given = tokens[said.last : end]
    return not any(token.kind in NUMERIC or token.text in _SAYS_A_FIELD - {"failure"} | AMOUNTS["reps"] for token in given)


def is_starred(tokens: Sequence[Token]) -> bool:
    """Whether a star is put to a quantity: "*12", "12kg*", "13* lol", but not "15*10"."""
    for at, token in enumerate(tokens):
        if token.text != "*":
            continue
        before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
        counted = before is not None and (before.kind is Kind.NUMBER or before.text in {"kg", "lb", "reps", "rep"})
        if after is not None and after.kind is Kind.NUMBER:
            if after.glued and not counted:
                return True
        elif counted and token.glued:
            return True
    return False


def _is_beyond(token: Token) -> bool:
    """Whether a word leads away from the record before it: a "sorry" after it is about something else."""
    return token.kind is Kind.WORD and token.text not in _WITH_A_LOAD | COURTESY | AMOUNTS["reps"] | {
        "reps",
        "left",
        "right",
        "seconds",
    }


def _governs(tokens: Sequence[Token], no: Said, counted: Sequence[Part]) -> bool:
    """Whether "no" is about the quantity that follows, and not "no pain, 12 at 18kg"."""
    following = min((part.at for part in counted if part.at >= no.last), default=None)
    if following is None or following > no.last + 3:
        return False
    return all(tokens[i].kind is Kind.MARK or tokens[i].text not in ABSENT for i in range(no.last, following))


def _without_not(parts: Sequence[Part]) -> list[Part]:
    """The parts but for what "not" rejects."""
    return [part for before, part in pairwise([Part("break"), *parts]) if before.kind != "not" and part.kind != "not"]


def _only_blames(tokens: Sequence[Token], mark: Said, counted: Sequence[Part]) -> bool:
    """Whether a word of correction is a sentence of its own before the numbers: "duck it autocorrect. I said 12 reps"."""
    begun = min((part.at for part in counted), default=0)
    ended = any(token.text in SENTENCE_ENDS for token in tokens[mark.last : begun])
    return mark.last <= begun and ended and not _CHANGING & {token.text for token in tokens[mark.first : mark.last]}


def _said_to_change(tokens: Sequence[Token], marks: dict[str, Said]) -> bool:
    """Whether a word of correction says to change something, or what was meant."""
    mark = marks.get("mark-amend")
    words = {token.text for token in tokens[mark.first : mark.last]} if mark is not None else set()
    return bool(words & _CHANGING)


def _changes_between(tokens: Sequence[Token], marks: dict[str, Said], counted: Sequence[Part]) -> bool:
    """Whether a word of correction that says to change something has a quantity on either side."""
    mark = marks.get("mark-amend")
    if mark is None or not _said_to_change(tokens, marks):
        return False
    return any(part.at < mark.first for part in counted) and any(part.at >= mark.last for part in counted)


def _corrects_by(tokens: Sequence[Token], mark: Said, counted: Sequence[Part], context: Context) -> bool:
    """Whether a word of correction has a quantity to correct to: "should be 12", and not "14 at 7kg, should be proud"."""
    first = tokens[mark.first].text
    ended = next((i for i in range(mark.last, len(tokens)) if tokens[i].text in SENTENCE_ENDS), len(tokens))
    if first == "in" and not any(mark.first - _REACH_OF_FACT <= part.at < ended for part in counted):
        return False  # "just right in fact. Twelve repetitions"
    if first in {"make", "meant"} and not _names_what(tokens, mark):
        return False
    if (
        first in {"i", "l"}
        and context.last is None
        and context.awaiting is Awaiting.REPS
        and not any(p.at >= mark.last for p in counted)
    ):
        return False  # "15 pieces, I mean reps"
    if first not in {"should", "ought", "must", "supposed"} and tokens[mark.last - 1].text != "be":
        return bool(counted)
    meant = next((part for part in counted if mark.last <= part.at <= mark.last + 3), None)
    if meant is None or any(token.text not in _AFTER_SHOULD for token in tokens[mark.last : meant.at]):
        return False  # "should be there at 6"
    return meant.at + 1 >= len(tokens) or tokens[meant.at + 1].text not in {"in", "outside", "by", "degrees"}


def _names_what(tokens: Sequence[Token], mark: Said) -> bool:
    """Whether "make it" and "meant" are about a record: "make it 12", but not "make it quick", "was meant to rest"."""
    after = tokens[mark.last].text if mark.last < len(tokens) else ""
    if tokens[mark.first].text == "make":
        return any(token.kind is Kind.NUMBER or token.text in _SAYS_A_FIELD for token in tokens[mark.last :])
    return after != "to" or (mark.last + 1 < len(tokens) and tokens[mark.last + 1].kind is Kind.NUMBER)


def _adds(tokens: Sequence[Token], parts: Sequence[Part], counted: Sequence[Part]) -> bool:
    """Whether what is said completes the last record: "had 2 left on that one", "used the 18s"."""
    kinds = {part.kind for part in counted}
    words = {token.text for token in tokens}
    links = {part.kind for part in parts} - kinds
    if words & {"should", "need", "want", "wanna"}:
        return False
    if kinds and kinds <= _SOFT:
        return True
    if kinds == {"bare", "left"} and len(counted) == len("ab"):
        return bool(words & {"had", "that", "was"})
    return (
        kinds == {"load"} and len(counted) == 1 and bool(words & {"used", "using", "had"}) and not links - {"with", "comma", "and"}
    )


def _puts_instead(tokens: Sequence[Token], counted: Sequence[Part]) -> bool:
    """Whether a number is to stand where another stood: "put 13 instead", "say 18 kg instead"."""
    if not counted or not counted[0].at or tokens[counted[0].at - 1].text not in _PUTTING:
        return False
    return any(token.text == "instead" for token in tokens[counted[-1].at + 1 : counted[-1].at + 4])


def _followed(parts: Sequence[Part], tokens: Sequence[Token], was: Said) -> bool:
    """Whether a quantity follows "it was" directly, with at most small words between."""
    following = next(
        (part for part in parts if part.at >= was.last and (part.kind in QUANTITIES or part.kind in _SILENT_AMENDS)),
        None,
    )
    small = {
        "at",
        "with",
        "a",
        "the",
        "only",
        "just",
        "for",
        "really",
        "actually",
        "in",
        "fact",
        "@",
        "on",
        "my",
        ":",
        "more",
        "like",
        ",",
    }
    return following is not None and all(tokens[i].text in small for i in range(was.last, following.at))


def _of_the_record(tokens: Sequence[Token], was: Said) -> bool:
    """Whether "was" tells of the record, and not of something else named right before it: "the dog was 7 kg"."""
    if tokens[was.first].text not in {"was", "were"} or not was.first:
        return True
    subject = tokens[was.first - 1]
    return subject.kind is not Kind.WORD or subject.text in _RECORDED | _TOLD_OF | COURTESY | AMOUNTS["rpe"]


def _apart(tokens: Sequence[Token], sorry: Said) -> bool:
    """Whether "sorry" is manners: other words follow it before the numbers do."""
    words = 0
    for token in tokens[sorry.last :]:
        if token.kind is Kind.NUMBER:
            break
        words += token.kind is Kind.WORD and token.text not in {
            "it",
            "that",
            "was",
            "i",
            "at",
            "with",
            "did",
            "the",
            "meant",
            "a",
            "is",
            "be",
            "make",
        }
    return words > 1
