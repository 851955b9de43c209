"""The coach's words to a trainee: said in order, outside the quiet hours, never in the middle of a workout or of the first talk."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.changed import ChangeKind, read_changed
from core.diary import WordKind, WordSaid
from core.messages import CoachAnswers, CoachChanged, CoachWrites
from core.reminders import word_due
from core.session.states import Idle

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import CoachWord
    from core.messages import Message
    from core.session.states import State
    from core.session.turn import Turn

SWAPS = (ChangeKind.SWAP, ChangeKind.SWAP_ENDED)


def say_words(state: State, turn: Turn) -> datetime | None:
    """Say what waits, if it may be said now; returns when it may (UTC), None when nothing waits or something else comes first."""
    waiting = [word for word in turn.history.words if word.told_at is None and word.taken_back_at is None]
    if not waiting or not isinstance(state, Idle):
        return None
    due_at = word_due(turn.clock_setting()[0], turn.now)
    if due_at > turn.now:
        return due_at
    for word in waiting:
        turn.keep(WordSaid(word.number, turn.now))
        turn.say(_message(word, turn))
    return None


def _message(word: CoachWord, turn: Turn) -> Message:
    coach = turn.plan.coach
    match word.kind:
        case WordKind.MESSAGE:
            return CoachWrites(coach, word.text)
        case WordKind.ANSWER:
            asked = next((one.text for one in turn.history.questions if one.number == word.about), "")
            return CoachAnswers(coach, asked, word.text)
        case WordKind.CHANGE:
            changed = read_changed(word.text)
            swap = changed.kind in SWAPS
            name = exercise(changed.name).name if swap and changed.name is not None else changed.name
            other = exercise(changed.other).name if changed.other is not None else None
            return CoachChanged(coach, replace(changed, name=name, other=other))
