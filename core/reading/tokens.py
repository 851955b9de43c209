"""Plain text becomes tokens: words as the lexicon spells them, and every number with its value and place.

A number in digits is one token whatever is glued to it ("11x20kg" is five tokens). What looks like a number but never
counts repetitions or loads (a date, a phone number, money, a percentage, a negative) is `ODD`: nothing explains it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import Enum, auto

from core.reading.lexicon import NUMBER_WORDS, REWRITES, UNITS
from core.reading.spelling import respell


class Kind(Enum):
    """What a token is."""

    WORD = auto()
    NUMBER = auto()
    CLOCK = auto()  # 6:30
    ORDINAL = auto()  # 1st, 2nd
    ODD = auto()  # a number that nothing here can mean
    MARK = auto()  # punctuation


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number or mark.

    `text` is what phrases compare with; `raw` is as written; `start` and `end` are offsets in the normalised text; `glued` is
    true when no space parts it from the token before.
    """

    kind: Kind
    text: str
    raw: str
    start: int
    end: int
    glued: bool = False
    value: Decimal = Decimal(-1)
    worded: bool = False


_WITH_DIGITS = "|".join(
    re.escape(word) for word in REWRITES if any(c.isdigit() for c in word) and not word[:-2].isdigit()
)

_SCAN = re.compile(
    rf"""
      (?P<odd>
          https?://\S+ | www\.\S+ | [\w.+-]+@[a-z]\w*\.[a-z]+        # addresses
        | \+\d[\d ()-]{{6,}}\d | \(?\d{{3,5}}\)?(?:[ -]\d{{3,}})+ | \d{{6,}}  # telephone numbers
        | \d{{4}}-\d{{1,2}}-\d{{1,2}} | \d{{1,2}}[/.-]\d{{1,2}}[/.-]\d{{4}} | \d+\.\d+\.\d+  # dates, versions
        | [£$€¥₹₦]\s?\d+(?:[.,]\d+)* | \d+(?:[.,]\d+)*\s?(?:[£$€¥₹₦%°])
        | \d{{1,3}}(?:,\d{{3}})+(?!\d)
        | \d+(?:\.\d+)?(?:-\d+)(?:-\d+)+                             # 3-2-1-0
      )
    | (?P<letters>\b(?:{_WITH_DIGITS})\b)
    | (?P<clock>\b\d{{1,2}}:\d{{2}}(?::\d{{2}})?(?!\d))
    | (?P<ordinal>\d+(?:st|nd|rd|th)\b)
    | (?P<mixed>\d+\ ?(?:-|\ |and\ )?\ ?(?<=[-\ ])[1-7]/[248](?!\d))
    | (?P<fraction>(?<![\d/])[1-7]/[248](?![\d/]))
    | (?P<number>\d+(?:\.\d+)?)
    | (?P<plural>(?<=\d)'?s(?![a-z]))
    | (?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)
    | (?P<emoji>:[a-z]+:)
    | (?P<mark>\S|\n)
    """,
    re.VERBOSE,
)
_DECIMAL_COMMA_TAILS = {"5", "25", "75", "50", "0", "00"}
_UNIT_NEXT = re.compile(r"\s?(kgs?|kilos?|lbs?|pounds?|k\b|#)")
_LOAD_WORDS = {"at", "@", "with", "using"}


def tokenise(text: str) -> list[Token]:
    """The tokens of a normalised text, in order."""
    tokens: list[Token] = []
    end = 0
    for found in _SCAN.finditer(text):
        if found.start() < end:
            continue
        glued = bool(tokens) and found.start() == tokens[-1].end
        end = _take(tokens, found, text, glued=glued)
    return _join_number_words(tokens)


