"""Plain text becomes tokens: words as the lexicon spells them, and every number with its value and place.

A number in digits is one token whatever is glued to it ("11x20kg" is five tokens). What looks like a number but never
counts repetitions or loads (a date, a phone number, money, a percentage, a negative) is `ODD`: nothing explains it.
"""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal

from core.reading.dictation import heard
from core.reading.lexicon import (
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
from core.reading.named_sides import with_named_sides
from core.reading.normal import PARTING
from core.reading.number_words import join_number_words
from core.reading.reserve_words import with_plain_reserve
from core.reading.side_letters import with_sides
from core.reading.slips_in_place import with_slips_in_place
from core.reading.spelling import is_english, respell
from core.reading.token import Kind, Token

_WITH_DIGITS = r"[a-z]{3,}m8s?|" + "|".join(
    re.escape(word) for word in REWRITES if any(c.isdigit() for c in word) and not word[:-2].isdigit()
)

_SCAN = re.compile(
    rf"""
      (?P<odd>
          \w+://\S+ | www\.\S+ | (?<![\w.+-])[\w.+-]{{1,64}}@[a-z]\w*\.[a-z]+        # addresses
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
_RIGHT_COUNTED = re.compile(r"\br ?:? ?\d|\d ?r\b|\bright\b")
_LETTERS_BEFORE = frozenset("xrlwsnkmh")
_DECIMAL_COMMA_TAILS = {"5", "25", "75", "50", "0", "00"}
_FILLED = frozenset({"bottle", "bottles", "jug", "jugs", "can", "cans", "container", "containers", "carton", "cartons"})
_UNIT_NEXT = re.compile(r"\s?(kgs?|kilo\w*|lbs?|pounds?|k\b|#)")
_LOAD_WORDS = {"at", "@", "with", "using", "of", "weight", "load", "kg", "lb", "was", "is", ":", "x", "rpe"}


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
    sided = with_named_sides(with_sides(with_slips_in_place(_without_kiss(tokens))))
    sided = _with_assent(sided)
    told = with_plain_reserve(heard(_pairs(_with_distances(_with_units(sided)))))
    return _with_stressed_units(join_number_words(told))


_STRESSED = [[unit, *end] for unit in ("kg", "lb", "reps") for end in (["."], [])]


def _with_stressed_units(tokens: list[Token]) -> list[Token]:
    """The tokens without a full stop between a number and a unit that stands alone: "ELEVEN. REPS. TWENTY. KILOGRAMS."."""
    kept: list[Token] = []
    for at, token in enumerate(tokens):
        stressed = token.text == "." and kept and kept[-1].kind is Kind.NUMBER
        if stressed and [one.text for one in tokens[at + 1 : at + 3]] in _STRESSED:
            continue
        kept.append(token)
    return kept


def _with_assent(tokens: list[Token]) -> list[Token]:
    """With the "k" that begins a message and weighs nothing as "ok": "k rdy", "k next"."""
    agreed = len(tokens) > 1 and tokens[0].raw == "k" and tokens[1].kind is Kind.WORD and not tokens[1].glued
    return [replace(tokens[0], text="ok"), *tokens[1:]] if agreed else tokens


def _without_kiss(tokens: list[Token]) -> list[Token]:
    """Without the "x" that ends a message, unless it may cross the only number there is: "16 x"."""
    if len(tokens) < len(("12", "x")) or tokens[-1].text != "x" or tokens[-1].glued:
        return tokens
    numbers = sum(token.kind is Kind.NUMBER for token in tokens)
    told = numbers > 1 or tokens[-2].kind is not Kind.NUMBER
    return tokens[:-1] if told else tokens


def _with_units(tokens: list[Token]) -> list[Token]:
    """Without the mark that parts a number from its unit: "10 at 17.5, kg", "kilos, 6", "12.kg"."""
    kinds = ["unit" if t.text in {"kg", "lb"} else "number" if t.kind is Kind.NUMBER else t.text for t in tokens]
    lone = {at for at in range(1, len(tokens)) if kinds[at - 1] == "unit" and tokens[at].raw in _OF_SO_MANY}  # "20 lb-ers"
    for at in range(1, len(tokens) - 1):
        before = kinds[at - 2] if at > 1 else "."
        after = kinds[at + 2] if at + 2 < len(kinds) else "."
        if kinds[at] == "," and (
            (kinds[at - 1 : at + 2] == ["number", ",", "unit"] and after != "number")
            or (kinds[at - 1 : at + 2] == ["unit", ",", "number"] and before in _ENDS and after in _ENDS)
        ):
            lone.add(at)
        elif (
            kinds[at] in {".", "-"}
            and (kinds[at - 1], kinds[at + 1]) == ("number", "unit")
            and tokens[at].glued
            and tokens[at + 1].glued
        ):
            lone.add(at)  # "12.kg", "15-pounders"
        elif kinds[at] == "." and kinds[at - 1] == "number" and tokens[at + 1].text in _AMOUNTS and after in _ENDS:
            lone.add(at)  # "ELEVEN. REPS."
        elif kinds[at] == "of" and kinds[at - 1] == "number" and tokens[at + 1].text in _AMOUNTS:
            lone.add(at)  # "11 of repetition, 6 of kilo"
    return [token for at, token in enumerate(tokens) if at not in lone] if lone else tokens


def _with_distances(tokens: list[Token]) -> list[Token]:
    """With the "k" of a distance read as one, and no load ("ran 5k before this"), the "l" of a bottle as litres, and no side."""
    texts = [token.text for token in tokens]
    told = []
    for at, token in enumerate(tokens):
        if token.raw == "k" and _is_covered(texts, at):
            token = replace(token, text="km")  # noqa: PLW2901 - the same token, read otherwise
        elif token.raw.lower() == "l" and token.glued and _FILLED & set(texts[at + 1 : at + 3]):
            token = replace(token, text="litres")  # noqa: PLW2901
        told.append(token)
    return told


def _is_covered(texts: list[str], at: int) -> bool:
    """Whether the number before the word at `at` is how far somebody went: "walked 5k", "a 10k ride", "did a 5k first"."""
    before, after = texts[max(0, at - 4) : at - 1], texts[at + 1 : at + 2]
    if not at or _COVERED & {*before, *after}:
        return at > 0
    return before[-2:] in _WENT and not set(after) & _WEIGHTS


def _take(tokens: list[Token], found: re.Match[str], text: str, *, glued: bool) -> int:
    """Add what one match stands for; where to read on."""
    group, raw, start, end = found.lastgroup or "mark", found.group(), found.start(), found.end()
    if group == "number":
        return _take_number(tokens, found, text, glued=glued)
    after_number = bool(tokens) and tokens[-1].kind is Kind.NUMBER
    if raw == "l8" and _RIGHT_COUNTED.search(text):
        side = Token(Kind.WORD, "l", "l", start, start + 1, glued)
        tokens += [side, Token(Kind.NUMBER, "8", "8", start + 1, end, glued=True, value=Decimal(8))]
        return end  # "L8 R9"
    if group in {"word", "letters"}:
        tokens += _word_tokens(raw, start, end, glued=glued, before=tokens[-1].value if after_number else _NO_NUMBER)
    elif group == "plural":
        tokens.append(Token(Kind.WORD, "s", raw, start, end, glued))
    elif group == "emoji":
        tokens.append(Token(Kind.WORD, raw, raw, start, end, glued))
    elif group == "mark" and raw == "#" and after_number and (glued or not text[end : end + 1].isdigit()):
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
        after_not = comma[1] == "5" and any(token.text in UNITS for token in tokens) and tokens[-1].text == "not"
        crossed = comma[1] == "5" and decimal > _LEAST_CROSSED and text[comma.end() : comma.end() + 2].strip()[:1] == "x"
        if comma[1] in _DECIMAL_COMMA_TAILS and (has_unit or after_at or after_not or crossed):
            tokens.append(Token(Kind.NUMBER, str(decimal), text[start : comma.end()], start, comma.end(), glued, decimal))
            return comma.end()
        if has_unit or comma[1] == "5":
            tokens.append(Token(Kind.ODD, text[start : comma.end()], text[start : comma.end()], start, comma.end(), glued))
            return comma.end()
    lettered = glued and tokens[-1].kind is Kind.WORD and len(tokens[-1].raw) == 1 and tokens[-1].raw.isalpha()
    strayed = lettered and tokens[-1].raw == "t" and len(tokens) > 1 and tokens[-2].raw == "a"  # "11 a t14kg"
    dated = glued and tokens[-1].text == "/" and raw.startswith("0") and raw.strip("0") != ""  # "12/03"
    odd = dated or _is_negative(tokens, glued=glued) or (lettered and not strayed and tokens[-1].raw not in _LETTERS_BEFORE)
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
    if after_number and (unit := _damaged_unit(raw)) is not None:
        return [Token(Kind.WORD, unit, raw, start, end, glued)]
    if after_number and glued and (led := _led_by_unit(raw)) is not None:
        weighed = Token(Kind.WORD, UNITS[led].value, led, start, start + len(led), glued)
        return [weighed, *_word_tokens(raw[len(led) :], start + len(led), end, glued=True, before=_NO_NUMBER)]
    plural = raw if raw in NUMBER_PLURALS or start > _MENDED else (*respell(raw), "")[0]
    if plural in NUMBER_PLURALS and respell(raw) == (plural,):
        number = Token(
            Kind.NUMBER,
            str(NUMBER_PLURALS[plural]),
            raw,
            start,
            end - 1,
            glued,
            Decimal(NUMBER_PLURALS[plural]),
            worded=True,
        )
        return [number, Token(Kind.WORD, "s", "s", end - 1, end, glued=True)]
    if raw.endswith("'s") and raw not in VOCABULARY and (raw[:-2] in VOCABULARY or raw[:-2] in ENGLISH):
        owner = [replace(token, raw=raw) for token in _word_tokens(raw[:-2], start, end - 2, glued=glued, before=_NO_NUMBER)[:1]]
        return [*owner, Token(Kind.WORD, "is", "", end - 2, end)]
    if (tens := _joined_tens(raw)) is not None:
        return [Token(Kind.NUMBER, str(tens), raw, start, end, glued, Decimal(tens), worded=True)]
    words = (raw,) if raw in NUMBER_WORDS or (start > _MENDED and raw not in VOCABULARY) else respell(raw)
    if len(words) == 1 and words[0] in NUMBER_WORDS:
        return [_number_word(words[0], raw, start, end, glued=glued)]
    return [
        _number_word(word, word, start, end, glued=glued)
        if word in NUMBER_WORDS and len(words) > 1 and index == 0
        else Token(Kind.WORD, word, raw if len(words) == 1 else word, start, end, glued and index == 0)
        for index, word in enumerate(words)
    ]


def _joined_tens(raw: str) -> int | None:
    """The number of tens and ones written as one word: "fortyfive"."""
    cut = raw.find("ty") + len("ty")
    tens, ones = NUMBER_WORDS.get(raw[:cut], 0), NUMBER_WORDS.get(raw[cut:], 0)
    return tens + ones if cut > 1 and tens and 0 < ones < _LEAST_TENS else None


def _damaged_unit(raw: str) -> str | None:
    """The unit that an unknown short word right after a number is, with a letter or two too many: "20kfg", "30 lvbs"."""
    if not len("kg") < len(raw) <= _LONGEST_UNIT or raw in VOCABULARY or is_english(raw):
        return None
    first = {"k": ("g", "kg"), "l": ("b", "lb")}.get(raw[0])
    return first[1] if first is not None and first[0] in raw[1:] else None


def _led_by_unit(raw: str) -> str | None:
    """The unit that a mistyped word is glued to, right after a number: "14kgcoudlnt get another"."""
    led = next((unit for unit in ("kgs", "kg", "lbs", "lb") if raw.startswith(unit)), None)
    if led is None or len(raw) < _SHORTEST_LED or raw in VOCABULARY or is_english(raw) or respell(raw) != (raw,):
        return None
    rest = raw[len(led) :]
    return led if rest in VOCABULARY or is_english(rest) or respell(rest) != (rest,) else None


def _number_word(word: str, raw: str, start: int, end: int, *, glued: bool) -> Token:
    return Token(Kind.NUMBER, word, raw, start, end, glued, Decimal(NUMBER_WORDS[word]), worded=True)


def _pairs(tokens: list[Token]) -> list[Token]:
    """Words that mean something else together, such as "no fit" for "can not"."""
    paired = list(tokens)
    for index in reversed(range(len(tokens) - 1)):
        says = PAIRS.get((paired[index].text, paired[index + 1].text)) if index + 1 < len(paired) else None
        if says is not None and paired[index].text == "more" and index and paired[index - 1].kind is Kind.NUMBER:
            continue  # "could do 3 more easy"
        if says is not None and len(says) == 1:
            first, second = paired[index : index + 2]
            paired[index : index + 2] = [replace(first, text=says[0], raw=f"{first.raw} {second.raw}", end=second.end)]
        elif says is not None:
            paired[index : index + 2] = [
                replace(token, text=text) for token, text in zip(paired[index : index + 2], says, strict=True)
            ]
    return paired


_AMOUNTS = frozenset({"reps", "rep", "repetition", "repetitions", "kg", "lb"})
_ENDS = frozenset(".,;!?")
_OF_SO_MANY = frozenset({"er", "ers"})
_MENDED = 1500
"""Spelling is mended in so many characters; what follows is too long for a reply."""

_LEAST_CROSSED = Decimal(15)
"""A decimal comma before a cross ("22,5x10") is a load from here on; "11,5x20" may be a list."""

_COVERED = listed("words_tokens", "covered")
_WENT = (["did", "a"], ["after", "a"], ["done", "a"], ["finished", "a"])
_WEIGHTS = frozenset({"dumbbell", "dumbbells", "kettlebell", "kettlebells", "pair", "weight"})
_LEAST_TENS = 10
_LONGEST_UNIT = 4
_SHORTEST_LED = 6
_LEAST_K = Decimal(3)
_NO_NUMBER = Decimal(-1)
