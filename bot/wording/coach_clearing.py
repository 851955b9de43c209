"""What a coach reads of clearances: who waits, what a yes keeps. Why somebody waits is not said here."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import and_list, page
from core.coach_messages import (
    ClearanceAsked,
    ClearanceKept,
    ClearanceLeft,
    ClearanceTakenBack,
    ClearanceUnknown,
    ClearanceWho,
    NotWaiting,
    SignStands,
)
from core.health import Outcome


@words_for(ClearanceAsked)
def clearance_asked(message: ClearanceAsked) -> Worded:
    """May they train? The same words whatever the reason: it is not said here."""
    if message.outcome is Outcome.WAIT:
        asked = "you and their clinician have agreed that they may train? Under 18, the guardian too."
    else:
        asked = "a doctor has agreed that they may train?"
    others = f"Not {and_list(message.not_meant)}." if message.not_meant else ""
    return Worded(page(f"{message.trainee}: {asked}", others, '"yes" or "no"'), ("yes", "no"))


@words_for(ClearanceKept)
def clearance_kept(message: ClearanceKept) -> Worded:
    """They may train."""
    return Worded(
        page(f"Noted with today's date: {message.trainee} may train. We begin light.", '"undo" takes it back.'), ("undo",)
    )


@words_for(ClearanceLeft)
def clearance_left(message: ClearanceLeft) -> Worded:
    """They go on waiting."""
    return Worded(page(f"All right, {message.trainee} goes on waiting. Nothing has changed."))


@words_for(ClearanceTakenBack)
def clearance_taken_back(message: ClearanceTakenBack) -> Worded:
    """They wait again."""
    return Worded(page(f"Taken back: {message.trainee} waits again."))


@words_for(ClearanceWho)
def clearance_who(message: ClearanceWho) -> Worded:
    """Who is meant?"""
    ways = tuple(f"clear {name}" for name in message.names)
    return Worded(page("Who is meant? Say one of these:", *(f'• "{way}"' for way in ways)), ways)


@words_for(ClearanceUnknown)
def clearance_unknown(message: ClearanceUnknown) -> Worded:
    """Nobody of that name."""
    return Worded(page(f'Nobody called "{message.said}" trains with you.', _waiting(message.waiting)))


@words_for(NotWaiting)
def not_waiting(message: NotWaiting) -> Worded:
    """They do not wait."""
    return Worded(page(f"{message.trainee} is not waiting for a clearance. Nothing has changed.", _waiting(message.waiting)))


def _waiting(names: tuple[str, ...]) -> str:
    return f"Waiting: {and_list(names)}." if names else "Nobody is waiting."


@words_for(SignStands)
def sign_stands(message: SignStands) -> Worded:
    """A warning sign stands."""
    return Worded(
        page(
            f'{message.trainee} told me of a warning sign. That waits for their own "I am cleared", never on the same day.',
            "Nothing has changed.",
        )
    )
