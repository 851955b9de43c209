"""The numbers of a message: whether they make a record, correct the last one, or must be asked about.

Every number that no set phrase has explained ends here in a log or an amend, or the whole is unclear.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading import guards
from core.reading.acts import Act, Amend, Awaiting, Context, Log, Unclear
from core.reading.amends import amend
from core.reading.assembly import Open
from core.reading.lexicon import AMOUNTS, COURTESY, listed
from core.reading.phrases import Said
from core.reading.quantities import Part, quantities
from core.reading.restated import restate
from core.reading.sets import logs
from core.reading.sentences import parted
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

_LONGEST_NOUGHT = 5
_MOST_NUMBERS = 40
_SPOKEN = {"mark-was", "mark-plain"}
_NUMERIC = {Kind.NUMBER, Kind.ODD, Kind.CLOCK}
_SOFT = {"reserve", "more", "effort", "either"}
_QUANTITIES = {"bare", "reps", "load", "reserve", "more", "effort", "either", "duration", "set_count"}
_SILENT_AMENDS = {"left_side", "left", "right", "each", "bodyweight", "failure", "unit_only"}


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
    marked = {i for one in said.values() if one.meaning == "mark-failure" for i in range(one.first, one.last)}
    open_numbers = [i for i, token in enumerate(tokens) if token.kind in _NUMERIC and i not in explained and i not in marked]
    marks = {one.meaning: one for one in sorted(said.values(), key=lambda one: -one.first) if one.meaning.startswith("mark")}
    if not open_numbers and not marks and len(tokens) > _LONGEST_NOUGHT:
        return []
    if len(open_numbers) > _MOST_NUMBERS:
        return [(open_numbers[0], Unclear())]
    timed = context.awaiting is Awaiting.REPS or context.hold
    parts = quantities(tokens, _passed(tokens, said, explained), hold=context.hold, timed=timed, sides=context.sides)
    if _is_nought(tokens, context):
        return [(0, Log(reps=0))]
    if (exchanged := _exchanged(tokens, context)) is not None:
        return [exchanged]
    if parts is None:
        return [(open_numbers[0], Unclear())] if open_numbers else []
    correcting = _corrects(tokens, parts, marks, said, context)
    counted = [part for part in parts if part.kind in _QUANTITIES]
    if not open_numbers and not counted:
        same = marks.get("mark-same")
        around = next(([*tokens[a:b]] for a, b in parted(tokens, clauses) if same is not None and a <= same.first < b), tokens)
        if guards.tells_otherwise(around):
            return []
        return _without_numbers(tokens, parts, marks, context, correcting=correcting)
    at = open_numbers[0] if open_numbers else counted[0].at
    if not counted:
        return [(at, Unclear())]
    free = {i for one in said.values() for i in range(one.first, one.last)} | set(explained)
    free |= {part.at for part in parts if part.kind == "duration" and tokens[part.at].kind is Kind.CLOCK}
    strong = _strong(parts)
    if correcting:
        contrasted = any(part.kind == "not" for part in parts)
        free |= {i for i, token in enumerate(tokens) if token.text in (_CONTRASTING if contrasted else _DENYING)}
        strong = strong or contrasted or "mark-amend" in marks
    for sentence in sentences:
        free |= guards.polite_request(tokens, *sentence)
    spoken = {i for one in said.values() if one.meaning in _SPOKEN for i in range(one.first, one.last)}
    told = guards.Told(
        _soft_numbers(tokens, parts), frozenset(part.at for part in parts if part.kind == "bare"), frozenset(spoken)
    )
    if _kept_back(tokens, sentences, clauses, open_numbers, free, told, strong=strong) or _asks(
        tokens, sentences, open_numbers, said, strong=strong
    ):
        return [(at, Unclear())]
    if not correcting and (_loose(tokens, parts, said) or _judges_a_load(tokens, parts)):
        return [(at, Unclear())]
    try:
        return _settled(tokens, clauses, parts, marks, said, context, at, correcting=correcting)
    except Open as doubt:
        return [(at, Unclear(doubt.choices))]


def _is_nought(tokens: Sequence[Token], context: Context) -> bool:
    """Whether a bare "none" answers how many."""
    first = next(parted(tokens, [(0, len(tokens))]), (0, 0))[1]
    end = next((i for i in range(1, first) if tokens[i].text in _WHILE), first)
    words = [token.text for token in tokens[:end] if token.kind is not Kind.MARK and token.text not in COURTESY]
    return context.awaiting is Awaiting.REPS and words in (
        ["none"],
        ["nothing"],
        ["nada"],
        ["not", "one"],
        ["not", "a", "one"],
    )


_WHILE = {"as", "while", "whilst", "before", "after", "until", "till", "though", "despite", "because", "when", ",", ".", "so", "since"}
_DENYING = frozenset({"not", "without", "no", "is", "be"})
_CONTRASTING = _DENYING | {"think", "believe", "guess", "pretty", "sure", "probably"}
_WITH_A_LOAD = listed("words_records", "with_a_load")
_ASKING = frozenset(
    {
        "what",
        "how",
        "is",
        "was",
        "should",
        "can",
        "do",
        "does",
        "when",
        "am",
        "did",
        "will",
        "where",
        "why",
        "which",
        "could",
        "are",
    }
)
_EXCHANGING = frozenset({"change", "replace", "swap", "correct", "switch", "amend", "update", "exchange"})
_CHANGING = frozenset({"meant", "mean", "make", "change", "correction", "edit", "should", "typo", "replace", "amend", "update"})
_ABSENT = listed("words_records", "absent")
_BESIDE_LIST = listed("words_sets", "beside_list")
_RECORDED = frozenset({"weight", "load", "reps"})
_NOTED = listed("words_records", "noted")


def _names(tokens: Sequence[Token]) -> str:
    """What a correction speaks of: "load" ("change the weight to 18"), "rpe", "reserve", or "" when it does not say."""
    words = {token.text for token in tokens}
    if words & {"reps", "rep"}:
        return ""
    if words & {"weight", "load", "weights"}:
        return "load"
    return "rpe" if words & AMOUNTS["rpe"] else "reserve" if words & {"reserve", "rir"} else ""


def _exchanged(tokens: Sequence[Token], context: Context) -> tuple[int, Act] | None:
    """Such as "change 11 to 12": the number given up, and the one for it."""
    for at in range(len(tokens) - 3):
        verb, rejected, link, meant = tokens[at : at + 4]
        numbers = (
            rejected.kind is Kind.NUMBER and meant.kind is Kind.NUMBER and sum(t.kind in _NUMERIC for t in tokens) == len("ab")
        )
        if numbers and verb.text in _EXCHANGING and link.text in {"to", "for", "with", "by", "into"}:
            load = context.last is not None and context.last.load == rejected.value and context.last.reps != rejected.value
            try:
                said = [Part("not"), Part("bare", (rejected.value,)), Part("bare", (meant.value,))]
                return at, amend(said, context, about="load" if load else "")
            except Open:
                return at, Unclear()
    return None


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
    restated = restate(parts, said, context)
    if restated is not None:
        given, changed = restated
        told = [(at, log) for log in logs(given, context)]
        return told if changed is None else [*told, (changed[0].at, amend(changed, context))]
    if correcting:
        meant = marks.get("mark-amend") or marks.get("mark-was")
        if meant is not None and any(token.text in _NOTED for token in tokens[: meant.first]):
            rejected = {part.kind for part in parts if part.at < meant.first}
            parts = [part for part in parts if part.at >= meant.first]
            if rejected & {"reserve", "left", "more"} and [part.kind for part in parts if part.numbers] == ["bare"]:
                raise Open
        parts = _without_noted(tokens, parts)
        if meant is None or not any(token.text in _NOTED for token in tokens[: meant.first]):
            parts = _with_rejected(tokens, parts)
        if _is_starred(tokens):
            parts = [part for part in parts if part.kind != "by"]
        start = min(
            (one.first for name, one in marks.items() if name in {"mark-amend", "mark-sorry", "mark-was"}),
            default=at,
        )
        return [(min(at, start), amend(parts, context, about=_names(tokens)))]
    sorry = marks.get("mark-sorry")
    if sorry is not None:
        before = [part for part in parts if part.at < sorry.first]
        after = [part for part in parts if part.at >= sorry.first]
        if any(part.kind in _QUANTITIES for part in before) and any(part.kind in _QUANTITIES for part in after):
            changed = [replace(part, dropped=frozenset()) for part in after]
            return [*((at, log) for log in logs(before, context)), (sorry.first, amend(changed, context))]
    made = logs(parts, context)
    if made and all(log.load is not None and log.reps is None and log.seconds is None and not log.same for log in made):
        clause = next((span for span in clauses if span[0] <= at < span[1]), (0, len(tokens)))
        begin, end = next((span for span in parted(tokens, [clause]) if span[0] <= at < span[1]), clause)
        end = next((i for i in range(at, end) if tokens[i].text in _WHILE or tokens[i].text == "and"), end)
        if {token.text for token in tokens[begin:end] if token.kind is Kind.WORD} - _WITH_A_LOAD - COURTESY:
            raise Open  # a load alone, and words that are not about a set
    return [(at, log) for log in made]


def _without_noted(tokens: Sequence[Token], parts: list[Part]) -> list[Part]:
    """The parts without what was said to be typed wrongly, after what was meant: "18kg, I typed 81"."""
    said = [part.at for part in parts if part.numbers]
    noted = next((i for i, t in enumerate(tokens) if t.text in _NOTED and i and tokens[i - 1].text == "i" and said and i > said[0]), None)
    if noted is None:
        return parts
    end = next((i for i in range(noted, len(tokens)) if tokens[i].text in {",", "but", ".", "not"}), len(tokens))
    return [part for part in parts if not noted < part.at < end]


def _loose(tokens: Sequence[Token], parts: Sequence[Part], said: Mapping[int, Said]) -> bool:
    """Whether a bare number after a full set counts something else: "11 at 20kg, 3 stations to go", "but only 9 clean"."""
    if not _strong(parts):
        return False
    counted = [part for part in parts if part.kind in {"bare", "reps"}]
    for part in counted[1:]:
        after = part.at + 1
        if tokens[part.at - 1].text in {"at", "@", "with", "on"}:
            continue  # "6 @26 failure"
        if part.kind == "bare" and after in said and said[after].meaning == "mark-failure":
            return tokens[after].text in {"failed", "fail", "missed", "failure"}  # "11 at 20kg, 12 failed"
        if part.kind == "bare" and after < len(tokens) and after not in said and tokens[after].kind is Kind.WORD:
            word = tokens[after].text
            if word not in _BESIDE_LIST | _WHILE and word not in COURTESY and not tokens[after].glued:
                return True
    return False


def _judges_a_load(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a lone number is a dumbbell that is judged: "the 16 was too heavy"."""
    numbers = [part for part in parts if part.numbers]
    if len(numbers) != 1 or numbers[0].kind != "bare":
        return False
    after = [token.text for token in tokens[numbers[0].at + 1 : numbers[0].at + 6]]
    return after[:1] in (["was"], ["is"], ["felt"], ["feels"], ["were"]) and bool(
        set(after) & {"heavy", "light", "heavier", "lighter"}
    )


