"""Plain text becomes tokens: words as the lexicon spells them, and every number with its value and place.

A number in digits is one token whatever is glued to it ("11x20kg" is five tokens). What looks like a number but never
counts repetitions or loads (a date, a phone number, money, a percentage, a negative) is `ODD`: nothing explains it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import Enum, auto

from core.reading.lexicon import (
    COURTESY,
    ENGLISH,
    NUMBER_PLURALS,
    NUMBER_WORDS,
    PAIRS,
    REWRITES,
    UNIT_SLIPS,
    UNITS,
    VOCABULARY,
    listed,
)
from core.reading.normal import PARTING
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
    true when no space parts it from the token before, `apart` when an emoji does.
    """

    kind: Kind
    text: str
    raw: str
    start: int
    end: int
    glued: bool = False
    value: Decimal = Decimal(-1)
    worded: bool = False
    apart: bool = False


_WITH_DIGITS = "|".join(re.escape(word) for word in REWRITES if any(c.isdigit() for c in word) and not word[:-2].isdigit())

_SCAN = re.compile(
    rf"""
      (?P<odd>
          https?://\S+ | www\.\S+ | (?<![\w.+-])[\w.+-]{{1,64}}@[a-z]\w*\.[a-z]+        # addresses
        | \+\d[\d ()-]{{6,}}\d | \(?\d{{3,5}}\)?(?:[ -]\d{{3,}})+ | \d{{6,}}  # telephone numbers
        | \d{{4}}-\d{{1,2}}-\d{{1,2}} | \d{{1,2}}[/.-]\d{{1,2}}[/.-]\d{{4}} | \d+\.\d+\.\d+  # dates, versions
        | [£$€¥₹₦]\s?\d+(?:[.,]\d+){{0,3}} | \d+(?:[.,]\d+){{0,2}}\s?(?:[£$€¥₹₦%°])
        | \d{{1,3}}(?:,\d{{3}})+(?!\d)
        | \d+(?:\.\d+)?(?:-\d+)(?:-\d+)+                             # 3-2-1-0
      )
    | (?P<damaged>\d+[oi](?![a-z]) | (?<![a-z])(?:[oi]\d+|l0))
    | (?P<letters>\b(?:{_WITH_DIGITS})\b)
    | (?P<clock>\b\d{{1,2}}:\d{{2}}(?::\d{{2}})?(?!\d))
    | (?P<ordinal>\d+(?:st|nd|rd|th)\b)
    | (?P<mixed>\d+\ ?(?:-|\ |and\ )?\ ?(?<=[-\ ])[1-7]/[248](?!\d))
    | (?P<fraction>(?<![\d/])[1-7]/[248](?![\d/]))
    | (?P<number>\d+(?:\.\d+)?)
    | (?P<plural>(?<=\d)'?s(?![a-z]))
    | (?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)
    | (?P<emoji>:[a-z]+:)
    | (?P<mark>\S|\n|\x1f)
    """,
    re.VERBOSE,
)
_LETTERS_BEFORE = frozenset("xrlwsnkmh")
_DECIMAL_COMMA_TAILS = {"5", "25", "75", "50", "0", "00"}
_UNIT_NEXT = re.compile(r"\s?(kgs?|kilo\w*|lbs?|pounds?|k\b|#)")
_LOAD_WORDS = {"at", "@", "with", "using", "of", "weight", "load", "kg", "lb", "was", "is", ":", "x"}


def tokenise(text: str) -> list[Token]:
    """The tokens of a normalised text, in order."""
    tokens: list[Token] = []
    end = 0
    parted = False
    for found in _SCAN.finditer(text):
        if found.start() < end:
            continue
        if found.group() == PARTING:
            parted = bool(tokens)
            continue
        count = len(tokens)
        glued = bool(tokens) and found.start() == tokens[-1].end
        end = _take(tokens, found, text, glued=glued)
        if parted and len(tokens) > count:
            tokens[count] = replace(tokens[count], apart=True)
            parted = False
    return _join_number_words(_heard(_pairs(_with_units(_without_kiss(tokens)))))


