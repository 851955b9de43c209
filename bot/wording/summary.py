"""The closing summary."""

from __future__ import annotations

from dataclasses import replace

from bot.wording.book import Worded, words_for
from bot.wording.phrases import load_text, minutes_text, page, sets_text, tempo_text
from core.diary import Ending
from core.messages import NextChange, SetLine, Summary

HEADS = {
    Ending.COMPLETE: "Done! {circuit} is complete.",
    Ending.EARLY: "Done for today. What you did counts.",
    Ending.SILENT: "I've ended the workout. All you told me is kept.",
    Ending.PAIN: "The workout is over. Look after yourself.",
}


@words_for(Summary)
def summary(message: Summary) -> Worded:
    """The end of a workout."""
    missing = f"{message.missing} set{'s' if message.missing > 1 else ''} not noted; tell me any time." if message.missing else ""
    best = ""
    if message.best is not None:
        best = f"Best set: {message.best.exercise}, {sets_text(_plain((message.best.line,)))}."
    changes = [f"• {_change_text(change)}" for change in message.changes]
    return Worded(
        page(
            HEADS[message.ending].format(circuit=message.circuit),
            f"{minutes_text(message.work_s)} of work in {minutes_text(message.total_s)}." if message.work_s else "",
            *(
                f"• {line.exercise}: {sets_text(_plain(line.sets))}"
                + (f" (last time {sets_text(_plain(line.last_time))})" if line.last_time else "")
                for line in message.lines
            ),
            missing,
            best,
            "Next time:" if changes else "",
            *changes,
            "Drink something, walk a little. Next time I compare with today." if message.first_time and message.lines else "",
        )
    )


def _plain(lines: tuple[SetLine, ...]) -> tuple[SetLine, ...]:
    """Sets without what was left in reserve: an overview shows what was done."""
    return tuple(replace(line, reserve=None, rpe=None) for line in lines)


def _change_text(change: NextChange) -> str:
    load = load_text(change.load) if change.change == "same" else f"{change.change} to {load_text(change.load)}"
    return f"{change.exercise}: {load}" + ("" if change.tempo is None else f", {tempo_text(change.tempo)}")
