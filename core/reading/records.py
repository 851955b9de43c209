"""The numbers of a message: whether they make a record, correct the last one, or must be asked about.

Every number that no set phrase has explained ends here in a log or an amend, or the whole is unclear.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading import counted_in_words, guards, lost_counts, other_doers, other_figures, unheeded
from core.reading.acts import Act, Amend, Awaiting, Context, LastSet, Log, Unclear
from core.reading.amends import amend, of_the_last
from core.reading.asked_sets import asks
from core.reading.assembly import Open
from core.reading.corrected_parts import (
    NOTED,
    not_wondered_at,
    only_rejects,
    when_it_went_wrong,
    with_former,
    with_mistyped,
    with_rejected,
    with_what_was_left,
    without_confirmed,
    without_denied,
    without_explained,
    without_noted,
    words_of_the_former,
)
from core.reading.corrections import (
    NUMERIC,
    QUANTITIES,
    corrects,
    exchanged,
    field_named,
    is_starred,
    notes_another,
)
from core.reading.exercise_runs import counts_several
from core.reading.lexicon import COURTESY, EXERCISES, listed
from core.reading.loose_numbers import WHILE, is_loose, is_told_in_full, judges_a_load
from core.reading.marks_of_change import as_meant, before_taken_back, only_asserts, was_to_be, without_unit_again
from core.reading.phrases import Said
from core.reading.quantities import quantities
from core.reading.restated import goes_on_after_an_excuse, restate
from core.reading.sets import SIDES, logs
from core.reading.slips_in_place import hides_a_word_of_sets
from core.reading.spans import parted
from core.reading.token import Kind, Token
from core.reading.whose import could_and_did, counted_by_another

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from core.reading.parts import Part

_LONGEST_NOUGHT = 5
_MOST_NUMBERS = 40
_COUNTS = {"bare", "reps", "duration"}
_SPOKEN = {"mark-was", "mark-plain"}
_OF_NO_MATTER = {"mark-failure", "mark-plain"}
_SOFT = {"reserve", "more", "effort", "either"}


def records(
    tokens: Sequence[Token],
    sentences: Sequence[tuple[int, int]],
    clauses: Sequence[tuple[int, int]],
    said: Mapping[int, Said],
    explained: Collection[int],
    context: Context,
) -> list[tuple[int, Act]]:
    """The logs and amends of a message with the index each begins at; `Unclear` where its numbers begin when they stay open.

    `said` holds the set phrases by their first token; `explained` the tokens that other acts account for.
    """
    marked = {
        i for one in said.values() if one.meaning in {"mark-failure", "mark-same", "mark-plain"} for i in range(one.first, one.last)
    }
    open_numbers = [i for i, token in enumerate(tokens) if token.kind in NUMERIC and i not in explained and i not in marked]
    said = {at: as_meant(tokens, one, context) for at, one in said.items() if not only_asserts(tokens, one, sentences)}
    context = of_the_last(context) if any(one.meaning == "undo" for one in said.values()) else context
    marks = {one.meaning: one for one in sorted(said.values(), key=lambda one: -one.first) if one.meaning.startswith("mark")}
    if not open_numbers and not marks and len(tokens) > _LONGEST_NOUGHT and not counted_in_words.answers_in_words(tokens, context):
        return []
    if len(open_numbers) > _MOST_NUMBERS:
        return [(open_numbers[0], Unclear())]
    parts = quantities(
        tokens,
        _passed(tokens, said, explained),
        hold=context.hold,
        timed=context.awaiting is Awaiting.REPS or context.hold,
        sides=context.sides,
        load=context.load,
    )
    if counted_in_words.is_nought(tokens, context) or (not open_numbers and counted_in_words.is_just_one(tokens, context)):
        return [(0, Log(reps=0 if counted_in_words.is_nought(tokens, context) else 1))]
    if (change := exchanged(tokens, context)) is not None:
        return [change]
    if parts is None:
        return [(open_numbers[0], Unclear())] if open_numbers else []
    parts = with_what_was_left(without_confirmed(tokens, parts, context), context)
    parts, said = without_unit_again(parts, marks, said)
    correcting = corrects(tokens, parts, marks, said, context)
    counted = [part for part in parts if part.kind in QUANTITIES]
    if not open_numbers and not counted:
        same = marks.get("mark-same")
        around = next(([*tokens[a:b]] for a, b in parted(tokens, clauses) if same is not None and a <= same.first < b), tokens)
        if other_doers.tells_otherwise(around) or (same is not None and other_doers.likens_no_set(tokens, same.first, same.last)):
            return []
        return _without_numbers(tokens, parts, marks, context, correcting=correcting)
    if not counted:
        return [(open_numbers[0], Unclear())]
    at = open_numbers[0] if open_numbers else counted[0].at
    free = {i for one in said.values() for i in range(one.first, one.last)} | set(explained)
    free |= {part.at for part in parts if part.kind == "duration" and tokens[part.at].kind is Kind.CLOCK}
    strong = is_told_in_full(parts) or _begins_with_the_load(parts, context)
    former = with_former(tokens, parts, context) if correcting else None
    if correcting:
        contrasted = any(part.kind == "not" for part in parts)
        free |= {i for i, token in enumerate(tokens) if token.text in (_CONTRASTING if contrasted else _DENYING)}
        free |= words_of_the_former(tokens, former) | when_it_went_wrong(tokens, marks.get("mark-amend"))
        strong = strong or contrasted or "mark-amend" in marks or former is not None
        strong = strong or any(one.meaning == "mark-was" and one.last in open_numbers for one in said.values())
        strong = strong or any(token.text == "instead" for token in tokens)
    told_first = before_taken_back(parts, marks, correcting=correcting)
    free |= {i for i in range(told_first[-1].at, len(tokens)) if told_first is not parts and tokens[i].text == "not"}
    free |= _said_beside(tokens, sentences, context)
    told = _told(tokens, parts, said)
    if any(
        one.meaning == "pause" and [token.text for token in tokens[one.last : one.last + 1]] == ["then"] for one in said.values()
    ):
        return [(at, Unclear())]  # "give me a sec then 12 at 14kg"
    if context.last is None and tokens[0].text == "no" and tokens[1:2] and tokens[1].kind is Kind.NUMBER:
        return [(at, Unclear())]  # "no 12 at 16kg for me"
    to_be = context.last is None and any(was_to_be(tokens, one) for one in said.values())  # "was supposed to be 12 but"
    if to_be or _is_no_set(tokens, parts, told.soft, context) or (correcting and _is_no_correction(tokens, parts)):
        return [(at, Unclear())]
    failed = {i for one in said.values() if one.meaning in _OF_NO_MATTER for i in range(one.first, one.last)}
    failed |= {i for i in explained if i and tokens[i - 1].text == "but"} | {i for i in explained if tokens[i].text == "no"}
    if unheeded.is_unreal(tokens, open_numbers, failed) or unheeded.denies_what_was_left(tokens, parts, said):
        return [(at, Unclear())]
    if _kept_back(tokens, sentences, clauses, open_numbers, free, told, strong=strong, correcting=correcting) or asks(
        tokens, sentences, not_wondered_at(tokens, former, open_numbers), said, strong=strong
    ):
        return [(at, Unclear())]
    if not correcting and other_figures.points_at_another(tokens, parts):
        return [(at, Unclear())]
    if not correcting and (is_loose(tokens, clauses, told_first, said) or judges_a_load(tokens, parts)):
        return [(at, Unclear())]
    try:
        return _settled(tokens, clauses, parts, marks, said, context, at, correcting=correcting)
    except Open as doubt:
        return [(at, Unclear(doubt.choices))]


def _told(tokens: Sequence[Token], parts: Sequence[Part], said: Mapping[int, Said]) -> guards.Told:
    """What is known of the tokens before it is asked whether their numbers count."""
    spoken = frozenset(i for one in said.values() if one.meaning in _SPOKEN for i in range(one.first, one.last))
    return guards.Told(_soft_numbers(tokens, parts), frozenset(part.at for part in parts if part.kind == "bare"), spoken)


def _said_beside(tokens: Sequence[Token], sentences: Sequence[tuple[int, int]], context: Context) -> set[int]:
    """The words that only lead to a set: a polite request, who counted, "could do"."""
    beside = {i for i in range(len(tokens)) if could_and_did(tokens, i, context.load)}
    for sentence in sentences:
        beside |= guards.polite_request(tokens, *sentence) | counted_by_another(tokens, *sentence)
    return beside


def _is_no_set(tokens: Sequence[Token], parts: Sequence[Part], soft: Collection[int], context: Context) -> bool:
    """Whether the numbers are known to be something else than a set: a time, a price, a comparison, no more than about so many."""
    return (
        unheeded.tells_the_time(tokens, parts, awaited=context.awaiting is Awaiting.REPS)
        or unheeded.is_vague(tokens, soft)
        or unheeded.counts_aloud(tokens)
        or unheeded.compares(tokens, parts)
        or unheeded.asks_what_it_was(tokens, [part.at for part in parts if part.numbers])
        or unheeded.leads_with_a_stranger(tokens)
        or unheeded.names_a_price(tokens, parts)
        or unheeded.has_no_unit(tokens)
        or unheeded.tells_of_half_a_set(tokens)
        or other_figures.tells_of_oneself(tokens)
        or other_figures.names_an_address(tokens)
        or other_figures.tells_how_often(tokens)
        or other_figures.lasts_otherwise(tokens)
        or other_figures.splits_a_figure(tokens)
        or other_figures.opens_with_more(tokens, parts)
        or other_figures.is_left_of_a_thing(tokens, parts)
        or other_figures.tells_what_is_owned(tokens)
        or (context.awaiting is not Awaiting.REPS and unheeded.lists_pairs(tokens, parts))
    )


def _is_no_correction(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether what looks like a correction of the last record is of another, or of something else than a record."""
    return unheeded.is_of_another_set(tokens) or other_figures.counts_a_thing(tokens, parts)


