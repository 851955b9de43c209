"""A text that was changed after it was sent: the sets it had noted are corrected, in whatever workout they are."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.exercise import Measure
from core.messages import Corrected, EditNotRead
from core.reading import read
from core.reading.acts import Amend, Awaiting, Context, Log
from core.session.lines import line_of
from core.units import Load

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import SetRecord
    from core.session.turn import Turn


def noted_at(turn: Turn, at: datetime | None) -> tuple[SetRecord, ...]:
    """The records that a text handled at this instant had noted, as they stand now, corrections followed."""
    family: set[int] = set()
    for record in turn.history.sets:
        if record.at == at or record.replaces in family:
            family.add(record.number)
    return tuple(record for record in turn.sets() if record.number in family)


def correct(records: tuple[SetRecord, ...], text: str, turn: Turn) -> None:
    """Correct records by the text as it reads now; what cannot be read changes nothing and is said."""
    acts = read(text, _context(records[-1], turn))
    logs = [act for act in acts if isinstance(act, Log | Amend)]
    if len(logs) != len(acts) or len(logs) != len(records):
        last = records[-1]
        turn.say(EditNotRead(exercise(last.exercise).name, line_of(last)))
        return
    for record, log in zip(records, logs, strict=True):
        changed = _changed(record, log, turn)
        if replace(changed, at=record.at, replaces=record.replaces) != record:
            turn.note(changed)
            turn.say(Corrected(exercise(record.exercise).name, line_of(record), line_of(changed)))


def _context(record: SetRecord, turn: Turn) -> Context:
    unit = turn.plan.trainee.unit
    return Context(
        unit=unit,
        load=None if record.load is None else record.load.in_unit(unit) or None,
        sides=record.side is not None,
        awaiting=Awaiting.REPS,
        hold=exercise(record.exercise).measure is not Measure.REPS,
    )


def _changed(record: SetRecord, said: Log | Amend, turn: Turn) -> SetRecord:
    load = record.load if said.load is None else Load(said.load, said.unit or turn.plan.trainee.unit)
    return replace(
        record,
        at=turn.now,
        side=record.side if said.side is None else said.side,
        reps=record.reps if said.reps is None else said.reps,
        load=load,
        reserve=record.reserve if said.reserve is None else said.reserve,
        rpe=record.rpe if said.rpe is None else said.rpe,
        seconds=record.seconds if said.seconds is None else said.seconds,
        replaces=record.number,
    )