def _take(tokens: list[Token], found: re.Match[str], text: str, *, glued: bool) -> int:
    """Add what one match stands for; where to read on."""
    group, raw, start, end = found.lastgroup or "mark", found.group(), found.start(), found.end()
    if group == "number":
        return _take_number(tokens, found, text, glued=glued)
    if group in {"word", "letters"}:
        tokens += _word_tokens(
            raw, start, end, glued=glued, follows_digit=glued and tokens[-1].kind is Kind.NUMBER
        )
    elif group == "plural":
        tokens.append(Token(Kind.WORD, "s", raw, start, end, glued))
    elif group == "emoji":
        tokens.append(Token(Kind.WORD, raw, raw, start, end, glued))
    elif group == "mark":
        text_of_mark = {"\n": ";", "×": "x", "*": "*"}.get(raw, raw)
        tokens.append(Token(Kind.MARK, text_of_mark, raw, start, end, glued))
    elif group in {"mixed", "fraction"}:
        tokens.append(Token(Kind.NUMBER, raw, raw, start, end, glued, _fraction(raw)))
    else:
        kind = {"clock": Kind.CLOCK, "ordinal": Kind.ORDINAL, "odd": Kind.ODD}[group]
        word = respell(raw)[0] if kind is Kind.ORDINAL and raw in REWRITES else raw
        tokens.append(Token(kind, word, raw, start, end, glued))
    return end


def _fraction(raw: str) -> Decimal:
    """The value of "17 1/2" or "1/2", exact: the divisor is 2, 4 or 8."""
    whole, _, parts = raw.replace("and", " ").replace("-", " ").strip().rpartition(" ")
    over, under = parts.split("/")
    return Decimal(whole.strip() or 0) + Decimal(over) / Decimal(under)


def _take_number(tokens: list[Token], found: re.Match[str], text: str, *, glued: bool) -> int:
    """A number in digits, with its decimal comma or its minus sign if it has one."""
    raw, start, end = found.group(), found.start(), found.end()
    comma = re.compile(r",(\d{1,2})(?![\d,])").match(text, end)
    after_comma = bool(tokens) and tokens[-1].text == "," and tokens[-1].glued
    if comma and "." not in raw and not after_comma:
        decimal = Decimal(f"{raw}.{comma[1]}")
        has_unit = _UNIT_NEXT.match(text, comma.end()) is not None
        after_at = bool(tokens) and tokens[-1].text in _LOAD_WORDS
        if comma[1] in _DECIMAL_COMMA_TAILS and (has_unit or after_at):
            tokens.append(
                Token(
                    Kind.NUMBER, str(decimal), text[start : comma.end()], start, comma.end(), glued, decimal
                )
            )
            return comma.end()
        if has_unit or comma[1] == "5":
            tokens.append(
                Token(
                    Kind.ODD, text[start : comma.end()], text[start : comma.end()], start, comma.end(), glued
                )
            )
            return comma.end()
    kind = Kind.NUMBER
    if tokens and tokens[-1].text == "-" and glued and not tokens[-1].glued:
        before = tokens[-2] if len(tokens) > 1 else None
        if before is None or (before.kind is not Kind.NUMBER and before.text not in UNITS):
            kind = Kind.ODD
    tokens.append(Token(kind, raw, raw, start, end, glued, Decimal(raw)))
    return end


def _word_tokens(raw: str, start: int, end: int, *, glued: bool, follows_digit: bool) -> list[Token]:
    """The words one written word stands for; "kgx" between numbers is a unit and a cross."""
    if follows_digit and raw not in UNITS and raw != "x":
        if raw[-1] == "x" and raw[:-1] in UNITS:
            unit_end = end - 1
            return [
                Token(Kind.WORD, UNITS[raw[:-1]].value, raw[:-1], start, unit_end, glued),
                Token(Kind.WORD, "x", "x", unit_end, end, glued=True),
            ]
        if raw == "k":
            return [Token(Kind.WORD, "kg", raw, start, end, glued)]
    if raw in NUMBER_WORDS:
        return [_number_word(raw, raw, start, end, glued=glued)]
    words = respell(raw)
    if len(words) == 1 and words[0] in NUMBER_WORDS:
        return [_number_word(words[0], raw, start, end, glued=glued)]
    return [
        Token(Kind.WORD, word, raw if len(words) == 1 else word, start, end, glued and index == 0)
        for index, word in enumerate(words)
    ]


