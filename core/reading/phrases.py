"""Set phrases: the lines of `phrases.txt` compiled, and what of them a message says.

A line becomes a small tree, the tree a regular expression over the words of a sentence; only the lines that can begin with a
word that is there are tried, so hundreds of lines cost little.
"""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import dataclass
from functools import cache, cached_property
from itertools import chain
from typing import TYPE_CHECKING

from core.reading.lexicon import CHEST_TROUBLE, COURTESY, HURT, NUMBER_WORDS, PLACES, listed, phrase_lines, sayings
from core.reading.naming import exercise_named, points
from core.reading.spelling import expand
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

_PARTS = re.compile(r"[()\[\]|]|\.\.\.|\{exercise\}|\{whatever\}|[^\s()\[\]|]+")
_ANY = ""
_FIGURES = {"for": "4", "to": "2", "too": "2", "one": "1"}
"""Words that a figure may stand for in a phrase that asks for something: "no gym 4 me"; beside a set it is a number."""

_LONGEST_WHOLE = 14
_NO_EXERCISE = {
    "progress-on": frozenset({"at", "me", "you", "us", "him", "her", "them"}),
    "swap": frozenset({"you", "heavier", "lighter", "more"}),
}
"""What may stand where an exercise is named, and names none."""
_FILLERS = listed("words_phrases", "fillers")
REQUESTS = frozenset({"form", "form-here", "help", "swap", "swap-here", "today", "progress", "progress-on"})
"""Meanings of phrases that ask for something to be told or changed."""

_OTHERS = listed("words_phrases", "others")
_LISTS = {"thing": listed("words_phrases", "thing"), "place": frozenset(PLACES), "hurt": HURT, "trouble": CHEST_TROUBLE}
_GOES_ON = "(?:while|whilst|as|because|before|when|since|without|so|unless|lol|haha) "
_END = r"(?=(?:(?:{}) )*(?:$|(?:done|bye) $|[.,?!;]|{}))".format("|".join((*sorted(COURTESY), *sayings("after_name"))), _GOES_ON)


@dataclass(frozen=True)
class Phrase:
    """One line: what it means, the expression that finds it, and whether it takes whatever name stands in it."""

    meaning: str
    expression: str
    free: bool

    @cached_property
    def pattern(self) -> re.Pattern[str]:
        """The expression compiled, when a message first needs it: of two thousand most never do."""
        return re.compile(self.expression)


@dataclass(frozen=True, slots=True)
class Said:
    """A set phrase found: its meaning, its tokens `[first, last)`, and the exercise it names as written."""

    meaning: str
    first: int
    last: int
    exercise: str | None = None


class _Line:
    """Reads one line into a regular expression and the set of words it can begin with (`_ANY`: whatever word)."""

    def __init__(self, line: str, *, figures: bool) -> None:
        self.parts = _PARTS.findall(line)
        self.figures = figures
        self.at = 0

    def choice(self) -> tuple[str, set[str]]:
        pattern, firsts = self.sequence()
        patterns, begins = [pattern], set(firsts)
        while self.at < len(self.parts) and self.parts[self.at] == "|":
            self.at += 1
            pattern, firsts = self.sequence()
            patterns.append(pattern)
            begins |= firsts
        patterns.sort(key=lambda alternative: -alternative.count(" "))  # "this one" before "this"
        return f"(?:{'|'.join(patterns)})", begins

    def sequence(self) -> tuple[str, set[str]]:
        pattern, begins, open_start = "", set[str](), True
        while self.at < len(self.parts) and self.parts[self.at] not in ")]|":
            piece, firsts, may_miss = self.piece()
            pattern += piece
            if open_start:
                begins |= firsts
                open_start = may_miss
        return pattern, begins

    def piece(self) -> tuple[str, set[str], bool]:
        part = self.parts[self.at]
        self.at += 1
        if part in "([":
            pattern, firsts = self.choice()
            self.at += 1  # the closing bracket
            return (pattern, firsts, False) if part == "(" else (f"{pattern}?", firsts, True)
        if part == "...":
            return r"(?:[^ .,?!;]+ ){0,3}", {_ANY}, True
        if part in {"{exercise}", "{whatever}"}:
            return r"((?:[a-z'-]+ ){1,5}?)", {_ANY}, False
        if part == "$":
            return _END, set(), True
        if part == "@num":
            return r"[0-9][0-9./ ]* ", {_ANY}, False
        if part.startswith("@"):
            listed = sorted(_LISTS[part[1:]])
            return f"(?:{'|'.join(map(re.escape, listed))}) ", set(listed), False
        if self.figures and part in _FIGURES:
            return f"(?:{part}|{_FIGURES[part]}) ", {part, _FIGURES[part]}, False
        words = expand(part) if part == "one" or part not in NUMBER_WORDS else (str(NUMBER_WORDS[part]),)
        return "".join(re.escape(word) + " " for word in words), {words[0]}, False


@cache
def _compiled() -> tuple[dict[str, list[Phrase]], dict[str, list[Phrase]]]:
    """All lines by first word: those that count anywhere, and those that must be all that is said."""
    anywhere: dict[str, list[Phrase]] = defaultdict(list)
    alone: dict[str, list[Phrase]] = defaultdict(list)
    for meaning, only, line in phrase_lines():
        pattern, firsts = _Line(line, figures=not meaning.startswith("mark")).choice()
        phrase = Phrase(meaning, pattern, "{whatever}" in line)
        for first in firsts:
            (alone if only else anywhere)[first].append(phrase)
    return anywhere, alone


def make_ready() -> None:
    """Compile every phrase now (one or two seconds), so that no message has to wait for it."""
    for phrases in _compiled():
        for phrase in chain.from_iterable(phrases.values()):
            phrase.pattern  # noqa: B018 - looked at, it is compiled


