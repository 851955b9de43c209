"""Safety, in words. To be reviewed as prose, from top to bottom: it informs and defers; doctors and local rules decide.

Before the first workout, before every workout, during, after. Calm, plain, no blame; what to do stands first.
"""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.days import date_text
from bot.wording.phrases import and_list, number_text, page, seconds_text
from core.health import (
    Bar,
    Branch,
    Check,
    Condition,
    Feeling,
    LightWhy,
    Move,
    NoteKind,
    Outcome,
    Symptom,
    TooMuch,
    Topic,
    read_outcome,
)
from core.messages import (
    Cautions,
    CautionsNeeded,
    ClearanceNeeded,
    ClearanceNoted,
    ClearanceTooSoon,
    EffortAsked,
    EffortNoted,
    FearHeard,
    FeelingNoted,
    FeverRest,
    GoodToHear,
    HealthAsked,
    HealthLater,
    HealthOffered,
    HealthOutcome,
    IllAsked,
    LighterDay,
    NothingSpared,
    PainAdvice,
    PainGone,
    PainHeard,
    PainKept,
    PainStays,
    PainStop,
    ReliefTaken,
    SafetyNews,
    SameMuscles,
    TooMuchSeen,
    UnwellPause,
    UrgentStop,
    WarmUp,
)

# Before the first workout


@words_for(Cautions)
def cautions(message: Cautions) -> Worded:
    """The cautions, and the question for a yes."""
    del message
    return Worded(
        page(
            "Before we start, please read:",
            "- Ask your doctor first if you have heart, metabolic or kidney disease, chest pain, dizzy spells, a recent"
            " injury or operation, or are or were lately pregnant. Under 18: coach and guardian decide.",
            "- Stop for chest, jaw or arm pain, faintness or breath that does not settle, and call your emergency number.",
            "- Sharp pain anywhere: put the weights down and tell me.",
            "- Clear the floor, wear shoes that grip.",
            "I inform; your doctor decides.",
            'Have you read this, and are you fit to train today? "yes" or "no"',
        ),
        ("yes", "no"),
    )


@words_for(CautionsNeeded)
def cautions_needed(message: CautionsNeeded) -> Worded:
    """No yes to the cautions."""
    del message
    return Worded(page('Nothing starts without a clear "yes".', "In doubt, ask your doctor first. I'll be here."), ("yes",))


@words_for(HealthOffered)
def health_offered(message: HealthOffered) -> Worded:
    """A few short health questions are offered."""
    del message
    return Worded(
        page('May I ask a few short health questions? Say "ok".', '"go" skips them for now, and we go light.'),
        ("ok", "go"),
    )


CONDITIONS = """Has a doctor told you of any of these? Say the numbers, or "none".
1 heart or blood vessels, a stroke
2 diabetes or the like
3 kidneys"""
SYMPTOMS = """Any of these lately? Say the numbers, or "none".
1 pain or pressure in chest, neck, jaw or arms
2 breathless at rest or with little effort
3 dizzy or fainted
4 breathless lying down or at night
5 swollen ankles
6 a racing or uneven heart
7 calf pain on walking that rest ends
8 a heart murmur
9 far more tired than usual"""
QUESTIONS: dict[Topic, tuple[str, tuple[str, ...]]] = {
    Topic.AGE: ('How old are you? A number, or "under 18", "18-39", "40-64", "65+".', ("18-39", "40-64", "65+", "skip")),
    Topic.PREGNANCY: ("Are you pregnant, or did you give birth in the last 6 months?", ("no", "yes", "skip")),
    Topic.CONDITIONS: (CONDITIONS, ("none", "skip")),
    Topic.SYMPTOMS: (SYMPTOMS, ("none", "skip")),
    Topic.INJURIES: ('Anything hurt or injured? Say where, like "left knee", or "none".', ("none", "skip")),
    Topic.ACTIVITY: (
        "In the last 3 months: did you move briskly for half an hour on 3 days of most weeks?",
        ("yes", "no", "skip"),
    ),
    Topic.CHECKED: ("Has a doctor cleared you for hard exercise in the last year?", ("yes", "no", "skip")),
    Topic.MEDICINE: ("Do you take a medicine that changes your heart rate? No name needed.", ("no", "yes", "skip")),
    Topic.SHARE: ("COACH sees what this comes to, not your answers. May they see the answers, too?", ("no", "yes")),
}


@words_for(HealthAsked)
def health_asked(message: HealthAsked) -> Worded:
    """One health question."""
    question, replies = QUESTIONS[message.topic]
    question = question.replace("COACH", message.coach)
    unread = 'I could not read that. "skip" leaves it out, "later" stops here.' if message.again else ""
    return Worded(page(unread, *question.split("\n")), replies)


