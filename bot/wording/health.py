"""Safety before the first workout, in words: the cautions, the health questions, a clearance; and what the coach reads of it.

To be reviewed as prose, from top to bottom: it informs and defers; doctors and local rules decide. Calm, plain, no blame.
"""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.days import date_text
from bot.wording.phrases import emergency_text, page, places_text
from core.health import Bar, Branch, Condition, NoteKind, Outcome, Symptom, Topic, read_outcome
from core.messages import (
    Cautions,
    CautionsNeeded,
    ClearanceNeeded,
    ClearanceNoted,
    ClearanceTooSoon,
    HealthAsked,
    HealthLater,
    HealthOffered,
    HealthOutcome,
    SafetyNews,
)


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
    held = (
        f"What troubles {places_text(message.places, 'it')} stays out; tell me when it is fine."
        if message.places and starts
        else ""
    )
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
                f"If it is still there or comes back: call {emergency_text(message.emergency)}.",
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