def _with_rejected(tokens: Sequence[Token], parts: list[Part]) -> list[Part]:
    """The parts of "11 should be 12" and "20kg was wrong, it was 18kg" with what is given up marked as such."""
    numbers = [part for part in parts if part.numbers]
    pair = len(numbers) == len("ab") and numbers[0].kind in {"bare", "reps", "load"} and not any(p.kind == "not" for p in parts)
    if not pair:
        return parts
    between = [token.text for token in tokens[numbers[0].at : numbers[1].at]]
    if "wrong" not in between and ("should", "be") not in pairwise(between):
        return parts
    meant = numbers[1]
    if meant.kind == "bare" and numbers[0].kind == "load":
        meant = replace(meant, kind="load")
    return [Part("not"), numbers[0], meant]


def _kept_back(
    tokens: Sequence[Token],
    sentences: Sequence[tuple[int, int]],
    clauses: Sequence[tuple[int, int]],
    open_numbers: Sequence[int],
    free: Collection[int],
    told: guards.Told,
    *,
    strong: bool,
) -> bool:
    for first, last in sentences:
        if any(first <= i < last for i in open_numbers) and guards.tells_of_others(tokens, first, last, free):
            return True
    for first, last in parted(tokens, clauses):
        inside = any(first <= i < last for i in open_numbers)
        if inside and guards.keeps_back(tokens, first, last, free, told, strong=strong):
            return True
    return False