_HANDING = frozenset({"hand", "grab", "pass", "bring", "fetch"})
"""What somebody is told to do with a load that nobody has lifted yet: "hand me the 8kg ones"."""
_SCALES = frozenset({"scale", "scales", "weighed", "weigh"})
_DENYING = frozenset({"not", "without", "no", "is", "be", "instead"})
_CONTRASTING = _DENYING | {"think", "believe", "guess", "pretty", "sure", "probably", "are"}
_WITH_A_LOAD = listed("words_records", "with_a_load")
_USING = listed("words_records", "using")
_USED_FOR = listed("words_records", "used_for")


def _settled(
    tokens: Sequence[Token],
    clauses: Sequence[tuple[int, int]],
    parts: list[Part],
    marks: dict[str, Said],
    said: Mapping[int, Said],
    context: Context,
    at: int,
    *,
    correcting: bool,
) -> list[tuple[int, Act]]:
    restated = restate(tokens, parts, said, context)
    if restated is not None:
        return _told_and_changed(*restated, context, at)
    if correcting and (former := with_former(tokens, parts, context)) is not None:
        return [(at, amend(former, context, about=field_named(tokens)))]
    if correcting:
        if only_rejects(tokens, parts, marks) or notes_another(tokens, parts, context):
            raise Open
        meant = marks.get("mark-amend") or marks.get("mark-was")
        if meant is not None and any(token.text in NOTED for token in tokens[: meant.first]):
            rejected = {part.kind for part in parts if part.at < meant.first}
            parts = [part for part in parts if part.at >= meant.first]
            if rejected & {"reserve", "left", "more"} and [part.kind for part in parts if part.numbers] == ["bare"]:
                raise Open
        parts = without_denied(tokens, without_noted(tokens, parts), context)
        if meant is None or not any(token.text in NOTED for token in tokens[: meant.first]):
            parts = with_mistyped(tokens, with_rejected(tokens, parts), context)
            parts = without_explained(tokens, parts, context)
        if is_starred(tokens):
            parts = [part for part in parts if part.kind != "by"]
        start = min(
            (one.first for name, one in marks.items() if name in {"mark-amend", "mark-sorry", "mark-was"}),
            default=at,
        )
        changed_fields = amend(parts, context, about=field_named(tokens))
        if changed_fields.reps == 0 and "mark-failure" in marks:
            raise Open  # "it was nothing left at the end, zero"
        return [(min(at, start), changed_fields)]
    sorry = marks.get("mark-sorry")
    if sorry is not None:
        before = [part for part in parts if part.at < sorry.first]
        after = [part for part in parts if part.at >= sorry.first]
        said_after = {part.kind for part in after} & QUANTITIES
        uncounted = not {part.kind for part in before} & _COUNTS and bool(said_after & _COUNTS)  # "20kg barbell, no plates, 12"
        adds = said_after <= {"reserve", "effort"} - {part.kind for part in before}  # "12 at 20kg abeg, one remain"
        goes_on = goes_on_after_an_excuse(tokens, sorry, before, after)  # "only 7 sorry.. baby woke.. 10kg"
        if any(part.kind in QUANTITIES for part in before) and said_after and not adds and not uncounted and not goes_on:
            changed, made = [replace(part, dropped=frozenset()) for part in after], logs(before, context)
            _check_change(made, changed)
            return [*((at, log) for log in made), (sorry.first, amend(changed, context))]
    made = logs(parts, context)
    used = {i for one in said.values() for i in range(one.first, one.last)}
    plain = {i for one in said.values() if one.meaning == "mark-plain" for i in range(one.first, one.last)}
    if made and (
        unheeded.leaves_out_a_weight(tokens, made, used)
        or unheeded.drops_a_count(tokens, used)
        or hides_a_word_of_sets(tokens, used)
        or unheeded.spreads_what_was_left(tokens, parts, made)
        or unheeded.loses_what_was_left(tokens, made, used - _said_to_be_possible(said))
    ):
        raise Open
    if made and all(log.load is not None and log.reps is None and log.seconds is None and not log.same for log in made):
        clause = next((span for span in clauses if span[0] <= at < span[1]), (0, len(tokens)))
        begin, end = next((span for span in parted(tokens, [clause]) if span[0] <= at < span[1]), clause)
        end = next((i for i in range(at, end) if tokens[i].text in WHILE or tokens[i].text == "and"), end)
        words = {tokens[i].text for i in range(begin, end) if tokens[i].kind is Kind.WORD and i not in plain}
        if words & _USING:
            words -= _USING | _USED_FOR | EXERCISES  # "I used the 4 kg weights for that exercise"
        if (
            parts[-1].kind == "in"
            or (context.awaiting is Awaiting.NONE and context.last is not None)  # "looked at the label, 14kg"
            or any(log.side is not None for log in made)
            or any(token.text in _SCALES for token in tokens)
            or tokens[begin].text in _HANDING
            or (tokens[begin].text == "use" and context.awaiting is not Awaiting.REPS)
            or words - _WITH_A_LOAD - COURTESY
        ):
            raise Open  # a load alone, and words that are not about a set
    taken_back = [one.first for one in said.values() if one.meaning == "undo"]
    counts = [part.at for part in parts if part.kind in _COUNTS]
    if len(counts) == len(made) and any(min(counts) < undone < max(counts) for undone in taken_back):
        return list(zip(counts, made, strict=True))  # "14 at 8kg, scratch that, 15 at 8kg"
    return [(at, log) for log in made]