def _without_kiss(tokens: list[Token]) -> list[Token]:
    """Without the "x" that ends a message, unless it may cross the only number there is: "16 x"."""
    if len(tokens) < len(("12", "x")) or tokens[-1].text != "x" or tokens[-1].glued:
        return tokens
    numbers = sum(token.kind is Kind.NUMBER for token in tokens)
    told = numbers > 1 or tokens[-2].kind is not Kind.NUMBER
    return tokens[:-1] if told else tokens


def _with_units(tokens: list[Token]) -> list[Token]:
    """Without the comma that parts a number from its unit: "10 at 17.5, kg", "kilos, 6"."""
    kinds = ["unit" if t.text in {"kg", "lb"} else "number" if t.kind is Kind.NUMBER else t.text for t in tokens]
    lone = set()
    for at in range(1, len(tokens) - 1):
        before = kinds[at - 2] if at > 1 else "."
        after = kinds[at + 2] if at + 2 < len(kinds) else "."
        if kinds[at] == "," and (
            (kinds[at - 1 : at + 2] == ["number", ",", "unit"] and after != "number")
            or (kinds[at - 1 : at + 2] == ["unit", ",", "number"] and before in _ENDS and after in _ENDS)
        ):
            lone.add(at)
        elif kinds[at] == "of" and kinds[at - 1] == "number" and tokens[at + 1].text in _AMOUNTS:
            lone.add(at)  # "11 of repetition, 6 of kilo"
    return [token for at, token in enumerate(tokens) if at not in lone] if lone else tokens


def _take(tokens: list[Token], found: re.Match[str], text: str, *, glued: bool) -> int:
    """Add what one match stands for; where to read on."""
    group, raw, start, end = found.lastgroup or "mark", found.group(), found.start(), found.end()
    if group == "number":
        return _take_number(tokens, found, text, glued=glued)
    after_number = bool(tokens) and tokens[-1].kind is Kind.NUMBER
    if group in {"word", "letters"}:
        tokens += _word_tokens(raw, start, end, glued=glued, before=tokens[-1].value if after_number else _NO_NUMBER)
    elif group == "plural":
        tokens.append(Token(Kind.WORD, "s", raw, start, end, glued))
    elif group == "emoji":
        tokens.append(Token(Kind.WORD, raw, raw, start, end, glued))
    elif group == "mark" and raw == "#" and after_number:
        tokens.append(Token(Kind.WORD, "lb", raw, start, end, glued))
    elif group == "mark" and raw == "/" and glued and tokens[-1].raw == "w":
        pass  # "w/ 25s"
    elif group == "mark":
        tokens.append(Token(Kind.MARK, ";" if raw == "\n" else raw, raw, start, end, glued))
    elif group in {"mixed", "fraction"}:
        tokens.append(Token(Kind.NUMBER, raw, raw, start, end, glued, _fraction(raw)))
    else:
        kind = {"clock": Kind.CLOCK, "ordinal": Kind.ORDINAL, "odd": Kind.ODD, "damaged": Kind.ODD}[group]
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
    comma = re.compile(r",(\d{1,2})(?!\d|,\d)").match(text, end)
    after_comma = len(tokens) > 1 and tokens[-1].text == "," and tokens[-1].glued and tokens[-2].kind is Kind.NUMBER
    if comma and "." not in raw and not after_comma:
        decimal = Decimal(f"{raw}.{comma[1]}")
        has_unit = _UNIT_NEXT.match(text, comma.end()) is not None
        after_at = bool(tokens) and tokens[-1].text in _LOAD_WORDS
        crossed = comma[1] == "5" and decimal > _LEAST_CROSSED and text[comma.end() : comma.end() + 2].strip()[:1] == "x"
        if comma[1] in _DECIMAL_COMMA_TAILS and (has_unit or after_at or crossed):
            tokens.append(Token(Kind.NUMBER, str(decimal), text[start : comma.end()], start, comma.end(), glued, decimal))
            return comma.end()
        if has_unit or comma[1] == "5":
            tokens.append(Token(Kind.ODD, text[start : comma.end()], text[start : comma.end()], start, comma.end(), glued))
            return comma.end()
    lettered = glued and tokens[-1].kind is Kind.WORD and len(tokens[-1].raw) == 1 and tokens[-1].raw.isalpha()
    odd = _is_negative(tokens, glued=glued) or (lettered and tokens[-1].raw not in _LETTERS_BEFORE)
    kind = Kind.ODD if odd else Kind.NUMBER
    tokens.append(Token(kind, raw, raw, start, end, glued, Decimal(raw)))
    return end


