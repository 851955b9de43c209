"""What safety does to a workout, step by step: how one is today, pain, too much, effort."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.store.diary_values import ANSWERS_MAX
from core import messages
from core.catalogue import all_exercises
from core.diary import Ending
from core.health import AgeBand, Condition, Feeling, Health, NoteKind, Outcome, Topic, answers_of, outcome_value, read_outcome
from core.safety.joints import Hold, hold
from core.safety.weeks import session_load
from core.session.moment import moment, still_fits
from core.session.states import Idle, Paused, SettingUp, WarmingUp
from tests.house.test_messages import HEALTHS
from tests.properties.test_session import TEXTS, take
from tests.walking import MORNING, Walk

NAMES = {movement.name: movement for movement in all_exercises().values()}


def card(walk):
    """The card said in the latest step."""
    return next(message for message in walk.said if isinstance(message, messages.Card))


def after_a_day(walk, days=2):
    """The same trainee some days later."""
    return walk.waits(days * 86_400)


# The health questions


def test_the_first_talk_reaches_the_warm_up_in_four_messages():
    """Whoever leaves the questions out is not slowed down: yes, kg, rack, go."""
    walk = Walk().opens().says("yes", "kg", "a pair of 8s, 12s and a 16", "go")
    assert walk.kinds() == ["WarmUp"]
    assert walk.state.workout.ease > 0
    assert walk.says("go").kinds() == ["Card"]
    assert walk.says("go").kinds() == ["Go"]


def test_left_out_questions_are_light_and_asked_again_next_time():
    """The second workout says why it is lighter, and the end of the first offers the questions again."""
    walk = Walk().opens().says("yes", "kg", "a pair of 8s, 12s and a 16", "go", "go", "go")
    walk.waits(61).says("12", "finish", "7")
    assert walk.kinds() == ["EffortNoted", "HealthOffered"]
    after_a_day(walk).says("go")
    assert walk.kinds() == ["LighterDay", "WarmUp"]
    assert walk.says("what do I do today?").said
    assert walk.says("finish", "what do I do today?").said[-1].offer


def test_the_questions_are_gone_on_with_where_they_were_left():
    """Also after a workout in between; an answer is asked for once."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "go", "go", "finish", "health")
    assert walk.said == [messages.HealthAsked(Topic.CONDITIONS, "Coach Wren", again=False)]


def test_under_18_ends_the_questions_and_nothing_starts():
    """No more is asked than is needed, and only the coach's word counts."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "16")
    assert walk.said[-1].outcome is Outcome.WAIT
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared").kinds() == ["ClearanceNeeded"]


def test_new_answers_cannot_be_used_to_slip_past_a_clearance():
    """Asking to change the answers frees nothing until the deciding one is changed, and a skipped one keeps the old."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "no", "none", "3 sometimes", "1", "none", "no", "no")
    walk.says("go")
    assert walk.kinds() == ["ClearanceNeeded"]
    assert walk.says("change my health answers", "go").kinds() == ["ClearanceNeeded"]
    walk.says("health", "skip", "skip", "skip", "skip", "skip", "skip", "skip")
    assert walk.says("go").kinds() == ["ClearanceNeeded"]


def test_a_clearance_counts_for_the_answers_it_was_told_after():
    """A sign that is new since then needs one of its own."""
    health = Health(open=(), age=AgeBand.MIDDLE, conditions=(Condition.HEART,), decided_at=MORNING, finished_at=MORNING)
    walk = Walk(known=True)
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, health=health))
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared", "go").kinds() == ["LighterDay", "WarmUp"]
    after_a_day(walk.says("finish")).says("change my health answers", "52", "no", "1", "I get dizzy now and then")
    assert walk.says("go").kinds() == ["ClearanceNeeded"]


def test_the_coach_gets_the_outcome_and_no_answer():
    """The notes of a whole health talk hold the outcome, and nothing that was answered."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "no", "2", "none", "left knee", "no", "no", "no")
    assert [(note.kind, note.value) for note in walk.history.notes] == [(NoteKind.OUTCOME, Outcome.CLEARANCE)]


def test_the_coach_gets_the_answers_of_who_agreed():
    """With a yes to the last question the note holds every answer given, and none that was left out."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "skip", "2", "none", "left knee", "no", "no", "yes")
    assert [read_outcome(note.value) for note in walk.history.notes] == [
        (
            Outcome.CLEARANCE,
            (
                (Topic.AGE, ("40-64",)),
                (Topic.CONDITIONS, ("metabolic",)),
                (Topic.SYMPTOMS, ()),
                (Topic.INJURIES, ("left knee",)),
                (Topic.ACTIVITY, ("no",)),
                (Topic.MEDICINE, ("no",)),
            ),
        )
    ]


