"""What is asked for and what is only told: a word inside another clause is no act, and two requests are both heard."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

AWAITED = {"awaiting": "reps", "unit": "kg", "load": 12}
SET = {"act": "log", "reps": 12, "load": 12, "unit": "kg"}
UNCLEAR = {"act": "unclear"}
DAY_OFF = {"act": "skip", "what": "day"}
URGENT = {"act": "pain", "urgent": True}


@pytest.mark.parametrize(
    "told",
    [
        "form felt shaky",
        "technique was all over the place",
        "form stayed tight",
        "cheers for the form video",
        "thank you for the help",
        "thanks for last week's cues",
        "my back is alright today",
        "wrist feels ok now",
        "the ankle I twisted last month is better now",
        "so call it",
        "the alarm went so I stopped there",
        "the easy one is over",
        "traffic outside is heavy",
        "but we move",
        "she wants to skip to the end",
        "thanks all the same",
    ],
)
def test_what_is_told_beside_a_set_asks_for_nothing(told):
    """Form that was good, help that is thanked for, a joint that is well, a set that was ended: a record and nothing else."""
    assert acts(f"12 at 12kg, {told}", **AWAITED) == [SET]


@pytest.mark.parametrize("text", ["felt good so I did 12 at 12kg", "round 2 finish, 12 at 12kg", "12 at 12kg finish"])
def test_a_reason_or_an_end_before_a_set_is_no_act(text):
    """Why a set was done, and that it is over, is told with the set."""
    assert acts(text, **AWAITED) == [SET]


@pytest.mark.parametrize("why", ["my lad is crying", "someone is at the door", "the dog is barking"])
def test_a_noise_beside_the_same_again_is_no_pause(why):
    """As beside a number, a reason only tells why."""
    assert acts(f"same again, {why}", **AWAITED) == [{"act": "log", "same": True}]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("12 at 12kg, that's me for today", [SET, {"act": "finish"}]),
        ("12 at 12kg, genuinely too easy", [SET, {"act": "feel", "value": "light"}]),
        ("12 at 12kg, is my form ok?", [SET, {"act": "form"}]),
        ("12 at 12kg, what else is there today?", [SET, {"act": "today"}]),
        ("12 at 12kg, how much have I improved on rows?", [SET, {"act": "progress", "exercise": "rows"}]),
    ],
)
def test_what_is_asked_beside_a_set_is_heard(text, said):
    """A clause that asks or judges for itself stays an act."""
    assert acts(text, **AWAITED) == said


@pytest.mark.parametrize(
    "text",
    [
        "can't make it today, kids are too much",
        "not today, I'm stuck at the office",
        "no training today, work is too hard",
        "I'm off sick today",
    ],
)
def test_why_a_day_is_left_out_is_no_second_act(text):
    """What is too much or stuck is life, not the load."""
    assert acts(text) == [DAY_OFF]


@pytest.mark.parametrize(
    "text",
    [
        "my friend can't train today",
        "my mum is back from the shops",
        "I finished my book today",
        "my son wants to start football",
        "my daughter wants the light on",
        "I paused the telly",
        "the film was too light for me",
        "away 3rd to 9th, no training",
        "thanks for the plan, it's lovely",
        "knee's fine, no pain, all good",
        "neither elbow hurts",
        "my wrist was sore this morning but it's fine",
        "if my knee hurts I'll tell you",
        "my son asked if he can have a go on the bike",
        "I was telling my wife how to do the crossword",
        "skip to the bit where I'm strong",
        "yesterday was fun but I forgot to tell you",
        "just had a lovely walk with the dog first",
        "that set murdered me",
        "light rain all morning here, nice and cool",
        "my sister wants to swap houses with us",
    ],
)
def test_other_people_things_and_times_are_no_act(text):
    """Somebody else's day, a film, days of the month, and a pain that is over are nobody's request."""
    assert acts(text, awaiting="go") == [UNCLEAR]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "two 6kg dumbbells and a mat, remind me tue thu 7pm",
            [
                {"act": "have", "items": [{"kind": "dumbbell", "load": 6, "unit": "kg", "count": 2}]},
                {"act": "remind", "days": ["tue", "thu"], "at": "19:00"},
            ],
        ),
        (
            "I have a 12kg kettlebell, and please use kilos",
            [
                {"act": "have", "items": [{"kind": "kettlebell", "load": 12, "unit": "kg", "count": 1}]},
                {"act": "units", "unit": "kg"},
            ],
        ),
        ("remind me sat 10am and show me my progress", [{"act": "remind", "days": ["sat"], "at": "10:00"}, {"act": "progress"}]),
        ("stop the sunday reminder and what do I do today?", [{"act": "remind", "days": ["sun"], "off": True}, {"act": "today"}]),
        ("skip today please and remind me thursday 6pm", [DAY_OFF, {"act": "remind", "days": ["thu"], "at": "18:00"}]),
        ("remind me at 7pm, my knee is sore", [{"act": "snooze", "at": "19:00"}, {"act": "pain", "place": "knee"}]),
        ("my elbow hurts, remind me at 8pm", [{"act": "pain", "place": "elbow"}, {"act": "snooze", "at": "20:00"}]),
        ("not now, 20 min, and how do I do it again?", [{"act": "snooze", "minutes": 20}, {"act": "form"}]),
        ("mondays and fridays, 11am, remind me", [{"act": "remind", "days": ["mon", "fri"], "at": "11:00"}]),
    ],
)
def test_two_requests_in_one_message_are_both_heard(text, said):
    """A request that begins after a comma or an "and" is read by itself."""
    assert acts(text, awaiting="go") == said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("can you show me again how to do a floor press", [{"act": "form", "exercise": "floor press"}]),
        ("I'd rather do lunges than this, can I do lunges instead", [{"act": "swap", "exercise": "lunges"}]),
        ("skip today, can we skip today", [DAY_OFF]),
        ("gotta run, pause it", [{"act": "pause"}]),
        ("chest pain, help", [{"act": "pain", "place": "chest", "urgent": True}]),
    ],
)
def test_one_request_said_twice_is_one_act(text, said):
    """The fuller saying counts; a pause outranks leaving, and a cry for help beside an urgent sign is no question."""
    assert acts(text) == said


@pytest.mark.parametrize(
    ("text", "act", "exercise"),
    [
        ("can I do step ups instead of this please", "swap", "step ups"),
        ("rows instead of this one?", "swap", "rows"),
        ("swap it for planks if that's ok", "swap", "planks"),
        ("show me the lateral raise one more time", "form", "lateral raise"),
        ("how do I do a floor press once more", "form", "floor press"),
        ("what exactly is a renegade row?", "form", "renegade row"),
        ("explain the goblet squat to me again please", "form", "goblet squat"),
        ("how have I done on curls lately", "progress", "curls"),
        ("stats floor press", "progress", "floor press"),
        ("what are my numbers for lunges", "progress", "lunges"),
        ("do my knees go past my toes on lunges?", "form", "lunges"),
        ("should my heels lift on calf raises", "form", "calf raises"),
        ("arnold press how it is done please", "form", "arnold press"),
        ("am I actually getting anywhere with the shoulder press?", "progress", "shoulder press"),
        ("how's my bench coming on", "progress", "bench"),
        ("instead of this exercise I prefer to make biceps curl, is ok?", "swap", "biceps curl"),
        ("rows please, not this", "swap", "rows"),
    ],
)
def test_an_exercise_is_named_without_the_words_around_it(text, act, exercise):
    """What it is compared with, how often and how politely it is asked for is no part of its name."""
    assert acts(text, awaiting="go") == [{"act": act, "exercise": exercise}]


@pytest.mark.parametrize(
    ("text", "act"),
    [
        ("undo undo", {"act": "undo"}),
        ("redy go", {"act": "start"}),
        ("omg wait wait wait", {"act": "pause"}),
        ("wait phone", {"act": "pause"}),
        ("sec, kettle", {"act": "pause"}),
        ("hold on need water", {"act": "pause"}),
        ("how do i do tihs again", {"act": "form"}),
        ("im doen for today", {"act": "finish"}),
        ("it is much too light", {"act": "feel", "value": "light"}),
        ("pause for two mins, a guest has come", {"act": "pause"}),
        ("excuse me a minute, somebody's at the gate", {"act": "pause"}),
        ("skip burpees please", {"act": "skip", "what": "station"}),
    ],
)
def test_a_short_command_survives_haste(text, act):
    """Said twice, misspelt, or with the thing one gets up for."""
    assert acts(text, awaiting="reps") == [act]


@pytest.mark.parametrize(
    ("text", "pain"),
    [
        ("my hips ache, mostly the left", {"act": "pain", "place": "hip", "side": "left"}),
        ("my knee is so sore on the stairs 😖 right one", {"act": "pain", "place": "knee", "side": "right"}),
        ("ankle's barking, left one, hurts", {"act": "pain", "place": "ankle", "side": "left"}),
        ("the thumb on my right hand is sore", {"act": "pain", "place": "thumb", "side": "right"}),
        ("ouch, my toe", {"act": "pain", "place": "toe"}),
        ("my back, it hurts", {"act": "pain", "place": "back"}),
    ],
)
def test_a_place_and_its_side_may_follow_the_pain(text, pain):
    """A side, a hand or a place that stands by itself belongs to the pain beside it."""
    assert acts(text) == [pain]


@pytest.mark.parametrize(
    ("text", "pain"),
    [
        ("hard time catching my breath and I'm lying down", URGENT),
        ("it is hard for me to breathe even at rest", URGENT),
        ("i am sitting since long and still no getting breath", URGENT),
        ("tight chest and struggling to breathe", {"act": "pain", "place": "chest", "urgent": True}),
        ("chest hurts. can't breathe", {"act": "pain", "place": "chest", "urgent": True}),
    ],
)
def test_breath_that_will_not_come_is_urgent(text, pain):
    """In whatever words; beside a chest in trouble it is one sign with it."""
    assert acts(text) == [pain]


@pytest.mark.parametrize(
    ("text", "plan"),
    [
        ("new reminder time please: 18:30", {"act": "remind", "at": "18:30"}),
        ("my reminder should be 7am", {"act": "remind", "at": "07:00"}),
        ("remind me m-f 6am", {"act": "remind", "days": ["mon", "tue", "wed", "thu", "fri"], "at": "06:00"}),
        (
            "reminder all the days at 7 pm",
            {"act": "remind", "days": ["mon", "tue", "wed", "thu", "fri", "sat", "sun"], "at": "19:00"},
        ),
        ("pack it in with the reminders", {"act": "remind", "off": True}),
        ("this arvo at 4", {"act": "snooze", "at": "16:00"}),
        ("kindly prepone my reminder to 6 am", {"act": "remind", "at": "06:00"}),
        ("remind me two train on fridays at to in the afternoon", {"act": "remind", "days": ["fri"], "at": "14:00"}),
        ("snooze till 12 noon", {"act": "snooze", "at": "12:00"}),
        ("ask me again in 3/4 of an hour", {"act": "snooze", "minutes": 45}),
    ],
)
def test_reminders_in_other_words(text, plan):
    """The reminder's own time, letters for days, and every day in foreign order."""
    assert acts(text, awaiting="go") == [plan]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("no gym 4 me 2day", DAY_OFF),
        ("skip it 4 now", {"act": "skip", "what": "station"}),
        ("can I change dis 1", {"act": "swap"}),
        ("swap 4 rows pls", {"act": "swap", "exercise": "rows"}),
    ],
)
def test_a_figure_may_stand_for_a_small_word(text, said):
    """Inside what is asked for, 4, 2 and 1 are "for", "to" and "one"."""
    assert acts(text, awaiting="go") == [said]


