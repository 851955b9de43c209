"""Pain in a message: where, which side, and whether it is one of the signs that stop everything at once.

The urgent signs are looked for first, in every clause, whatever else it says, and with more patience for spelling than any
other words. Only a plain denial ("no chest pain"), a time long past, an "if", or somebody else's body takes one away.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading import phrases
from core.reading.acts import Pain, Side
from core.reading.lexicon import HURT, PLACES, listed
from core.reading.muscle_talk import is_muscle_talk, muscles_gave_out
from core.reading.not_now import denial_start, excepted, figures, is_not_now, is_out_of_sight, is_painless_after
from core.reading.pain_clauses import NAMING, is_an_excuse, is_only_named, joined_clauses
from core.reading.places import NOT_THE_BODY_AFTER, Place, begin_of, end_of, is_lifted, is_part, part_of_back, places_in, side_alone
from core.reading.signs import breath_excepted, pressed_chest, signs_apart, signs_in
from core.reading.token import Kind, Token
from core.reading.urgent_spelling import misspelt_signs, urgent_spelling

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_WITH_CHEST = listed("words_pain", "with_chest")
_NO_PLACE = listed("words_pain", "no_place")
_STRONG = frozenset(
    {
        "severe", "sharp", "awful", "terrible", "intense", "stabbing", "horrible", "agonising", "excruciating", "violent",
        "massive", "badly", "bad", "strong", "horrendous", "horrific", "unbearable", "agony", "huge", "worst", "crippling",
        "blinding", "splitting", "dreadful", "frightful", "ghastly", "fierce", "savage", "vicious", "brutal", "hectic", "insane",
        "searing", "piercing", "screaming", "shocking", "ferocious", "murderous",
    }
)  # fmt: skip
_GAVE_WAY = frozenset({"popped", "pop", "snapped", "snap", "tore", "torn", "ripped", "cracked"})
_NEAR = 8
_HURTS_WITHIN = 12
"""Words between a place and what tells that it hurts, at most."""
_WHEREVER = "urgent-breathing-hurts"
_Span = tuple[int, int]
_Sign = tuple[str, int, int]
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
    named_alone = False
    ahead: Side | None = None
    for first, last in joined_clauses(patient, clauses):
        if all(token.kind is not Kind.WORD for token in patient[first:last]):
            continue
        places = places_in(patient, first, last)
        side = side_alone(patient, first, last)
        if (completed := _completed(patient, (first, last), places, side, found[-1] if found else None)) is not None:
            found[-1:] = [completed, (first, None, (first, last))]
            if side is not None:
                before = [replace(place, side=place.side or side) for place in before]
            continue
        if side is not None and before and before[-1].side is None:
            before = [*before[:-1], replace(before[-1], side=side)]
            named = first, last
            continue
        if side is not None and not found and not before and tokens[last - 1].text in {"one", "side"}:
            ahead = side
            continue  # "left one, my ankle, rolled it"
        if ahead is not None and places:
            places, ahead = [replace(place, side=place.side or ahead) for place in places], None
        if found and found[-1][1] is not None and _adds_places(patient, (first, last), places, found[-1][1]):
            found += [(place.at, Pain(place.name, place.side), (first, last)) for place in places]
            before, named_alone = places, False
            continue
        if found and (told := found[-1][1]) is not None and any(place.name == told.place for place in before):
            places = [place for place in places if not is_lifted(patient, first, place.at, last)]
        places, limb = _with_limb(places, before, named_alone=named_alone)
        told_here = _in_clause(patient, first, last, places, before)
        if limb is not None and any(pain is not None for _, pain, _ in told_here):
            found.append((limb.at, None, (begin_of(patient, limb, 0), limb.at + 1)))
        if not places and any(pain is not None and pain.place in {place.name for place in before} for _, pain, _ in told_here):
            found += [(place.at, None, (begin_of(patient, place, 0), place.at + 1)) for place in before]
        if named is not None and any(pain is not None and pain.place == before[-1].name for _, pain, _ in told_here):
            found.append((named[0], None, named))
        found += told_here
        before, named = places, None
        named_alone = is_only_named(patient, first, last, places)
    found = _with_signs_apart(patient, found)
    found = [_passed(patient, clauses, one) for one in found]
    found = [_on_that_side(patient, one) for one in found]
    words = {token.text for token in patient}
    found = [_at_its_worst(words, one) for one in found]
    return _together([one for one in found if not _is_breath_of_the_chest(patient, one, found)])


def _with_signs_apart(tokens: Sequence[Token], found: list[_Found]) -> list[_Found]:
    """With the urgent signs whose words stand in several clauses."""
    if (breath := breath_excepted(tokens)) is not None:
        found = [one for one in found if one[0] < breath[0]] + [(breath[0], Pain(urgent=True), breath)]
    if not any(pain is not None and pain.urgent for _, pain, _ in found):
        for meaning, first, last in signs_apart(tokens):
            place = _place_apart(tokens, meaning)
            told = Pain(urgent=True) if place is None else Pain(place.name, place.side, urgent=True)
            found = [one for one in found if one[1] is None or one[1].place != told.place or told.place is None]
            return [*found, (first, told, (first, last))]
    pressed = None if any(pain is not None and pain.urgent for _, pain, _ in found) else pressed_chest(tokens)
    if pressed is not None:
        found = [one for one in found if one[0] < pressed[0]] + [(pressed[0], Pain("chest", urgent=True), pressed)]
    return found


def _place_apart(tokens: Sequence[Token], meaning: str) -> Place | None:
    """Where a sign told in several clauses is: the chest, or the limb that is named."""
    if meaning not in {"urgent-chest", "urgent-numb"}:
        return None
    named = [place for place in places_in(tokens, 0, len(tokens)) if meaning == "urgent-numb" or place.name == "chest"]
    return named[0] if named else None


def _completed(
    tokens: Sequence[Token], clause: _Span, places: Sequence[Place], side: Side | None, before: _Found | None
) -> _Found | None:
    """The pain told before, with the side or the place that a clause adds and nothing else: "my elbow hurts, the left one"."""
    told = before[1] if before is not None else None
    if before is None or told is None:
        return None
    if told.place == "back" and (part := part_of_back(tokens, *clause)) is not None:
        return before[0], replace(told, place=part), before[2]
    if told.place is not None and told.side is None:
        if side is None and is_only_named(tokens, *clause, places):
            side = next((place.side for place in places if is_part(told.place, place.name)), None)
        return (before[0], replace(told, side=side), before[2]) if side is not None else None
    if told.place is None and not told.urgent and is_only_named(tokens, *clause, places):
        return before[0], replace(told, place=places[0].name, side=places[0].side), before[2]
    return None


def _adds_places(tokens: Sequence[Token], clause: _Span, places: Sequence[Place], told: Pain) -> bool:
    """Whether a clause only names where else it hurts: "on the right my shoulder hurts, on the left my hip"."""
    words = [tokens[i].text for i in range(*clause)]
    rest = [
        word
        for word in words
        if word not in NAMING | {"on", "too", "also", "and", "side", "today", "now", "again"} and word not in PLACES
    ]
    own = (
        any(place.side is not None for place in places)
        or bool({"my", "also", "too"} & set(words))
        or _lists(tokens, clause, places)
    )
    return told.place is not None and bool(places) and own and not rest and all(place.name != told.place for place in places)


def _lists(tokens: Sequence[Token], clause: _Span, places: Sequence[Place]) -> bool:
    """Whether a clause goes on with a list of places begun before it: "pain in my elbow, shoulder and wrist"."""
    begun = clause[0] > 1 and tokens[clause[0] - 1].text == "," and tokens[clause[0] - 2].text in PLACES
    return begun and len(places) > 1 and "and" in {tokens[i].text for i in range(*clause)}


def _on_that_side(tokens: Sequence[Token], one: _Found) -> _Found:
    """A pain with the side named last before it, where it is said to be there: "7 on the right, elbow sore that side"."""
    at, pain, (first, last) = one
    after = [token.text for token in tokens[last : last + 3]]
    if pain is None or pain.side is not None or not any(after[i : i + 2] == ["that", "side"] for i in range(2)):
        return one
    side = next((tokens[i].text for i in range(first - 1, -1, -1) if tokens[i].text in {"left", "right"}), None)
    return (at, replace(pain, side=Side(side)), (first, last)) if side is not None else one


def _at_its_worst(words: set[str], one: _Found) -> _Found:
    """A pain, urgent where the words of the message tell that it came suddenly and strong, or that something tore."""
    at, pain, span = one
    sudden = words & {"sudden", "suddenly", "nowhere"} and words & _STRONG
    torn = words & _GAVE_WAY and words & _STRONG - {"sharp", "stabbing", "badly", "bad", "strong", "worst"}
    unheard = ("worst" in words and words & {"ever", "life"}) or "thunderclap" in words or ("never" in words and "life" in words)
    headache = pain is not None and pain.place == "head" and unheard
    return (at, replace(pain, urgent=True), span) if pain is not None and (sudden or torn or headache) else one


def _with_limb(places: list[Place], before: list[Place], *, named_alone: bool) -> tuple[list[Place], Place | None]:
    """The places, with the side of the limb that was named alone before them, and that limb: "right leg, pulled my hammy"."""
    limb = before[0] if named_alone and len(before) == 1 and len(places) == 1 else None
    if limb is None or limb.side is None or not is_part(places[0].name, limb.name):
        return places, None
    return [replace(places[0], side=places[0].side or limb.side)], limb


def how_long(tokens: Sequence[Token], sentences: Sequence[_Span], at: int) -> Iterator[int]:
    """The numbers in the sentence of the pain at token `at` that tell how long it has hurt, or that both hurt: "my two legs"."""
    yield from (
        i
        for i in range(max(0, at - 1), min(at + _NEAR, len(tokens) - 1))
        if tokens[i].value == _BOTH and tokens[i + 1].text in PLACES
    )
    for first, last in sentences:
        if first <= at < last and not any(tokens[i].text in {"reps", "kg", "lb", "x"} for i in range(first, last)):
            for i in range(first, last - 1):
                if tokens[i].kind is Kind.NUMBER and tokens[i + 1].text in _LENGTHS:
                    yield i
        if first <= at < last:
            yield from (i for i in range(max(at, first + 2), last) if _is_of_the_last(tokens, i) or _is_since_a_set(tokens, i))


def _is_of_the_last(tokens: Sequence[Token], index: int) -> bool:
    """Whether a number says during how many it hurt: "on the last two"."""
    lead = [token.text for token in tokens[index - 2 : index]]
    return tokens[index].kind is Kind.NUMBER and lead in (["the", "last"], ["the", "final"], ["the", "first"])


def _is_since_a_set(tokens: Sequence[Token], index: int) -> bool:
    """Whether a number names the set since which it hurts: "since round two"."""
    return (
        tokens[index].kind is Kind.NUMBER
        and tokens[index - 1].text in {"set", "round", "station"}
        and tokens[index - 2].text == "since"
    )


_BOTH = 2
_LENGTHS = frozenset({"minutes", "hours", "day", "days", "week", "weeks", "month", "months", "year", "years"})


def _passed(tokens: Sequence[Token], clauses: Sequence[_Span], one: _Found) -> _Found:
    """A pain that was and of which the next clause says that it is better is no pain: "was sore this morning but it's fine"."""
    at, pain, span = one
    here = next((i for i, (first, last) in enumerate(clauses) if first <= span[0] < last), None)
    if pain is None or pain.urgent or here is None or here + 1 >= len(clauses):
        return one
    told = {tokens[i].text for i in range(*clauses[here])}
    if is_painless_after(tokens, *clauses[here + 1]) and (told & _AT_OTHER_TIMES or not told & _HURTING):
        return at, None, (span[0], clauses[here + 1][1])
    after = {tokens[i].text for i in range(*clauses[here + 1])}
    better = bool(after & _RECOVERED) and after <= _RECOVERED | _OF_RECOVERY
    return (at, None, span) if told & _WAS and better else one


_AT_OTHER_TIMES = frozenset({"always", "usually", "normally", "often", "sometimes"})
"""Words of a pain that the next clause may deny of this time: "always hurts on these, but not today"."""

_HURTING = HURT - {"clicking", "grinding", "popped", "niggle", "niggling", "tender", "pinching", "pulled", "cramp", "cramping"}
"""Words that say pain and nothing else; a joint may click and not hurt."""

_WAS = frozenset({"was", "were", "had", "felt", "did", "ached", "stung", "niggled"})
_RECOVERED = frozenset({"fine", "ok", "better", "good", "great", "gone", "alright", "healed"})
_OF_RECOVERY = frozenset(
    {"it", "is", "has", "feels", "feeling", "all", "now", "today", "again", "much", "went", "seems", "they", "are", "i", "am"}
)


def _is_breath_of_the_chest(tokens: Sequence[Token], one: _Found, found: Sequence[_Found]) -> bool:
    """Whether a sign is only the hard breathing that belongs to a chest in trouble, told beside it."""
    _, pain, (first, last) = one
    words = {tokens[i].text for i in range(first, last)}
    chest = any(other is not None and other.place == "chest" and other.urgent for _, other, _ in found)
    return pain is not None and pain.place is None and chest and bool(words & _OF_THE_CHEST) and not words & _DIZZY


_OF_THE_CHEST = listed("urgent", "breath") | {"air", "gasping", "attack"}
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
    if not any(sign[0].startswith("urgent") for sign in signs):
        signs += signs_in(tokens, first, last)
    if not signs and not places and before and before[-1].name == "chest" and _is_tight(tokens, before[-1].at, first, last):
        signs.append(("urgent-chest", first, last))
        places = before
    if not signs and places and is_an_excuse(tokens, first, last):
        signs.append(("pain", first, last))
    signs = _without_figures(tokens, first, last, signs, placed=bool(places))
    if alone is not None and alone.meaning == "urgent-dizzy" and is_out_of_sight(tokens, alone.first, alone.last):
        alone = None
    if alone is not None and not signs and not (alone.meaning == "pain" and hurts and places):
        signs.append((alone.meaning, begin, last))
    elif hurts and (places or before) and not signs:
        near = min((abs(hurts[0] - place.at) for place in places), default=0)
        if near <= _HURTS_WITHIN:
            signs.append(("pain", hurts[0], hurts[-1] + 1))
    if all(sign[0] == "pain" for sign in signs) and not (hurts or places or alone is not None):
        words = {tokens[i].text for i in range(first, last)}
        if not words & {"headache", "migraine"} and (not before or "not" in words):
            return []
    if not signs or muscles_gave_out(tokens, first, last, signs, places):
        return []
    start = min([sign[1] for sign in signs] + [begin_of(tokens, p, first) for p in places])
    end = max([sign[2] for sign in signs] + [end_of(tokens, p, last) for p in places])
    end = _past_side(tokens, end, last) if any(place.side is not None for place in places) else end
    if is_not_now(tokens, first, last, signs):
        sore = [place for place in places if place.at >= excepted(tokens, first, last)]
        if sore and all(_denied_before(tokens, first, sign, sore) for sign in signs):
            return [(place.at, Pain(place.name, place.side, place.name == "chest"), (start, end)) for place in sore]
        return [(start, None, (denial_start(tokens, first, start), end))]
    meanings = {sign[0] for sign in signs}
    urgent = {meaning for meaning in meanings if meaning != "pain"}
    if not places and (not urgent or urgent <= {"urgent-severe", "urgent-numb"}):
        places = before
        side = _side_of_one(tokens, first, last)
        if side is not None and len(before) == 1:
            places = [replace(before[0], side=side)]
    if not urgent and is_muscle_talk(tokens, first, last, places):
        return [(start, None, (start, end))]
    return [(start, pain, (start, end)) for pain in _told(meanings, urgent, places, tokens, first, last)]


def _denied_before(tokens: Sequence[Token], first: int, sign: _Sign, sore: Sequence[Place]) -> bool:
    """Whether a sign stands before the places that hurt and is denied of the rest: "no pain apart from my knee"."""
    lead = {tokens[i].text for i in range(first, sign[1])}
    return sign[1] < sore[0].at and bool(lead & {"no", "nothing", "not", "never", "without"})


def _is_tight(tokens: Sequence[Token], chest: int, first: int, last: int) -> bool:
    """Whether a clause says of the chest, named just before it, that it is tight: "my chest isn't right, it's tight"."""
    words = {tokens[i].text for i in range(first, last)}
    named = tokens[chest + 1]
    if named.kind is Kind.WORD and named.text not in _AFTER_CHEST:
        return False  # "my chest strap is on, it's tight"
    return bool(words & {"it", "feels"}) and bool(words & _TIGHT) and "not" not in words


_AFTER_CHEST = frozenset({"is", "was", "feels", "felt", "again", "now", "not", "has", "still", "today", "feeling", "does"})
_TIGHT = frozenset({"tight", "tightening", "tightness", "squeezing", "squeezed", "crushing", "constricted", "pressure"})


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


def _side_of_one(tokens: Sequence[Token], first: int, last: int) -> Side | None:
    """The side that a clause tells of a place named before it: "left one properly sore"."""
    words = [tokens[i].text for i in range(first, last)]
    sides = {word for word in words if word in {"left", "right"}}
    told = [side for side, one in pairwise(words) if one in {"one", "side"} and side in sides]
    told += [side for lead, side in pairwise(words[-2:]) if lead in {"the", "on", "my"} and side in sides]
    return Side(told[0]) if len(sides) == 1 and told else None


def _without_figures(tokens: Sequence[Token], first: int, last: int, signs: list[_Sign], *, placed: bool) -> list[_Sign]:
    """The signs, without urgent ones that are only a figure of speech or a heart rate: "dizzy with joy", "heart is 165"."""
    spoken = [span for span in figures(tokens, first, last) if not (placed and tokens[span[1] - 1].text in _OF_A_PLACE)]
    if _AT_REST & {tokens[i].text for i in range(first, last)}:
        spoken = [span for span in spoken if tokens[span[1] - 1].text not in _OF_WORK]
    kept = []
    for sign in signs:
        meaning, begin, end = sign
        figure = any(
            begin < start < end or (start <= begin < stop and (end <= stop or meaning == "urgent-heart")) for start, stop in spoken
        )
        if meaning.startswith("urgent") and (figure or (meaning == "urgent-heart" and _is_rate(tokens, begin, last))):
            continue
        kept.append(sign)
    return kept


_AT_REST = frozenset({"rest", "resting", "sitting", "sat", "seated", "lying", "still", "standing", "minutes"})
_OF_WORK = frozenset({"gasping", "breathless", "clappers"})
"""How figures end that tell only of hard work: "left me gasping"; of somebody at rest they are signs."""
_OF_A_PLACE = frozenset({"agony", "that", "but", "fire", "the"})
_RATE_AFTER = 5


def _is_rate(tokens: Sequence[Token], begin: int, last: int) -> bool:
    """Whether a heart is only told by its rate: a number follows at once, and nothing that is wrong with it."""
    near = range(begin, min(begin + _RATE_AFTER, last))
    told = {tokens[i].text for i in range(begin, last)}
    return any(tokens[i].kind is Kind.NUMBER for i in near) and not told & _WRONG_HEART


_WRONG_HEART = HURT | {
    "racing", "pounding", "skipping", "skipped", "fluttering", "flutter", "palpitations", "weird", "funny", "irregular", "missing",
    "missed", "stopped", "attack", "rest", "sitting", "lying", "resting", "slow",
}  # fmt: skip


def _is_exercise(tokens: Sequence[Token], said: phrases.Said, last: int) -> bool:
    """Whether "chest" here is the chest press, not the chest."""
    named = [i for i in range(said.first, said.last) if tokens[i].text == "chest"]
    if [token.text for token in tokens[said.first : said.first + 2]] == [
        "chest",
        "pressing",
    ] and said.last > said.first + _PRESSING:
        return False  # "chest pressing since the last set"
    return bool(named) and all(i + 1 < last and tokens[i + 1].text in NOT_THE_BODY_AFTER for i in named)


_PRESSING = 2


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
            if held is not None and held.place == pain.place and pain.side is None:
                merged = replace(merged, side=held.side)
            kept[double] = (kept[double][0], merged if pain.place else held or merged, kept[double][2])
            kept.append((at, None, span))
    return kept


def _same(one: Pain, other: Pain) -> bool:
    """Whether the second adds nothing to the first: the same place, or a sign without a place after any like it."""
    if other.place is None:
        return not other.urgent or (one.urgent and one.place is None)
    return one.place == other.place and (one.side == other.side or one.side is None or other.side is None)
