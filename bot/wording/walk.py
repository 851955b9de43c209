"""The walk through a workout: cards and the calls of the clock."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import load_text, page, seconds_text, tempo_text
from bot.wording.why import why_text
from core.messages import (
    AlreadyGoing,
    BackNow,
    Card,
    Down,
    FeltRight,
    FormShown,
    FormUnknown,
    GetReady,
    Go,
    HalfWay,
    LoadChanged,
    NoOtherLoad,
    NoSwap,
    PausedNow,
    PlatePlan,
    PlateStretch,
    SecondsLeft,
    Skipped,
    StillThere,
    Swapped,
    SwitchSides,
    TimeTold,
    WhereWeWere,
)
from core.units import amount_text


@words_for(PlatePlan)
def plate_plan(message: PlatePlan) -> Worded:
    """Which plates to leave on over a round."""
    return Worded(
        page(
            "Plates for this round (collars tight):",
            *(f"• {_stretch_text(stretch)}" for stretch in message.stretches),
            *(f"Before station {number}: take the time to change." for number in message.slow),
        )
    )


def _stretch_text(stretch: PlateStretch) -> str:
    where = f"station {stretch.first}" if stretch.first == stretch.last else f"stations {stretch.first} to {stretch.last}"
    plates = " + ".join(amount_text(plate.amount) for plate in stretch.a_side)
    return f"{load_text(stretch.load)} on for {where}" + (f": {plates} a side" if plates else ": bare handles")


@words_for(Card)
def card(message: Card) -> Worded:
    """A station's card."""
    head = message.exercise + (f", {load_text(message.load, message.loads_held)}" if message.load is not None else "")
    if message.sides:
        head += ", each side"
    change = ""
    if message.put_down is not None and message.load is not None:
        before = load_text(message.put_down.load, message.put_down.hands)
        change = f"Change weights: {before} → {load_text(message.load, message.loads_held)}."
    return Worded(
        page(
            f"Round {message.round}/{message.rounds}, station {message.station}/{message.stations}",
            head,
            "" if message.why is None else why_text(message.why),
            _effort(message),
            *(f"{message.coach}: {note}" for note in message.notes),
            *(f"• {point}" for point in message.form),
            message.set_up,
            change,
            'Say "go" when you are set.'
            if message.starts_in_s is None
            else f"Starts in {seconds_text(message.starts_in_s)}."
            if message.starts_in_s
            else "",
        ),
        ("go", "skip", "swap"),
    )


def _effort(message: Card) -> str:
    """How long and how fast: tempo in words, reps to expect."""
    a_side = " a side" if message.sides else ""
    if message.hold:
        return f"Hold for {seconds_text(message.work_s or 0)}{a_side}, breathe."
    tempo = "" if message.tempo is None else f"{tempo_text(message.tempo).capitalize()}. "
    if message.target_reps is not None:
        return f"{tempo}{message.target_reps} reps{a_side}, no clock."
    if message.reps_low is None or message.reps_high is None:
        return f"{tempo}{seconds_text(message.work_s or 0)}{a_side}."
    reps = str(message.reps_high) if message.reps_low == message.reps_high else f"{message.reps_low}-{message.reps_high}"
    return f"{tempo}Expect {reps} reps{a_side} in {seconds_text(message.work_s or 0)}."


@words_for(Go)
def go(message: Go) -> Worded:
    """The work starts."""
    side = f", {message.side} side" if message.side is not None else ""
    span = f"{message.reps} reps" if message.left_s is None else seconds_text(message.left_s)
    tail = " Text me when you are done." if message.left_s is None else ""
    return Worded(page(f"GO! {message.exercise}{side}, {span}.{tail}"), ("pause", "too heavy"))


@words_for(HalfWay)
def half_way(message: HalfWay) -> Worded:
    """Half of the work is done."""
    return Worded(page(f"Half-way, {message.left_s} s left."))


@words_for(SecondsLeft)
def seconds_left(message: SecondsLeft) -> Worded:
    """The last seconds."""
    return Worded(page(f"{message.left_s} s left."))


@words_for(SwitchSides)
def switch_sides(message: SwitchSides) -> Worded:
    """The other side, at once."""
    span = f"{message.reps} reps" if message.left_s is None else seconds_text(message.left_s)
    return Worded(page(f"SWITCH! {str(message.side).capitalize()} side, {span}."))


@words_for(Down)
def down(message: Down) -> Worded:
    """The work is over."""
    ask = {"reps": "How many?", "seconds": "How long did you hold?", None: ""}[message.ask]
    if message.ask == "reps" and message.sides:
        ask = "How many each side?"
    after = ""
    if message.round_over is not None and message.upcoming is None:
        after = "That was the last station!"
    elif message.round_over is not None:
        after = f"Round {message.round_over} of {message.rounds} done. Rest {seconds_text(message.rest_s or 0)}."
    elif message.rest_s is not None:
        after = f"Rest {seconds_text(message.rest_s)}. Next: {message.upcoming}."
    return Worded(page(f"DOWN. {ask}".strip(), after), _likely_answers(message) if message.ask else ())


def _likely_answers(message: Down) -> tuple[str, ...]:
    """What is likely to be answered: reps, each side where there are sides, the same as before, too heavy."""
    sides = " each side" if message.sides else ""
    again = ("same again",) if message.again else ()
    return (*(f"{reps}{sides}" for reps in message.likely), *again, "too heavy")