def _soft_numbers(tokens: Sequence[Token], parts: Sequence[Part]) -> frozenset[int]:
    """The indices of the numbers that are reserve or effort."""
    soft: set[int] = set()
    right = any(part.kind == "right" for part in parts)
    for part, following in zip(parts, [*parts[1:], None], strict=True):
        is_left = following is not None and following.kind == "left" and part.kind == "bare" and not right
        if part.kind in _SOFT or is_left:
            end = following.at if following is not None else len(tokens)
            soft.update(i for i in range(part.at, end) if tokens[i].kind is Kind.NUMBER)
    return frozenset(soft)


def _strong(parts: Sequence[Part]) -> bool:
    """Whether reps and load are said in full."""
    kinds = {part.kind for part in parts}
    joined = bool(kinds & {"at", "at_sign", "with"}) and sum(part.kind == "bare" for part in parts) > 1
    return joined or (bool(kinds & {"load", "bodyweight"}) and bool(kinds & {"bare", "reps"})) or "reps" in kinds


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


def _corrects(
    tokens: Sequence[Token], parts: Sequence[Part], marks: dict[str, Said], said: Mapping[int, Said], context: Context
) -> bool:
    """Whether the numbers correct the last record rather than make a new one."""
    if _is_starred(tokens):
        return True
    counted = [part for part in parts if part.kind in _QUANTITIES or part.kind in _SILENT_AMENDS]
    fresh = context.awaiting is Awaiting.REPS and context.last is None
    kinds = {part.kind for part in _without_not(parts)}
    if fresh and "load" in kinds and kinds & {"bare", "reps"} and not _said_to_change(tokens, marks):
        return False  # nothing was recorded that "14 at 7kg, in fact" could correct
    if any(part.kind == "not" for part in parts) and len(counted) > 1:
        return True
    begun = min((part.at for part in counted), default=0)
    if "mark-amend" not in marks and any(one.meaning == "undo" and one.first < begun for one in said.values()):
        return False
    if "mark-amend" in marks and _corrects_by(tokens, marks["mark-amend"], counted):
        return True
    awaited = context.awaiting is Awaiting.REPS
    if context.last is not None and not awaited and _adds(tokens, parts, counted):
        return True
    full = any(part.kind in {"bare", "reps"} for part in parts) and any(part.kind == "load" for part in parts)
    sorry = marks.get("mark-sorry")
    told = [one for one in said.values() if one.meaning == "mark-was"]
    was = next((one for one in told if _followed(parts, tokens, one)), marks.get("mark-was"))
    named = any(
        token.text in {"weight", "load", "reps", "kg", "lb", "rir", "reserve", *AMOUNTS["rpe"]}
        and following.text in {"was", "were"}
        for token, following in pairwise(tokens)
    )
    both = sum(t.text in _RECORDED and after.text in {"was", "were"} for t, after in pairwise(tokens)) > 1
    if named and context.last is not None and not awaited and (both or not full):
        return True
    if was is not None and _followed(parts, tokens, was):
        if awaited and (sorry is None or full or context.last is None):
            return not any(part.kind in {"bare", "reps"} for part in parts)
        return not full or context.last is not None
    if sorry is None or not counted:
        return False
    if tokens[sorry.first].text in {"no", "nope", "nah", "wait"} and not _governs(tokens, sorry, counted):
        return False
    if any(part.kind in _QUANTITIES and part.at < sorry.first for part in parts):
        trailing = not any(part.kind in _QUANTITIES and part.at > sorry.first for part in parts)
        trailing = trailing and not any(_is_beyond(tokens[i]) for i in range(begun, sorry.first))
        return trailing and not full and (context.last is not None or not awaited)
    if full and (awaited or context.last is None or _apart(tokens, sorry)):
        return False
    if awaited:
        return context.last is not None and not _apart(tokens, sorry)
    return context.last is not None or not full


