"""Why a load was named, in a sentence: the house's own reasons here, those worked out from strength in `reasons`."""

from __future__ import annotations

from bot.wording import reasons
from core.reasons import (
    AsLastTime,
    AsSaid,
    CardReason,
    CarryStart,
    CoachHolds,
    CoachSays,
    EasierWeek,
    EmptyHands,
    GoingLight,
    HeldBack,
    TempoFirst,
)


def why_text(reason: CardReason) -> str:
    """The sentence for any reason."""
    match reason:
        case CoachSays():
            return "Your coach's start for you."
        case CoachHolds():
            return "Your coach holds the load here."
        case CarryStart():
            return "First time: the middle of your rack."
        case AsLastTime():
            return "As last time."
        case HeldBack(place):
            return f"We go easy on the {place}." if place else "We go easy after the pain."
        case GoingLight(left):
            return f"Light today: stop with {left} left in you."
        case TempoFirst():
            return "Same load until the tempo holds."
        case EasierWeek():
            return "Lighter on purpose: your easier week."
        case AsSaid(felt):
            return f"You said it was {felt}."
        case EmptyHands():
            return "You have nothing for this: do it without."
        case _:
            return reasons.why(reason)