@pytest.mark.parametrize(
    ("text", "act"),
    [
        ("which way do my elbows go on this?", "form"),
        ("crack on then", "start"),
        ("my neck is fine now and I'm here. go", "start"),
        ("ok everyone is asleep GO", "start"),
        ("I need to sit down for a minute before we carry on", "pause"),
        ("the baby's up so I have to end it there", "finish"),
        ("give me 5 minutes, the plumber is here", "pause"),
        ("if it's all the same to you I'll sit this one out", "skip"),
        ("the neighbours are loud so I stop here for today", "finish"),
    ],
)
def test_what_is_asked_for_is_told_by_where_it_stands(text, act):
    """A question, a reason, a last shout and manners around a phrase decide which act it is."""
    assert [one["act"] for one in acts(text, awaiting="go")] == [act]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("swap this out for glute bridges would ya", {"act": "swap", "exercise": "glute bridges"}),
        ("abeg give me calf raises instead", {"act": "swap", "exercise": "calf raises"}),
        ("gimme a refresher on skull crushers", {"act": "form", "exercise": "skull crushers"}),
        ("how do you do this Romanian deadlift without falling over", {"act": "form", "exercise": "Romanian deadlift"}),
        ("show me how the deadbug goes", {"act": "form", "exercise": "deadbug"}),
        ("how'd I do on presses this month?", {"act": "progress", "exercise": "presses"}),
    ],
)
def test_only_the_exercise_is_kept_of_what_names_it(text, said):
    """Who is asked, how nicely, since when and the like are no part of the name, which stays as written."""
    assert acts(text, awaiting="go") == [said]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("what do I type when I want to stop", [{"act": "help"}]),
        ("my chest feels tight and I don't like it", [{"act": "pain", "place": "chest", "urgent": True}]),
        ("worst headache of my life just hit me", [{"act": "pain", "place": "head", "urgent": True}]),
        ("I weigh 74 kg, is it a good weight for me?", [UNCLEAR]),
        ("knee ok now", [UNCLEAR]),
        ("do I go all the way down on this?", [{"act": "form"}]),
    ],
)
def test_what_is_only_named_beside_another_act_is_none(text, said):
    """The end that is asked about, the pain that is disliked, one's own weight: named, not asked for."""
    assert acts(text, awaiting="go", unit="kg") == said


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("Could you tell me what exercises are planned for today?", {"act": "today"}),
        ("Kindly share today's workout", {"act": "today"}),
        ("What you can do? Please explain me", {"act": "help"}),
        ("Show me how far I have come with squats", {"act": "progress", "exercise": "squats"}),
        ("kindly tell the correct posture for shoulder press", {"act": "form", "exercise": "shoulder press"}),
        ("Might I trouble you for another exercise?", {"act": "swap"}),
        ("show me how much the ticket is", UNCLEAR),
        ("explain the joke to me", UNCLEAR),
    ],
)
def test_what_is_to_be_shown_decides_the_act(text, meant):
    """Words of showing and telling mean what their object is."""
    assert acts(text, awaiting="none") == [meant]