def _said_to_be_possible(said: Mapping[int, Said]) -> set[int]:
    """The tokens of phrases such as "could have done another", which count only where they become a reserve."""
    return {i for one in said.values() if one.meaning == "mark-could" for i in range(one.first, one.last)}


def _told_and_changed(given: list[Part], changed: list[Part] | None, context: Context, at: int) -> list[tuple[int, Act]]:
    """The sets of what was told, and what amends them in the same breath."""
    made = logs(given, context)
    _check_change(made, changed)
    told: list[tuple[int, Act]] = [(at, log) for log in made]
    if changed is None:
        return told
    if any(part.kind == "not" for part in changed) and len(made) == 1:
        context = replace(context, last=LastSet(made[0].reps, made[0].load, made[0].unit, made[0].side, made[0].seconds))
    change = amend(changed, context)
    if len(made) == 1 and _says_the_same(made[0], change):
        return told  # "20 reps at 8kg haha I mean 8kg"
    return [*told, (changed[0].at, change)]


def _says_the_same(log: Log, change: Amend) -> bool:
    """Whether a correction gives nothing that the set told before it does not have."""
    fields = ("reps", "load", "unit", "side", "reserve", "rpe", "seconds")
    return all(getattr(change, field) in {None, getattr(log, field)} for field in fields)


