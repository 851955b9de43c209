"""One sentence becomes acts: what is owned, when, and the set phrases; its numbers are left to `records`."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading import gear, phrases
from core.reading.acts import (
    Awaiting,
    Skip,
    Units,
)
from core.reading.asking_on import goes_on_asking
from core.reading.exercise_runs import naming_what_follows
from core.reading.lexicon import PLACES
from core.reading.phrases import Said
from core.reading.reading_so_far import Reading, act_of
from core.reading.sentence_times import read_times
from core.reading.side_words import LIMBS
from core.reading.spans import parted
from core.reading.standing import past_a_figure, stands
from core.reading.standing_alone import corrects_unit, is_conversation, is_in_danger, read_alone
from core.reading.standing_requests import in_its_place
from core.reading.token import Kind, Token
from core.reading.unit_talk import unit_wished

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.units import Unit


def read_sentence(reading: Reading, first: int, last: int) -> None:
    """Read tokens `[first, last)`, one sentence: gear, times, then set phrases anywhere in it and those that are a whole clause."""
    tokens, context = reading.tokens, reading.context
    asks = goes_on_asking(tokens, first, last)
    if asks is not None:
        read_sentence(reading, first, asks)
        read_sentence(reading, asks + 1, last)
        return
    owned = gear.gear(tokens, first, last, awaited=context.awaiting is Awaiting.REPS)
    led = _unit_before(tokens, first, last)
    if owned is None and led is not None:
        owned = gear.gear(tokens, led[1] + 1, last)
    apart = gear.begins(tokens, first, last)
    if apart is not None and (also := gear.gear(tokens, apart, last)) is not None:
        reading.add(apart, also)
        reading.explain(apart, last)
        read_sentence(reading, first, apart)
    elif owned is not None:
        if led is not None:
            reading.add(first, Units(led[0]))
        reading.add(first, owned)
        reading.explain(first, last)
    elif not read_times(reading, first, last):
        before = len(reading.acts), len(reading.phrases)
        recorded = context.last is not None and context.awaiting in {Awaiting.NONE, Awaiting.GO}
        if (wish := unit_wished(tokens, first, last, recorded=recorded)) is not None:
            unit, clauses = wish
            reading.add(clauses[0][0], Units(unit))
            for clause in clauses:
                reading.explain(*clause)
        anything = _read_phrases(reading, first, last)
        read_alone(reading, first, last, phrases_found=anything)
        stretches = list(parted(tokens, [(first, last)]))
        if (len(reading.acts), len(reading.phrases)) == before and len(stretches) > 1:
            for start, end in stretches:
                read_sentence(reading, start, end)


def _unit_before(tokens: Sequence[Token], first: int, last: int) -> tuple[Unit, int] | None:
    """The unit asked for in the clause before another, and what links them: "use lbs and btw I have two 15 lb dumbbells"."""
    link = next((at for at in range(first, last) if tokens[at].text in _LINKS or tokens[at].kind is Kind.NUMBER), last)
    wished = unit_wished(tokens, first, link) if first < link < last else None
    return None if wished is None else (wished[0], link)


_LINKS = frozenset({",", "and", "also", "but", "as", "because", "since", "-"})


def _read_phrases(reading: Reading, first: int, last: int) -> bool:
    """Read the phrases that count wherever they stand; whether there are any."""
    tokens = reading.tokens
    said = [
        in_its_place(tokens, one, first, last, ready=reading.context.awaiting is Awaiting.GO)
        for one in phrases.find(tokens, first, last, is_conversation)
        if not (reading.explained & set(range(one.first, one.last)))
    ]
    if reading.context.last is not None and reading.context.awaiting is not Awaiting.REPS:
        said = _changing_a_figure(tokens, said, last)
    correcting = any(one.meaning == "mark-amend" for one in said)
    counted = any(token.kind is Kind.NUMBER for token in tokens[first:last])
    for one in (naming_what_follows(tokens, each, first, last) for each in said):
        if one.meaning == "undo" and _takes_back_a_number(tokens, one, first, last):
            reading.phrases[one.first] = replace(one, meaning="mark-sorry")
        elif one.meaning == "mark-sorry" and tokens[one.last - 1].text == "bad" and _names_what_is_bad(tokens, one):
            continue  # "8 on my bad side"
        elif one.meaning == "swap-here" and counted and (spare := _had_another(tokens, one)) is not None:
            reading.phrases[one.first] = Said("mark-could", one.first, spare)
        elif one.meaning == "swap-here" and tokens[one.last - 1].text == "another" and _is_counted(tokens, one.last):
            continue  # "got another six"
        elif one.meaning == "have-nothing" and counted:
            reading.phrases[one.first] = replace(one, meaning="mark-bodyweight")
        elif (one.meaning == "skip-day" and tokens[one.first].text.startswith("feel") and is_in_danger(reading)) or (
            one.meaning == "mark-load" and not _leads_to_a_load(tokens, one)
        ):
            continue
        elif (
            one.meaning == "mark-plain" and tokens[one.first].text in {"more", "left"} and tokens[one.first - 1].kind is Kind.NUMBER
        ):
            continue  # "a couple more left in me" counts them
        elif one.meaning == "mark-amend" and tokens[one.last - 1].text in {"fact", "reality"} and one.last == last and not counted:
            reading.phrases[one.first] = replace(one, meaning="mark-plain")  # "just right in fact"
        elif one.meaning.startswith("mark"):
            reading.phrases[one.first] = one
        elif one.meaning.startswith("units") and [token.text for token in tokens[one.last - 1 : one.last + 1]] == _TAKEN_APART:
            reading.phrases[one.last - 1] = Said("mark-not", one.last - 1, one.last + 1)  # "12.5 kg instead of 15 kg"
        elif not (one.meaning.startswith("units") and (correcting or corrects_unit(reading, one))) and stands(
            tokens, one, first, last
        ):
            whole_day = one.meaning == "skip" and one.exercise is None and _of_the_day(tokens, one, first, last)
            reading.add(one.first, Skip("day") if whole_day else act_of(one, reading.text))
            reading.phrases[one.first] = one
            reading.explain(one.first, past_a_figure(tokens, one.last, last))
    return bool(said)


def _names_what_is_bad(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "my bad" only begins the name of a side or a place: "my bad leg held up"."""
    return said.last < len(tokens) and tokens[said.last].text in LIMBS | PLACES.keys() | {"one"}


