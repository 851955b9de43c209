"""What a message without numbers puts right in the last record: its side ("wrong arm, that was my right") or unit ("*lbs")."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Amend, Awaiting, Context, Side
from core.reading.lexicon import COURTESY, HURT, PLACES, listed
from core.reading.token import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

_LIMBS = frozenset({"side", "sides", "arm", "arms", "leg", "legs", "hand", "hands", "foot"})
_SIDES = {"left": Side.LEFT, "right": Side.RIGHT, "each": Side.EACH, "both": Side.EACH, "per": Side.EACH, "either": Side.EACH}
_LETTERS = {"l": "left", "r": "right"}
_OPPOSITE = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}
_UNITS = {unit.value: unit for unit in Unit}
_NOTED = listed("words_records", "noted")
_SMALL = listed("words_field_corrections", "small")
_CORRECTING = listed("words_field_corrections", "correcting")
_KNOWN = _SMALL | _CORRECTING | _NOTED | COURTESY | _LIMBS | set(_SIDES) | set(_LETTERS) | set(_UNITS)
_CHANGING = frozenset({"change", "make", "switch", "fix", "edit", "correct", "amend", "update", "not", "no"})
"""Words that put a side right, but of units may wish for another from now on."""

_LEADING_RIGHT = frozenset({"the", "my", "me", "on", "not", "be", "been", "with", "for", "say", "to"})
_DENYING = frozenset({"not", "of", "than", "gave", "told"}) | _NOTED
_EXCHANGING = frozenset({"change", "switch", "correct", "amend", "edit"})
_REACH = 3
_BESIDE_CONTRAST = listed("words_field_corrections", "beside_contrast")
_ELSEWHERE = (
    HURT
    | (set(PLACES) - _LIMBS)
    | {"use", "want", "prefer", "show", "future", "onwards", "always", "default", "if", "will", "next", "start", "first", "do", "?"}
)
"""Words beside which "left not right" tells of a body or of what is wished, and no record."""


def field_corrected(tokens: Sequence[Token], context: Context) -> Amend | None:
    """The side or the unit that the tokens put right, when all that they say is that; None otherwise."""
    if context.last is None or any(_is_figure(token) for token in tokens):
        return None
    words = [token.text for token in tokens]
    said = {token.text for token in tokens if token.kind is not Kind.MARK}
    if ("one", "before") in set(pairwise(words)) and "last" not in said:
        said -= {"before"}  # "the one before should be the right side"
    if not said <= _KNOWN and not (said <= _KNOWN | _BESIDE_CONTRAST and _contrasts(words) and not said & _ELSEWHERE):
        return None
    units = {_UNITS[word] for at, word in enumerate(words) if word in _UNITS and not _is_denied(words, at, _UNITS)}
    if units or said & set(_UNITS):
        starred = "*" in words
        corrects = starred or bool(said & (_CORRECTING - _CHANGING))
        corrects = corrects or (bool(said & (_NOTED | {"was", "were"})) and len(said & set(_UNITS)) > 1)
        return Amend(unit=units.pop()) if len(units) == 1 and corrects else None
    lettered = {"l", "r"} <= said  # "L not R"
    return _side_corrected([_LETTERS.get(word, word) if lettered else word for word in words], context)


def _contrasts(words: Sequence[str]) -> bool:
    """Whether one side or unit is told and the other denied, so that words of courtesy or blame beside them change nothing."""
    for among in (_SIDES, _UNITS):
        mentions = [at for at, word in enumerate(words) if word in among and word not in {"each", "per", "both", "either"}]
        denied = [at for at in mentions if _is_denied(words, at, among)]
        if len({words[at] for at in mentions}) > 1 and len(denied) == 1:
            return True
    return False


def _is_figure(token: Token) -> bool:
    """Whether a token is a number, or asks; the "to" of "left to right" only looks like one."""
    return token.text == "?" or (token.kind not in {Kind.WORD, Kind.MARK} and token.text != "to")


def _side_corrected(words: Sequence[str], context: Context) -> Amend | None:
    wrong = any(word in {"wrong", "other"} and following in _LIMBS | {"one"} for word, following in pairwise(words))
    other = context.sides and context.last is not None and context.last.side is Side.LEFT and "no" in words
    opposite = _OPPOSITE.get(context.last.side) if context.last is not None and context.last.side is not None else None
    said_wrong = bool(set(words) & (_CORRECTING - {"other", "no", "not"}))
    sure = wrong or other or "left" in words or (opposite is Side.RIGHT and said_wrong)
    mentions = [at for at in range(len(words)) if _names_side(words, at, sure=sure)]
    if opposite is not None and _exchanges_sides(words, mentions):
        return Amend(side=opposite)
    meant = {_SIDES[words[at]] for at in mentions if not _is_denied(words, at, _SIDES)}
    awaited = context.awaiting is Awaiting.REPS
    corrects = (
        wrong
        or "*" in words
        or bool(set(words) & (_CORRECTING - {"wrong", "other"}))
        or (len(mentions) > 1 and bool(set(words) & (_NOTED | {"got"})))
    )
    if len(meant) != 1 or not (corrects or (not awaited and {"was", "were"} & set(words))):
        return None
    return Amend(side=meant.pop())


def _exchanges_sides(words: Sequence[str], mentions: Sequence[int]) -> bool:
    """Whether it was the other side, though that is not named: "wrong leg", "it was the other arm", "mixed up left and right"."""
    told = [words[at] for at in mentions]
    if set(words) & {"which", "what", "where", "?"}:
        return False
    if {"left", "right"} <= set(words):
        return bool({"mixed", "confused"} & set(words)) and not set(words) & {"not", "was", "is", "should", "meant"}
    beside = {(before, word) for before, word in pairwise(words) if word in _LIMBS | {"one"}}
    wrong = any(before == "wrong" and word in _LIMBS for before, word in beside)
    other = any(before == "other" for before, _ in beside) and bool({"was", "meant", "sorry", "oops", "should"} & set(words))
    return not told and (wrong or other)


def _names_side(words: Sequence[str], at: int, *, sure: bool) -> bool:
    """Whether the word is a side; "right" may only agree, or say what is correct."""
    before = words[at - 1] if at else ""
    after = words[at + 1] if at + 1 < len(words) else ""
    match words[at]:
        case "left":
            return True
        case "right":
            leads = before in _LEADING_RIGHT | {"was", "is", "were", ",", "as", "oops", "sorry", "whoops", "did"}
            return after in _LIMBS or (sure and (leads or after == "not"))
        case "each" | "both" | "per" | "either":
            return after in _LIMBS or (before == "be" and not after.isalpha())
        case _:
            return False


def _is_denied(words: Sequence[str], at: int, others: Mapping[str, object]) -> bool:
    """Whether the word at `at` is what was wrong: "not left", "I put kg", "left should be right"."""
    for back in range(at - 1, max(-1, at - 1 - _REACH), -1):
        if words[back] in others or words[back] in {",", ".", "but", "should", "was", "meant"}:
            break
        if (words[back] == "got" and "you" not in words[:back]) or (words[back] in _NOTED and "should" in words[:back]):
            continue  # "should have been logged as right"
        if words[back] in _DENYING | {"got"} or words[back : back + 2] == ["no", "be"]:
            return True
    after = words[at + 1 : at + 3]
    if after[:1] == ["to"] and _EXCHANGING & set(words[max(0, at - _REACH) : at]):
        return True  # "change left to right"
    return after[:1] == ["should"] or after in (["was", "wrong"], ["is", "wrong"])