@words_for(HealthLater)
def health_later(message: HealthLater) -> Worded:
    """The questions wait."""
    if message.running:
        return Worded(page('After the workout: say "health", and I ask.'))
    back = 'All right. "health" brings them back.'
    return Worded(page(back, "Until then we go light."), ("go",)) if message.free else Worded(page(back))


@words_for(HealthOutcome)
def health_outcome(message: HealthOutcome) -> Worded:
    """What the health answers come to."""
    starts = message.outcome in (Outcome.GO, Outcome.LIGHT)
    held = f"What troubles {_named(message.places, 'it')} stays out; tell me when it is fine." if message.places and starts else ""
    pulse = "With that medicine go by breath and effort, not by pulse." if message.medicine else ""
    lines = ("Thank you.", *_outcome_lines(message), held, pulse)
    return Worded(page(*lines, 'Say "go" when you like.'), ("go",)) if starts else Worded(page(*lines))


ASK_DOCTOR = (
    'Ask your doctor: "May I do strength circuits near my limit? What should I leave out? When must I stop?"',
    'When you have a yes, say "I am cleared". If a sign comes on strong, or at rest: emergency number, not me.',
)
OUTCOMES = {
    Branch.SYMPTOMS: ("Signs like yours need a doctor's look before you train, however fit you are.", *ASK_DOCTOR),
    Branch.DISEASE: ("With what you have, a doctor should clear you before you begin.", *ASK_DOCTOR),
    Branch.DISEASE_ACTIVE: (
        "You are active, so light work is fine.",
        'Before hard work: a doctor\'s yes, then "I am cleared".',
    ),
    Branch.STARTING: ("We start light and build up over the first workouts.",),
    Branch.UNANSWERED: ("What you left out keeps us light for now.",),
    Branch.FREE: ("Nothing holds you back.",),
}


def _outcome_lines(message: HealthOutcome) -> tuple[str, ...]:
    if message.branch in (Branch.YOUNG, Branch.PREGNANT):
        return _bar_lines(Bar.YOUNG if message.branch is Branch.YOUNG else Bar.PREGNANT, message.coach)
    return OUTCOMES[message.branch]


SLIP = 'A slip of the finger? "change my health answers".'


def _bar_lines(bar: Bar, coach: str) -> tuple[str, ...]:
    if bar is Bar.YOUNG:
        return (
            f"Under 18, {coach}, your guardian and a clinician decide, and I wait for their word.",
            "Please talk to them.",
            SLIP,
        )
    decide = f"Now {coach} and your own clinician decide what fits, and I wait for their word."
    return (
        f"{decide} Moving is good for most; the plan must suit you.",
        "Bleeding, fluid, painful contractions, headache, chest pain, a swollen calf: stop anything, call them.",
        SLIP,
    )


@words_for(ClearanceNeeded)
def clearance_needed(message: ClearanceNeeded) -> Worded:
    """Something stands before a workout."""
    if message.bar is Bar.URGENT:
        when = "nothing starts today" if message.same_day else "nothing starts yet"
        return Worded(
            page(
                f"You told me of a warning sign, so {when}.",
                f"If it is still there or comes back: call {_number(message.emergency)}.",
                'Have a doctor look at it. Then, from tomorrow: "I am cleared".'
                if message.same_day
                else 'When a doctor has looked at it, say "I am cleared".',
            )
        )
    if message.bar is Bar.CLEARANCE:
        return Worded(page("A doctor's yes comes first, then we start.", 'When you have it, say "I am cleared".'))
    if message.bar is Bar.FEVER:
        return Worded(page("Not today: rest, drink, sleep. Come back when the fever has been gone for a day."))
    return Worded(page(*_bar_lines(message.bar, message.coach)))


@words_for(ClearanceNoted)
def clearance_noted(message: ClearanceNoted) -> Worded:
    """The trainee is cleared."""
    noted = "Good to hear. Noted with today's date. We begin light."
    return Worded(page(noted)) if message.first_talk else Worded(page(noted, 'Say "go" when you like.'), ("go",))


@words_for(ClearanceTooSoon)
def clearance_too_soon(message: ClearanceTooSoon) -> Worded:
    """Not on the same day."""
    del message
    return Worded(
        page("Better once too often than not: today we rest, whatever it was.", 'Tell me again tomorrow: "I am cleared".')
    )


# Before every workout

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
    named = _named(message.places, "what hurt") if message.places else ""
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


def _named(places: tuple[str, ...], unnamed: str) -> str:
    return and_list(tuple(f"the {place}" if place else unnamed for place in places))


@words_for(PainGone)
def pain_gone(message: PainGone) -> Worded:
    """What hurt is fine now."""
    named = _named(message.places, "what hurt")
    return Worded(page(f"Good that {named} is fine. It comes back a step lighter. Tell me if it speaks up."), ("go",))


