"""Number words that belong together become one number: "twenty two", "seventeen and a half", "a baker's dozen"."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from core.reading.lexicon import AMOUNTS, COURTESY, NUMBER_WORDS, listed
from core.reading.token import Kind, Token

_TEN, _HUNDRED, _HALF = Decimal(10), Decimal(100), Decimal("0.5")
_PRONOUN_BEFORE = listed("words_tokens", "pronoun_before")
_NUMBER_AFTER = listed("words_tokens", "number_after")
_AFTER_NOUGHT = (
    listed("words_company", "closed")
    | COURTESY
    | {"could", "can", "today", "this", "lol", "haha", "o", "tonight", "grip", "managed"}
) - {"more", "much", "out", "all", "other", "less", "good", "great", "nice"}
"""Words after a "zero" that is the count, and no "zero sleep"."""

_POINTING = frozenset({"last", "this", "that", "next"})
_TOLD_OF_ONE = frozenset({"was", "is", "felt", "feels", "nearly", "almost", "killed", "hurt"})
_REMAINING = frozenset({"remain", "remaining", "remains", "reserve", "rir", "balance"})
_SHY = frozenset({"before", "from", "off", "away", "shy"})
_FAILING = frozenset({"failure", "failing", "fail"})
_TENS = {Decimal(n) for n in range(20, 100, 10)}
_HALVES = (("and", "a", "half"), ("and", "half"), ("and", "a", "halfs"), ("and", "a", "halves"))
_DOZENS = {
    ("a", "baker", "is", "dozen"): 13,
    ("a", "baker's", "dozen"): 13,
    ("a", "bakers", "dozen"): 13,
    ("half", "a", "dozen"): 6,
    ("a", "dozen"): 12,
}


def join_number_words(tokens: list[Token]) -> list[Token]:
    """Number words that belong together become one number; "one" that stands for a thing becomes a word."""
    joined: list[Token] = []
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if token.text == "one" and token.worded and not _one_counts(tokens, index):
            joined.append(replace(token, kind=Kind.WORD, worded=False))
            index += 1
        elif (
            token.raw == "1" and _text_at(tokens, index - 1) in _POINTING and index and _text_at(tokens, index + 1) in _TOLD_OF_ONE
        ):
            joined.append(replace(token, kind=Kind.WORD, text="one"))  # "last 1 was a struggle"
            index += 1
        elif (
            token.raw == "zero"
            and not _apart_at(tokens, index + 1)
            and _text_at(tokens, index + 1).isalpha()
            and _text_at(tokens, index + 1) not in _NUMBER_AFTER | _AFTER_NOUGHT
        ):
            joined.append(replace(token, kind=Kind.WORD, text="no", worded=False))  # "zero sleep"
            index += 1
        elif token.text == "single" and _text_at(tokens, index + 1) in {"rep", "repetition"}:
            joined.append(_spanning(token, token, Decimal(1)))  # "only managed a single rep"
            index += 1
        elif token.worded:
            joined_number, index = _number_run(tokens, index)
            joined.append(joined_number)
        elif (
            token.text == "hundred"
            and (not joined or joined[-1].kind is not Kind.NUMBER)
            and _text_at(tokens, index + 1) in {"kg", "lb"}
        ):
            joined.append(_spanning(token, token, _HUNDRED))
            index += 1
        elif token.text == "hundred" and joined and joined[-1].text == "a":
            joined[-1] = _spanning(joined[-1], token, _HUNDRED)
            index += 1
        else:
            joined.append(token)
            index += 1
    return _add_halves(joined)


def _one_counts(tokens: list[Token], index: int) -> bool:
    """Whether "one" is the number: "one left", "one or two", "one rep", or alone."""
    before = tokens[index - 1].text if index else ""
    after = tokens[index + 1].text if index + 1 < len(tokens) else ""
    if before in {"set", "round", "station"}:
        return True
    if before in {"only", "just"} and after in AMOUNTS["reps"] and after not in {"time", "times"}:
        return True  # "only one repetition"
    if before == "that" and index > 1 and tokens[index - 2].text == "after" and after == "more":
        return True  # "after that one more was possible"
    if before in _PRONOUN_BEFORE:
        return after == "left" and before not in {"this", "that", "the", "each", "last", "next"}
    if before in _REMAINING or (after in _SHY and any(_text_at(tokens, index + n) in _FAILING for n in (2, 3))):
        return True  # "remain one", "one before failure"
    return len(tokens) == 1 or after in _NUMBER_AFTER or (index + 1 < len(tokens) and tokens[index + 1].worded)


def _spanning(first: Token, last: Token, value: Decimal) -> Token:
    raw = first.raw if first is last else f"{first.raw} {last.raw}"
    text = f"{value.normalize():f}"
    return Token(Kind.NUMBER, text, raw, first.start, last.end, first.glued, value, worded=True, apart=first.apart)


def _number_run(tokens: list[Token], index: int) -> tuple[Token, int]:
    """One number from the words at `index`: tens and ones, hundreds, "point five"; and the index after it."""
    first = last = tokens[index]
    value = first.value
    after = index + 1

    def at(offset: int) -> Token | None:
        return tokens[offset] if offset < len(tokens) else None

    hyphen = at(after)
    step = 1 if hyphen is not None and hyphen.text == "-" and hyphen.glued else 0
    ones = at(after + step)
    if value in _TENS and ones is not None and ones.worded and not ones.apart and 0 < ones.value < _TEN:
        if _leads_reserve(tokens, after + step):  # "twenty two left": 22, or 20 with 2 left
            return replace(_spanning(first, ones, value), kind=Kind.ODD), after + step + 1
        last, value, after = ones, value + ones.value, after + step + 1
    hundred = at(after)
    if hundred is not None and hundred.text == "hundred" and value < _TEN:
        last, value, after = hundred, value * _HUNDRED, after + 1
        conjunction = at(after)
        skip = 1 if conjunction is not None and conjunction.text == "and" else 0
        rest = at(after + skip)
        if rest is not None and rest.worded:
            tail, after = _number_run(tokens, after + skip)
            last, value = tail, value + tail.value
    point, digit = at(after), at(after + 1)
    if point is not None and point.text == "point" and digit is not None and digit.worded and digit.value < _TEN:
        last, value, after = digit, value + digit.value / _TEN, after + 2
    if last is first and first.text == "one":
        return replace(first, text="one"), after
    return _spanning(first, last, value), after


def _leads_reserve(tokens: list[Token], index: int) -> bool:
    """Whether the ones at `index` belong to what follows: "ten at twenty two left" is 20 with 2 left."""
    following = tokens[index + 1].text if index + 1 < len(tokens) else ""
    return following in {"left", "rir"} or (following == "more" and index + 2 >= len(tokens))


def _add_halves(tokens: list[Token]) -> list[Token]:
    """Such as "seventeen and a half" and "2 kilos and a half" gain their half; a dozen is a number."""
    halved: list[Token] = []
    dozens = any(token.worded or token.text == "dozen" for token in tokens)
    index = 0
    while index < len(tokens):
        token = tokens[index]
        whole = token.kind is Kind.NUMBER and token.value == token.value.to_integral_value()
        length = _half_length(tokens, index + 1) if whole else 0
        unit_length = _half_length(tokens, index + 2) if whole and _text_at(tokens, index + 1) in {"kg", "lb"} else 0
        if unit_length and _text_at(tokens, index + 2 + unit_length) in {"of", "rep", "reps", "another", "more", "one"}:
            unit_length = 0  # "11 at 20kg and half of another"
        begins = dozens and token.text in {"a", "half"}
        dozen = next((form for form in _DOZENS if begins and _spells(tokens[index : index + len(form)], form)), None)
        if length:
            halved.append(_spanning(token, tokens[index + length], token.value + _HALF))
            index += length + 1
        elif unit_length:
            halved += [
                replace(token, value=token.value + _HALF, text=f"{token.value + _HALF:f}"),
                tokens[index + 1],
            ]
            index += unit_length + 2
        elif dozen is not None:
            halved.append(_spanning(token, tokens[index + len(dozen) - 1], Decimal(_DOZENS[dozen])))
            index += len(dozen)
        else:
            halved.append(token)
            index += 1
    return halved


def _spells(tokens: list[Token], form: tuple[str, ...]) -> bool:
    """Whether tokens spell "half a dozen" and its like; "baker's" is two tokens when its ending is taken for "is"."""
    words = tuple("dozen" if t.worded and t.value == NUMBER_WORDS["dozen"] and t.raw != "twelve" else t.text for t in tokens)
    return words == form


def _apart_at(tokens: list[Token], index: int) -> bool:
    return index < len(tokens) and tokens[index].apart


def _text_at(tokens: list[Token], index: int) -> str:
    return tokens[index].text if index < len(tokens) else ""


def _half_length(tokens: list[Token], index: int) -> int:
    """How many tokens say "and a half" at `index`."""
    if _text_at(tokens, index) != "and":
        return 0
    return next((len(form) for form in _HALVES if tuple(t.text for t in tokens[index : index + len(form)]) == form), 0)