def _is_starred(tokens: Sequence[Token]) -> bool:
    """Whether a star is put to a quantity: "*12", "12kg*", "13* lol", but not "15*10"."""
    for at, token in enumerate(tokens):
        if token.text != "*":
            continue
        before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
        counted = before is not None and (before.kind is Kind.NUMBER or before.text in {"kg", "lb", "reps", "rep"})
        if after is not None and after.kind is Kind.NUMBER:
            if after.glued and not counted:
                return True
        elif counted and token.glued:
            return True
    return False


def _is_beyond(token: Token) -> bool:
    """Whether a word leads away from the record before it: a "sorry" after it is about something else."""
    return token.kind is Kind.WORD and token.text not in _WITH_A_LOAD | COURTESY | AMOUNTS["reps"] | {"reps", "left", "right", "seconds"}


def _governs(tokens: Sequence[Token], no: Said, counted: Sequence[Part]) -> bool:
    """Whether "no" is about the quantity that follows, and not "no pain, 12 at 18kg"."""
    following = min((part.at for part in counted if part.at >= no.last), default=None)
    if following is None or following > no.last + 3:
        return False
    return all(tokens[i].kind is Kind.MARK or tokens[i].text not in _ABSENT for i in range(no.last, following))


def _without_not(parts: Sequence[Part]) -> list[Part]:
    """The parts but for what "not" rejects."""
    return [part for before, part in pairwise([Part("break"), *parts]) if before.kind != "not" and part.kind != "not"]