def _is_negative(tokens: list[Token], *, glued: bool) -> bool:
    """Whether the dash right before a number is a minus: nothing countable stands before it."""
    if tokens and tokens[-1].text == "+" and glued:
        return len(tokens) == 1 or tokens[-2].kind is not Kind.NUMBER
    if not tokens or tokens[-1].text != "-" or not glued:
        return False
    before = tokens[-2] if len(tokens) > 1 else None
    if before is None or before.text in {"x", "at", "@", "with", "by"}:
        return True
    return not tokens[-1].glued and before.kind is not Kind.NUMBER and before.text not in UNITS


def _word_tokens(raw: str, start: int, end: int, *, glued: bool, before: Decimal) -> list[Token]:
    """The words one written word stands for; right after a number a slip of a unit is the unit, "kgx" a unit and a cross."""
    after_number = before >= 0
    if after_number and raw in UNIT_SLIPS:
        return [Token(Kind.WORD, UNIT_SLIPS[raw].value, raw, start, end, glued)]
    if after_number and glued and raw == "k" and before >= _LEAST_K:
        return [Token(Kind.WORD, "kg", raw, start, end, glued)]
    if after_number and raw[-1] == "x" and raw[:-1] in UNITS:
        return [
            Token(Kind.WORD, UNITS[raw[:-1]].value, raw[:-1], start, end - 1, glued),
            Token(Kind.WORD, "x", "x", end - 1, end, glued=True),
        ]
    if raw in NUMBER_PLURALS:
        number = Token(
            Kind.NUMBER,
            str(NUMBER_PLURALS[raw]),
            raw,
            start,
            end - 1,
            glued,
            Decimal(NUMBER_PLURALS[raw]),
            worded=True,
        )
        return [number, Token(Kind.WORD, "s", "s", end - 1, end, glued=True)]
    if raw.endswith("'s") and raw not in VOCABULARY and (raw[:-2] in VOCABULARY or raw[:-2] in ENGLISH):
        owner = [replace(token, raw=raw) for token in _word_tokens(raw[:-2], start, end - 2, glued=glued, before=_NO_NUMBER)[:1]]
        return [*owner, Token(Kind.WORD, "is", "", end - 2, end)]
    words = (raw,) if raw in NUMBER_WORDS or (start > _MENDED and raw not in VOCABULARY) else respell(raw)
    if len(words) == 1 and words[0] in NUMBER_WORDS:
        return [_number_word(words[0], raw, start, end, glued=glued)]
    return [
        Token(Kind.WORD, word, raw if len(words) == 1 else word, start, end, glued and index == 0)
        for index, word in enumerate(words)
    ]


def _number_word(word: str, raw: str, start: int, end: int, *, glued: bool) -> Token:
    return Token(Kind.NUMBER, word, raw, start, end, glued, Decimal(NUMBER_WORDS[word]), worded=True)


def _pairs(tokens: list[Token]) -> list[Token]:
    """Words that mean something else together, such as "no fit" for "can not"."""
    paired = list(tokens)
    for index in range(len(tokens) - 1):
        says = PAIRS.get((paired[index].text, paired[index + 1].text))
        if says is not None:
            paired[index : index + 2] = [
                replace(token, text=text) for token, text in zip(paired[index : index + 2], says, strict=True)
            ]
    return paired


_AMOUNTS = frozenset({"reps", "rep", "repetition", "repetitions", "kg", "lb"})
_AFTER_MORE = frozenset({"left", "in", ",", ".", "!", ";", "as", "while", "because", "and", "but", "so"})
_ENDS = frozenset(".,;!?")
_LONGEST_MISTYPED = 3
_MENDED = 1500
"""Spelling is mended in so many characters; what follows is too long for a reply."""

_LEAST_CROSSED = Decimal(15)
"""A decimal comma before a cross ("22,5x10") is a load from here on; "11,5x20" may be a list."""

