"""Safety before every workout, in words: the warm-up, how the trainee is today, what makes the day lighter or ends it.

To be reviewed as prose, from top to bottom: it informs and defers; doctors and local rules decide. Calm, plain, no blame.
"""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.phrases import and_list, page, places_text, seconds_text
from core.health import Check, Feeling, LightWhy, Move
from core.messages import FeelingNoted, FeverRest, IllAsked, LighterDay, SameMuscles, WarmUp

MOVES = {
    Move.MARCH: "march on the spot",
    Move.SQUATS: "easy squats",
    Move.LEG_SWINGS: "leg swings",
    Move.HIP_BENDS: "easy bends at the hip",
    Move.WALL_PUSH_UPS: "push-ups at the wall",
    Move.ARM_CIRCLES: "arm circles",
    Move.SHOULDER_ROLLS: "shoulder rolls",
    Move.CAT_AND_COW: "cat and cow",
    Move.TRUNK_TURNS: "slow trunk turns",
    Move.ELBOW_BENDS: "elbow bends",
    Move.HEEL_RAISES: "heel raises",
    Move.ONE_LEG: "standing on one leg",
}
CHECKS = {
    Check.FLOOR: "floor clear",
    Check.SHOES: "shoes or bare feet that grip",
    Check.MAT: "mat flat",
    Check.COLLARS: "collars tight, every time",
    Check.HANDLE: "bell handle dry",
    Check.CHAIR: "chair against a wall",
    Check.BAND: "band without cracks",
}


@words_for(WarmUp)
def warm_up(message: WarmUp) -> Worded:
    """The warm-up clock starts; what to look at; how are you?"""
    moves = ", ".join(MOVES[move] for move in message.moves)
    named = places_text(message.places, "what hurt") if message.places else ""
    asked = f'{named.capitalize()}: "fine now" or "still hurts"? I leave it out until you say.' if named else ""
    return Worded(
        page(
            f"Warm-up, {seconds_text(message.seconds)}: {moves}." if message.seconds else f"Warm up first: {moves}.",
            f"Check: {', '.join(CHECKS[check] for check in message.checks)}; water near.",
            asked,
            "Slept badly, sore, ill, in pain, hot in there? Tell me.",
            'Warm already? Say "go".' if message.seconds else 'Else just "go".',
        ),
        (*(("fine now", "still hurts") if named else ()), "go", "pause"),
    )


LIGHTER = {
    LightWhy.UNANSWERED: 'your health questions are open (say "health" after)',
    LightWhy.STARTING: "we build up over the first workouts",
    LightWhy.DISEASE: "hard work waits for a doctor's yes",
    LightWhy.CLEARED: "the first weeks after a clearance",
    LightWhy.FEVER: "back after illness; only if the fever is gone",
    LightWhy.EASIER_PLAN: "an easier week after six",
    LightWhy.EASIER_FALLING: "loads fell while it felt harder: an easier week",
    LightWhy.SLEEP: "short sleep",
    LightWhy.SORE: "sore muscles",
    LightWhy.ILL: "not quite well",
}


@words_for(LighterDay)
def lighter_day(message: LighterDay) -> Worded:
    """Why today is lighter."""
    whys = [
        f"{message.days} days away; strength keeps, so this is care, not loss" if why is LightWhy.BREAK else LIGHTER[why]
        for why in message.whys
    ]
    rounds = f"{message.rounds} round{'s' if message.rounds > 1 else ''} today." if message.rounds is not None else ""
    return Worded(page("Lighter today:", *(f"• {why}" for why in whys), rounds))


@words_for(SameMuscles)
def same_muscles(message: SameMuscles) -> Worded:
    """The same muscles worked hard lately."""
    when = f"{message.hours} hour{'s' if message.hours != 1 else ''}" if message.hours else "less than an hour"
    return Worded(
        page(
            f"{and_list(message.muscles[:3]).capitalize()} worked hard {when} ago; two days between is the usual advice.",
            'Tomorrow may be the better day. Your call: "not today" or "finish" is fine.',
        )
    )


@words_for(FeelingNoted)
def feeling_noted(message: FeelingNoted) -> Worded:
    """How the trainee is today was noted."""
    hot = ""
    if Feeling.HOT in message.feelings:
        hot = "Hot: window or fan, drink often, longer rests. Headache, sick, shivers, muddled: stop, cool down, get help."
    rounds = f"{message.rounds} round{'s' if message.rounds > 1 else ''} today." if message.rounds is not None else ""
    if not message.feelings:
        return Worded(page('Good. Say "go" when warm.'), ("go",))
    lighter = "Noted. We go lighter today." if message.lighter else "" if hot else "Noted."
    return Worded(page(lighter, rounds, hot, 'Say "go" when warm.'), ("go",))


@words_for(IllAsked)
def ill_asked(message: IllAsked) -> Worded:
    """Any fever, or anything below the neck?"""
    del message
    return Worded(page("Any fever, or anything in chest, stomach or whole body?"), ("yes", "no"))


@words_for(FeverRest)
def fever_rest(message: FeverRest) -> Worded:
    """No workout today."""
    del message
    return Worded(
        page(
            "Then not today: training with a fever, or ill below the neck, can make it worse.",
            "Rest and drink. Come back when it has been gone for a day; we start with less. If it is bad or stays: a doctor.",
        )
    )