def test_an_agreement_does_not_reach_answers_that_end_before_it_is_asked_again():
    """Whoever agreed once, and answers anew up to where the talk ends early, has not agreed to these answers."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "none", "none", "none", "yes", "no", "yes")
    walk.says("change my health answers", "34", "yes")
    assert [note.value for note in walk.history.notes][-1] == Outcome.WAIT


@pytest.mark.parametrize("answer", ["no", "skip"])
def test_an_agreement_is_taken_back_by_a_no_or_by_leaving_it_out(answer):
    """The note after it holds the outcome alone."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "none", "none", "none", "yes", "no", "yes")
    walk.says("change my health answers", "34", "no", "none", "none", "none", "yes", "no", answer)
    assert [note.value for note in walk.history.notes][-1] == Outcome.GO


@settings(derandomize=True, deadline=None)
@given(HEALTHS, st.sampled_from(list(Outcome)))
def test_a_note_on_an_outcome_is_read_as_it_was_written(health, outcome):
    """Every set of answers, empty lists and those left out included; longer than may be stored is none."""
    value = outcome_value(outcome, health, answers=True)
    assert read_outcome(value) == (outcome, answers_of(health))
    assert len(value) <= ANSWERS_MAX


# Asked again


def known_and_trained(*texts):
    """Somebody who has answered everything, and has trained once."""
    return Walk(known=True).says("go", "go", "go").waits(61).says("11, 2 left", *texts)


@pytest.mark.parametrize(("days", "asked"), [(88, False), (91, True)])
def test_the_questions_are_asked_again_after_90_days_away(days, asked):
    """Common practice, no source: as long as what counts as being active takes (entry 43)."""
    walk = after_a_day(known_and_trained("finish", "5"), days).opens()
    assert walk.said[-1].offer is asked
    assert (walk.says("ok").kinds() == ["HealthAsked"]) is asked


@pytest.mark.parametrize(("days", "asked"), [(364, False), (365, True)])
def test_the_questions_are_asked_again_after_a_year(days, asked):
    """Common practice, no source: also of somebody who never stayed away for long."""
    walk = known_and_trained("finish", "5")
    for _ in range(6):
        after_a_day(walk, 60).says("go", "go", "go").waits(61).says("9, 2 left", "finish", "5")
    walk.waits((MORNING + timedelta(days=days) - walk.now).total_seconds()).opens()
    assert walk.said[-1].offer is asked


def test_asked_again_every_question_comes_anew_and_old_answers_hold_until_then():
    """The first question first; breaking off frees nobody and changes nothing."""
    walk = after_a_day(known_and_trained("finish", "5"), 91).opens().says("ok")
    assert walk.said == [messages.HealthAsked(Topic.AGE, "Coach Wren", again=False)]
    assert walk.says("later").ledger.trainee.health.age is AgeBand.ADULT


# Pauses and training load


@pytest.mark.parametrize("ending", [("back", "finish"), ("finish",)])
def test_pauses_are_no_minutes_of_training_load(ending):
    """Effort 5 for the minutes between start and end, without the twenty of a pause."""
    walk = known_and_trained("pause").waits(20 * 60).says(*ending, "5")
    record = walk.history.workouts[-1]
    assert record.paused_s == 1200
    assert (record.ended_at - record.started_at).total_seconds() == 1261
    assert session_load(record, 5) == pytest.approx(5 * 61 / 60)


def test_a_pause_that_nobody_ends_does_not_count_either():
    """The workout ends by itself after half an hour, and all of that was pause."""
    record = known_and_trained("pause").waits(3600).history.workouts[-1]
    assert (record.ending, record.paused_s) == (Ending.SILENT, 1800)


def test_two_pauses_add_up():
    """Each is counted once, whatever was said in between."""
    walk = known_and_trained("pause").waits(300).says("how long left", "back", "pause").waits(120).says("back", "finish", "5")
    assert walk.history.workouts[-1].paused_s == 420