_LEAST_K = Decimal(3)
_NO_NUMBER = Decimal(-1)
_SHORT_WORDS = {"4": "for", "2": "to"}
_BEFORE_SHORT = listed("words_tokens", "before_short")
_AFTER_SHORT = listed("words_tokens", "after_short")
_DICTATED_MARKS = {"comma": ",", "period": ".", "stop": ".", "newline": ";", "dash": "-"}
_TANK = (
    ("left",),
    ("in", "the", "tank"),
    ("in", "tank"),
    ("in", "reserve"),
    ("in", "hand"),
    ("rir",),
    ("to", "spare"),
)
_BEFORE_EIGHT = {
    "at",
    "and",
    "then",
    "rpe",
    "got",
    "did",
    "done",
    "made",
    "managed",
    "on",
    "not",
    "was",
    "x",
    "for",
    "with",
    "effort",
    "hit",
}
_AFTER_EIGHT = {
    "at",
    "reps",
    "rep",
    "with",
    "kg",
    "lb",
    "x",
    "on",
    "left",
    "not",
    "repetitions",
    "in",
    "ate",
    "and",
}


def _heard(tokens: list[Token]) -> list[Token]:
    """What dictation wrote for another word: "ate at twenty", "to left", "for more in the tank", "comma"."""
    heard = list(tokens)
    for index, token in enumerate(tokens):
        if token.raw in _SHORT_WORDS and 0 < index < len(tokens) - 1:
            around = tokens[index - 1].text in _BEFORE_SHORT and tokens[index + 1].text in _AFTER_SHORT
            heard[index] = replace(token, kind=Kind.WORD, text=_SHORT_WORDS[token.raw]) if around else token
        if token.kind is not Kind.WORD:
            continue
        before = tokens[index - 1] if index else None
        end = next((i for i in range(index + 1, len(tokens)) if tokens[i].apart), len(tokens))
        following = tuple(t.text for t in tokens[index + 1 : min(end, index + 5)])
        number = _homophone(token.text, before, following)
        if number is not None:
            value = Decimal(NUMBER_WORDS[number])
            heard[index] = replace(token, kind=Kind.NUMBER, text=number, value=value, worded=number == "eight" or following[:1] == ("point",))
        elif token.text in {"to", "too", "for", "tin"} and _lost_count(token.text, before, following):
            heard[index] = replace(token, kind=Kind.ODD)
        elif token.text == "for" and following[:1] == ("left",) and any(t.text == "right" for t in tokens):
            continue
        elif (token.text, following[:1]) in {
            ("for", ("left",)),
            ("to", ("reps",)),
            ("too", ("reps",)),
        } and _counted(before):
            heard[index] = replace(token, kind=Kind.ODD)
        elif token.text in _DICTATED_MARKS and _counted(before):
            heard[index] = replace(token, kind=Kind.MARK, text=_DICTATED_MARKS[token.text])
        elif token.text not in {"x", "by", "at"} and _mistyped_at(token, before, tokens[index + 1 : index + 3]):
            heard[index] = replace(token, text="at")
    return heard


def _counted(before: Token | None) -> bool:
    return before is not None and (before.kind is Kind.NUMBER or before.text in {"kg", "lb", "reps", "but"})


def _homophone(word: str, before: Token | None, following: tuple[str, ...]) -> str | None:
    """The number word that `word` stands for where it stands, if it does."""
    previous = before.text if before is not None else ""
    if word == "ate":
        heard = previous in _BEFORE_EIGHT or before is None or following[:1] == () or following[0] in _AFTER_EIGHT
        return "eight" if heard and not (following and following[0] in {"lunch", "dinner", "breakfast", "too", "my", "a"}) else None
    tank = any(following[: len(form)] == form for form in _TANK)
    more_tank = following[:1] == ("more",) and (
        len(following) == 1 or following[1:4] in {("in", "the", "tank"), ("in", "me")} or following[1] in _AFTER_MORE | COURTESY
    )
    counted = following[:1] == ("reps",) and following[1:2] in {("at",), ("with",), ("of",)}
    if word in {"for", "to", "too"} and counted and previous not in {"kg", "lb"}:
        return "four" if word == "for" else "two"
    if word in {"to", "too"}:
        if before is not None and (tank or more_tank):
            return "two"
        if previous in {"at", "with", "@"} and following[:1] in {("kg",), ("lb",)}:
            return "two"
        if following[:1] == ("point",) or following[:3] == ("and", "a", "half"):
            return "two"
        return (
            "two"
            if (previous == "in" and following[:1] in {("hours",), ("minutes",)})
            or (previous in {"own", "have", "got"} and following[:1] == ("dumbbells",))
            else None
        )
    if (
        word in {"for", "to"}
        and following[:1] == ("reps",)
        and following[1:2] in {("at",), ("with",), ("of",)}
        and previous not in {"kg", "lb"}
    ):
        return "four" if word == "for" else "two"
    if word == "for":
        spoken = following[:1] == ("at",) and len(following) > 1 and following[1] in NUMBER_WORDS
        waits = previous == "in" and following[:1] in {("hours",), ("minutes",)}
        loaded = previous in {"at", "with", "@"} and following[:1] in {("kg",), ("lb",)}
        tanked = before is not None and (more_tank or (tank and following[:1] != ("left",)))
        return "four" if spoken or waits or loaded or tanked else None
    if word == "couple" and (tank or following[:1] == ("more",)):
        return "two"
    if word == "won" and (tank or more_tank):
        return "one"
    return None


