"""Questions during and around a workout that need no answer: how are you today, what kind of pain, too much, how hard was it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.circuit import Circuit, Span
from core.diary import EffortSaid, Ending, PainDescribed, PainEased, PainNoted
from core.health import Feeling, NoteKind, Quality
from core.messages import (
    EffortNoted,
    FearHeard,
    FeelingNoted,
    FeverRest,
    GoodToHear,
    IllAsked,
    PainAdvice,
    PainGone,
    PainKept,
    PainStays,
    PainStop,
    ReliefTaken,
    TooMuchSeen,
    UnwellPause,
)
from core.reading import health_talk
from core.reading.acts import Amend, Finish, Log, Pain, Pause, Resume, Skip, Start, Swap, TimeLeft, Unclear, Undo
from core.reading.whole_words import plain, says_start, yes_or_no
from core.safety import weeks
from core.safety.day import extra_reserve, lighter_for, lighter_today, rounds_left
from core.safety.joints import is_mild, watched
from core.safety.signs import too_much
from core.session import cues, health, talk
from core.session.belonging import place_asked
from core.session.cards import show
from core.session.closing import close
from core.session.places import following, whole
from core.session.report import take_logs
from core.session.ring import left_s as seconds_left
from core.session.sparing import as_written, spared
from core.session.states import Asking, Closing, Idle, Paused, Resting, Running, SettingUp, State, WarmingUp, Working

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.diary import PainRecord
    from core.reading.acts import Act
    from core.session.states import Workout
    from core.session.turn import Turn

KEEPS_SENSE = (Amend, Finish, Log, Pain, Pause, TimeLeft, Undo)  # said while the kind of a pain is asked, and meant as ever
MORE_REST_S = 60  # common practice, no source
HOT_REST_S = 30  # longer rests when hot (entry 49, from memory); how much is common practice
LIGHTER_BY = 2  # reps to leave beyond today's


def heard(state: Running | Idle, text: str, acts: Sequence[Act], turn: Turn) -> State | None:
    """What a text means for an open question; None when it is none of its answers and is to be read as usual."""
    if isinstance(state, Idle):
        if health_talk.is_afraid(text):
            turn.say(FearHeard(turn.plan.coach))
            return state
        match state.asking:
            case Asking.EFFORT:
                return _effort(state, text, turn)
            case Asking.PAIN:
                return _pain_outside(state, text, turn)
            case _:
                return None
    if health_talk.is_afraid(text) and isinstance(state, WarmingUp | SettingUp):
        turn.say(FearHeard(turn.plan.coach))
        return state
    unwell = health_talk.feels_unwell(text) or health_talk.is_afraid(text)
    if unwell and not isinstance(state, WarmingUp):
        return _unwell(state, acts, turn)
    match state.workout.asking:
        case Asking.READINESS | Asking.ILL if not isinstance(state, Working | Closing):
            return _today(state, text, acts, turn) or _all_well(state, text, acts, turn)
        case Asking.PAIN:
            return _pain_kind(state, text, acts, turn)
        case Asking.RELIEF:
            return _relief(state, text, turn) or _all_well(state, text, acts, turn)
        case _:
            return _all_well(state, text, acts, turn)


def _all_well(state: Running, text: str, acts: Sequence[Act], turn: Turn) -> State | None:
    """Signs denied, or muscles that only burn: a kind word, and everything goes on as it was."""
    if not all(isinstance(act, Unclear) and not act.choices for act in acts):
        return None
    burning = health_talk.is_burning(text)
    if not burning and not health_talk.denies_pain(text):
        return None
    turn.say(GoodToHear(burning))
    return state


# How are you today?


def _today(state: Running, text: str, acts: Sequence[Act], turn: Turn) -> State | None:
    workout = state.workout
    if workout.asking is Asking.ILL:
        said = yes_or_no(text)
        if said is not None and not says_start(text):
            return _feel(state, (Feeling.FEVER if said else Feeling.COLD,), turn)
    feelings = health_talk.read_feelings(text)
    sore = tuple(watched(turn.diary.pains, turn.now))
    gone = health_talk.read_gone(text) if sore else None
    if any(isinstance(act, Pain) for act in acts) and not (feelings and set(feelings) - {Feeling.SORE}):
        if gone is False and all(isinstance(act, Pain) and act.place in (None, *(pain.place for pain in sore)) for act in acts):
            return _still(state, sore, turn)
        return None
    if gone is not None and not feelings:
        return _gone(state, sore, text, turn) if gone else _still(state, sore, turn)
    if feelings is None:
        return None
    return _feel(state, feelings, turn)


def _feel(state: Running, feelings: tuple[Feeling, ...], turn: Turn) -> State:
    """Keep how the trainee is; fever ends the day, illness is asked about once, the rest makes the day lighter."""
    workout = state.workout
    known = tuple(feeling for feeling in workout.feelings if feeling is not Feeling.ILL or Feeling.COLD not in feelings)
    for feeling in feelings:
        turn.keep_note(NoteKind.FEELING, feeling.value)
    if Feeling.FEVER in feelings:
        turn.say(FeverRest())
        return close(state, Ending.PAIN, turn, quietly=True)
    every = tuple(dict.fromkeys([*known, *feelings]))
    reasons = (*lighter_today(turn.plan.trainee, turn.history, turn.now), *lighter_for(every))
    rounds = rounds_left(workout.whole_rounds or workout.circuit.rounds, reasons)
    lighter = extra_reserve(reasons) > workout.ease
    circuit = _longer_rests(workout.circuit, HOT_REST_S) if Feeling.HOT in feelings else workout.circuit
    changed = replace(
        workout,
        ease=max(workout.ease, extra_reserve(reasons)),
        circuit=replace(circuit, rounds=min(rounds, workout.circuit.rounds)),
        feelings=every,
        asking=Asking.ILL if Feeling.ILL in feelings else Asking.READINESS,
    )
    fewer = changed.circuit.rounds if changed.circuit.rounds < workout.circuit.rounds else None
    turn.say(FeelingNoted(feelings, lighter, fewer))
    if Feeling.ILL in feelings:
        turn.say(IllAsked())
    return _again(state, changed, turn, lighter or fewer is not None)


def _again(state: Running, workout: Workout, turn: Turn, changes: bool) -> Running:  # noqa: FBT001 - it is a fact
    """The same state around a changed workout; a card that is already shown is shown as it is now."""
    if changes and isinstance(state, SettingUp):
        return replace(state, workout=show(turn, workout, None))
    return replace(state, workout=workout)


def _gone(state: Running, sore: Sequence[PainRecord], text: str, turn: Turn) -> State:
    """What hurt is fine now: it comes back, a step lighter. Where several places were asked about, only those named, or all."""
    said = plain(text)
    every = [pain.place for pain in sore]
    places = tuple(dict.fromkeys([place for place in every if place is not None and place in said] or every))
    for place in places:
        turn.keep(PainEased(place, turn.now))
    turn.say(PainGone(tuple(place or "" for place in places)))
    before = state.workout
    if any(turn.sets_at(before, spot) for spot in (before.place,)) or before.place.round > 1:
        return state
    back = as_written(before, turn)
    return _again(state, back, turn, back.exercises != before.exercises)


def _still(state: Running, sore: Sequence[PainRecord], turn: Turn) -> State:
    """It still hurts: noted again, so that it is asked about again."""
    for pain in sore:
        turn.note_pain(pain.place, pain.side, pain.exercise, urgent=False)
        turn.keep(PainDescribed(turn.now, pain.quality, pain.known))
    turn.say(PainStays(tuple(dict.fromkeys(pain.place or "" for pain in sore))))
    return state


def _unwell(state: Running, acts: Sequence[Act], turn: Turn) -> State:
    """Stop the clock and calm; a set told in the same breath is kept."""
    logs = [act for act in acts if isinstance(act, Log)]
    after: Running | Idle = state
    if logs and place_asked(state, turn) is not None:
        after = take_logs(state, logs, turn)
    if isinstance(after, Idle):
        return after
    stopped = talk.pause(after, turn)
    turn.messages.clear()
    turn.say(UnwellPause(turn.plan.emergency))
    return replace(stopped, workout=replace(stopped.workout, asking=Asking.RELIEF))


# Pain: sharp or dull, new or known?


def _pain_kind(state: Running, text: str, acts: Sequence[Act], turn: Turn) -> State | None:
    said = health_talk.read_quality(text)
    if said is not None and not _says_another(acts, turn):
        return described(state, said, turn)
    if any(isinstance(act, Skip) for act in acts):
        return described(state, (None, None), turn, out=True)
    onward = any(isinstance(act, Start | Resume | Swap) for act in acts)
    if onward and yes_or_no(text) is None:
        return described(state, (None, None), turn)
    if not any(isinstance(act, KEEPS_SENSE) for act in acts):
        pain = turn.diary.pains[-1]
        slug = state.workout.exercises[state.workout.place.station - 1] if pain.exercise is None else pain.exercise
        turn.say(PainStop(pain.place, exercise(slug).name))
        return state
    return None


def told_at_once(state: State, text: str, turn: Turn) -> State:
    """What a pain is like, when it was said with the pain itself: kept, and not asked for when nothing of it is missing."""
    said = health_talk.read_quality(text)
    noted = any(isinstance(entry, PainNoted) and not entry.record.urgent for entry in turn.entries)
    if said is None or not noted or not isinstance(state, WarmingUp | SettingUp | Working | Resting | Paused | Closing):
        return state
    if None in said:
        turn.keep(PainDescribed(turn.now, *said))
        return state
    turn.messages[:] = [
        replace(say, message=replace(say.message, asked=False)) if isinstance(say.message, PainStop) else say
        for say in turn.messages
    ]
    return described(state, said, turn)


def _says_another(acts: Sequence[Act], turn: Turn) -> bool:
    """Whether pain at another place is told, not the kind of this one."""
    last = turn.history.pains[-1] if turn.history.pains else None
    return any(isinstance(act, Pain) and act.place is not None and (last is None or act.place != last.place) for act in acts)


def described(state: Running, said: tuple[Quality | None, bool | None], turn: Turn, *, out: bool = False) -> State:
    """The pain told last is of this kind (nothing told: as if it were new): what it troubles changes, and the workout goes on.

    `out`: the station is left out whatever would spare the place.
    """
    pain = next(pain for pain in reversed(turn.diary.pains) if not pain.urgent)
    if said != (None, None):
        pain = replace(pain, quality=said[0] or pain.quality, known=pain.known if said[1] is None else said[1])
        turn.keep(PainDescribed(pain.at, pain.quality, pain.known))
    before = state.workout
    station = next((number for number, slug in enumerate(before.exercises, 1) if slug == pain.exercise), before.place.station)
    workout = replace(spared(before, turn, at=station), asking=None)
    if out and station not in workout.left_out:
        workout = replace(workout, left_out=(*workout.left_out, station))
    names = [exercise(slug).name for slug in before.exercises]
    changed = [number for number in range(1, len(names) + 1) if _differs(before, workout, number)]
    swap = workout.exercises[station - 1]
    turn.say(
        PainAdvice(
            exercise=names[station - 1],
            swap=exercise(swap).name if station not in workout.left_out and swap != before.exercises[station - 1] else None,
            others=tuple(names[number - 1] for number in changed if number != station),
            mild=is_mild(pain),
        )
    )
    return _onward(state, workout, turn)


def _differs(before: Workout, after: Workout, number: int) -> bool:
    return before.exercises[number - 1] != after.exercises[number - 1] or (number in after.left_out) != (number in before.left_out)


def _onward(state: Running, workout: Workout, turn: Turn) -> State:
    if isinstance(state, Closing):
        return replace(state, workout=workout)
    if workout.place.station not in workout.left_out:
        return cues.setting_up(show(turn, workout, None), turn.now)
    coming = following(workout)
    if coming is None:
        closing = cues.closing(workout, turn.now, Ending.PAIN)
        return closing if workout.open else close(closing, Ending.PAIN, turn)
    skipped = replace(workout, skipped=(*workout.skipped, whole(workout.place)), place=coming)
    return cues.setting_up(show(turn, skipped, None), turn.now)


def _pain_outside(state: Idle, text: str, turn: Turn) -> State | None:
    said = health_talk.read_quality(text)
    if said is None:
        return None
    pain = next((pain for pain in reversed(turn.diary.pains) if not pain.urgent), None)
    if pain is None:
        return None
    turn.keep(PainDescribed(pain.at, *said))
    turn.say(PainKept(mild=is_mild(replace(pain, quality=said[0], known=said[1]))))
    return replace(state, asking=None)


# Too much today?


def watch(state: Resting | SettingUp | Working, turn: Turn) -> Resting | SettingUp | Working:
    """After a report: what it gives away of today, once a round at most."""
    workout = state.workout
    sign = too_much(turn.sets_of(workout))
    if sign is None or workout.relief_round >= workout.place.round or workout.asking is Asking.PAIN:
        return state
    turn.say(TooMuchSeen(sign))
    return replace(state, workout=replace(workout, asking=Asking.RELIEF, relief_round=workout.place.round))


def _relief(state: Running, text: str, turn: Turn) -> State | None:
    choice = health_talk.read_relief(text)
    if choice is None:
        return None
    workout = replace(state.workout, asking=None)
    turn.say(ReliefTaken(choice, MORE_REST_S))
    if choice == "on":
        return replace(state, workout=workout)
    if choice == "lighter":
        workout = replace(workout, ease=workout.ease + LIGHTER_BY)
        if isinstance(state, Resting) and state.carded:
            return replace(state, workout=show(turn, workout, seconds_left(state.ends_at, turn)))
        return _again(state, workout, turn, changes=True)
    workout = replace(workout, circuit=_longer_rests(workout.circuit, MORE_REST_S))
    if isinstance(state, Resting):
        left_s = (state.ends_at - turn.now).total_seconds() + MORE_REST_S
        return cues.resting(workout, turn.now, left_s, carded=state.carded, work_left_s=state.work_left_s)
    return replace(state, workout=workout)


def _longer_rests(circuit: Circuit, seconds: int) -> Circuit:
    """The circuit with every rest longer by so many seconds."""

    def longer(span: Span) -> Span:
        return Span(span.low + seconds, span.high + seconds)

    stations = tuple(
        station if station.rest_s is None else replace(station, rest_s=longer(station.rest_s)) for station in circuit.stations
    )
    between = longer(circuit.rest_between_rounds_s)
    return replace(circuit, stations=stations, rest_s=longer(circuit.rest_s), rest_between_rounds_s=between)


# How hard was it?


def _effort(state: Idle, text: str, turn: Turn) -> State | None:
    if state.last is None or place_asked(state, turn) is not None:
        return None
    effort = health_talk.read_effort(text)
    if effort is None:
        return None
    turn.keep(EffortSaid(state.last.number, effort))
    told = tuple(
        replace(record, effort=effort) if record.number == state.last.number else record for record in turn.history.workouts
    )
    week = weeks.week(replace(turn.history, workouts=told), turn.now)
    lately = [note.kind for note in turn.history.notes if turn.now - note.at < weeks.WARNED_FOR]
    jump = None if NoteKind.LOAD_JUMP in lately else week.jump_percent
    if jump is not None:
        turn.keep_note(NoteKind.LOAD_JUMP, str(jump))
    alike = week.days_alike and NoteKind.DAYS_ALIKE not in lately
    if alike:
        turn.keep_note(NoteKind.DAYS_ALIKE)
    turn.say(EffortNoted(effort, jump, alike))
    return health.offered(replace(state, asking=None), turn)
