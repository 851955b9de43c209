"""The first talk: greeting, cautions, unit, rack."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import and_list, load_text, page
from core.messages import (
    Greeting,
    HowItWorks,
    NotNeeded,
    PairsAsked,
    RackAsked,
    RackMoreAsked,
    RackNoted,
    RackNotRead,
    UnitAsked,
)
from core.rack import Kind, RackItem
from core.units import Unit

EXAMPLES = {Unit.KG: "a pair of 8s, a pair of 12s and a 16", Unit.LB: "a pair of 15s, a pair of 25s and a 35"}


@words_for(Greeting)
def greeting(message: Greeting) -> Worded:
    """The first message to a new trainee."""
    return Worded(
        page(
            f"Hello! I call {message.coach}'s circuit for you, one station at a time.",
            "I keep the clock and the tempo, and remember your weights.",
        )
    )


@words_for(HowItWorks)
def how_it_works(message: HowItWorks) -> Worded:
    """What to text."""
    example = "11 at 12 kg" if message.unit is Unit.KG else "11 at 25 lb"
    return Worded(
        page(
            f'After each station, text what you did: "{example}".',
            'Any time: "pause", "skip", "swap", "too heavy", "how do I do it?"',
            'Lost? Say "help".',
        )
    )


@words_for(UnitAsked)
def unit_asked(message: UnitAsked) -> Worded:
    """Kilograms or pounds?"""
    del message
    return Worded(page('Thank you. Do your weights say "kg" or "lb"?'), ("kg", "lb"))


@words_for(RackAsked)
def rack_asked(message: RackAsked) -> Worded:
    """Which weights do you own?"""
    return Worded(
        page("Which weights do you have?", f'Like: "{EXAMPLES[message.unit]}".', 'None? Say "no weights".'),
        ("no weights",),
    )


@words_for(RackNotRead)
def rack_not_read(message: RackNotRead) -> Worded:
    """The answer about weights could not be read."""
    return Worded(page("I couldn't read those weights.", f'Try it like this: "{EXAMPLES[message.unit]}".'), ("no weights",))


@words_for(PairsAsked)
def pairs_asked(message: PairsAsked) -> Worded:
    """Loads were named without a count."""
    loads = and_list(tuple(load_text(load) for load in message.loads))
    return Worded(page(f"{loads}: do you have two of each?", '"yes", or "no" if some are single.'), ("yes", "no"))


@words_for(RackMoreAsked)
def rack_more_asked(message: RackMoreAsked) -> Worded:
    """Are the weights that are known still there?"""
    return Worded(
        page("Do you still have these, too?", *(f"• {item_text(item)}" for item in message.known), '"yes" or "no"'), ("yes", "no")
    )


@words_for(NotNeeded)
def not_needed(message: NotNeeded) -> Worded:
    """Things that no station is done with."""
    return Worded(
        page(f"Not needed here: {', '.join(message.kinds)}.", "We use dumbbells, kettlebells, bands and your own weight.")
    )


@words_for(RackNoted)
def rack_noted(message: RackNoted) -> Worded:
    """What the trainee owns, read back."""
    if not message.items:
        return Worded(page("Noted: no weights. We use your own."))
    return Worded(page("Noted, you have:", *(f"• {item_text(item)}" for item in message.items)))


def item_text(item: RackItem) -> str:
    """`2 × 12 kg`, `1 × 16 kg kettlebell`, `3 × bands`."""
    kind = "" if item.kind is Kind.DUMBBELL else f" {item.kind}{'s' if item.count > 1 else ''}"
    load = "" if item.load is None else f"{load_text(item.load)}"
    return f"{item.count} × {load}{kind}".replace("×  ", "× ")
