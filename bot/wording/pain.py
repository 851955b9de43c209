"""Safety, in words. Reviewed as prose: it informs and defers; doctors decide."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import page
from core.messages import PainHeard, PainStop, UrgentStop


@words_for(UrgentStop)
def urgent_stop(message: UrgentStop) -> Worded:
    """Stop everything at once."""
    del message
    return Worded(
        page(
            "STOP. Weights on the floor, sit or lie down.",
            "Call your local emergency number if it is chest, jaw or arm pain, you fainted, your breath does not settle, or it"
            " came suddenly and badly.",
            "If someone is near, tell them now.",
            "No more training today. What you did is kept. See a doctor before the next workout.",
        )
    )


@words_for(PainStop)
def pain_stop(message: PainStop) -> Worded:
    """Pain stops a station."""
    where = f" for the {message.place}" if message.place else ""
    if message.swap is None:
        return Worded(
            page(
                f"Stop {message.exercise}{where}: no pushing through pain. The clock is stopped.",
                '"skip" to leave it out, "swap" for something else, "finish" to end. If it stays, see a doctor.',
            ),
            ("skip", "swap", "finish"),
        )
    return Worded(
        page(
            f"Stop {message.exercise}. The clock is stopped.",
            f'{message.swap} spares it. "go" only if that is free of pain, else "skip" or "finish". If it stays, see a doctor.',
        ),
        ("go", "skip", "finish"),
    )


@words_for(PainHeard)
def pain_heard(message: PainHeard) -> Worded:
    """Pain outside a station."""
    where = f"your {message.place}" if message.place else "that"
    advice = "Rest it; if it is strong, new or stays, see a doctor before you train."
    return Worded(page(f"Sorry to hear about {where}. Noted.", advice))
