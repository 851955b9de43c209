"""The clocks of a workout: what each state will do, at absolute instants on one grid.

A rest that ends at an instant starts work at that same instant, and work that ends starts its rest there, however late the alarm
rang. So a delay shifts one message and never the ones after it.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from core.session.states import Closing, Cue, CueKind, Paused, Resting, SettingUp, WarmingUp, Working

if TYPE_CHECKING:
    from typing import Literal

    from core.diary import Ending
    from core.session.states import Workout

TEN_S = 10
TEN_FROM_S = 30  # shorter work gets no ten-second call
HALF_FROM_S = 20  # shorter work gets no half-way call
CARD_AFTER_S = 15  # time to answer "how many?" before the next card pushes it away
SET_UP_NUDGE_S = 5 * 60
SET_UP_CLOSE_S = 20 * 60
PAUSE_NUDGE_S = 10 * 60
PAUSE_CLOSE_S = 30 * 60
LAST_REPORT_NUDGE_S = 60
LAST_REPORT_CLOSE_S = 4 * 60
COUNTED_SLACK_S = 20  # beyond the time the reps should take, before asking


def _later(instant: datetime, seconds: float) -> datetime:
    return instant + timedelta(seconds=seconds)


def going_on(workout: Workout, at: datetime) -> Workout:
    """The workout with its pause over at an instant, and counted; as it was when it is in none."""
    if workout.paused_at is None:
        return workout
    paused_s = workout.paused_s + max(0, round((at - workout.paused_at).total_seconds()))
    return replace(workout, paused_s=paused_s, paused_at=None)


def warming_up(workout: Workout, starts_at: datetime, seconds: float) -> WarmingUp:
    """The warm-up clock, from `starts_at`."""
    return WarmingUp(going_on(workout, starts_at), (Cue(CueKind.WARM_UP_OVER, _later(starts_at, seconds)),))


def setting_up(workout: Workout, now: datetime) -> SettingUp:
    """Waiting for a "go"."""
    return SettingUp(
        going_on(workout, now),
        (Cue(CueKind.NUDGE, _later(now, SET_UP_NUDGE_S)), Cue(CueKind.CLOSE, _later(now, SET_UP_CLOSE_S))),
    )


def working(workout: Workout, starts_at: datetime, left_s: float | None = None) -> Working:
    """The work clock from `starts_at`; `left_s` when a pause cut the station and less than the whole is left."""
    station = workout.circuit.stations[workout.place.station - 1]
    if station.work_s is None:
        rep_s = 0.0 if station.tempo is None else station.tempo.rep_s
        asked_at = _later(starts_at, (station.reps or 0) * rep_s + COUNTED_SLACK_S)
        cues = (Cue(CueKind.ASK, asked_at), Cue(CueKind.CLOSE, _later(asked_at, SET_UP_CLOSE_S)))
        return Working(workout, starts_at, None, cues)
    whole_s = station.work_s
    ends_at = _later(starts_at, whole_s if left_s is None else left_s)
    calls = []
    if whole_s >= HALF_FROM_S:
        calls.append(Cue(CueKind.HALF, _later(ends_at, -(whole_s // 2))))
    if whole_s >= TEN_FROM_S:
        calls.append(Cue(CueKind.TEN, _later(ends_at, -TEN_S)))
    calls.append(Cue(CueKind.DOWN, ends_at))
    return Working(workout, starts_at, ends_at, tuple(cue for cue in calls if cue.at > starts_at))


def resting(
    workout: Workout, starts_at: datetime, seconds: float, *, carded: bool = False, work_left_s: float | None = None
) -> Resting:
    """The rest clock from `starts_at`; the next card comes after a while unless it was shown."""
    ends_at = _later(starts_at, seconds)
    calls = []
    if not carded:
        calls.append(Cue(CueKind.CARD, _later(starts_at, min(CARD_AFTER_S, seconds / 3))))
    if seconds > 2 * TEN_S:
        calls.append(Cue(CueKind.READY, _later(ends_at, -TEN_S)))
    calls.append(Cue(CueKind.GO, ends_at))
    return Resting(going_on(workout, starts_at), ends_at, tuple(calls), carded, work_left_s)


def paused(
    workout: Workout,
    now: datetime,
    during: Literal["warming_up", "setting_up", "working", "resting"],
    left_s: float,
    *,
    carded: bool = False,
) -> Paused:
    """The clock stopped, with `left_s` seconds on it."""
    cues = (Cue(CueKind.NUDGE, _later(now, PAUSE_NUDGE_S)), Cue(CueKind.CLOSE, _later(now, PAUSE_CLOSE_S)))
    since = now if workout.paused_at is None else workout.paused_at
    return Paused(replace(workout, paused_at=since), during, left_s, cues, carded)


def closing(workout: Workout, now: datetime, ending: Ending) -> Closing:
    """Waiting for the last report before the summary."""
    cues = (
        Cue(CueKind.NUDGE, _later(now, LAST_REPORT_NUDGE_S)),
        Cue(CueKind.CLOSE, _later(now, LAST_REPORT_CLOSE_S)),
    )
    return Closing(going_on(workout, now), cues, ending)


def just_stopped(state: Paused, now: datetime) -> bool:
    """Whether a pause began this very moment, and was said."""
    return state.cues[-1].at == _later(now, PAUSE_CLOSE_S)