def _changing_a_figure(tokens: Sequence[Token], said: list[Said], last: int) -> list[Said]:
    """The phrases, with a "could you change my last one to 12" as a correction, which asks for no other exercise."""
    for one in said:
        if one.meaning != "swap-here" or not _EXCHANGING & {tokens[i].text for i in range(one.first, one.last)}:
            continue
        figure = next((i for i in range(one.last, last) if tokens[i].kind is Kind.NUMBER), None)
        if figure is None or tokens[figure - 1].text != "to" or not {t.text for t in tokens[one.last : figure]} <= _OF_THE_RECORD:
            continue
        changing = Said("mark-amend", one.first, figure)
        return [changing, *(other for other in said if not changing.first <= other.first < changing.last)]
    return said


_EXCHANGING = frozenset({"change", "switch", "alter"})
_OF_THE_RECORD = frozenset(
    {"to", "my", "the", "that", "this", "it", "last", "one", "set", "entry", "record", "reps", "weight", "load", "number", "log"}
)


def _of_the_day(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether what is left out is the day: "cba today", but "skip this one today"."""
    words = {token.text for token in tokens[said.first : said.last]}
    clause = {token.text for token in tokens[first:last]}
    return bool(clause & {"today", "tonight"}) and not words & {
        "this",
        "that",
        "one",
        "station",
        "exercise",
        "next",
        "set",
        "round",
    }


def _had_another(tokens: Sequence[Token], said: Said) -> int | None:
    """The index after "another" in "got another one in the tank", which asks for no other exercise; None when it does."""
    after = [token.text for token in tokens[said.last : said.last + 2]]
    another = next((i + 1 for i in range(said.first, said.last) if tokens[i].text == "another"), None)
    return another if after[:1] == ["left"] or after in (["in", "the"], ["in", "me"], ["in", "my"]) else None


def _is_counted(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


def _leads_to_a_load(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "went up to" names the load of a set that is told after it, in the first number of the message."""
    numbers = [i for i, token in enumerate(tokens) if token.kind is Kind.NUMBER]
    if len(numbers) < len(("load", "reps")) or said.last not in numbers:
        return False
    place = numbers.index(said.last)
    counted = [token.text for token in tokens[said.last + 1 : numbers[place + 1]]] if place + 1 < len(numbers) else [""]
    return (place == 0 and "/" not in counted) or (bool(counted) and set(counted) <= _TO_ITS_COUNT)


_TO_ITS_COUNT = frozenset({"for", "and", "got", "did", "x", "hit", "managed", "made", ",", "then", "only"})
"""Words between a load that was gone up to and the reps done with it: "then bumped up to 30 for 8"."""


def _takes_back_a_number(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether "eleven scratch that twelve" takes back the number just said, and no record."""
    before = said.first > first and tokens[said.first - 1].kind is Kind.NUMBER
    return before and said.last < last and tokens[said.last].kind is Kind.NUMBER


_TAKEN_APART = ["instead", "of"]