@pytest.mark.parametrize(
    "text",
    [
        "Please change this exercise, give glute bridge",
        "I like other exercise in place of this, for example the glute bridge",
        "something else please, a glute bridge for instance",
        "Change it please. Maybe glute bridge?",
    ],
)
def test_an_exercise_proposed_behind_a_wish_is_what_is_asked_for(text):
    """The wish and the proposal are one act."""
    assert acts(text, awaiting="go") == [{"act": "swap", "exercise": "glute bridge"}]


def test_an_exercise_that_is_disliked_is_not_proposed():
    """What comes behind a "not" is not asked for."""
    assert acts("can I do something else, I don't like lunges", awaiting="go") == [{"act": "swap"}]


@pytest.mark.parametrize(
    "text",
    ["pause the telly", "we start the new job today", "let's end the meeting now", "skip the gym class", "skip the next meeting"],
)
def test_a_verb_of_the_session_with_another_object_is_no_act(text):
    """What is started, paused, ended or skipped must be of the session."""
    assert acts(text, awaiting="go") == [UNCLEAR]


@pytest.mark.parametrize(
    ("text", "act"), [("pause the dog is barking", "pause"), ("start the clock", "start"), ("skip the lunges", "skip")]
)
def test_a_noun_that_tells_why_or_is_of_the_session_leaves_the_act(text, act):
    """A reason begins with "the" as well."""
    assert acts(text, awaiting="go")[0]["act"] == act
