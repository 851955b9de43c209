"""What is the trainee's own, at any moment: their records, who sees them, a question to the coach, having everything erased.

None of it touches the clock of a workout, nor a question that is open. Whether everything is to be erased is asked once; only a
clear yes as the next thing said does it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.diary import Ending, Forgotten, Heard, Question, QuestionAsked
from core.messages import Card, Down, GetReady, Go, HalfWay, SecondsLeft, SwitchSides
from core.own_messages import (
    CoachEnded,
    ForgetAsked,
    ForgetByHost,
    ForgottenNow,
    QuestionPassedOn,
    QuestionWanted,
    RackShown,
    RecordsHere,
    SeenBy,
)
from core.reading.own_talk import ForCoach, MyRecords, OwnWord, own_talk, says_no, says_yes
from core.records_file import Form, RecordsFile
from core.review.person import Person
from core.review.telling import own_week
from core.session.closing import close
from core.session.events import Opened, Say, Step, Woke
from core.session.states import Idle, New, Resting, Running
from core.session.talk import urgent

if TYPE_CHECKING:
    from core.reading.acts import Pain
    from core.reading.own_talk import OwnTalk
    from core.session.events import Event
    from core.session.states import Place, State, Workout
    from core.session.turn import Turn

CALLS = (Card, Down, GetReady, Go, HalfWay, SecondsLeft, SwitchSides)  # what the clock says to nobody's yes


def heard(state: State, said: OwnTalk, turn: Turn) -> None:
    """Answer what was said of the trainee's own; the state stays what it is."""
    match said:
        case MyRecords(forms):
            for form in forms:
                turn.say(RecordsHere(_file(form, turn)))
        case OwnWord("seen"):
            turn.say(SeenBy(turn.plan.coach, turn.plan.trainee.health.share))
        case OwnWord("weights"):
            rack = turn.plan.trainee.rack
            turn.say(RackShown(() if rack is None else rack.items))
        case OwnWord("forget"):
            turn.say(ForgetByHost() if turn.plan.coaches else ForgetAsked())
        case OwnWord():
            _tell_week(state, turn)
        case ForCoach(question):
            _ask(state, question, turn)
        case _:
            assert_never(said)


def _file(form: Form, turn: Turn) -> RecordsFile:
    """The records as they are now; a table of sets needs the sets alone."""
    whole = turn.history
    diary = whole if form is Form.JSON else replace(whole, workouts=(), pains=(), unasked=(), notes=(), words=(), questions=())
    return RecordsFile(form, turn.now, turn.plan.trainee, turn.plan.circuit.name, diary)


def _tell_week(state: State, turn: Turn) -> None:
    """The trainee's own week, with what it showed."""
    trainee = turn.plan.trainee
    running = isinstance(state, Running)
    person = Person(trainee.name, trainee, turn.plan.circuit, turn.history, running=running)
    turn.say(own_week(person, turn.now))


def _ask(state: State, question: str | None, turn: Turn) -> None:
    """Keep a question for the coach, with where in a workout it was asked; none was asked: ask what it is."""
    if question is None:
        turn.say(QuestionWanted(turn.plan.coach))
        return
    number = len(turn.history.questions) + 1
    if isinstance(state, Running):
        workout, place = state.workout, _place(state, turn)
        slug = workout.exercises[place.station - 1]
        asked = Question(number, turn.now, question, workout.circuit.name, place.round, place.station, slug)
    else:
        asked = Question(number, turn.now, question)
    turn.keep(QuestionAsked(asked))
    turn.say(QuestionPassedOn(turn.plan.coach))


def _place(state: Running, turn: Turn) -> Place:
    """The station that is spoken of: the one at hand, in a rest the one before it until the next card is shown."""
    workout = state.workout
    if not isinstance(state, Resting) or state.carded:
        return workout.place
    return _done_last(workout, turn) or workout.place


def _done_last(workout: Workout, turn: Turn) -> Place | None:
    if workout.open:
        return workout.open[-1]
    done = turn.sets_of(workout)
    return replace(workout.place, round=done[-1].round, station=done[-1].station, side=None) if done else None


# Having everything erased


def answered(text: str, turn: Turn) -> bool | None:
    """What the next thing said means for the question whether to erase everything: yes, no, or (None) neither."""
    if says_yes(text) and not turn.plan.coaches:
        return True
    return False if says_no(text) else None


def take_up(turn: Turn, *, asked: bool) -> None:
    """Who takes a copy first, as they were offered, is asked again."""
    if asked and any(isinstance(say.message, RecordsHere) for say in turn.messages):
        turn.say(ForgetAsked())


def is_asked(event: Event, turn: Turn, *, before: bool) -> bool:
    """Whether the question about erasing is the last one: asked just now, or before and nothing but the clock has called since."""
    said = [say.message for say in turn.messages]
    if said and isinstance(said[-1], ForgetAsked):
        return True
    return before and isinstance(event, Woke) and all(isinstance(message, CALLS) for message in said)


def forgotten(turn: Turn) -> Step:
    """Everything is erased, whatever else was decided in this turn; the last word goes out."""
    return Step(New(), (Forgotten(turn.now),), (Say(ForgottenNow()),), None)


# Those whom the coach has taken off the roster


def ended(state: State, event: Event, alarm: Pain | None, turn: Turn) -> State:
    """Nothing goes on for somebody whose coach has ended this; a warning sign is still one, and what is theirs is still theirs."""
    if isinstance(state, Running):
        state = close(state, Ending.EARLY, turn, quietly=True)
    if isinstance(event, Woke):
        return state
    turn.keep(Heard(turn.now))
    if alarm is not None:
        urgent(state if isinstance(state, Idle) else Idle(), alarm, turn)
        return state
    said = None if isinstance(event, Opened) else own_talk(event.text, turn.plan.coach)
    if isinstance(said, MyRecords) or said == OwnWord("forget"):
        heard(state, said, turn)
        return state
    turn.say(CoachEnded(turn.plan.coach))
    return state