def test_days_alike_are_spoken_of_once_a_week():
    """Six equal days of seven are alike (Foster 1998, from memory); the word comes then, and a week later again."""
    walk = Walk(known=True)
    heard = []
    for _ in range(14):
        start = walk.now
        walk.says("go", "go", "go").waits(61).says("11, 2 left", "finish", "5")
        heard.append(walk.said[0].alike)
        walk.waits(86_400 - (walk.now - start).total_seconds())
    assert [day for day, alike in enumerate(heard, start=1) if alike] == [6, 13]


# Nothing wrong


@pytest.mark.parametrize(
    ("words", "burning"),
    [
        ("I'm not dizzy", False),
        ("no jaw pain", False),
        ("nope, no pain at all", False),
        ("not dizzy or breathless", False),
        ("my arms are on fire lol", True),
        ("legs are jelly haha", True),
        ("this is killing me lol", True),
    ],
)
def test_denied_or_figurative_pain_is_heard_and_no_clock_changes(words, burning):
    """A kind word in place of "I didn't catch that", at rest, at work, setting up, warming up and in a pause."""
    for before in [("go",), ("go", "go"), ("go", "go", "go"), ("go", "go", "go", "pause")]:
        walk = Walk(known=True).says(*before)
        state = walk.state
        assert walk.says(words).said == [messages.GoodToHear(burning)]
        assert walk.state == state
    walk = known_and_trained()
    state = walk.state
    assert (walk.says(words).said, walk.state) == ([messages.GoodToHear(burning)], state)


@pytest.mark.parametrize(
    "words",
    [
        "I'm not dizzy any more",
        "not dizzy yet",
        "am I not dizzy?",
        "not dizzy, feel weird",
        "I'm dying",
        "it burns",
        "my left arm is on fire",
    ],
)
def test_what_may_still_be_wrong_is_not_called_good(words):
    """One word more than a plain denial or a plain groan, and nobody is told that all is well."""
    assert "GoodToHear" not in Walk(known=True).says("go", "go", "go", words).kinds()


def test_a_sign_beside_a_denial_still_stops_everything():
    """Not dizzy, but pain in the chest: the chest counts."""
    assert Walk(known=True).says("go", "go", "go", "not dizzy, chest hurts").kinds() == ["UrgentStop"]


def test_a_button_of_an_earlier_question_is_no_answer_to_a_later_one():
    """A "no" that was offered for one topic does not fit the next."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34")
    then = moment(walk.state)
    assert still_fits("HealthAsked", then, moment(walk.state))
    walk.says("no")
    assert not still_fits("HealthAsked", then, moment(walk.state))


# How are you today?


@pytest.mark.parametrize(
    "words", [(), ("slept badly",), ("slept badly and sore",), ("a bit ill",), ("it's hot in here",), ("all good",)]
)
def test_the_readiness_question_never_stops_a_go(words):
    """Whatever was answered, the next "go" leads on."""
    walk = Walk(known=True).says("go", *words)
    assert isinstance(walk.state, WarmingUp)
    assert walk.says("go").kinds() == ["Card"]


@pytest.mark.parametrize(
    ("words", "ease", "rounds"),
    [
        ("slept badly", 1, 3),
        ("sore", 1, 3),
        ("slept badly and sore", 2, 2),
        ("runny nose", 2, 2),
        ("all good", 0, 3),
        ("not sore, slept well", 0, 3),
    ],
)
def test_how_one_is_lowers_the_day(words, ease, rounds):
    """One thing a bit, two or being ill more, with a round less (common practice, no source)."""
    workout = Walk(known=True).says("go", words).state.workout
    assert (workout.ease, workout.circuit.rounds) == (ease, rounds)


def test_a_lighter_day_names_lighter_loads():
    """The coach's start is a step lighter on a light day."""
    usual = card(Walk(known=True).says("go", "go")).load
    light = card(Walk(known=True).says("go", "slept badly and sore", "go")).load
    assert light.kg < usual.kg


def test_what_is_said_after_the_card_shows_it_anew():
    """The load on the card is the one that holds."""
    walk = Walk(known=True).says("go", "go")
    before = card(walk).load
    assert card(walk.says("slept badly and sore")).load.kg < before.kg


