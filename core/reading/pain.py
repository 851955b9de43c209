"""Pain in a message: where, which side, and whether it is one of the signs that stop everything at once.

The urgent signs are looked for first, in every clause, whatever else it says, and with more patience for spelling than any
other words. Only a plain denial ("no chest pain"), a time long past, an "if", or somebody else's body takes one away.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading import phrases
from core.reading.acts import Pain
from core.reading.lexicon import GUARDS, HURT, listed, sayings
from core.reading.places import NOT_THE_BODY_AFTER, Place, begin_of, places_in, side_alone
from core.reading.token import Kind, Token
from core.reading.urgent_spelling import misspelt_signs, urgent_spelling

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_DENIALS = listed("words_pain", "denials")
_BETWEEN_DENIAL = listed("words_pain", "between_denial")
_LONG_PAST = sayings("long_past")
_STILL = sayings("still")
_MUSCLES = listed("words_pain", "muscles")
_OF_MUSCLES = listed("words_pain", "of_muscles")
_WITH_CHEST = listed("words_pain", "with_chest")
_NO_PLACE = listed("words_pain", "no_place")
_STRONG = frozenset(
    {"severe", "sharp", "awful", "terrible", "intense", "stabbing", "horrible", "agonising", "excruciating", "violent", "massive"}
)
_GAVE_WAY = frozenset({"popped", "pop", "snapped", "snap", "tore", "torn", "ripped", "cracked"})
_NEAR = 8
_WHEREVER = "urgent-breathing-hurts"
_FIGURES = sayings("figures")
_Span = tuple[int, int]
_Found = tuple[int, Pain | None, _Span]


def pains(tokens: Sequence[Token], clauses: Sequence[_Span]) -> list[_Found]:
    """Each pain with the index of its first token and the span it stands in.

    A span without a pain is talk of pain that is denied, past, imagined or somebody else's: explained, and no act.
    """
    patient = [
        replace(token, text=spelt) if token.kind is Kind.WORD and (spelt := urgent_spelling(token.raw)) else token
        for token in tokens
    ]
    found: list[_Found] = []
    before: list[Place] = []
    named: _Span | None = None
    for first, last in clauses:
        if all(token.kind is not Kind.WORD for token in patient[first:last]):
            continue
        places = places_in(patient, first, last)
        side = side_alone(patient, first, last)
        if side is not None and found and (told := found[-1][1]) is not None and told.place is not None and told.side is None:
            found[-1] = (found[-1][0], replace(told, side=side), found[-1][2])
            found.append((first, None, (first, last)))
            before = [replace(place, side=place.side or side) for place in before]
            continue
        if side is not None and before and before[-1].side is None:
            before = [*before[:-1], replace(before[-1], side=side)]
            named = first, last
            continue
        told = found[-1][1] if found else None
        if told is not None and told.place is None and not told.urgent and _is_only_named(patient, first, last, places):
            found[-1] = (found[-1][0], replace(told, place=places[0].name, side=places[0].side), found[-1][2])
            found.append((first, None, (first, last)))
            continue
        told_here = _in_clause(patient, first, last, places, before)
        if not places and any(pain is not None and pain.place in {place.name for place in before} for _, pain, _ in told_here):
            found += [(place.at, None, (begin_of(patient, place, 0), place.at + 1)) for place in before]
        if named is not None and any(pain is not None and pain.place == before[-1].name for _, pain, _ in told_here):
            found.append((named[0], None, named))
        found += told_here
        before, named = places, None
    found = [_passed(patient, clauses, one) for one in found]
    words = {token.text for token in patient}
    if (words & {"sudden", "suddenly"} and words & _STRONG) or (words & _GAVE_WAY and words & _STRONG - {"sharp", "stabbing"}):
        found = [(at, replace(pain, urgent=True) if pain is not None else None, span) for at, pain, span in found]
    return _together([one for one in found if not _is_breath_of_the_chest(patient, one, found)])


def how_long(tokens: Sequence[Token], sentences: Sequence[_Span], at: int) -> Iterator[int]:
    """The numbers that tell how long it has hurt, in the sentence of the pain at token `at`: "I've been sat down five minutes"."""
    for first, last in sentences:
        if first <= at < last and not any(tokens[i].text in {"reps", "kg", "lb", "x"} for i in range(first, last)):
            for i in range(first, last - 1):
                if tokens[i].kind is Kind.NUMBER and tokens[i + 1].text in _LENGTHS:
                    yield i
        if first <= at < last:
            yield from (i for i in range(max(at, first + 2), last) if _is_of_the_last(tokens, i))


def _is_of_the_last(tokens: Sequence[Token], index: int) -> bool:
    """Whether a number says during how many it hurt: "on the last two"."""
    lead = [token.text for token in tokens[index - 2 : index]]
    return tokens[index].kind is Kind.NUMBER and lead in (["the", "last"], ["the", "final"], ["the", "first"])


_LENGTHS = frozenset({"minutes", "hours", "day", "days", "week", "weeks", "month", "months", "year", "years"})


def _is_only_named(tokens: Sequence[Token], first: int, last: int, places: Sequence[Place]) -> bool:
    """Whether a clause names a place and says nothing else: "ouch, my toe"."""
    named = {place.at for place in places}
    return bool(named) and all(i in named or tokens[i].kind is Kind.MARK or tokens[i].text in _NAMING for i in range(first, last))


_NAMING = frozenset({"my", "the", "left", "right", "in", "it", "is", "poor", "both"})


def _passed(tokens: Sequence[Token], clauses: Sequence[_Span], one: _Found) -> _Found:
    """A pain that was and of which the next clause says that it is better is no pain: "was sore this morning but it's fine"."""
    at, pain, span = one
    here = next((i for i, (first, last) in enumerate(clauses) if first <= span[0] < last), None)
    if pain is None or pain.urgent or here is None or here + 1 >= len(clauses):
        return one
    told = {tokens[i].text for i in range(*clauses[here])}
    after = {tokens[i].text for i in range(*clauses[here + 1])}
    better = bool(after & _RECOVERED) and after <= _RECOVERED | _OF_RECOVERY
    return (at, None, span) if told & _WAS and better else one


_WAS = frozenset({"was", "were", "had", "felt", "did"})
_RECOVERED = frozenset({"fine", "ok", "better", "good", "great", "gone", "alright", "healed"})
_OF_RECOVERY = frozenset(
    {"it", "is", "has", "feels", "feeling", "all", "now", "today", "again", "much", "went", "seems", "they", "are", "i", "am"}
)


def _is_breath_of_the_chest(tokens: Sequence[Token], one: _Found, found: Sequence[_Found]) -> bool:
    """Whether a sign is only the hard breathing that belongs to a chest in trouble, told beside it."""
    _, pain, (first, last) = one
    words = {tokens[i].text for i in range(first, last)}
    chest = any(other is not None and other.place == "chest" and other.urgent for _, other, _ in found)
    return pain is not None and pain.place is None and chest and bool(words & _BREATH) and not words & _DIZZY


_BREATH = listed("urgent", "breath") | {"air", "gasping"}
_DIZZY = listed("urgent", "dizzy") | listed("urgent", "collapse")


def _in_clause(tokens: Sequence[Token], first: int, last: int, places: list[Place], before: list[Place]) -> list[_Found]:
    said = phrases.find(tokens, first, last, lambda meaning: meaning == "pain" or meaning.startswith("urgent"))
    counted = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER or tokens[i].text in {"kg", "lb", "reps"}]
    begin = counted[-1] + 1 if counted else first
    alone = phrases.whole(tokens, begin, last, lambda meaning: meaning == "pain" or meaning.startswith("urgent"))
    hurts = [i for i in range(first, last) if tokens[i].text in HURT]
    signs = [
        (one.meaning, one.first, one.last) for one in said if one.meaning != "urgent-chest" or not _is_exercise(tokens, one, last)
    ]
    if not any(sign[0].startswith("urgent") for sign in signs):
        signs += misspelt_signs(tokens, first, last)
    if alone is not None and not signs:
        signs.append((alone.meaning, begin, last))
    elif hurts and (places or before) and not signs:
        near = min((abs(hurts[0] - place.at) for place in places), default=0)
        if near <= _NEAR:
            signs.append(("pain", hurts[0], hurts[-1] + 1))
    if all(sign[0] == "pain" for sign in signs) and not (hurts or places or alone is not None):
        words = {tokens[i].text for i in range(first, last)}
        if not words & {"headache", "migraine"} and (not before or "not" in words):
            return []
    if not signs or _muscles_gave_out(tokens, first, last, signs, places):
        return []
    start = min([sign[1] for sign in signs] + [begin_of(tokens, p, first) for p in places])
    end = max([sign[2] for sign in signs] + [p.at + 1 for p in places])
    end = _past_side(tokens, end, last) if any(place.side is not None for place in places) else end
    if _is_not_now(tokens, first, last, signs):
        return [(start, None, (_denial_start(tokens, first, start), end))]
    meanings = {sign[0] for sign in signs}
    urgent = {meaning for meaning in meanings if meaning != "pain"}
    if not places and ((not urgent and hurts) or urgent == {"urgent-severe"}):
        places = before
    if not urgent and _is_muscle_talk(tokens, first, last, places):
        return [(start, None, (start, end))]
    return [(start, pain, (start, end)) for pain in _told(meanings, urgent, places, tokens, first, last)]


def _past_side(tokens: Sequence[Token], end: int, last: int) -> int:
    """The index after a side told behind what hurts: "hurting a little on the left side"; `end` when none follows."""
    for at in range(end, min(last, end + _NEAR)):
        if tokens[at].kind is Kind.NUMBER:
            break
        if tokens[at].text in {"left", "right"} or (tokens[at].text in {"l", "r"} and at + 1 == last):
            after = at + 1 + (at + 1 < last and tokens[at + 1].text in {"side", "one"})
            counted = after < len(tokens) and tokens[after].kind is Kind.NUMBER
            return end if counted else after
    return end


def _muscles_gave_out(
    tokens: Sequence[Token], first: int, last: int, signs: Sequence[tuple[str, int, int]], places: list[Place]
) -> bool:
    """Whether it is only that the arms or legs gave out: the end of a set, not a pain."""
    words = {tokens[i].text for i in range(first, last)}
    muscular = bool(places) and all(place.name in _MUSCLES and place.side is None for place in places)
    return muscular and bool(words & {"gave", "giving", "gives"}) and not words & HURT and all(sign[0] == "pain" for sign in signs)


def _is_exercise(tokens: Sequence[Token], said: phrases.Said, last: int) -> bool:
    """Whether "chest" here is the chest press, not the chest."""
    return any(
        tokens[i].text == "chest" and i + 1 < last and tokens[i + 1].text in NOT_THE_BODY_AFTER
        for i in range(said.first, said.last)
    )


def _told(meanings: set[str], urgent: set[str], places: list[Place], tokens: Sequence[Token], first: int, last: int) -> list[Pain]:
    """The pains of one clause: one for each place, or one without a place."""
    chest = "urgent-chest" in urgent
    acute = bool(urgent - _NO_PLACE - {_WHEREVER}) or bool(urgent & {_WHEREVER} and places)
    named = [place for place in places if not place.spread]
    if chest and not any(place.name == "chest" for place in named):
        named = [Place(first, "chest", None, spread=False), *named]
    words = {tokens[i].text for i in range(first, last)}
    if not named and words & {"headache", "migraine"}:
        named = [Place(first, "head", None, spread=False)]
    if "urgent-dizzy" in urgent and not words & {"headache", "migraine"}:
        named = [place for place in named if place.name not in {"head", "eye"}]
    acute_places = {place.name for place in named if acute or place.name == "chest"}
    hurting = acute or "pain" in meanings or bool(words & HURT)
    told = [Pain(place.name, place.side, place.name in acute_places) for place in named] if hurting else []
    if urgent & _NO_PLACE:
        told.insert(len(told) if chest else 0, Pain(urgent=True))
    return told or [Pain(urgent=bool(urgent))]


def _is_not_now(tokens: Sequence[Token], first: int, last: int, signs: Sequence[tuple[str, int, int]]) -> bool:
    """Whether what is told is denied, long past, imagined, a figure of speech or about somebody else."""
    line = " " + " ".join(token.text for token in tokens[first : last + 2]) + " "
    within = " " + " ".join(token.text for token in tokens[first:last]) + " "
    chest = any(meaning == "urgent-chest" for meaning, _, _ in signs)
    if any(figure in line and not (chest and figure == "on fire") for figure in _FIGURES) or _long_past(within):
        return True
    urgent = any(meaning != "pain" for meaning, _, _ in signs)
    start = min(sign[1] for sign in signs)
    lead = [token.text for token in tokens[first:start]]
    if {"if", "whenever", "case", "pretend", "imagine", "suppose"} & set(lead):
        return True
    if not urgent and (
        tokens[first].text in {"when", "do", "if"}
        or {"will", "would", "might", "could", "should"} & set(lead)
        or tokens[first].text in {"will", "does", "should", "can", "could"}
    ):
        return True
    if _of_somebody_else(tokens, first, max(sign[2] for sign in signs)):
        return True
    return all(
        _denied(
            tokens,
            first,
            begin,
            end,
            own="not" if meaning.startswith("urgent") or tokens[begin].text == "not" else "",
        )
        for meaning, begin, end in signs
    )


def _long_past(line: str) -> bool:
    """Whether the clause speaks of another time; "since yesterday" and "than last week" speak of now."""
    still = (word for word in _STILL if word != "now" or not any(f" {better} now " in line for better in _BETTER))
    return any(f" {time} " in line for time in _LONG_PAST) and not any(f" {word} " in line for word in still)


_BETTER = ("fine", "ok", "better", "good", "great", "gone", "alright", "healed")


_FOLK = frozenset({"lad", "lads", "lass", "boy", "boys", "missis"})


def _of_somebody_else(tokens: Sequence[Token], first: int, end: int) -> bool:
    """Whether somebody else is in pain: a person is named before, and no "I" or "my knee" comes between."""
    owner = None
    for i in range(first, end):
        word = tokens[i].text
        following = tokens[i + 1].text if i + 1 < end else ""
        if word in GUARDS["people"] | _FOLK or word in {"he", "she", "they", "his", "her", "their"}:
            owner = i
        elif word in {"i", "me"} or (word == "my" and following not in GUARDS["people"] | _FOLK):
            owner = None
    return owner is not None


def _denied(tokens: Sequence[Token], first: int, start: int, end: int, *, own: str) -> bool:
    """Whether the words from `start` are denied: "no pain", "does not hurt", "not at all dizzy"; `own` may stand inside."""
    if _denial_start(tokens, first, start) < start:
        return True
    inside = [token.text for token in tokens[start:end]]
    after = [token.text for token in tokens[end : end + 3]]
    if (
        after[:1] == ["free"]
        or (not own and set(after[:2]) & {"gone", "free"})
        or (after[:1] and after[0] in _ENDING and after[1:2] in (["gone"], ["passed"], ["stopped"]))
    ):
        return True
    return any(word in _DENIALS and word != own for word in inside) and not (own and inside[:1] == ["no"])


_ENDING = frozenset({"has", "have", "had", "is", "it", "all", "now", "just", "soon", "quickly"})


def _denial_start(tokens: Sequence[Token], first: int, start: int) -> int:
    """Where the denial right before `start` begins; `start` itself when there is none."""
    index = start - 1
    while index >= first and tokens[index].text in _BETWEEN_DENIAL:
        index -= 1
    return index if index >= first and tokens[index].text in _DENIALS else start


def _is_muscle_talk(tokens: Sequence[Token], first: int, last: int, places: Sequence[Place]) -> bool:
    """Whether only a muscle is sore or burning, which is work and not pain."""
    words = {tokens[i].text for i in range(first, last)}
    hurting = words & HURT
    named = [tokens[place.at].text for place in places]
    if not hurting and words & _COMPLAINING and {place.name for place in places} <= _MUSCLES:
        return all(place.side is None for place in places)  # "my quads are screaming"
    if hurting and hurting <= {"sore", "burning", "tender", "killing"} and not places:
        return True
    if hurting and hurting <= _OF_ONE and (any(place.side is not None for place in places) or set(named) <= set(_MUSCLES)):
        return False  # "left hammy's sore", "my forearm is aching": both would be from work
    return bool(places) and {place.name for place in places} <= _MUSCLES and bool(hurting) and hurting <= _OF_MUSCLES


_OF_ONE = frozenset({"sore", "aching", "aches", "ache", "achy", "achey", "tender"})
_COMPLAINING = listed("words_pain", "complaining")


def _together(found: list[_Found]) -> list[_Found]:
    """Each place once; a sign without a place once; arm or jaw beside a chest in trouble is urgent too."""
    places = {pain.place for _, pain, _ in found if pain is not None}
    chest = any(pain is not None and pain.place == "chest" and pain.urgent for _, pain, _ in found) or {"jaw", "arm"} <= places
    placed = any(place is not None for place in places)
    kept: list[_Found] = []
    for at, one, span in found:
        if one is None or (placed and one.place is None and not one.urgent):
            kept.append((at, None, span))
            continue
        pain = replace(one, urgent=True) if chest and one.place in _WITH_CHEST else one
        double = next((i for i, (_, other, _) in enumerate(kept) if other is not None and _same(other, pain)), None)
        if double is None:
            kept.append((at, pain, span))
        else:
            held = kept[double][1]
            merged = replace(pain, urgent=True) if held is not None and held.urgent else pain
            kept[double] = (kept[double][0], merged if pain.place else held or merged, kept[double][2])
            kept.append((at, None, span))
    return kept


def _same(one: Pain, other: Pain) -> bool:
    """Whether the second adds nothing to the first: the same place, or a sign without a place after any like it."""
    if other.place is None:
        return not other.urgent or (one.urgent and one.place is None)
    return one.place == other.place and (one.side == other.side or other.side is None)