@words_for(GetReady)
def get_ready(message: GetReady) -> Worded:
    """The rest is nearly over."""
    return Worded(page(f"{message.exercise} in {message.left_s} s."))


@words_for(PausedNow)
def paused_now(message: PausedNow) -> Worded:
    """The clock is stopped."""
    left = f", {seconds_text(message.left_s)} left" if message.left_s else ""
    where = "the warm-up" if message.during == "warming_up" else message.exercise
    return Worded(page(f"Paused at {where}{left}.", 'Say "back" to go on, "finish" to end.'), ("back", "finish"))


@words_for(BackNow)
def back_now(message: BackNow) -> Worded:
    """The clock goes on."""
    if not message.lead_s:
        return Worded(page(f"On we go, {seconds_text(message.left_s or 0)} of warm-up left."))
    left = f" with {seconds_text(message.left_s)} to go" if message.left_s else ""
    return Worded(page(f"On we go: {message.exercise} in {seconds_text(message.lead_s)}{left}."), ("go",))


@words_for(TimeTold)
def time_told(message: TimeTold) -> Worded:
    """How long left?"""
    here = _clock_text(message.during, message.exercise, message.left_s)
    return Worded(page(here, f"About {message.minutes_all} min in all." if message.minutes_all else ""))


def _clock_text(during: str, exercise: str, left_s: int | None) -> str:
    """What the clock shows, in a sentence."""
    left = "" if left_s is None else seconds_text(left_s)
    return {
        "warming_up": f"Warm-up: {left} left.",
        "setting_up": f'{exercise} waits for your "go".',
        "working": f"{exercise}: {left} left." if left else f"{exercise}: no clock, take your time.",
        "resting": f"Rest: {left} left, then {exercise}.",
        "paused": f'Paused at {exercise}. Say "back" to go on, "finish" to end.',
        "closing": "Nothing left but your last number.",
    }[during]


@words_for(FormShown)
def form_shown(message: FormShown) -> Worded:
    """How it is done."""
    return Worded(
        page(
            f"{message.exercise}:",
            message.set_up,
            *(f"• {point}" for point in message.form),
            f"Often wrong: {message.fault}",
            f"Instead: {message.cure}",
            message.careful,
        )
    )


@words_for(FormUnknown)
def form_unknown(message: FormUnknown) -> Worded:
    """An exercise that is not in the catalogue."""
    near = f"Did you mean: {', '.join(message.nearest)}?" if message.nearest else "Ask your coach to show you."
    return Worded(page(f'I don\'t know "{message.said}".', near))


@words_for(Skipped)
def skipped(message: Skipped) -> Worded:
    """A station was left out."""
    return Worded(page(f"{message.exercise} left out."))


@words_for(Swapped)
def swapped(message: Swapped) -> Worded:
    """Another exercise takes this station."""
    return Worded(page(f"{message.after} instead of {message.before}."))


@words_for(NoSwap)
def no_swap(message: NoSwap) -> Worded:
    """There is nothing else that fits."""
    return Worded(page(f"I have nothing better than {message.exercise} here.", 'Name one, or say "skip".'), ("skip",))


@words_for(LoadChanged)
def load_changed(message: LoadChanged) -> Worded:
    """A load was eased or raised."""
    when = "Take" if message.when == "now" else "Next round take"
    return Worded(page(f"{when} {load_text(message.load)} for {message.exercise}."))


@words_for(NoOtherLoad)
def no_other_load(message: NoOtherLoad) -> Worded:
    """Nothing lighter (or heavier) is on the rack."""
    if message.wanted == "lighter":
        instead = 'Do fewer, rest when you need to, or say "swap".'
        return Worded(page(f"That is your lightest for {message.exercise}.", instead), ("swap",))
    if message.held:
        return Worded(page(f"Your coach holds the load of {message.exercise} here.", "Lower it more slowly: that makes it harder."))
    return Worded(page(f"That is your heaviest for {message.exercise}.", "Lower it more slowly: that makes it harder."))


@words_for(FeltRight)
def felt_right(message: FeltRight) -> Worded:
    """The load is right."""
    del message
    return Worded(page("Good, then it stays."))


@words_for(WhereWeWere)
def where_we_were(message: WhereWeWere) -> Worded:
    """Where the workout stands."""
    return Worded(
        page(
            f"Round {message.round}/{message.rounds}, station {message.station}/{message.stations}.",
            _clock_text(message.during, message.exercise, message.left_s),
            f"Still missing: {message.missing}. How many?" if message.missing else "",
        ),
        ("back", "finish") if message.during == "paused" else (),
    )


@words_for(StillThere)
def still_there(message: StillThere) -> Worded:
    """Nobody has answered for some time."""
    coming = f'{message.exercise} is next. "back" to go on, "finish" to end.'
    return Worded(page("Still there? The clock is stopped.", coming), ("back", "finish"))


@words_for(AlreadyGoing)
def already_going(message: AlreadyGoing) -> Worded:
    """Go was said while the clock runs."""
    return Worded(page("We are going" + (f": {message.left_s} s left." if message.left_s is not None else ".")))
