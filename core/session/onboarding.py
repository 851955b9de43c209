"""The first talk: greeting, cautions and a yes, the unit, the rack; then the day's circuit."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.diary import CautionsAccepted, RackSaid, UnitChosen
from core.messages import (
    Cautions,
    CautionsNeeded,
    Greeting,
    HowItWorks,
    NotNeeded,
    PairsAsked,
    RackAsked,
    RackMoreAsked,
    RackNoted,
    RackNotRead,
    UnitAsked,
)
from core.rack import Kind, Rack, RackItem
from core.reading.acts import Answer, Have, Item, Unclear, Units
from core.session import health
from core.session.asking_back import ASKED_MAX
from core.session.opening import say_today
from core.session.states import AskingCautions, AskingMore, AskingPairs, AskingRack, AskingUnit, Idle, State
from core.units import Load, Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.acts import Act
    from core.session.turn import Turn

PAIR = 2

First = AskingCautions | AskingUnit | AskingRack | AskingPairs | AskingMore


def greet(turn: Turn) -> State:
    """The first words to a new trainee."""
    turn.say(Greeting(turn.plan.coach))
    turn.say(HowItWorks(turn.plan.trainee.unit))
    turn.say(Cautions())
    return AskingCautions()


def answer(state: First, acts: Sequence[Act], turn: Turn) -> State:
    """The answer to the question that the first talk is at; asked again when it is none."""
    match state:
        case AskingCautions():
            return _cautions(acts, turn)
        case AskingUnit():
            return _unit(acts, turn)
        case AskingRack():
            return _rack(acts, turn)
        case AskingPairs():
            return _pairs(state, acts, turn)
        case AskingMore():
            return _more(state, acts, turn)


def ask_again(state: First, turn: Turn) -> State:
    """Ask what is still open, after the chat was opened again."""
    match state:
        case AskingCautions():
            turn.say(Cautions())
        case AskingUnit():
            turn.say(UnitAsked())
        case AskingRack():
            turn.say(RackAsked(turn.plan.trainee.unit))
        case AskingPairs(items):
            turn.say(PairsAsked(_uncounted(items)))
        case AskingMore():
            turn.say(RackMoreAsked(_known(turn)))
    return state


def _said_yes(acts: Sequence[Act]) -> bool | None:
    """A yes or a no among the acts, None when neither was said."""
    for act in acts:
        match act:
            case Answer(yes=bool(said)):
                return said
            case _:
                pass
    return None


def _cautions(acts: Sequence[Act], turn: Turn) -> State:
    if not _said_yes(acts):
        turn.say(CautionsNeeded())
        return AskingCautions()
    turn.keep(CautionsAccepted(turn.now))
    turn.say(UnitAsked())
    return AskingUnit()


def _unit(acts: Sequence[Act], turn: Turn) -> State:
    unit = next((act.unit for act in acts if isinstance(act, Units)), None)
    if unit is None:
        turn.say(UnitAsked())
        return AskingUnit()
    turn.keep(UnitChosen(unit))
    turn.say(RackAsked(unit))
    return AskingRack()


def _rack(acts: Sequence[Act], turn: Turn) -> State:
    have = next((act for act in acts if isinstance(act, Have)), None)
    if have is None:
        turn.say(RackNotRead(turn.plan.trainee.unit))
        return AskingRack()
    return take_rack(have, turn)


def take_rack(have: Have, turn: Turn) -> State:
    """Keep what the trainee owns, after asking about pairs where no count was said."""
    items = _carried_on(items_of(have, turn))
    if _uncounted(items):
        turn.say(PairsAsked(_uncounted(items)))
        return AskingPairs(items)
    return _keep(items, turn)


def items_of(have: Have, turn: Turn) -> tuple[RackItem, ...]:
    """The items as the rack keeps them; what no station is done with, such as a bench, is not kept, and that is said."""
    unused = tuple(dict.fromkeys(item.kind for item in have.items if item.kind is not None and item.kind not in tuple(Kind)))
    if unused:
        turn.say(NotNeeded(unused))
    return tuple(_item_of(item, turn.plan.trainee.unit) for item in have.items if item.kind not in unused)


def _item_of(item: Item, unit: Unit) -> RackItem:
    """An item as the rack keeps it; a count of 0 stands for one that was not said."""
    load = None if item.load is None else Load(item.load, item.unit or unit)
    kind = Kind(item.kind or Kind.DUMBBELL)
    default = 0 if kind in (Kind.DUMBBELL, Kind.KETTLEBELL, Kind.PLATE) else (2 if kind is Kind.HANDLE else 1)
    return RackItem(kind, load, default if item.count is None else item.count)


def _carried_on(items: Sequence[RackItem]) -> tuple[RackItem, ...]:
    """A list begun with a pair goes on in pairs until another count is said: "a pair of 8s, 12s and a 16"."""
    counted: list[RackItem] = []
    for item in items:
        pair = bool(counted) and counted[-1].count == PAIR and counted[-1].kind is item.kind
        counted.append(replace(item, count=PAIR) if pair and not item.count else item)
    return tuple(counted)


def _uncounted(items: Sequence[RackItem]) -> tuple[Load, ...]:
    return tuple(item.load for item in items if not item.count and item.load is not None)


def _pairs(state: AskingPairs, acts: Sequence[Act], turn: Turn) -> State:
    have = next((act for act in acts if isinstance(act, Have)), None)
    if have is not None:
        return take_rack(have, turn)
    said = _said_yes(acts)
    if said is None:
        turn.say(PairsAsked(_uncounted(state.items)))
        return state
    if said:
        return _keep(tuple(RackItem(item.kind, item.load, item.count or PAIR) for item in state.items), turn)
    turn.say(RackAsked(turn.plan.trainee.unit))
    return AskingRack()


def more_rack(state: Idle, have: Have, turn: Turn) -> State:
    """Weights named outside the first talk: asked whether those known are still there, when there are any."""
    if not _known(turn):
        return take_rack(have, turn)
    items = items_of(have, turn)
    if have.items and not items:
        return state
    turn.say(RackMoreAsked(_known(turn)))
    return AskingMore(_carried_on(items))


def _known(turn: Turn) -> tuple[RackItem, ...]:
    rack = turn.plan.trainee.rack
    return () if rack is None else rack.items


def _more(state: AskingMore, acts: Sequence[Act], turn: Turn) -> State:
    said = _said_yes(acts)
    if said is None and state.times < ASKED_MAX:
        turn.say(RackMoreAsked(_known(turn)))
        return replace(state, times=state.times + 1)
    return keep_more(state, turn, known=said is not False)


def is_left(acts: Sequence[Act]) -> bool:
    """Whether somebody has gone on to something else while it is asked whether the weights known are still there."""
    return not any(isinstance(act, Answer | Have | Unclear) for act in acts)


def keep_more(state: AskingMore, turn: Turn, *, known: bool = True) -> State:
    """Keep the weights named, beside those `known` already or in their place; what is kept is read back."""
    items = (*_known(turn), *state.items) if known else state.items
    if _uncounted(items):
        turn.say(PairsAsked(_uncounted(items)))
        return AskingPairs(items)
    return _keep(items, turn)


def _keep(items: tuple[RackItem, ...], turn: Turn) -> State:
    turn.keep(RackSaid(Rack(items)))
    turn.say(RackNoted(items))
    turn.learn(rack=Rack(items))
    say_today(turn)
    return health.offered(Idle(), turn)
