"""Why a load was named, in a sentence: the house's own reasons here, those worked out from strength in `reasons`."""

from __future__ import annotations

from bot.wording import reasons
from core.reasons import AsLastTime, AsSaid, CarryStart, CoachSays, EmptyHands, HeldBack, Reason


def why_text(reason: Reason) -> str:
    """The sentence for any reason."""
    match reason:
        case CoachSays():
            return "Your coach's start for you."
        case CarryStart():
            return "First time: the middle of your rack."
        case AsLastTime():
            return "As last time."
        case HeldBack(place):
            return f"Lighter: we look after the {place}." if place else "Lighter: we take care."
        case AsSaid(felt):
            return f"You said it was {felt}."
        case EmptyHands():
            return "You have nothing for this: do it without."
        case _:
            return reasons.why(reason)