def _lost_count(word: str, before: Token | None, following: tuple[str, ...]) -> bool:
    """Whether a number was said where this word was heard, which number being open: "too at ten kilos", "twenty to at ten"."""
    if following[:1] == ("at",):
        return word in {"to", "too", "tin"} and (before is None or _counted(before))
    return word != "tin" and before is not None and before.text in {"left", "right"} and following[:1] in {("right",), ("left",)}


def _mistyped_at(token: Token, before: Token | None, following: list[Token]) -> bool:
    """Whether a short unknown word between two numbers can only be "at"."""
    if before is None or before.kind is not Kind.NUMBER or token.glued or not following or following[0].kind is not Kind.NUMBER:
        return False
    if len(token.text) > _LONGEST_MISTYPED or (token.text in VOCABULARY and token.text not in {"st", "a"}):
        return False
    return bool(set(token.text) & {"a", "t"}) and token.text not in {"and", "to"}


_PRONOUN_BEFORE = listed("words_tokens", "pronoun_before")
_NUMBER_AFTER = listed("words_tokens", "number_after")
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
        elif token.raw == "zero" and _text_at(tokens, index + 1).isalpha() and _text_at(tokens, index + 1) not in _NUMBER_AFTER:
            joined.append(replace(token, kind=Kind.WORD, text="no", worded=False))  # "zero sleep"
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
    if before in _PRONOUN_BEFORE:
        return after == "left" and before not in {"this", "that", "the", "each", "last", "next"}
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


_HALVES = (("and", "a", "half"), ("and", "half"))
_DOZENS = {
    ("a", "baker", "is", "dozen"): 13,
    ("a", "baker's", "dozen"): 13,
    ("a", "bakers", "dozen"): 13,
    ("half", "a", "dozen"): 6,
    ("a", "dozen"): 12,
}


def _add_halves(tokens: list[Token]) -> list[Token]:
    """Such as "seventeen and a half" and "2 kilos and a half" gain their half; a dozen is a number."""
    halved: list[Token] = []
    index = 0
    while index < len(tokens):
        token = tokens[index]
        whole = token.kind is Kind.NUMBER and token.value == token.value.to_integral_value()
        length = _half_length(tokens, index + 1) if whole else 0
        unit_length = _half_length(tokens, index + 2) if whole and _text_at(tokens, index + 1) in {"kg", "lb"} else 0
        if unit_length and _text_at(tokens, index + 2 + unit_length) in {"of", "rep", "reps", "another", "more", "one"}:
            unit_length = 0  # "11 at 20kg and half of another"
        dozen = next((form for form in _DOZENS if _spells(tokens[index : index + len(form)], form)), None)
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
    words = tuple("dozen" if t.worded and t.value == NUMBER_WORDS["dozen"] else t.text for t in tokens)
    return words == form


def _text_at(tokens: list[Token], index: int) -> str:
    return tokens[index].text if index < len(tokens) else ""


def _half_length(tokens: list[Token], index: int) -> int:
    """How many tokens say "and a half" at `index`."""
    return next((len(form) for form in _HALVES if tuple(t.text for t in tokens[index : index + len(form)]) == form), 0)