@pytest.mark.parametrize("words", [("fever",), ("ill with a fever",), ("stomach bug",), ("ill", "yes")])
def test_fever_ends_the_day(words):
    """No workout while feverish or ill below the neck (entry 46), not again on that day, and the way back begins with less."""
    walk = Walk(known=True).says("go", *words)
    assert walk.kinds() == ["FeverRest"]
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    after_a_day(walk).says("go")
    assert walk.kinds() == ["LighterDay", "WarmUp"]
    assert walk.state.workout.circuit.rounds == 2


def test_heat_makes_rests_longer():
    """Shade or fan, water, longer rests (entry 49, from memory)."""
    walk = Walk(known=True).says("go")
    usual = walk.state.workout.circuit.rest_s
    assert walk.says("it's boiling in here").said[0].feelings == (Feeling.HOT,)
    assert walk.state.workout.circuit.rest_s.high > usual.high


# Pain


def hurt(*said):
    """A workout in which a knee hurt at the squat, described so."""
    return Walk(known=True).says("go", "go", "go", "my knee hurts", *said)


def test_pain_stops_the_clock_and_asks_one_question():
    """The clock does not run while it is open."""
    walk = hurt()
    assert walk.kinds() == ["PainStop"]
    assert isinstance(walk.state, SettingUp)
    assert walk.waits(200).said == []


def test_what_a_pain_is_like_is_not_asked_when_it_was_said():
    """Told in the same message: the swap comes at once."""
    walk = Walk(known=True).says("go", "go", "go", "sharp new pain in my knee")
    assert walk.kinds() == ["PainStop", "PainAdvice", "Card"]
    assert not walk.said[0].asked


@pytest.mark.parametrize("answer", ["go", "skip", "swap", "back", "sharp, new", "the usual, dull"])
def test_no_answer_goes_on_with_what_hurts(answer):
    """Whatever is answered, the exercise that hurt is not the next."""
    walk = hurt(answer)
    assert card(walk).exercise != "Goblet squat"


@pytest.mark.parametrize("answer", ["what?", "again", "hm", "yes", "maybe", "12 or so?"])
def test_what_is_no_answer_shows_no_card(answer):
    """Asked again, and the clock stays stopped."""
    walk = hurt(answer)
    assert not any(isinstance(message, messages.Card | messages.Go) for message in walk.said)


def test_a_pause_in_the_question_leads_back_to_a_spare():
    """Not to the exercise that hurt."""
    walk = hurt("pause")
    assert isinstance(walk.state, Paused)
    assert card(walk.says("back")).exercise != "Goblet squat"


def test_what_no_swap_is_known_for_is_left_out_of_every_round():
    """The station does not come back in the next round."""
    walk = Walk(known=True).says("go", "go", "go", "pulled my hamstring", "sharp, new")
    assert walk.state.workout.left_out == (1,)
    seen = []
    for _ in range(6 * 3 + 1):
        walk.says("skip")
        seen += [message.station for message in walk.said if isinstance(message, messages.Card)]
    assert 1 not in seen
    assert isinstance(walk.state, Idle)


def test_it_is_asked_about_before_it_comes_back():
    """The next warm-up asks; without an answer it stays out; with "fine now" it comes back a step lighter."""
    walk = hurt("sharp, new", "go")
    walk.waits(61).says("12", "finish")
    quiet = after_a_day(walk).says("go")
    assert quiet.said[-1].places == ("knee",)
    assert card(quiet.says("go")).exercise != "Goblet squat"
    quiet.says("finish", "go", "fine now", "go")
    assert card(quiet).exercise == "Goblet squat"
    assert card(quiet).load.kg == 8


def test_what_stays_out_cannot_be_asked_for():
    """A swap to what hurts is declined, and the station stays what it is."""
    walk = hurt("sharp, new")
    state = walk.state
    assert walk.says("can I do goblet squats instead").kinds() == ["PainStays"]
    assert walk.state == state


EVENTS = st.one_of(
    st.sampled_from(
        [
            *TEXTS,
            "can I do goblet squats instead",
            "go",
            "go",
            "sharp, new",
            "dull, known",
            "fine now",
            "still hurts",
            "my lower back hurts",
            "my wrist hurts",
            "lighter",
        ]
    ).map(lambda text: ("says", text)),
    st.sampled_from([15, 61, 125, 700, 90_000]).map(lambda seconds: ("waits", seconds)),
)


