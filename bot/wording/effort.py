"""How hard it is, in words: too much for today, and the effort of the whole workout. Calm, no blame."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import number_text, page
from core.health import TooMuch
from core.messages import EffortAsked, EffortNoted, ReliefTaken, TooMuchSeen


@words_for(TooMuchSeen)
def too_much_seen(message: TooMuchSeen) -> Worded:
    """It looks like too much today."""
    seen = "Three stations short in a row." if message.sign is TooMuch.FAILING else "Half the reps of the last round."
    return Worded(
        page(f"{seen} Some days are like that.", '"more rest", "lighter", "finish", or "carry on"?'),
        ("more rest", "lighter", "finish", "carry on"),
    )


@words_for(ReliefTaken)
def relief_taken(message: ReliefTaken) -> Worded:
    """What was chosen."""
    if message.choice == "rest":
        return Worded(page(f"{message.rest_s} s more rest from here on."))
    if message.choice == "lighter":
        return Worded(page("Lighter from here on. That is training, too."))
    return Worded(page("All right, as it is."))


@words_for(EffortAsked)
def effort_asked(message: EffortAsked) -> Worded:
    """How hard was it as a whole?"""
    del message
    return Worded(page("How hard was it all in all, 0 (nothing) to 10 (everything you had)?"), ("3", "5", "7", "9"))


TWICE = 100  # per cent above usual; from here on in times


def _times(percent: int) -> str:
    times = round(1 + percent / 100)
    return "twice" if times == 2 else f"{times} times"  # noqa: PLR2004 - it is the word for two


@words_for(EffortNoted)
def effort_noted(message: EffortNoted) -> Worded:
    """The effort was noted."""
    jump = ""
    if message.jump_percent is not None:
        above = f"{message.jump_percent}% above" if message.jump_percent < TWICE else f"about {_times(message.jump_percent)}"
        jump = f"Your week is {above} your usual. A rest day or an easy one now lets it sink in."
    alike = "Your days are all alike lately; hard and easy ones in turn rest you better." if message.alike else ""
    return Worded(page(f"Effort {number_text(message.effort)}, noted.", jump, alike))
