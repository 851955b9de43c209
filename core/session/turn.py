"""One turn of the conversation: what is known, and what has been decided so far.

A turn lives inside one call of `step`; nothing of it is kept.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from core.diary import (
    Entry,
    HealthSaid,
    Heard,
    History,
    PainDescribed,
    PainEased,
    PainNoted,
    PainRecord,
    ReminderSet,
    SafetyNoted,
    SetNoted,
    SetRecord,
    SetUndone,
    SnoozeSet,
    UnaskedKind,
    UnaskedNoted,
    WorkoutOpened,
    WorkoutRecord,
    ZoneChosen,
)
from core.health import NoteKind, SafetyNote
from core.plan import circuit_due, in_force
from core.reminders import local_date
from core.session.events import Plan, Say
from core.session.wished import with_swaps

if TYPE_CHECKING:
    from datetime import date

    from core.circuit import Side
    from core.health import Health
    from core.messages import Message
    from core.rack import Rack
    from core.session.states import Place, Workout
    from core.trainee import Trainee


def _is_there(pain: PainRecord, place: str | None) -> bool:
    return not pain.urgent and pain.place == place and pain.eased_at is None


def _with_what_is_due(plan: Plan, history: History, now: datetime) -> Plan:
    """The plan with the circuit that is on, or that the trainee's block asks for; swapped exercises as the coach wishes."""
    trainee, today = plan.trainee, local_date(now, plan.trainee.zone)
    circuit, block = in_force(trainee, plan.circuit, today)
    if block is None:
        return replace(plan, trainee=replace(trainee, block=None), circuit=with_swaps(circuit, trainee.wishes))
    due = circuit_due(block, history, today, trainee.zone, trainee.reminders)
    swapped = with_swaps(due.circuit, trainee.wishes)
    return replace(plan, circuit=swapped, due=replace(due, circuit=swapped))


class Turn:
    """Gathers the entries and messages of one step, in order."""

    def __init__(self, plan: Plan, history: History, now: datetime) -> None:
        self.plan = _with_what_is_due(plan, history, now)
        self.history = history
        self.now = now
        self.entries: list[Entry] = []
        self.messages: list[Say] = []

    @property
    def today(self) -> date:
        """The trainee's day."""
        return local_date(self.now, self.plan.trainee.zone)

    def say(self, message: Message, expires_at: datetime | None = None) -> None:
        """Send a message after those said before; worthless past `expires_at`."""
        self.messages.append(Say(message, expires_at))

    def keep(self, entry: Entry) -> None:
        """Keep something in the diary."""
        self.entries.append(entry)

    def learn(self, *, rack: Rack) -> None:
        """Decide the rest of this turn with a rack just said."""
        self.plan = replace(self.plan, trainee=replace(self.plan.trainee, rack=rack))

    def keep_health(self, health: Health) -> None:
        """Keep what was answered of the health talk, and decide the rest of this turn with it."""
        self.keep(HealthSaid(health))
        self.plan = replace(self.plan, trainee=replace(self.plan.trainee, health=health))

    def keep_note(self, kind: NoteKind, value: str = "") -> None:
        """Keep a fact about safety."""
        self.keep(SafetyNoted(SafetyNote(self.now, kind, value)))

    @property
    def diary(self) -> History:
        """The diary with the pains and notes of this turn."""
        pains, notes = list(self.history.pains), list(self.history.notes)
        for entry in self.entries:
            match entry:
                case PainNoted(record):
                    pains.append(record)
                case PainDescribed(at, quality, known):
                    pains = [replace(pain, quality=quality, known=known) if pain.at == at else pain for pain in pains]
                case PainEased(place, at):
                    pains = [replace(pain, eased_at=at) if _is_there(pain, place) else pain for pain in pains]
                case SafetyNoted(note):
                    notes.append(note)
                case _:
                    pass
        return replace(self.history, pains=tuple(pains), notes=tuple(notes))

    def note(self, record: SetRecord) -> SetRecord:
        """Keep a new set record under the next free number; returns it with that number."""
        numbered = replace(record, number=len(self.history.sets) + self._noted() + 1)
        self.keep(SetNoted(numbered))
        return numbered

    def clock_setting(self) -> tuple[Trainee, History]:
        """The trainee and the diary as far as reminders rest on them, what was kept in this turn included."""
        trainee, history = self.plan.trainee, self.history
        for entry in self.entries:
            match entry:
                case Heard(at):
                    trainee = replace(trainee, heard_at=at)
                case ReminderSet(reminders, since):
                    trainee = replace(trainee, reminders=reminders, reminders_since=since)
                case SnoozeSet(until):
                    trainee = replace(trainee, snoozed_until=until)
                case ZoneChosen(zone):
                    trainee = replace(trainee, zone=zone)
                case UnaskedNoted(record):
                    trainee = replace(trainee, snoozed_until=None) if record.kind is UnaskedKind.SNOOZE else trainee
                    history = replace(history, unasked=(*history.unasked, record))
                case WorkoutOpened(number, circuit, at):
                    history = replace(history, workouts=(*history.workouts, WorkoutRecord(number, circuit.name, at)))
                case PainNoted(pain):
                    history = replace(history, pains=(*history.pains, pain))
                case _:
                    pass
        return trainee, history

    def _noted(self) -> int:
        return sum(isinstance(entry, SetNoted) for entry in self.entries)

    def sets(self) -> tuple[SetRecord, ...]:
        """The records that hold, those of this turn included, in the order they were noted."""
        records = {record.number: record for record in self.history.standing()}
        for entry in self.entries:
            match entry:
                case SetNoted(record):
                    records[record.number] = record
                    if record.replaces is not None:
                        records.pop(record.replaces, None)
                case SetUndone(number=number):
                    records.pop(number, None)
                case _:
                    pass
        return tuple(records[number] for number in sorted(records))

    def sets_of(self, workout: Workout) -> tuple[SetRecord, ...]:
        """The records of this workout that hold."""
        return tuple(record for record in self.sets() if record.workout == workout.number)

    def sets_at(self, workout: Workout, place: Place) -> tuple[SetRecord, ...]:
        """The records of one station in one round, both sides."""
        return tuple(record for record in self.sets_of(workout) if (record.round, record.station) == (place.round, place.station))

    def note_pain(self, place: str | None, side: Side | None, exercise: str | None, *, urgent: bool) -> None:
        """Keep a report of pain."""
        self.keep(PainNoted(PainRecord(self.now, place, side, urgent, exercise)))

    def in_s(self, seconds: float) -> datetime:
        """The instant `seconds` from now."""
        return self.now + timedelta(seconds=seconds)