def _said_to_change(tokens: Sequence[Token], marks: dict[str, Said]) -> bool:
    """Whether a word of correction says to change something, or what was meant."""
    mark = marks.get("mark-amend")
    words = {token.text for token in tokens[mark.first : mark.last]} if mark is not None else set()
    return bool(words & _CHANGING)


def _corrects_by(tokens: Sequence[Token], mark: Said, counted: Sequence[Part]) -> bool:
    """Whether a word of correction has a quantity to correct to: "should be 12", and not "14 at 7kg, should be proud"."""
    if tokens[mark.first].text not in {"should", "ought", "must", "supposed"}:
        return bool(counted)
    return any(mark.last <= part.at <= mark.last + 3 for part in counted)


def _adds(tokens: Sequence[Token], parts: Sequence[Part], counted: Sequence[Part]) -> bool:
    """Whether what is said completes the last record: "had 2 left on that one", "used the 18s"."""
    kinds = {part.kind for part in counted}
    words = {token.text for token in tokens}
    links = {part.kind for part in parts} - kinds
    if kinds and kinds <= _SOFT:
        return True
    if kinds == {"bare", "left"} and len(counted) == len("ab"):
        return bool(words & {"had", "that", "was"})
    return (
        kinds == {"load"} and len(counted) == 1 and bool(words & {"used", "using", "had"}) and not links - {"with", "comma", "and"}
    )


def _followed(parts: Sequence[Part], tokens: Sequence[Token], was: Said) -> bool:
    """Whether a quantity follows "it was" directly, with at most small words between."""
    following = next(
        (part for part in parts if part.at >= was.last and (part.kind in _QUANTITIES or part.kind in _SILENT_AMENDS)),
        None,
    )
    small = {
        "at",
        "with",
        "a",
        "the",
        "only",
        "just",
        "for",
        "really",
        "actually",
        "in",
        "fact",
        "@",
        "on",
        "my",
        ":",
        "more",
        "like",
        ",",
    }
    return following is not None and all(tokens[i].text in small for i in range(was.last, following.at))


def _apart(tokens: Sequence[Token], sorry: Said) -> bool:
    """Whether "sorry" is manners: other words follow it before the numbers do."""
    words = 0
    for token in tokens[sorry.last :]:
        if token.kind is Kind.NUMBER:
            break
        words += token.kind is Kind.WORD and token.text not in {
            "it",
            "that",
            "was",
            "i",
            "at",
            "with",
            "did",
            "the",
            "meant",
            "a",
            "is",
            "be",
            "make",
        }
    return words > 1


def _asks(
    tokens: Sequence[Token],
    sentences: Sequence[tuple[int, int]],
    open_numbers: Sequence[int],
    said: Mapping[int, Said],
    *,
    strong: bool,
) -> bool:
    """Whether the numbers stand in a question that no set phrase explains."""
    for first, last in sentences:
        if last < len(tokens) and tokens[last].text == "?" and not guards.polite_request(tokens, first, last):
            inside = [i for i in open_numbers if first <= i < last]
            explained = any(first <= one.first < last and not one.meaning.startswith("mark") for one in said.values())
            if inside and not explained and not (strong and _ASKING & {token.text for token in tokens[inside[-1] + 1 : last]}):
                return True
    return False


def _without_numbers(
    tokens: Sequence[Token], parts: Sequence[Part], marks: dict[str, Said], context: Context, *, correcting: bool
) -> list[tuple[int, Act]]:
    """What a message without numbers may still say: "same again", the side or the unit meant, that the whole hold was held."""
    if "mark-same" in marks:
        spent = Decimal(0) if "mark-failure" in marks else None
        return [(marks["mark-same"].first, Log(same=True, reserve=spent))]
    whole = marks.get("mark-whole")
    if whole is not None and not context.hold and context.awaiting is Awaiting.REPS:
        minute = any(token.text == "minutes" for token in tokens[whole.first : whole.last])
        return [(whole.first, Log(seconds=60) if minute else Unclear())]
    if "mark-whole" in marks and context.hold and context.awaiting is Awaiting.REPS:
        held = Log(seconds=context.target) if context.target else Unclear()
        return [(marks["mark-whole"].first, held)]
    known = context.last is not None and context.awaiting is not Awaiting.REPS
    if known and "mark-failure" in marks and [part.kind for part in parts] == ["failure"]:
        return [(marks["mark-failure"].first, Amend(reserve=Decimal(0)))]
    if correcting and context.last is not None:
        try:
            changed = amend(parts, context)
        except Open:
            return []
        if changed != Amend():
            return [(min((one.first for one in marks.values()), default=0), changed)]
    return []
