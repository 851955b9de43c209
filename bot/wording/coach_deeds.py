"""What a coach reads of what they want done: who, what and when exactly, before a yes; what was done, what is taken back."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from bot.wording.book import Worded, words_for
from bot.wording.days import date_text
from bot.wording.phrases import and_list, load_text, page
from core.deeds import Deed, DeedAsked, DeedDone, DeedDropped, DeedKind, DeedTakenBack

if TYPE_CHECKING:
    from core.deeds import Arrival

WORDS = (DeedKind.SAY, DeedKind.ANSWER)


@words_for(DeedAsked)
def deed_asked(message: DeedAsked) -> Worded:
    """May it be done?"""
    deed, whom = message.deed, message.whom
    asked = "Send it?" if deed.kind in WORDS else "Do it?"
    return Worded(
        page(
            f'{and_list(whom)} asked: "{_flat(message.question)}"' if deed.kind is DeedKind.ANSWER else "",
            *_what(deed, whom),
            f"Not in what is on now for {and_list(message.not_on)}." if message.not_on else "",
            f"Ends the plan of {and_list(message.instead)}." if message.instead else "",
            _arrival(message.arrival, len(whom)),
            f'{asked} "yes" or "no"',
        ),
        ("yes", "no"),
    )


@words_for(DeedDone)
def deed_done(message: DeedDone) -> Worded:
    """It is done."""
    deed, whom = message.deed, message.whom
    if deed.kind in WORDS:
        done: tuple[str, ...] = (f"On its way to {_who(whom)}.", _arrival(message.arrival, len(whom)))
    else:
        done = ("Done.", *_what(deed, whom))
    running = f"{and_list(message.running)}: the workout under way goes on as it was." if message.running else ""
    return Worded(page(*done, running, '"undo" takes it back.'), ("undo",))


@words_for(DeedDropped)
def deed_dropped(message: DeedDropped) -> Worded:
    """It was not done."""
    return Worded(page("All right, not sent." if message.deed.kind in WORDS else "All right. Nothing has changed."))


@words_for(DeedTakenBack)
def deed_taken_back(message: DeedTakenBack) -> Worded:
    """It is taken back, as far as it could be."""
    if message.deed.kind not in WORDS:
        return Worded(page("Taken back. All is as it was before."))
    if not message.out:
        return Worded(page("Taken back: nobody has read it."))
    if message.out == message.of:
        return Worded(
            page("Too late for that: it has gone out already." if message.of == 1 else f"Too late: all {message.of} have it.")
        )
    return Worded(page(f"Taken back for {message.of - message.out}. {message.out} had it already."))


def _who(whom: tuple[str, ...]) -> str:
    """`Ana`, `Ana and Ben (2)`."""
    return and_list(whom) + (f" ({len(whom)})" if len(whom) > 1 else "")


def _flat(text: str) -> str:
    return " ".join(text.split())


def _quoted(text: str) -> tuple[str, ...]:
    """Words as they were typed, line by line."""
    return tuple(f'"{text}"'.splitlines())


def _arrival(arrival: Arrival | None, of: int) -> str:
    """When words arrive: `Now to 9, after quiet hours to 3`."""
    if arrival is None:
        return ""
    ways = (
        ("now", arrival.now),
        ("after quiet hours", arrival.quiet),
        ("after the workout", arrival.workout),
        ("when they are here", arrival.away),
    )
    parts = [way if of == 1 else f"{way} to {count}" for way, count in ways if count]
    told = ", ".join(parts)
    return f"Arrives {told}." if of == 1 else f"{told[:1].upper()}{told[1:]}."


def _what(deed: Deed, whom: tuple[str, ...]) -> tuple[str, ...]:
    """What is done, for whom, in a few lines."""
    who, on = _who(whom), "" if deed.on is None else date_text(deed.on)
    match deed.kind:
        case DeedKind.SAY:
            return (f"To {who}:", *_quoted(deed.text))
        case DeedKind.ANSWER:
            return ("Your answer:", *_quoted(deed.text))
        case DeedKind.SWAP:
            return (f"{who}: {deed.other} instead of {deed.exercise}, from the next workout on.",)
        case DeedKind.SWAP_ENDED:
            return (f"{who}: {'the circuit as it is written' if deed.exercise is None else f'{deed.exercise} again'}.",)
        case DeedKind.HOLD:
            most = "no heavier than last time" if deed.load is None else f"at most {load_text(deed.load)} a hand"
            return (f"{who}: {'every load' if deed.exercise is None else deed.exercise} {most}.",)
        case DeedKind.HOLD_ENDED:
            return (f"{who}: {'every load' if deed.exercise is None else f'the load of {deed.exercise}'} may go up again.",)
        case DeedKind.NOTE:
            card = "the first card" if deed.exercise is None else f"the card of {deed.exercise}"
            return (f"On {card}, for {who}:", *_quoted(deed.text))
        case DeedKind.NOTE_ENDED:
            notes = "All notes" if deed.exercise is None else f"The note on {deed.exercise}"
            return (f"{notes} of {who} {'come' if deed.exercise is None else 'comes'} off.",)
        case DeedKind.PUT_UP:
            new = "Whoever comes new gets it too." if deed.everyone else ""
            return (f"{deed.text} for {who}, from {on or 'the next workout'} on.", new)
        case DeedKind.PAUSE:
            return (
                f"A rest for {who} {f'until {on}' if on else 'until you say so'}.",
                "I remind them of nothing; training stays open.",
            )
        case DeedKind.PAUSE_ENDED:
            return (f"The rest of {who} is over.",)
        case DeedKind.REMOVE:
            return (f"{who}: off your roster, no more reminders.", "What was done is kept.")
        case _:
            assert_never(deed.kind)
