"""Warning signs, pain, fear and feeling unwell, in words: what to do stands first.

To be reviewed as prose, from top to bottom: it informs and defers; doctors and local rules decide. Calm, plain, no blame.
"""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import emergency_text, page, places_text
from core.messages import (
    FearHeard,
    GoodToHear,
    NothingSpared,
    PainAdvice,
    PainGone,
    PainHeard,
    PainKept,
    PainStays,
    PainStop,
    UnwellPause,
    UrgentStop,
)


@words_for(UrgentStop)
def urgent_stop(message: UrgentStop) -> Worded:
    """Stop everything at once."""
    return Worded(
        page(
            "STOP. Weights on the floor. Sit or lie down.",
            f"Chest, jaw or arm pain, fainting, numbness, breath that does not settle, or sudden and bad: call"
            f" {emergency_text(message.emergency)} now.",
            "If someone is near, tell them.",
            f"No more training today. What you did is kept, with a note for {message.coach}.",
            'See a doctor. Another day, when cleared, say "I am cleared".',
        )
    )


@words_for(PainStop)
def pain_stop(message: PainStop) -> Worded:
    """Pain stops a station."""
    where = f" for the {message.place}" if message.place else ""
    return Worded(
        page(
            f"Stop {message.exercise}{where}. Weights down, the clock is stopped.",
            'Sharp or dull? New, or one you know? ("dull, known")' if message.asked else "",
        ),
        ("sharp, new", "sharp, known", "dull, new", "dull, known", "finish") if message.asked else (),
    )


@words_for(PainAdvice)
def pain_advice(message: PainAdvice) -> Worded:
    """What follows from pain at a station."""
    what = (
        f"{message.swap} instead of {message.exercise}: it spares that."
        if message.swap is not None
        else f"{message.exercise} is left out today."
    )
    others = f"Changed too: {', '.join(message.others)}." if message.others else ""
    if message.mild:
        doctor = "Go on only where nothing hurts. Next time it comes back lighter."
    else:
        doctor = "Go on only where nothing hurts. If it is strong, swells or stays: a doctor or physiotherapist. I ask next time."
    return Worded(page(what, others, doctor, '"finish" is a good answer, too.'), ("go", "finish"))


@words_for(PainHeard)
def pain_heard(message: PainHeard) -> Worded:
    """Pain outside a station."""
    where = f"your {message.place}" if message.place else "that"
    return Worded(
        page(
            f"Sorry to hear about {where}. Noted; I spare it next time, and ask.",
            'Sharp or dull? New, or one you know? ("dull, known")',
        ),
        ("sharp, new", "sharp, known", "dull, new", "dull, known"),
    )


@words_for(PainKept)
def pain_kept(message: PainKept) -> Worded:
    """Pain outside a station is noted."""
    if message.mild:
        return Worded(page("Noted: next time lighter there. If it stays, have it looked at."))
    return Worded(page("Noted: it stays out until you tell me it is fine. If it is strong, swells or stays: a doctor."))


@words_for(PainGone)
def pain_gone(message: PainGone) -> Worded:
    """What hurt is fine now."""
    named = places_text(message.places, "what hurt")
    return Worded(page(f"Good that {named} is fine. It comes back a step lighter. Tell me if it speaks up."), ("go",))


@words_for(PainStays)
def pain_stays(message: PainStays) -> Worded:
    """It still hurts."""
    named = places_text(message.places, "what hurts")
    return Worded(page(f"Then {named} rests: what troubles it stays out today. If it stays a week, have it looked at."), ("go",))


@words_for(NothingSpared)
def nothing_spared(message: NothingSpared) -> Worded:
    """Every station would trouble it."""
    named = places_text(message.places, "what hurts")
    return Worded(page(f"Everything in this circuit would trouble {named}. Rest today; your coach can change the plan."))


@words_for(FearHeard)
def fear_heard(message: FearHeard) -> Worded:
    """The trainee is afraid before anything was lifted."""
    return Worded(
        page(
            "That is all right. Nothing has to be lifted today.",
            '"go" moves on lightly at your pace; "pause", "skip" and "finish" always work.',
            f"Worried about your health? A doctor first; {message.coach} is glad to hear from you, too.",
        ),
        ("go", "pause", "finish"),
    )


@words_for(UnwellPause)
def unwell_pause(message: UnwellPause) -> Worded:
    """The trainee feels unwell or is frightened."""
    return Worded(
        page(
            "Weights down, sit, breathe out slowly, sip water, open a window. The clock is stopped; nobody is waiting.",
            f"Chest, jaw or arm pain, faint, numb, muddled, no breath: tell me, and call {emergency_text(message.emergency)}.",
            'Ebbing away? "finish" is a fine end; "back" goes on, "lighter" if you like.',
        ),
        ("finish", "back"),
    )


@words_for(GoodToHear)
def good_to_hear(message: GoodToHear) -> Worded:
    """Nothing is wrong, and everything goes on."""
    heard = "That burn is work; it fades in the rest." if message.burning else "Good to hear."
    changes = "If it turns into pain, tell me." if message.burning else "If that changes, tell me."
    return Worded(page(f"{heard} {changes}"))