def find(tokens: Sequence[Token], first: int, last: int, wanted: Callable[[str], bool]) -> list[Said]:
    """The set phrases with a `wanted` meaning in tokens `[first, last)`, one sentence; of two that overlap the longer counts.

    Where there are none, those that ask for something are looked for again without words such as "actually".
    """
    found = _find(tokens, range(first, last), wanted)
    plain = (
        [] if any(said.meaning in REQUESTS for said in found) else [i for i in range(first, last) if tokens[i].text not in _FILLERS]
    )
    if len(plain) in {0, last - first}:
        return found
    asked = _find(tokens, plain, lambda meaning: meaning in REQUESTS and wanted(meaning))
    return _longest([*found, *asked]) if asked else found


def _find(tokens: Sequence[Token], spots: Sequence[int], wanted: Callable[[str], bool]) -> list[Said]:
    """The set phrases that the words at `spots` say."""
    anywhere, _ = _compiled()
    words = [_word(tokens[i]) for i in spots]
    line, starts = _line(words)
    found: list[Said] = []
    for index, start in enumerate(starts):
        for phrase in (*anywhere.get(words[index], ()), *anywhere.get(_ANY, ())):
            match = phrase.pattern.match(line, start) if wanted(phrase.meaning) else None
            if match and match.end() > start:
                count = line.count(" ", start, match.end())
                raw = _named(tokens, spots, starts, match)
                stands, name = (
                    exercise_named(raw.split(), free=phrase.free or _is_a_lift(phrase, raw)) if raw is not None else (True, None)
                )
                if (
                    name is None
                    and raw is not None
                    and phrase.meaning == "swap"
                    and (_asks_for_weight(raw) or raw.lower() == "that")
                ):
                    continue
                if raw is not None and set(raw.lower().split()) <= _NO_EXERCISE.get(phrase.meaning, frozenset()):
                    continue  # "he was talking numbers at me", "can I have heavier instead"
                if not stands or (raw is not None and phrase.meaning == "form" and _asks_otherwise(raw, match.group())):
                    continue
                if raw is not None and name is None and phrase.meaning == "form" and not points(raw.split()):
                    continue
                found.append(Said(phrase.meaning, spots[index], spots[index + count - 1] + 1, name))
    return _longest(found)


def _asks_for_weight(raw: str) -> bool:
    """Whether what is asked for is a weight and no exercise: "could I have more weight next time"."""
    words = set(raw.lower().split())
    return bool(words & {"weight", "weights", "load"}) and bool(words & {"more", "less", "extra"})


def _asks_otherwise(raw: str, said: str) -> bool:
    """Whether more is asked for than how something is done: another exercise, or the best of one ("what's my best squat")."""
    return bool(_OTHERS & set(said.split())) or "best" in raw.lower().split()[:2]


def _is_a_lift(phrase: Phrase, raw: str) -> bool:
    """Whether a bench is what somebody progresses on, and no furniture: "how's my bench coming on"."""
    return phrase.meaning == "progress-on" and "bench" in raw.split()


def whole(tokens: Sequence[Token], first: int, last: int, wanted: Callable[[str], bool]) -> Said | None:
    """The phrase with a `wanted` meaning that tokens `[first, last)`, one clause, say as a whole but for courtesies around it."""
    _, alone = _compiled()
    span = [i for i in range(first, last) if tokens[i].kind is not Kind.MARK]
    if len(span) > _LONGEST_WHOLE:
        return None
    while span:
        words = [_word(tokens[i]) for i in span]
        line, _ = _line(words)
        once = line if len(set(words)) > 1 else f"{words[0]} "  # "undo undo"
        for phrase in alone.get(words[0], ()):
            if wanted(phrase.meaning) and (phrase.pattern.fullmatch(line) or phrase.pattern.fullmatch(once)):
                return Said(phrase.meaning, first, last)
        if words[-1] in COURTESY and len(span) > 1:
            span.pop()
        elif words[0] in COURTESY:
            # Courtesies before and after are taken off in turn; start again from the full tail.
            span = [i for i in range(span[0] + 1, last) if tokens[i].kind is not Kind.MARK]
        else:
            return None
    return None


def _word(token: Token) -> str:
    """The word that phrases compare with; a number that nothing explains is part of none."""
    return "\N{CURRENCY SIGN}" if token.kind is Kind.ODD else token.text


def _line(words: Iterable[str]) -> tuple[str, list[int]]:
    """The words each followed by a space, and where each begins."""
    starts, length, pieces = [], 0, []
    for word in words:
        starts.append(length)
        pieces.append(f"{word} ")
        length += len(word) + 1
    return "".join(pieces), starts


def _named(tokens: Sequence[Token], spots: Sequence[int], starts: list[int], match: re.Match[str]) -> str | None:
    """The exercise a phrase names, in the words as written."""
    for group in range(1, (match.re.groups or 0) + 1):
        if match.start(group) >= 0 and match.group(group):
            named = [tokens[spots[i]] for i, start in enumerate(starts) if match.start(group) <= start < match.end(group)]
            end = next((i for i, token in enumerate(named) if i and token.apart), len(named))
            words = [token.raw for token in named[:end]]
            return " ".join(word for word in words if word)
    return None


def _longest(found: list[Said]) -> list[Said]:
    """Without overlaps: longer phrases first, then the one that begins earlier, then the one listed first."""
    kept: list[Said] = []
    for said in sorted(found, key=lambda s: (s.first - s.last, s.first)):
        if all(said.last <= other.first or said.first >= other.last for other in kept):
            kept.append(said)
    return sorted(kept, key=lambda s: s.first)
