"""What a coach asks for and tells beside circuits and plans: who is meant is settled first, what changes something is shown."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, assert_never

from core.catalogue import exercise, find, nearest
from core.coach.asks import (
    AnswerTo,
    Ask,
    HoldEnded,
    HoldFor,
    HowIs,
    Invite,
    NoteEnded,
    NoteFor,
    PauseEnded,
    PauseFor,
    PutUp,
    Remove,
    ReviewOff,
    ReviewOn,
    SayTo,
    SheetAsked,
    SwapEnded,
    SwapFor,
    TakeClip,
    WeekAsked,
    Whom,
    WhoMissed,
    WhoNeedsWord,
    WhoTrained,
)
from core.coach.board import review_circuit
from core.coach.deeds import asked_of, changes_of, concerns, done_of, names_of, spoken
from core.coach.desk import Client, ReviewSet
from core.coach.put_up import is_the_new_one
from core.coach.states import Choosing, CircuitReviewed, DeedReviewed, Quiet, WayBack
from core.coach.telling import tell
from core.coach.undoing import way_back_of
from core.coach.whom import NOTHING_SETTLED, Doubt, Meant, movement, person, those_meant
from core.coach_messages import CircuitUnknown
from core.deeds import (
    ClipElsewhere,
    Deed,
    DeedDropped,
    DeedKind,
    ForWhomAsked,
    InviteElsewhere,
    MovementUnknown,
    NoOtherMovement,
    NoQuestionOpen,
    NothingToEnd,
    ReviewNoted,
    WhichQuestion,
    WhoMeant,
    WordsTooLong,
)
from core.reminders import local_date

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.coach.desk import Desk
    from core.coach.states import CoachState, Decided
    from core.coach_messages import CoachMessage

Problem = MovementUnknown | NoOtherMovement | CircuitUnknown | WordsTooLong | NoQuestionOpen

NOTE_MAX, WORDS_MAX = 200, 2000  # letters: a card is read in three seconds, a message must fit the network's
HIDDEN = re.compile(r"[\u202a-\u202e\u2066-\u2069\u0000-\u0008\u000b-\u001f\u007f]")  # what turns the direction of what follows


@dataclass(frozen=True)
class Heard:
    """What was asked, the text as it was typed and the day, and what is settled of the names in it."""

    ask: Ask
    text: str
    day: date
    meant: Meant = NOTHING_SETTLED


def act(state: CoachState, heard: Heard, desk: Desk, now: datetime) -> Decided:
    """Answer, or show what a yes would do. What was shown before is no longer asked."""
    ask, quiet = heard.ask, Quiet(state.way_back)
    match ask:
        case WhoTrained() | WhoMissed() | WhoNeedsWord() | WeekAsked():
            return quiet, (), [tell(ask, desk.clients, desk, now)]
        case HowIs(name):
            client = person(name, desk, heard.meant)
            return _in_doubt(client, heard, quiet) if isinstance(client, Doubt) else (quiet, (), [tell(ask, (client,), desk, now)])
        case SheetAsked(whom):
            clients = those_meant(whom, desk, heard.meant)
            return _in_doubt(clients, heard, quiet) if isinstance(clients, Doubt) else (quiet, (), [tell(ask, clients, desk, now)])
        case ReviewOn(day, at):
            clock = at or desk.review.at
            return quiet, (ReviewSet(day, clock),), [ReviewNoted(day, clock)]
        case ReviewOff():
            return quiet, (ReviewSet(None, desk.review.at),), [ReviewNoted(None, desk.review.at)]
        case Invite():
            return quiet, (), [InviteElsewhere()]
        case TakeClip():
            return quiet, (), [ClipElsewhere()]
        case AnswerTo():
            return _answer(ask, heard, desk, now, quiet)
        case PutUp():
            return _put_up(state, ask, heard, desk, now)
        case _:
            return _for_some(ask, heard, desk, now, quiet)


ForSome = SwapFor | SwapEnded | HoldFor | HoldEnded | NoteFor | NoteEnded | SayTo | PauseFor | PauseEnded | Remove


def _for_some(ask: ForSome, heard: Heard, desk: Desk, now: datetime, quiet: Quiet) -> Decided:
    clients = those_meant(ask.whom, desk, heard.meant)
    if isinstance(clients, Doubt):
        return _in_doubt(clients, heard, quiet)
    if not clients:
        return quiet, (), [ForWhomAsked(KINDS[type(ask)])]
    deed = _deed(ask, clients, now)
    return (quiet, (), [deed]) if not isinstance(deed, Deed) else review(deed, clients, now, quiet)


KINDS: dict[type, DeedKind] = {
    SwapFor: DeedKind.SWAP,
    SwapEnded: DeedKind.SWAP_ENDED,
    HoldFor: DeedKind.HOLD,
    HoldEnded: DeedKind.HOLD_ENDED,
    NoteFor: DeedKind.NOTE,
    NoteEnded: DeedKind.NOTE_ENDED,
    SayTo: DeedKind.SAY,
    PauseFor: DeedKind.PAUSE,
    PauseEnded: DeedKind.PAUSE_ENDED,
    Remove: DeedKind.REMOVE,
}


def _deed(ask: ForSome, clients: Sequence[Client], now: datetime) -> Deed | Problem:
    """What is to be done, its exercises found; or what stands in the way."""
    kind, everyone = KINDS[type(ask)], ask.whom.everyone and not ask.whom.names
    match ask:
        case SayTo(text):
            return _with_words(Deed(kind, everyone=everyone), text, WORDS_MAX)
        case PauseFor(until=until):
            return Deed(kind, on=until, everyone=everyone)
        case PauseEnded() | Remove():
            return Deed(kind, everyone=everyone)
        case SwapFor() | SwapEnded() | HoldFor() | HoldEnded() | NoteFor() | NoteEnded():
            found = None if ask.exercise is None else movement(ask.exercise, clients, now)
            if isinstance(found, MovementUnknown):
                return found
            deed = Deed(kind, None if found is None else found.slug, everyone=everyone)
            if isinstance(ask, HoldFor):
                return replace(deed, load=ask.most)
            if isinstance(ask, NoteFor):
                return _with_words(deed, ask.text, NOTE_MAX)
            return _swapped(deed, ask.instead) if isinstance(ask, SwapFor) else deed
        case _:
            assert_never(ask)


def _with_words(deed: Deed, text: str, most: int) -> Deed | WordsTooLong:
    words = HIDDEN.sub("", text).strip()
    return WordsTooLong(most) if len(words) > most else replace(deed, text=words)


def _swapped(deed: Deed, instead: str | None) -> Deed | Problem:
    """The swap with what is done instead: what was named, else what is kinder."""
    movement_ = exercise(deed.exercise or "")
    if instead is None:
        slug = movement_.easier or movement_.swap_load
        return NoOtherMovement(movement_.name) if slug is None else replace(deed, other=slug)
    other = find(instead)
    if other is None:
        return MovementUnknown(instead, tuple(one.name for one in nearest(instead)))
    return NoOtherMovement(movement_.name) if other.slug == movement_.slug else replace(deed, other=other.slug)


def review(deed: Deed, clients: Sequence[Client], now: datetime, quiet: Quiet) -> Decided:
    """Show what a yes would do, for those whom it concerns."""
    whom = [client for client in clients if concerns(deed, client, now)]
    if not whom:
        return quiet, (), [NothingToEnd(deed.kind, names_of(clients))]
    state = DeedReviewed(deed, tuple(client.id for client in whom), quiet.way_back)
    return state, (), [asked_of(deed, whom, now)]


def agreed(state: DeedReviewed, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> Decided:
    """A yes: done for those who were shown and are still there, or for those of them who are named with it."""
    if whom is not None and not set(whom) <= set(state.whom):
        return state, (), [asked_again(state, desk, now)]
    wanted = frozenset(state.whom if whom is None else whom)
    clients = [client for client in desk.clients if client.id in wanted and concerns(state.deed, client, now)]
    deed = state.deed if whom is None else replace(state.deed, everyone=False)
    if deed.kind is DeedKind.ANSWER and not any(one.number == deed.about for client in clients for one in client.questions()):
        return Quiet(state.way_back), (), [NoQuestionOpen(None)]
    if not clients or (deed.kind is DeedKind.PUT_UP and desk.circuit(deed.text) is None):
        return dropped(state)
    changes = tuple(changes_of(deed, clients, now))
    way_back = WayBack(deed.kind.value, tuple(way_back_of(changes, desk)), deed, len(clients))
    return Quiet(way_back), changes, [done_of(deed, clients, now)]


def dropped(state: DeedReviewed) -> Decided:
    """Not done."""
    return Quiet(state.way_back), (), [DeedDropped(spoken(state.deed))]


def asked_again(state: DeedReviewed, desk: Desk, now: datetime) -> CoachMessage:
    """The question that is still open."""
    return asked_of(state.deed, [client for client in desk.clients if client.id in state.whom], now)


def _answer(ask: AnswerTo, heard: Heard, desk: Desk, now: datetime, quiet: Quiet) -> Decided:
    """The answer to whoever is named, or to the one who has asked."""
    asking = [client for client in desk.clients if client.questions()]
    said = heard.meant.name("") if ask.name is None else ask.name
    if said is None and len(asking) != 1:
        if not asking:
            return quiet, (), [NoQuestionOpen(None)]
        names = names_of(asking)
        return Choosing(heard.text, heard.day, "", names, heard.meant.pairs, way_back=quiet.way_back), (), [WhichQuestion(names)]
    client = asking[0] if said is None else person(said, desk, heard.meant)
    if isinstance(client, Doubt):
        return _in_doubt(client, heard, quiet)
    if not client.questions():
        return quiet, (), [NoQuestionOpen(client.name)]
    deed = _with_words(Deed(DeedKind.ANSWER, about=client.questions()[-1].number), ask.text, WORDS_MAX)
    return (quiet, (), [deed]) if not isinstance(deed, Deed) else review(deed, (client,), now, quiet)


def _put_up(state: CoachState, ask: PutUp, heard: Heard, desk: Desk, now: datetime) -> Decided:
    """A circuit of the board for some, from a day on; "the new one" is the one that was looked at last."""
    quiet, today = Quiet(state.way_back), local_date(now, desk.zone)
    everyone = ask.whom if ask.whom.names or ask.whom.everyone else Whom(everyone=True)
    clients = those_meant(everyone, desk, heard.meant)
    if isinstance(clients, Doubt):
        return _in_doubt(clients, heard, quiet)
    name, circuit = ask.circuit.strip(), desk.circuit(ask.circuit.strip())
    if circuit is None and is_the_new_one(name):
        if isinstance(state, CircuitReviewed):
            ids = None if everyone.everyone and not everyone.names else tuple(client.id for client in clients)
            return _typed_again(state, ids, ask.from_on, desk, now)
        circuit = desk.circuit(state.shown) if isinstance(state, Quiet) and state.shown is not None else None
    elif circuit is None and isinstance(state, CircuitReviewed) and name.lower() == state.circuit.name.lower():
        return _typed_again(state, tuple(client.id for client in clients), ask.from_on, desk, now)
    if circuit is None:
        return quiet, (), [CircuitUnknown(name, tuple(one.name for one in desk.circuits))]
    from_on = ask.from_on if ask.from_on is not None and ask.from_on > today else None
    deed = Deed(DeedKind.PUT_UP, text=circuit.name, on=from_on, everyone=everyone.everyone and not everyone.names)
    return review(deed, clients, now, quiet) if clients else (quiet, (), [ForWhomAsked(DeedKind.PUT_UP)])


def _typed_again(state: CircuitReviewed, whom: tuple[int, ...] | None, from_on: date | None, desk: Desk, now: datetime) -> Decided:
    """The circuit that is still asked about, now for these and from that day."""
    reviewed, changes, said = review_circuit(state.circuit, whom, from_on or state.from_on, desk, now, state.way_back)
    return reviewed, changes, [*said]


def who_again(state: Choosing) -> CoachMessage:
    """Who is meant is still asked."""
    return WhoMeant(state.said, state.names, state.sure) if state.said else WhichQuestion(state.names)


def _in_doubt(doubt: Doubt, heard: Heard, quiet: Quiet) -> Decided:
    """Ask who is meant; the answer goes on with what was asked for."""
    if isinstance(doubt, WhoMeant):
        choosing = Choosing(heard.text, heard.day, doubt.said, doubt.names, heard.meant.pairs, doubt.sure, quiet.way_back)
        return choosing, (), [doubt]
    return quiet, (), [doubt]