def _check_change(made: Sequence[Log], changed: Sequence[Part] | None) -> None:
    """Raises `Open` when a bare number changes the reps or the load of a set just told: "12 at 20kg no 22"."""
    numbers = [part for part in changed or () if part.numbers]
    if len(numbers) != 1 or numbers[0].kind != "bare" or len(made) != 1:
        return
    load, reps, value = made[0].load, made[0].reps, numbers[0].numbers[0]
    if load is not None and reps is not None and abs(value - load) < abs(value - reps):
        raise Open


def _kept_back(
    tokens: Sequence[Token],
    sentences: Sequence[tuple[int, int]],
    clauses: Sequence[tuple[int, int]],
    open_numbers: Sequence[int],
    free: Collection[int],
    told: guards.Told,
    *,
    strong: bool,
    correcting: bool,
) -> bool:
    if (
        other_doers.of_another_day(tokens, sentences, clauses)
        or (not correcting and lost_counts.lost_count(tokens))
        or counts_several(tokens)
    ):
        return True
    for first, last in sentences:
        if any(first <= i < last for i in open_numbers) and other_doers.tells_of_others(tokens, first, last, free):
            return True
    for first, last in parted(tokens, clauses):
        inside = any(first <= i < last for i in open_numbers)
        if inside and guards.keeps_back(tokens, first, last, free, told, strong=strong):
            return True
    return False


