"""What is the trainee's own: their records, who sees them, having them erased, a question to the coach."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.first_talk import item_text
from bot.wording.phrases import page
from core.own_messages import (
    CoachEnded,
    ForgetAsked,
    ForgetByHost,
    ForgetNot,
    ForgottenNow,
    QuestionPassedOn,
    QuestionWanted,
    RackShown,
    RecordsHere,
    SeenBy,
    SomebodyForgotten,
)
from core.records_file import Form

FILES = {
    Form.CSV: "Your sets as a table, for any spreadsheet.",
    Form.JSON: "Everything I keep about you, as JSON.",
}


@words_for(RecordsHere)
def records_here(message: RecordsHere) -> Worded:
    """The records as a file."""
    return Worded(page(FILES[message.document.form]))


@words_for(SeenBy)
def seen_by(message: SeenBy) -> Worded:
    """Who sees this?"""
    if message.shared:
        agreed = "• where it hurts and your health answers: you agreed to that"
    else:
        agreed = "Not where it hurts, nor your health answers: you have not agreed to that."
    return Worded(
        page(
            f"{message.coach} sees:",
            "• workouts, sets, effort",
            "• that something hurts, and what the health questions came to",
            "• what you ask them",
            agreed,
            "All of it is kept on the machine of whoever hosts me; they run it, so they could look.",
            "A messaging network, if we talk over one, carries what we write.",
            '"my records" gives you all of it. "forget me" erases it here.',
        ),
        ("my records",),
    )


@words_for(ForgetAsked)
def forget_asked(message: ForgetAsked) -> Worded:
    """Shall everything be erased?"""
    del message
    return Worded(
        page(
            "Erase everything about you?",
            "Gone for good: your name, workouts, sets, weights, days, health answers, pains, questions, all we wrote. "
            "Nobody can bring it back.",
            "What your phone shows stays there until you clear it.",
            'To keep a copy, say "my records" first.',
            'Say "yes" now to erase. Anything else keeps it all.',
        ),
        ("yes", "no", "my records"),
    )


@words_for(RackShown)
def rack_shown(message: RackShown) -> Worded:
    """The equipment that is noted."""
    if not message.items:
        return Worded(page("No weights noted.", 'Tell me what you have, like: "a pair of 8s and a 12".'))
    return Worded(page("Noted as yours:", *(f"• {item_text(item)}" for item in message.items), "Changed? Tell me all you have."))


@words_for(ForgetNot)
def forget_not(message: ForgetNot) -> Worded:
    """All is kept."""
    del message
    return Worded(page("Nothing is erased. All is as it was."))


@words_for(ForgottenNow)
def forgotten_now(message: ForgottenNow) -> Worded:
    """The last word."""
    del message
    return Worded(page("Done. Everything about you is erased.", "Thank you for training with me. Take good care of yourself."))


@words_for(ForgetByHost)
def forget_by_host(message: ForgetByHost) -> Worded:
    """A coach wants to be forgotten."""
    del message
    return Worded(page("You coach here, and people rest on that. Whoever hosts me can remove a coach.", "Nothing is erased."))


@words_for(QuestionWanted)
def question_wanted(message: QuestionWanted) -> Worded:
    """What is the question?"""
    return Worded(page(f"What shall I ask {message.coach}?", 'Say it in one go: "ask coach: elbows in or out?"'))


@words_for(QuestionPassedOn)
def question_passed_on(message: QuestionPassedOn) -> Worded:
    """It goes to the coach."""
    return Worded(page(f"Passed on to {message.coach}. The answer comes here."))


@words_for(CoachEnded)
def coach_ended(message: CoachEnded) -> Worded:
    """Nothing goes on here."""
    return Worded(
        page(
            f"{message.coach} has ended this here. Thank you for every set.",
            'What is yours stays yours: "my records" gives you all of it, "forget me" erases it.',
        )
    )


@words_for(SomebodyForgotten)
def somebody_forgotten(message: SomebodyForgotten) -> Worded:
    """Somebody is gone."""
    so_far = f" {message.total} people so far." if message.total > 1 else ""
    return Worded(page(f"Somebody had everything about them erased.{so_far}"))