@words_for(PainStays)
def pain_stays(message: PainStays) -> Worded:
    """It still hurts."""
    named = _named(message.places, "what hurts")
    return Worded(page(f"Then {named} rests: what troubles it stays out today. If it stays a week, have it looked at."), ("go",))


@words_for(NothingSpared)
def nothing_spared(message: NothingSpared) -> Worded:
    """Every station would trouble it."""
    named = _named(message.places, "what hurts")
    return Worded(page(f"Everything in this circuit would trouble {named}. Rest today; your coach can change the plan."))


# During


def _number(emergency: str | None) -> str:
    return emergency or "your local emergency number"


@words_for(UrgentStop)
def urgent_stop(message: UrgentStop) -> Worded:
    """Stop everything at once."""
    return Worded(
        page(
            "STOP. Weights on the floor. Sit or lie down.",
            f"Chest, jaw or arm pain, fainting, numbness, breath that does not settle, or sudden and bad: call"
            f" {_number(message.emergency)} now.",
            "If someone is near, tell them.",
            f"No more training today. What you did is kept, with a note for {message.coach}.",
            'See a doctor. Another day, when cleared, say "I am cleared".',
        )
    )


@words_for(PainStop)
def pain_stop(message: PainStop) -> Worded:
    """Pain stops a station."""
    where = f" for the {message.place}" if message.place else ""
    return Worded(
        page(
            f"Stop {message.exercise}{where}. Weights down, the clock is stopped.",
            'Sharp or dull? New, or one you know? ("dull, known")' if message.asked else "",
        ),
        ("sharp, new", "sharp, known", "dull, new", "dull, known", "finish") if message.asked else (),
    )


@words_for(PainAdvice)
def pain_advice(message: PainAdvice) -> Worded:
    """What follows from pain at a station."""
    what = (
        f"{message.swap} instead of {message.exercise}: it spares that."
        if message.swap is not None
        else f"{message.exercise} is left out today."
    )
    others = f"Changed too: {', '.join(message.others)}." if message.others else ""
    if message.mild:
        doctor = "Go on only where nothing hurts. Next time it comes back lighter."
    else:
        doctor = "Go on only where nothing hurts. If it is strong, swells or stays: a doctor or physiotherapist. I ask next time."
    return Worded(page(what, others, doctor, '"finish" is a good answer, too.'), ("go", "finish"))


@words_for(PainHeard)
def pain_heard(message: PainHeard) -> Worded:
    """Pain outside a station."""
    where = f"your {message.place}" if message.place else "that"
    return Worded(
        page(
            f"Sorry to hear about {where}. Noted; I spare it next time, and ask.",
            'Sharp or dull? New, or one you know? ("dull, known")',
        ),
        ("sharp, new", "sharp, known", "dull, new", "dull, known"),
    )


@words_for(PainKept)
def pain_kept(message: PainKept) -> Worded:
    """Pain outside a station is noted."""
    if message.mild:
        return Worded(page("Noted: next time lighter there. If it stays, have it looked at."))
    return Worded(page("Noted: it stays out until you tell me it is fine. If it is strong, swells or stays: a doctor."))


@words_for(FearHeard)
def fear_heard(message: FearHeard) -> Worded:
    """The trainee is afraid before anything was lifted."""
    return Worded(
        page(
            "That is all right. Nothing has to be lifted today.",
            '"go" moves on lightly at your pace; "pause", "skip" and "finish" always work.',
            f"Worried about your health? A doctor first; {message.coach} is glad to hear from you, too.",
        ),
        ("go", "pause", "finish"),
    )


@words_for(UnwellPause)
def unwell_pause(message: UnwellPause) -> Worded:
    """The trainee feels unwell or is frightened."""
    return Worded(
        page(
            "Weights down, sit, breathe out slowly, sip water, open a window. The clock is stopped; nobody is waiting.",
            f"Chest, jaw or arm pain, faint, numb, muddled, no breath: tell me, and call {_number(message.emergency)}.",
            'Ebbing away? "finish" is a fine end; "back" goes on, "lighter" if you like.',
        ),
        ("finish", "back"),
    )


@words_for(GoodToHear)
def good_to_hear(message: GoodToHear) -> Worded:
    """Nothing is wrong, and everything goes on."""
    heard = "That burn is work; it fades in the rest." if message.burning else "Good to hear."
    changes = "If it turns into pain, tell me." if message.burning else "If that changes, tell me."
    return Worded(page(f"{heard} {changes}"))


@words_for(TooMuchSeen)
def too_much_seen(message: TooMuchSeen) -> Worded:
    """It looks like too much today."""
    seen = "Three stations short in a row." if message.sign is TooMuch.FAILING else "Half the reps of the last round."
    return Worded(
        page(f"{seen} Some days are like that.", '"more rest", "lighter", "finish", or "carry on"?'),
        ("more rest", "lighter", "finish", "carry on"),
    )


