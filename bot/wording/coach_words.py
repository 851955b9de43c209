"""What a trainee reads of their coach: words as they were typed, answers, and what was changed for them. Kind, never shaming."""

from __future__ import annotations

from typing import assert_never

from bot.wording.book import Worded, words_for
from bot.wording.days import date_text
from bot.wording.phrases import page
from core.changed import Changed, ChangeKind
from core.messages import CoachAnswers, CoachChanged, CoachWrites, RestGiven


@words_for(RestGiven)
def rest_given(message: RestGiven) -> Worded:
    """The coach gives a rest."""
    until = "" if message.until is None else f" until {date_text(message.until)}"
    return Worded(
        page(
            f"{message.coach} gives you a rest{until}. I won't remind you.",
            f'You can train if you wish: "go" starts {message.circuit}.',
        ),
        ("go",),
    )


@words_for(CoachWrites)
def coach_writes(message: CoachWrites) -> Worded:
    """The coach's own words, in the lines they were typed in."""
    return Worded(page(f"{message.coach} says:", *message.text.splitlines()))


@words_for(CoachAnswers)
def coach_answers(message: CoachAnswers) -> Worded:
    """An answer, under what was asked."""
    return Worded(page(f'You asked: "{" ".join(message.question.split())}"', f"{message.coach}:", *message.text.splitlines()))


@words_for(CoachChanged)
def coach_changed(message: CoachChanged) -> Worded:
    """What is different from now on."""
    return Worded(page(*_changed(message.coach, message.changed)))


def _changed(coach: str, changed: Changed) -> tuple[str, ...]:
    name, on = changed.name or "", "" if changed.on is None else date_text(changed.on)
    match changed.kind:
        case ChangeKind.CIRCUIT:
            when = f"From {on} on" if on else "From your next workout on"
            return (f"{coach} has put up {name} for you.", f'{when}. "today" shows what is on.')
        case ChangeKind.PLAN:
            return (f"{coach} has made a plan for you: {name}.", '"today" shows what is on.')
        case ChangeKind.SWAP:
            return (f"{coach} has swapped an exercise for you: {changed.other} instead of {name}.",)
        case ChangeKind.SWAP_ENDED:
            back = f"{name} is" if name else "The circuit's own exercises are"
            return (f"{back} back in your circuit, {coach} says.",)
        case ChangeKind.PAUSE:
            return (f"{coach} gives you a rest{f' until {on}' if on else ''}.", "I won't remind you. Rest is training too.")
        case ChangeKind.PAUSE_ENDED:
            return ("Your rest is over: it goes on as before.", f'{coach} looks forward to it. "today" shows what is on.')
        case ChangeKind.CLEARED:
            return (f"{coach} says: you may train. We begin light.", '"today" shows what is on.')
        case ChangeKind.REMOVED:
            return (f"Your training with {coach} here has ended.", "Thank you for training. I won't remind you any more.")
        case ChangeKind.UNDONE:
            return (f"{coach} has taken back the last change.", '"today" shows what is on.')
        case _:
            assert_never(changed.kind)