@settings(derandomize=True, max_examples=120, deadline=None)
@given(events=st.lists(EVENTS, min_size=5, max_size=45))
def test_no_card_ever_shows_what_is_to_stay_out(events):
    """Over any conversation: an exercise that pain keeps out is on no card, and one that pain holds is not above the last load."""
    walk = Walk(known=True)
    for event in events:
        pains = walk.history.pains
        take(walk, event)
        if walk.history.pains != pains:
            continue  # told or eased in this very step
        for shown in (message for message in walk.said if isinstance(message, messages.Card)):
            movement = NAMES[shown.exercise]
            held = hold(movement, pains, walk.history.standing(), walk.now)
            assert held is None or held[0] is not Hold.OUT, (shown.exercise, event)


# Too much, and how hard it was


def test_over_the_ceiling_the_load_does_not_rise():
    """Slower, not heavier: 20 squats in a minute in which 12 fit."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("20 at 8kg")
    noted = next(message for message in walk.said if isinstance(message, messages.Noted))
    assert isinstance(noted.reminder, messages.Slower)
    assert noted.next_load.kg <= 8


def test_relief_is_offered_once_a_round():
    """Nobody is asked after every station."""
    walk = Walk(known=True).says("go", "go", "go")
    offers = 0
    for reps in ("5", "5 each", "5", "5", "5"):
        walk.waits(125 if "each" in reps else 61).says(reps)
        offers += sum(isinstance(message, messages.TooMuchSeen) for message in walk.said)
        walk.says("go")
    assert offers == 1


def test_effort_is_asked_after_a_workout_with_sets_only():
    """Not after one that was left before its first set, nor after one that was stopped for safety."""
    assert "EffortAsked" not in Walk(known=True).says("go", "finish").kinds()
    done = Walk(known=True).says("go", "go", "go").waits(61).says("12", "finish")
    assert done.kinds()[-1] == "EffortAsked"
    assert done.says("7").history.workouts[-1].effort == 7


def test_a_number_after_the_end_is_a_set_while_one_is_missing():
    """A wrong record is the worst outcome: reps that are still missing go before effort."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("finish")
    walk.waits(400).says("9")
    assert [record.reps for record in walk.history.standing()] == [9]
    assert walk.history.workouts[-1].effort is None


# Fear, and feeling unwell


def test_feeling_unwell_stops_the_clock_and_keeps_the_set():
    """No named sign, and taken seriously."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("11, I feel sick")
    assert walk.kinds() == ["UnwellPause"]
    assert isinstance(walk.state, Paused)
    assert [record.reps for record in walk.history.standing()] == [11]


@pytest.mark.parametrize(
    "words",
    ["I feel weird", "is that normal?", "I'm so out of breath", "I dropped the dumbbell on my foot", "it's bleeding", "I'm scared"],
)
def test_what_a_frightened_beginner_says_is_heard(words):
    """Under work the clock stops, calmly; it is no pain of an exercise, and nothing is held back for it."""
    walk = Walk(known=True).says("go", "go", "go", words)
    assert walk.kinds() == ["UnwellPause"]
    assert walk.history.pains == ()


@pytest.mark.parametrize(
    "words", ["I feel sick of squats lol", "not scared", "I was nervous last week", "haha i'm scared of burpees"]
)
def test_a_joke_about_it_stops_nothing(words):
    """Nor does what is over, or denied."""
    walk = Walk(known=True).says("go", "go", "go", words)
    assert "UnwellPause" not in walk.kinds()


def test_fear_before_anything_was_lifted_is_answered_and_pushes_nobody():
    """The clock and the state stay what they are."""
    walk = Walk(known=True).says("go")
    state = walk.state
    assert walk.says("I'm scared").kinds() == ["FearHeard"]
    assert walk.state == state


@pytest.mark.parametrize("words", ["my legs are on fire", "that killed me", "my arms are dead lol", "this burns", "I'm dying haha"])
def test_ordinary_effort_is_no_pain(words):
    """The clock runs on, and nothing is kept of it."""
    walk = Walk(known=True).says("go", "go", "go")
    state = walk.state
    walk.says(words)
    assert walk.state == state
    assert walk.history.pains == ()