def _number_word(word: str, raw: str, start: int, end: int, *, glued: bool) -> Token:
    return Token(Kind.NUMBER, word, raw, start, end, glued, Decimal(NUMBER_WORDS[word]), worded=True)


_PRONOUN_BEFORE = frozenset(
    "this that last next first second third the which another easy good hard tough each every any no heavy nice final latest "
    "same previous wrong right big long not it other only of lighter heavier easier different new".split()
)
_NUMBER_AFTER = frozenset("left rep reps more or rir kg lb in minutes hours set sets x at to and".split())
_TENS = {Decimal(n) for n in range(20, 100, 10)}
_TEN, _HUNDRED, _HALF = Decimal(10), Decimal(100), Decimal("0.5")


def _join_number_words(tokens: list[Token]) -> list[Token]:
    """Number words that belong together become one number; "one" that stands for a thing becomes a word."""
    joined: list[Token] = []
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if token.text == "one" and token.worded and not _one_counts(tokens, index):
            joined.append(replace(token, kind=Kind.WORD, worded=False))
            index += 1
        elif token.worded:
            joined_number, index = _number_run(tokens, index)
            joined.append(joined_number)
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
    if before in _PRONOUN_BEFORE:
        return after == "left" and before not in {"this", "that", "the", "each", "last", "next"}
    return (
        len(tokens) == 1 or after in _NUMBER_AFTER or (index + 1 < len(tokens) and tokens[index + 1].worded)
    )


def _spanning(first: Token, last: Token, value: Decimal) -> Token:
    raw = first.raw if first is last else f"{first.raw} {last.raw}"
    return Token(
        Kind.NUMBER, f"{value.normalize():f}", raw, first.start, last.end, first.glued, value, worded=True
    )


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
    if (
        value in _TENS
        and ones is not None
        and ones.worded
        and 0 < ones.value < _TEN
        and not _leads_reserve(tokens, after + step)
    ):
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
    if (
        point is not None
        and point.text == "point"
        and digit is not None
        and digit.worded
        and digit.value < _TEN
    ):
        last, value, after = digit, value + digit.value / _TEN, after + 2
    if last is first and first.text == "one":
        return replace(first, text="one"), after
    return _spanning(first, last, value), after


def _leads_reserve(tokens: list[Token], index: int) -> bool:
    """Whether the ones at `index` belong to what follows: "ten at twenty two left" is 20 with 2 left."""
    following = tokens[index + 1].text if index + 1 < len(tokens) else ""
    return following in {"left", "rir"} or (following == "more" and index + 2 >= len(tokens))


def _add_halves(tokens: list[Token]) -> list[Token]:
    """ "seventeen and a half" becomes 17.5."""
    halved: list[Token] = []
    index = 0
    while index < len(tokens):
        token = tokens[index]
        words = [t.text for t in tokens[index + 1 : index + 4]]
        length = next(
            (
                n
                for n, form in ((3, ["and", "a", "half"]), (2, ["and", "half"]), (2, ["1/2", ""]))
                if words[:n] == form
            ),
            0,
        )
        if token.kind is Kind.NUMBER and length and token.value == token.value.to_integral_value():
            halved.append(_spanning(token, tokens[index + length], token.value + _HALF))
            index += length + 1
        elif token.text == "half" and [t.raw for t in tokens[index + 1 : index + 3]] == ["a", "dozen"]:
            halved.append(_spanning(token, tokens[index + 2], Decimal(6)))
            index += 3
        elif token.text == "a" and [t.raw for t in tokens[index + 1 : index + 2]] == ["dozen"]:
            halved.append(_spanning(token, tokens[index + 1], Decimal(12)))
            index += 2
        else:
            halved.append(token)
            index += 1
    return halved
