"""The account: joining, wishes, what cannot be read; and what the coach hears of it."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import page
from core.messages import (
    ClipKept,
    ClipUnnamed,
    CoachHelp,
    CoachWelcome,
    FewerNoted,
    InviteMade,
    MayHaveMissed,
    TextOnly,
    TraineeBack,
    TraineeGone,
    TraineeJoined,
)

NOT_READ = {
    "voice": "I can't listen to voice messages yet.",
    "sticker": "Nice one! But I only read words.",
    "place": "I don't need to know where you are.",
    "file": "I can't open files.",
    "picture": "I can't see pictures.",
    "film": "I can't watch films.",
    "other": "I can't read that.",
}
COACH_CAN = (
    '• "invite Mia": a link to forward',
    "• send a film with an exercise's name under it: it goes on that card",
    '• "train": do the circuit yourself',
)
MORE = '• ask how it goes, write to people, change what is on: "help" shows how'


@words_for(CoachWelcome)
def coach_welcome(message: CoachWelcome) -> Worded:
    """The first words to a coach."""
    return Worded(page(f"Welcome, {message.name}. You are the coach here.", "You can:", *COACH_CAN, MORE), ("invite", "help"))


@words_for(CoachHelp)
def coach_help(message: CoachHelp) -> Worded:
    """What a coach can say."""
    del message
    return Worded(page("You can:", *COACH_CAN), ("invite",))


@words_for(InviteMade)
def invite_made(message: InviteMade) -> Worded:
    """An invite to forward. The link stays in one piece."""
    who = message.name or "one trainee"
    head = page(f"An invite for {who}. It works once, for {message.hours} hours. Forward it:")
    return Worded("\n".join((head, *([message.link] if message.link else ()), page(f"Or they text me: {message.code}"))))


@words_for(TraineeJoined)
def trainee_joined(message: TraineeJoined) -> Worded:
    """Somebody has come in."""
    return Worded(page(f"{message.name} is in."))


@words_for(TraineeGone)
def trainee_gone(message: TraineeGone) -> Worded:
    """Nothing can be sent to a trainee any more."""
    return Worded(page(f"I can't reach {message.name} any more: they have blocked me or left.", "A word from you may help."))


@words_for(TraineeBack)
def trainee_back(message: TraineeBack) -> Worded:
    """A trainee is back."""
    return Worded(page(f"{message.name} is back."))


@words_for(ClipKept)
def clip_kept(message: ClipKept) -> Worded:
    """A film is kept."""
    return Worded(page(f"Kept. It shows on every card of {message.exercise} from now on."))


@words_for(ClipUnnamed)
def clip_unnamed(message: ClipUnnamed) -> Worded:
    """A film without a name."""
    near = f"Did you mean: {', '.join(message.nearest)}?" if message.nearest else ""
    return Worded(page("Which exercise is it? Send it again with the exercise's name under it.", near))


@words_for(TextOnly)
def text_only(message: TextOnly) -> Worded:
    """Something that cannot be read."""
    return Worded(page(f"{NOT_READ[message.what]} Please type it, short is fine."))


@words_for(FewerNoted)
def fewer_noted(message: FewerNoted) -> Worded:
    """Fewer messages, or all."""
    if message.fewer:
        return Worded(page("Fewer messages from now on: start and end, no calls between.", 'Say "all messages" to have them back.'))
    return Worded(page("All messages from now on."))


@words_for(MayHaveMissed)
def may_have_missed(message: MayHaveMissed) -> Worded:
    """The program was away for long."""
    del message
    return Worded(
        page("I was away for more than a day: older messages are lost.", "Whoever waits for an answer: please write again.")
    )
