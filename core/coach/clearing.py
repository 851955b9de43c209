"""The coach says that somebody may train: who is meant, whether they wait at all, and what a yes keeps.

Nothing here lifts a warning sign: that waits for the trainee's own word, never on the same day (`core.safety.gate`).
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.changed import Changed, ChangeKind
from core.coach.deeds import told
from core.coach.desk import Clearance
from core.coach.states import ClearanceReviewed, Quiet, WayBack
from core.coach.undoing import way_back_of
from core.coach_messages import (
    ClearanceAsked,
    ClearanceKept,
    ClearanceLeft,
    ClearanceUnknown,
    ClearanceWho,
    NothingAsked,
    NotWaiting,
    SignStands,
)
from core.health import Bar, Outcome
from core.safety.gate import bar

if TYPE_CHECKING:
    from datetime import datetime

    from core.coach.desk import Change, Client, Desk
    from core.coach.states import CoachState, Decided

TRAIN = r"(?:train|start|begin|work out)(?:\s+(?:again|now|today))?"
TO_TRAIN = rf"(?:\s+(?:to\s+{TRAIN}|for\s+training))?"
NAME = r"[^/\d]\S*(?:\s+\S+){0,4}?"
CLEARED = re.compile(
    rf"(?:yes,?\s+)?(?:(?:please\s+|i\s+)?clear\s+(?P<clear>{NAME}){TO_TRAIN}"
    rf"|(?P<may>{NAME})\s+(?:may|can)\s+{TRAIN}"
    rf"|(?P<told>{NAME})(?:'s|\s+is|\s+has been)\s+(?:cleared{TO_TRAIN}|allowed\s+to\s+{TRAIN}))",
    re.IGNORECASE,
)
COACHES_THEMSELVES = {"i", "we"}  # a coach who trains speaks of their own training
WAITS = {Bar.YOUNG: Outcome.WAIT, Bar.PREGNANT: Outcome.WAIT, Bar.CLEARANCE: Outcome.CLEARANCE}


def read_clearing(text: str) -> str | None:
    """The name in "clear Ana", "Ana is cleared", "Ana may train"; None when a text is none of these. A question is none."""
    said = " ".join(text.split()).strip(" .!").replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
    found = None if "?" in said else CLEARED.fullmatch(said)
    if found is None:
        return None
    name: str = found["clear"] or found["may"] or found["told"]
    return None if name.lower() in COACHES_THEMSELVES else name


def stands_before(client: Client) -> Bar | None:
    """What stands before a client's workout, None when nothing does."""
    return bar(client.trainee, client.diary)


def ask(state: CoachState, name: str, desk: Desk) -> Decided:
    """Show what a yes would keep, or say why nothing can be kept. What was shown before is no longer asked."""
    quiet = Quiet(state.way_back)
    like = [client for client in desk.clients if f" {name.lower()} " in f" {client.name.lower()} "]
    exact = [client for client in like if client.name.lower() == name.lower()]
    if not like:
        return quiet, (), [ClearanceUnknown(name, _waiting(desk))]
    if len(like) > 1 and len(exact) != 1:
        return quiet, (), [ClearanceWho(tuple(client.name for client in like))]
    client = (exact or like)[0]
    found = stands_before(client)
    if found is Bar.URGENT:
        return quiet, (), [SignStands(client.name)]
    if found not in WAITS:
        return quiet, (), [NotWaiting(client.name, _waiting(desk))]
    reviewed = ClearanceReviewed(client.id, WAITS[found], client.trainee.health.decided_at, state.way_back)
    others = tuple(other.name for other in like if other is not client)
    return reviewed, (), [ClearanceAsked(client.name, WAITS[found], others)]


def agreed(state: ClearanceReviewed, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> Decided:
    """A yes: kept, if it is still about what was asked; else what stands now is said."""
    client = client_of(state, desk)
    if client is None:
        return Quiet(state.way_back), (), [NothingAsked()]
    if whom not in (None, (client.id,)):  # a yes for somebody else is none
        return state, (), [ClearanceAsked(client.name, state.outcome, ())]
    found = stands_before(client)
    if found is None or WAITS.get(found) is not state.outcome or client.trainee.health.decided_at != state.decided_at:
        return ask(state, client.name, desk)
    changes: tuple[Change, ...] = (Clearance(client.id, agreed=True), *told(client, Changed(ChangeKind.CLEARED), now))
    return Quiet(WayBack(client.name, tuple(way_back_of(changes, desk)))), changes, [ClearanceKept(client.name)]


def left(state: ClearanceReviewed, desk: Desk) -> Decided:
    """A no: they go on waiting."""
    client = client_of(state, desk)
    return Quiet(state.way_back), (), [NothingAsked() if client is None else ClearanceLeft(client.name)]


def asked_again(state: ClearanceReviewed, desk: Desk) -> ClearanceAsked | NothingAsked:
    """The question that is still open."""
    client = client_of(state, desk)
    return NothingAsked() if client is None else ClearanceAsked(client.name, state.outcome, ())


def client_of(state: ClearanceReviewed, desk: Desk) -> Client | None:
    """Whom the question is about, None when they have left meanwhile."""
    return next((client for client in desk.clients if client.id == state.client), None)


def _waiting(desk: Desk) -> tuple[str, ...]:
    return tuple(client.name for client in desk.clients if stands_before(client) in WAITS)