def _soft_numbers(tokens: Sequence[Token], parts: Sequence[Part]) -> frozenset[int]:
    """The indices of the numbers that are reserve or effort."""
    soft: set[int] = set()
    right = any(part.kind == "right" for part in parts) and sum(part.kind in {"left", "left_side"} for part in parts) == 1
    for part, following in zip(parts, [*parts[1:], None], strict=True):
        is_left = following is not None and following.kind == "left" and part.kind == "bare" and not right
        if part.kind in _SOFT or is_left:
            end = following.at if following is not None else len(tokens)
            soft.update(i for i in range(part.at, end) if tokens[i].kind is Kind.NUMBER)
    return frozenset(soft)


def _begins_with_the_load(parts: Sequence[Part], context: Context) -> bool:
    """Whether the load suggested leads, and one count follows: "w/ 17.5, 14"."""
    told = [part for part in parts if part.kind not in {"comma", "break", "and"}]
    kinds = [part.kind for part in told]
    return kinds == ["with", "bare", "bare"] and told[1].numbers[0] == context.load != told[2].numbers[0] and not told[2].dropped


def _passed(tokens: Sequence[Token], said: Mapping[int, Said], explained: Collection[int]) -> dict[int, Said]:
    """The set phrases by their first token, and every other explained stretch as one to pass over."""
    passed = dict(said)
    covered = {i for one in said.values() for i in range(one.first, one.last)}
    run: int | None = None
    for index in range(len(tokens) + 1):
        inside = index in explained and index not in covered
        if inside and run is None:
            run = index
        elif not inside and run is not None:
            passed[run] = Said("explained", run, index)
            run = None
    return passed


def _without_numbers(
    tokens: Sequence[Token], parts: Sequence[Part], marks: dict[str, Said], context: Context, *, correcting: bool
) -> list[tuple[int, Act]]:
    """What a message without numbers may still say: "same again", the side or the unit meant, that the whole hold was held."""
    if "mark-same" in marks and {token.text for token in tokens} & {"plus", "minus", "extra", "fewer"}:
        return [(marks["mark-same"].first, Unclear())]  # "same again plus one"
    if "mark-same" in marks:
        spent = Decimal(0) if "mark-failure" in marks else None
        named = {SIDES[part.kind] for part in parts if part.kind in SIDES} if context.sides else set()
        side = named.pop() if len(named) == 1 else None
        return [(marks["mark-same"].first, Log(same=True, side=side, reserve=spent))]
    whole = marks.get("mark-whole")
    if whole is not None and not context.hold and context.awaiting is Awaiting.REPS:
        minute = any(token.text == "minutes" for token in tokens[whole.first : whole.last])
        return [(whole.first, Log(seconds=60) if minute else Unclear())]
    if "mark-whole" in marks and context.hold and context.awaiting is Awaiting.REPS:
        held = Log(seconds=context.target) if context.target else Unclear()
        return [(marks["mark-whole"].first, held)]
    known = context.last is not None and context.awaiting is not Awaiting.REPS
    kinds = {part.kind for part in parts} - {"with", "break", "comma", "and"}
    if known and "mark-failure" in marks and kinds == {"failure"}:
        return [(marks["mark-failure"].first, Amend(reserve=Decimal(0)))]
    if correcting and context.last is not None:
        try:
            changed = amend(parts, context)
        except Open:
            return []
        if changed != Amend():
            return [(min((one.first for one in marks.values()), default=0), changed)]
    return []
