"""`circuit check FILE`: every fault of a circuit file, how long the circuit takes, and what fits."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, TextIO

from core import catalogue, timeline
from core.body_effect import sets_a_muscle, tension_s
from core.circuit_file import Draft, draft_circuit
from core.circuit_warnings import Advice, minutes_text, warnings_of
from core.units import amount_text

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from core.circuit import Circuit, Span

SOUND = 0
BAD_INPUT = 2


def run(path: Path, minutes: int | None, as_json: bool, out: TextIO) -> int:  # noqa: FBT001 (the command's own flag)
    """Check the file at `path` and print the result to `out`; the exit code is 2 for faults, 0 for none.

    Raises:
        OSError: when the file cannot be read.
        UnicodeDecodeError: when it is not UTF-8 text.
    """
    draft = draft_circuit(path.read_text(encoding="utf-8-sig"))
    if as_json:
        out.write(json.dumps(report(draft, minutes), ensure_ascii=False) + "\n")
    else:
        out.write("\n".join(lines(draft, minutes)) + "\n")
    return BAD_INPUT if draft.faults else SOUND


def report(draft: Draft, minutes: int | None) -> dict[str, object]:
    """What `--json` prints: always the same keys, null where the faults leave nothing to compute or no time was named."""
    circuit = draft.circuit
    return {
        "faults": [{"place": fault.place, "says": fault.says, "remedy": fault.remedy} for fault in draft.faults],
        "stations": len(circuit.stations) if circuit else None,
        "work_s_per_round": timeline.work_s_per_round(circuit) if circuit else None,
        "rest_s_per_round": _pair(timeline.rest_s_per_round(circuit)) if circuit else None,
        "round_s": _pair(timeline.round_s(circuit)) if circuit else None,
        "total_s": _pair(timeline.total_s(circuit)) if circuit else None,
        "reps_each": [_pair(timeline.reps_each(station)) for station in circuit.stations] if circuit else None,
        "fits": _fits(circuit, minutes) if circuit and minutes is not None else None,
    }


def _pair(span: Span | None) -> list[int]:
    """Low and high; a hold or a carry counts no reps."""
    return [0, 0] if span is None else [span.low, span.high]


def _fits(circuit: Circuit, minutes: int) -> dict[str, int]:
    fit = timeline.fit(circuit, minutes * 60)
    return {
        "rounds": fit.rounds,
        "rest_s": fit.rest_s,
        "rest_between_rounds_s": fit.rest_between_rounds_s,
        "total_s": fit.total_s,
    }


def _advice(draft: Draft, minutes: int | None) -> tuple[Advice, ...]:
    """Advice is for a circuit without faults: on a broken one it would only be noise."""
    return warnings_of(draft.circuit, minutes) if draft.circuit and not draft.faults else ()


def lines(draft: Draft, minutes: int | None) -> Iterable[str]:
    """What a coach reads."""
    if draft.faults:
        yield f"{len(draft.faults)} to mend:"
        for fault in draft.faults:
            yield f"  {fault.place}: says {fault.says}"
            yield f"    {fault.remedy}"
    if draft.circuit is None:
        return
    yield from _times(draft.circuit)
    if minutes is not None:
        yield from _fit_lines(draft.circuit, minutes)
    if not draft.faults:
        yield from _effect(draft.circuit)
    advice = _advice(draft, minutes)
    if advice:
        yield "Think about:"
        for one in advice:
            yield f"  {one.place}: {one.says}"
            yield f"    {one.remedy}"


def _times(circuit: Circuit) -> Iterable[str]:
    yield f"{circuit.name or 'The circuit'}: {len(circuit.stations)} stations, {circuit.rounds} rounds"
    for number, station in enumerate(circuit.stations, start=1):
        known = catalogue.all_exercises().get(station.exercise)
        name = known.name if known else station.exercise
        reps = timeline.reps_each(station)
        counted = f"about {_range(reps)} reps" if reps else "by the clock"
        work = minutes_text(timeline.station_work_s(station))
        yield f"  {number}. {name}{', each side' if station.sides else ''}: {work}, {counted}"
    yield f"Work a round: {minutes_text(timeline.work_s_per_round(circuit))}"
    yield f"Rest a round: {_time(timeline.rest_s_per_round(circuit))}"
    yield f"A round: {_time(timeline.round_s(circuit))}"
    changes = len(timeline.changes(circuit))
    if changes:
        yield f"Down to the floor or up: {changes} a round, about {timeline.CHANGE_S} s of a rest each"
    if circuit.warm_up_s:
        yield f"Warm-up: {minutes_text(circuit.warm_up_s)}"
    yield f"In all: {_time(timeline.total_s(circuit))}"


def _effect(circuit: Circuit) -> Iterable[str]:
    """What one workout does: time under tension, and the muscles in the order of their sets."""
    sets = sorted(sets_a_muscle([circuit]).items(), key=lambda pair: (-pair[1], pair[0]))
    yield f"Under tension: about {_time(tension_s(circuit))}"
    yield f"Sets: {', '.join(f'{muscle} {amount_text(count)}' for muscle, count in sets)}"


def _fit_lines(circuit: Circuit, minutes: int) -> Iterable[str]:
    fit = timeline.fit(circuit, minutes * 60)
    if not fit.rounds:
        yield f"Not one round fits in {minutes} min: it takes {minutes_text(fit.total_s)} at least"
        return
    if timeline.total_s(circuit).low > minutes * 60:
        yield f"{circuit.rounds} rounds do not fit in {minutes} min"
    rounds = "1 round" if fit.rounds == 1 else f"{fit.rounds} rounds"
    between = f", {fit.rest_between_rounds_s} s between rounds" if fit.rounds > 1 else ""
    yield f"In {minutes} min fit {rounds}, rest {fit.rest_s} s{between}: {minutes_text(fit.total_s)}"


def _range(span: Span) -> str:
    return str(span.low) if span.low == span.high else f"{span.low}-{span.high}"


def _time(span: Span) -> str:
    low, high = minutes_text(span.low), minutes_text(span.high)
    return low if low == high else f"{low} to {high}"
