"""Between workouts: what today holds, progress, help."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.days import DAY_NAMES
from bot.wording.phrases import load_text, page, set_text
from bot.wording.pictures import strength_text
from core.messages import (
    HelpShown,
    MannersReturned,
    NoHurry,
    NothingRuns,
    NotUnderstood,
    ProgressShown,
    TodayInBlock,
    TodayPlan,
    UnitNoted,
    WelcomeBack,
)
from core.units import Unit

EXPECTED = {
    "reps": 'Tell me your set, like "11 at 12 kg", or "skip".',
    "go": 'Say "go" when you are set, or "help".',
    "back": 'The clock is stopped. Say "back" to go on, or "finish".',
    "today": 'Say "go" to start, "today" to see the plan, or "help".',
}


@words_for(WelcomeBack)
def welcome_back(message: WelcomeBack) -> Worded:
    """The chat was opened again."""
    del message
    return Worded(page("Good to see you again."))


OFFER = 'A few short health questions first? Say "ok". "go" skips them for now, and we go light.'


@words_for(TodayPlan)
def today_plan(message: TodayPlan) -> Worded:
    """What today holds."""
    low, high = message.minutes_low, message.minutes_high
    minutes = f"{low} min" if low == high else f"{low}-{high} min"
    warm_up = "" if message.picture is not None and not message.picture.warm_up_s else " with warm-up"
    stations = [
        f"{number} {line.exercise}"
        + (f", {load_text(line.load, line.loads_held)}" if line.load is not None else "")
        + (", each side" if line.sides else "")
        for number, line in enumerate(message.stations, start=1)
    ]
    return Worded(
        page(
            "You trained today already. Well done. If you want it again:" if message.done_today else "",
            f"{message.days_off} days since the last one, so today is shorter." if message.days_off is not None else "",
            *_missed(message.block),
            f"Today: {message.circuit}",
            *_in_block(message.block),
            f"{message.rounds} rounds, about {minutes}{warm_up}",
            *stations,
            OFFER if message.offer else 'Say "go" to start.',
        ),
        ("go", "ok") if message.offer else ("go",),
    )


def _missed(block: TodayInBlock | None) -> tuple[str, ...]:
    """A training day that was missed, where today makes up for it."""
    if block is None or block.missed is None:
        return ()
    return (f"{DAY_NAMES[block.missed]} was missed, so today is fine for it.",)


def _in_block(block: TodayInBlock | None) -> tuple[str, ...]:
    """Where in their plan somebody is who has one."""
    if block is None:
        return ()
    week = f"Week {block.week} of {block.weeks} of your plan"
    easier = f"{week}, the easier one: less to do, lighter, so that you come back fresh."
    return (easier if block.easier else f"{week}.",)


@words_for(NothingRuns)
def nothing_runs(message: NothingRuns) -> Worded:
    """A workout is needed for that."""
    return Worded(page("No workout is running.", f'Say "go" to start {message.circuit}.'), ("go",))


@words_for(HelpShown)
def help_shown(message: HelpShown) -> Worded:
    """What can I say?"""
    if message.running:
        return Worded(
            page(
                "You can say:",
                '• your set: "11 at 12 kg", "same again", "8, 2 left in the tank"',
                '• fix it: "sorry 12 not 11", "undo"',
                '• the clock: "pause", "back", "how long left"',
                '• the station: "skip", "again", "swap", "how do I do it?"',
                '• "too heavy", "too light"',
                '• "my knee hurts"',
                '• "ask coach: elbows in or out?"',
                '• "done for today"',
            )
        )
    return Worded(
        page(
            "You can say:",
            '• "go" to start',
            '• "what do I do today?"',
            '• "how am I doing?"',
            '• your weights: "I have a pair of 8s and a 16"',
            '• "remind me mon wed fri 6:30am", "stop the reminders"',
            '• "not this week", "move today to tomorrow"',
            '• "use pounds", "use kilos"',
            '• "my week", "my records", "ask coach: …"',
            '• "who sees this?", "forget me"',
        )
    )


@words_for(UnitNoted)
def unit_noted(message: UnitNoted) -> Worded:
    """The unit changed."""
    return Worded(page(f"{'Kilos' if message.unit is Unit.KG else 'Pounds'} from now on."))


@words_for(ProgressShown)
def progress_shown(message: ProgressShown) -> Worded:
    """How it goes."""
    if not message.lines:
        return Worded(page("Nothing noted yet. After your first workout there is more to say."))
    workouts = f"{message.workouts} workout{'s' if message.workouts > 1 else ''} noted."
    lines = [
        f"• {line.exercise}: {set_text(line.latest)}" + (f" (first: {set_text(line.first)})" if line.first != line.latest else "")
        for line in message.lines
    ]
    charts = () if message.picture is None else message.picture.charts
    known = [f"• {chart.exercise}: about {strength_text(chart)}" for chart in charts if chart.points[-1].best is not None]
    estimate = "Strength, estimated (one lift, never to be tested):" if known else ""
    return Worded(page(workouts, *lines, estimate, *known))


@words_for(NotUnderstood)
def not_understood(message: NotUnderstood) -> Worded:
    """Nothing could be read."""
    return Worded(page("I didn't catch that.", EXPECTED[message.expects]))


IN_KIND = {"thanks": "You're welcome.", "hello": "Hello!", "nod": "Good.", "bye": "See you!"}


@words_for(MannersReturned)
def manners_returned(message: MannersReturned) -> Worded:
    """Thanks, a greeting, a nod or a farewell."""
    return Worded(page(IN_KIND[message.said], "" if message.expects is None else EXPECTED[message.expects]))


@words_for(NoHurry)
def no_hurry(message: NoHurry) -> Worded:
    """Somebody asks to wait while no workout runs."""
    del message
    return Worded(page("Take your time.", 'Say "go" when you are ready.'), ("go",))