@words_for(ReliefTaken)
def relief_taken(message: ReliefTaken) -> Worded:
    """What was chosen."""
    if message.choice == "rest":
        return Worded(page(f"{message.rest_s} s more rest from here on."))
    if message.choice == "lighter":
        return Worded(page("Lighter from here on. That is training, too."))
    return Worded(page("All right, as it is."))


# After


@words_for(EffortAsked)
def effort_asked(message: EffortAsked) -> Worded:
    """How hard was it as a whole?"""
    del message
    return Worded(page("How hard was it all in all, 0 (nothing) to 10 (everything you had)?"), ("3", "5", "7", "9"))


TWICE = 100  # per cent above usual; from here on in times


def _times(percent: int) -> str:
    times = round(1 + percent / 100)
    return "twice" if times == 2 else f"{times} times"  # noqa: PLR2004 - it is the word for two


@words_for(EffortNoted)
def effort_noted(message: EffortNoted) -> Worded:
    """The effort was noted."""
    jump = ""
    if message.jump_percent is not None:
        above = f"{message.jump_percent}% above" if message.jump_percent < TWICE else f"about {_times(message.jump_percent)}"
        jump = f"Your week is {above} your usual. A rest day or an easy one now lets it sink in."
    alike = "Your days are all alike lately; hard and easy ones in turn rest you better." if message.alike else ""
    return Worded(page(f"Effort {number_text(message.effort)}, noted.", jump, alike))


# To the coach

FOR_COACH = {
    Outcome.GO: "nothing holds them back.",
    Outcome.LIGHT: "they go light.",
    Outcome.CLEARANCE: "a doctor's yes comes first; I wait for it.",
    Outcome.WAIT: "you and a clinician decide (under 18, or pregnant or a recent birth). I wait. Please talk to them.",
}

ANSWERED = {
    Topic.AGE: "age",
    Topic.PREGNANCY: "pregnant, or birth in the last 6 months",
    Topic.CONDITIONS: "known disease",
    Topic.SYMPTOMS: "signs lately",
    Topic.INJURIES: "injuries",
    Topic.ACTIVITY: "active for 3 months",
    Topic.CHECKED: "cleared by a doctor for hard exercise in the last year",
    Topic.MEDICINE: "medicine that changes the heart rate",
}
CONDITION_WORDS: dict[str, str] = {
    Condition.HEART: "heart, blood vessels or a stroke",
    Condition.METABOLIC: "diabetes or the like",
    Condition.KIDNEY: "kidneys",
}
SYMPTOM_WORDS: dict[str, str] = {
    Symptom.CHEST: "pain or pressure in chest, neck, jaw or arms",
    Symptom.BREATH: "breathless at rest or with little effort",
    Symptom.DIZZY: "dizzy or fainted",
    Symptom.NIGHT_BREATH: "breathless lying down or at night",
    Symptom.ANKLES: "swollen ankles",
    Symptom.HEARTBEAT: "a racing or uneven heart",
    Symptom.CALF: "calf pain on walking that rest ends",
    Symptom.MURMUR: "a heart murmur",
    Symptom.FATIGUE: "far more tired than usual",
}


@words_for(SafetyNews)
def safety_news(message: SafetyNews) -> Worded:
    """A note on a trainee's safety."""
    day = "" if message.on is None else f"{date_text(message.on)}:"
    if message.kind is NoteKind.URGENT:
        where = f" ({message.value})" if message.value else ""
        return Worded(
            page(
                day,
                f"{message.name} told me of a warning sign{where}. I stopped everything and said to call for help.",
                "Please ask how they are. Nothing starts before they say that they are cleared.",
            )
        )
    if message.kind is NoteKind.CLEARED:
        return Worded(
            page(day, f"{message.name} says: cleared. We begin light.", "Where you decide with a clinician, I wait for your word.")
        )
    outcome, answers = read_outcome(message.value)
    heading = f"{message.name} agreed that you see the answers:" if answers else ""
    lines = (f"• {_answer_line(topic, values)}" for topic, values in answers)
    agreed = f'When that is agreed: "clear {message.name}".' if outcome is Outcome.WAIT else ""
    return Worded(page(day, f"Health questions of {message.name}: {FOR_COACH[outcome]}", heading, *lines, agreed))


def _answer_line(topic: Topic, values: tuple[str, ...]) -> str:
    """An answer as the coach reads it."""
    words = {**CONDITION_WORDS, **SYMPTOM_WORDS}
    return f"{ANSWERED[topic]}: {', '.join(words.get(value, value) for value in values) or 'none'}"
