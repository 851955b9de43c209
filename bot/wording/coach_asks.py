"""What a coach is asked back when it is not clear who or what is meant, and questions that trainees have passed on."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.days import date_text
from bot.wording.phrases import and_list, page
from core.deeds import (
    AskDropped,
    ClipElsewhere,
    DeedKind,
    ForWhomAsked,
    InviteElsewhere,
    MovementUnknown,
    NameTaken,
    NobodyCalled,
    NoOtherMovement,
    NoQuestionOpen,
    NothingToEnd,
    QuestionPassed,
    ReviewNoted,
    WhichQuestion,
    WhoMeant,
    WordsTooLong,
)

DAYS = {
    "mon": "Mondays",
    "tue": "Tuesdays",
    "wed": "Wednesdays",
    "thu": "Thursdays",
    "fri": "Fridays",
    "sat": "Saturdays",
    "sun": "Sundays",
}
FOR_EXAMPLE = {
    DeedKind.SAY: "tell Mia: well done",
    DeedKind.ANSWER: "answer Mia: heels down",
    DeedKind.SWAP: "swap squats for bridges for Mia",
    DeedKind.SWAP_ENDED: "put Mia back on squats",
    DeedKind.HOLD: "keep Mia at 10 kg on the squat",
    DeedKind.HOLD_ENDED: "let Mia go up again",
    DeedKind.NOTE: "note on Mia's row: elbows in",
    DeedKind.NOTE_ENDED: "take the note off Mia's row",
    DeedKind.PUT_UP: "put Mia on Market day from Monday",
    DeedKind.PAUSE: "pause Mia until the 14th",
    DeedKind.PAUSE_ENDED: "Mia is back",
    DeedKind.REMOVE: "remove Mia",
}
NOTHING_THERE = {
    DeedKind.SWAP_ENDED: "Nothing is swapped there for {whom}.",
    DeedKind.HOLD_ENDED: "Nothing is held back there for {whom}.",
    DeedKind.NOTE_ENDED: "There is no such note for {whom}.",
    DeedKind.PAUSE_ENDED: "No rest is on for {whom}.",
}


@words_for(WhoMeant)
def who_meant(message: WhoMeant) -> Worded:
    """Who is meant? Nothing is done before that is settled."""
    names = message.names
    if message.sure:
        head = f'Which "{message.said}"?' if message.said else "Which one?"
    else:
        head = f'Nobody is called "{message.said}". Did you mean one of these?'
        head = f'Nobody is called "{message.said}". Did you mean {names[0]}?' if len(names) == 1 else head
    return Worded(
        page(head, *(f"• {name}" for name in names if len(names) > 1), 'Nothing is done yet. "no" leaves it.'), (*names, "no")
    )


@words_for(WhichQuestion)
def which_question(message: WhichQuestion) -> Worded:
    """Whose question?"""
    names = message.names
    return Worded(page("Several have asked. Whose question is it?", *(f"• {name}" for name in names)), (*names, "no"))


@words_for(AskDropped)
def ask_dropped(message: AskDropped) -> Worded:
    """Nobody is meant."""
    del message
    return Worded(page("All right. Nothing has changed."))


@words_for(NobodyCalled)
def nobody_called(message: NobodyCalled) -> Worded:
    """Nobody of that name."""
    there = f"With you: {and_list(message.there_are)}." if message.there_are else "Nobody trains with you yet."
    return Worded(page(f'Nobody called "{message.said}" trains with you. Nothing has changed.', there))


@words_for(ForWhomAsked)
def for_whom_asked(message: ForWhomAsked) -> Worded:
    """Nobody was named."""
    return Worded(page("For whom? Say it with a name, like:", f'"{FOR_EXAMPLE[message.kind]}"'))


@words_for(MovementUnknown)
def movement_unknown(message: MovementUnknown) -> Worded:
    """No exercise for sure."""
    near = ("Is it one of these? Say it again with:", *(f"• {name}" for name in message.nearest)) if message.nearest else ()
    return Worded(page(f'I know no exercise "{message.said}" for sure.', *near))


@words_for(NoOtherMovement)
def no_other_movement(message: NoOtherMovement) -> Worded:
    """Nothing else to do instead."""
    return Worded(page(f"What instead of {message.exercise}? Say it with a name."))


@words_for(NothingToEnd)
def nothing_to_end(message: NothingToEnd) -> Worded:
    """There is nothing to end."""
    sentence = NOTHING_THERE.get(message.kind, "There is nothing to end for {whom}.")
    return Worded(page(sentence.format(whom=and_list(message.whom))))


@words_for(NoQuestionOpen)
def no_question_open(message: NoQuestionOpen) -> Worded:
    """No question waits."""
    if message.name is None:
        return Worded(page('No question is open. To say something: "tell Mia: …"'))
    return Worded(page(f"{message.name} has no open question.", f'To say something: "tell {message.name}: …"'))


@words_for(WordsTooLong)
def words_too_long(message: WordsTooLong) -> Worded:
    """Too many letters."""
    return Worded(page(f"That is too long: {message.most} letters fit there. Nothing has changed."))


@words_for(NameTaken)
def name_taken(message: NameTaken) -> Worded:
    """It would change at once."""
    return Worded(
        page(
            f"{message.name} is on the board, and under that name it would change at once, not on {date_text(message.on)}.",
            'Send it with another name: "name: …"',
        )
    )


@words_for(InviteElsewhere)
def invite_elsewhere(message: InviteElsewhere) -> Worded:
    """Not here."""
    del message
    return Worded(page("Invites work on the messaging network, not in this terminal."))


@words_for(ClipElsewhere)
def clip_elsewhere(message: ClipElsewhere) -> Worded:
    """A film is needed."""
    del message
    return Worded(page("Send me the film itself, with the exercise's name under it."))


@words_for(ReviewNoted)
def review_noted(message: ReviewNoted) -> Worded:
    """When the week is told."""
    if message.day is None:
        return Worded(page('All right, no week unasked. "the week" shows it any time.'))
    return Worded(page(f"The week on {DAYS[message.day]} at {message.at}, your time."))


@words_for(QuestionPassed)
def question_passed(message: QuestionPassed) -> Worded:
    """A trainee asks."""
    where = ""
    if message.exercise is not None and message.station is not None and message.round is not None:
        where = f"At {message.exercise} (station {message.station}, round {message.round} of {message.circuit})."
    first, *more = f'"{message.text}"'.splitlines()
    return Worded(page(f"{message.trainee} asks:", first, *more, where, f'"answer {message.trainee}: …" goes back.'))
