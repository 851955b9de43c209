"""What the trainee owns: "8, 12 and 16 kg dumbbells", "a pair of 8s and a 16", "adjustable handles with 4 x 1.25 kg plates"."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading.acts import Have, Item
from core.reading.lexicon import listed
from core.reading.sets import MOST_LOAD
from core.reading.tokens import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

KINDS: dict[str, str] = {
    word: kind
    for kind in ("dumbbell", "kettlebell", "handle", "plate", "band", "barbell", "bench")
    for word in listed("gear", kind)
}
_PAIRS = listed("gear", "pair")
_STANDALONE = {"handle", "band", "barbell", "bench"}
_MOST_COUNT = 40


@dataclass(slots=True)
class _Thing:
    """An item being put together."""

    load: Decimal | None = None
    unit: Unit | None = None
    count: int | None = None
    kind: str | None = None
    open_kind: bool = True


def items(tokens: Sequence[Token], first: int, last: int) -> Have | None:
    """The things that tokens `[first, last)` list; None when a number among them stays unexplained."""
    things: list[_Thing] = []
    count: int | None = None
    paired = False
    lead: str | None = None
    index = first
    while index < last:
        token = tokens[index]
        word, following = token.text, tokens[index + 1].text if index + 1 < last else ""
        if word == "between" or (word == "nothing" and following in {"in", "between"}):
            index = _past_between(tokens, index, last)
            continue
        if (
            token.kind in {Kind.ODD, Kind.CLOCK}
            or word in {"up", "-", "upto"}
            or (word == "to" and _is_number(tokens, index + 1, last))
        ):
            return None
        if token.kind is Kind.NUMBER:
            if _is_count(tokens, index, last):
                count = int(token.value)
                index += 2 if following == "x" else 1
                continue
            thing = _Thing(
                token.value,
                count=2 if paired else count,
                kind="dumbbell" if paired and _is_plural(tokens, index, last) else None,
            )
            index += 1
            if index < last and tokens[index].text in {"kg", "lb"}:
                thing.unit = Unit(tokens[index].text)
                index += 1
            if index < last and tokens[index].text == "s":
                index += 1
            if (
                index + 1 < last
                and tokens[index].text == "x"
                and _is_number(tokens, index + 1, last)
                and tokens[index + 1].value <= 4
            ):
                thing.count = int(tokens[index + 1].value)
                index += 2
            if lead is not None:
                thing.kind = lead
            things.append(thing)
            count, paired = None, False
            continue
        if word in _PAIRS:
            paired, count = True, None
        elif word in {"a", "an", "one", "single", "another"} and (
            _is_number(tokens, index + 1, last) or following in {"single", *KINDS, "adjustable"}
        ):
            count = 1
        elif word in KINDS:
            kind = KINDS[word]
            colon = following in {":", "are", "is", "of", "in", "at", "="}
            open_things = [thing for thing in things if thing.kind is None and thing.open_kind]
            if open_things and lead is None and not (colon and following == ":"):
                for thing in open_things:
                    thing.kind = kind
            elif colon and not open_things:
                lead = kind
            elif (
                kind in _STANDALONE
                or (kind == "kettlebell" and count is not None)
                or count is not None
                or paired
            ):
                things.append(_Thing(count=2 if paired else count, kind=kind))
            elif not (things and things[-1].kind == kind) and kind != "dumbbell":
                lead = kind
            elif kind == "dumbbell" and not things and _is_number(tokens, index + 1, last):
                lead = kind
            count, paired = None, False
        index += 1
    if count is not None or any(
        thing.count is not None and not 1 <= thing.count <= _MOST_COUNT for thing in things
    ):
        return None
    return _have(things)


def _have(things: list[_Thing]) -> Have | None:
    units = {thing.unit for thing in things} - {None}
    if len(units) == 1:
        unit = units.pop()
        things = [replace(thing, unit=unit) if thing.load is not None else thing for thing in things]
    for thing in things:
        if thing.load is not None and not 0 < thing.load <= MOST_LOAD[thing.unit or Unit.KG]:
            return None
    return Have(tuple(Item(thing.kind, thing.load, thing.unit, thing.count) for thing in things))


def _is_number(tokens: Sequence[Token], index: int, last: int) -> bool:
    return index < last and tokens[index].kind is Kind.NUMBER


def _is_plural(tokens: Sequence[Token], index: int, last: int) -> bool:
    """Whether "8s" or "8 kg s" stands at `index`."""
    return any(index + n < last and tokens[index + n].text == "s" for n in (1, 2))


def _is_count(tokens: Sequence[Token], index: int, last: int) -> bool:
    """Whether the number at `index` counts things: "two 12s", "4 x 1.25", "2 kettlebells", "2 adjustable handles"."""
    value = tokens[index].value
    if value % 1 or not 1 <= value <= _MOST_COUNT:
        return False
    ahead = index + 1
    if ahead < last and tokens[ahead].text == "x" and _is_number(tokens, ahead + 1, last):
        return True
    if ahead < last and (
        tokens[ahead].text in {"adjustable", "handles", "handle", "bands", "band", "bars", "benches", "pairs"}
    ):
        return True
    return tokens[index].worded and _is_number(tokens, ahead, last) and not tokens[ahead].worded


def _past_between(tokens: Sequence[Token], index: int, last: int) -> int:
    """The index after "nothing between 8 and 12 kg"."""
    while index < last and tokens[index].kind is not Kind.NUMBER:
        index += 1
    while index < last and (
        tokens[index].kind is Kind.NUMBER or tokens[index].text in {"and", "kg", "lb", "s", "or"}
    ):
        index += 1
    return index
