"""Reports read back, and the short questions about them."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import load_text, number_text, page, set_text, sets_text, tempo_text
from core.messages import (
    AlreadyNoted,
    Corrected,
    EditNotRead,
    FormPoint,
    LeftOpen,
    Lighter,
    NoSuchNumber,
    NotDoneYet,
    Noted,
    NothingToCorrect,
    OtherSideAsked,
    PartMissing,
    SetNotRead,
    Slower,
    StillMissing,
    TooManySets,
    Undone,
    WhichOne,
)

HOW_MUCH = {"reps": "How many", "seconds": "How many seconds"}


@words_for(Noted)
def noted(message: Noted) -> Worded:
    """Sets read back, the next load, one reminder."""
    coming = ""
    if message.next_load is not None:
        when = "Next round" if message.next_when == "round" else "Next time"
        again = " again" if message.change == "same" else ""
        paced = f", {tempo_text(message.next_tempo)}" if message.next_tempo is not None else ""
        coming = f"{when}: {load_text(message.next_load)}{again}{paced}."
    where = "" if message.exercise is None else f"{message.exercise}: "
    return Worded(page(f"{where}{sets_text(message.sets)}, noted.", coming, _reminder(message.reminder)))


def _reminder(reminder: Slower | Lighter | FormPoint | None) -> str:
    match reminder:
        case Slower(reps, ceiling, tempo):
            return f"{reps} is fast: at this tempo {ceiling} fit. {tempo_text(tempo).capitalize()}."
        case Lighter(reps, reps_low, None):
            return f"{reps} is short of {reps_low}. Rest a breath when you must, then go on."
        case Lighter(reps, reps_low, _):
            return f"{reps} is short of {reps_low}: lighter, so that you last the minute."
        case FormPoint(text):
            return f"Keep in mind: {text[0].lower()}{text[1:]}"
        case None:
            return ""


@words_for(OtherSideAsked)
def other_side_asked(message: OtherSideAsked) -> Worded:
    """The other side is missing."""
    return Worded(page(f"{set_text(message.noted)}, noted.", f"And the {message.side}?"), ("same again",))


@words_for(StillMissing)
def still_missing(message: StillMissing) -> Worded:
    """Nothing reported yet."""
    return Worded(page(f"{HOW_MUCH[message.ask]} at {message.exercise}?", '"skip" leaves it out.'), ("skip",))


@words_for(AlreadyNoted)
def already_noted(message: AlreadyNoted) -> Worded:
    """The same report came twice."""
    return Worded(page(f"{set_text(message.line)}: I have that."))


@words_for(Corrected)
def corrected(message: Corrected) -> Worded:
    """A record was corrected."""
    return Worded(page(f"{message.exercise}: {set_text(message.after)}, instead of {set_text(message.before)}."))


@words_for(EditNotRead)
def edit_not_read(message: EditNotRead) -> Worded:
    """A changed text that cannot be read."""
    return Worded(
        page(
            "I couldn't read your change.",
            f"{message.exercise} stays {set_text(message.line)}.",
            'Wrong? Say it like "sorry 12 not 11".',
        )
    )


@words_for(Undone)
def undone(message: Undone) -> Worded:
    """A record was taken away."""
    return Worded(page(f"Taken away: {message.exercise}, {set_text(message.line)}.", "How many was it?"), ("skip",))


@words_for(NothingToCorrect)
def nothing_to_correct(message: NothingToCorrect) -> Worded:
    """Nothing is noted yet."""
    del message
    return Worded(page("Nothing is noted yet, so nothing to change."))


@words_for(NotDoneYet)
def not_done_yet(message: NotDoneYet) -> Worded:
    """A set of a station that is not done."""
    if message.started:
        return Worded(page(f"{message.exercise} still runs: tell me that when it is done."))
    return Worded(page(f"Not noted: {message.exercise} comes first.", 'Say "go" to start it, and tell me after.'), ("go",))


@words_for(NoSuchNumber)
def no_such_number(message: NoSuchNumber) -> Worded:
    """A correction of a number that is nowhere."""
    return Worded(
        page(
            f"I have no {number_text(message.said)} to correct, so nothing changed.",
            f"The last is {message.exercise}: {set_text(message.line)}.",
        )
    )


@words_for(WhichOne)
def which_one(message: WhichOne) -> Worded:
    """A short question with the likely answers."""
    names = {choice.exercise for choice in message.choices}
    one = len(names) == 1
    choices = [set_text(choice.line) if one else f"{choice.exercise}: {set_text(choice.line)}" for choice in message.choices]
    head = f"{names.pop()}: which one?" if one else "Which one?"
    return Worded(
        page(head, *(f"{number}. {choice}" for number, choice in enumerate(choices, start=1))),
        tuple(str(number) for number in range(1, len(choices) + 1)),
    )


@words_for(PartMissing)
def part_missing(message: PartMissing) -> Worded:
    """A set came without its reps."""
    said = set_text(message.said)
    return Worded(page(f"{HOW_MUCH[message.ask]}{f' ({said})' if said else ''}?"), ("skip",))


@words_for(SetNotRead)
def set_not_read(message: SetNotRead) -> Worded:
    """A report could not be read."""
    ask = f"Sorry, I couldn't read that. {HOW_MUCH[message.ask]} at {message.exercise}?"
    return Worded(page(ask, f'Like: "{set_text(message.example)}"'), ("skip",))


@words_for(LeftOpen)
def left_open(message: LeftOpen) -> Worded:
    """Kept as not noted."""
    return Worded(page(f"No matter: {message.exercise} stays open. You can tell me later."))


@words_for(TooManySets)
def too_many_sets(message: TooManySets) -> Worded:
    """More sets than are missing."""
    return Worded(page(f"That's {message.count} sets; I'm missing one. How many at {message.exercise}?"), ("skip",))
