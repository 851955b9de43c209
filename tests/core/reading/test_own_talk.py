"""What is the trainee's own, as people type it: whole messages only, and no report among them."""

import json
from pathlib import Path

import pytest

from core.reading.own_talk import ForCoach, MyRecords, OwnWord, own_talk, says_no, says_yes
from core.records_file import Form

COACH = "Coach Wren"
BOTH = (Form.CSV, Form.JSON)
FIXTURES = Path(__file__).parents[3] / "fixtures"

RECORDS = {
    "my records": BOTH,
    "My records please!": BOTH,
    "my records as csv": (Form.CSV,),
    "can i have my records as a csv file please": (Form.CSV,),
    "send me my data as a spreadsheet": (Form.CSV,),
    "export my sets to a table": (Form.CSV,),
    "csv": (Form.CSV,),
    "json please": (Form.JSON,),
    "as json": (Form.JSON,),
    "my data in json": (Form.JSON,),
    "export": BOTH,
    "Export my data": BOTH,
    "download everything": BOTH,
    "I want a copy of all my data": BOTH,
    "export my log": BOTH,
    "csv and json": BOTH,
    "what do you know about me?": BOTH,
    "What data do you have on me": BOTH,
}
SEEN = (
    "who sees this?",
    "Who can see my data",
    "who else reads what I write?",
    "can my coach see this?",
    "does anyone else see my messages",
    "is this private?",
    "are my answers confidential?",
    "what does my coach see?",
    "what can the coach see of me",
    "where is my data stored?",
    "who has access to my data",
    "do you share my data with anyone",
    "privacy",
)
FORGET = (
    "forget me",
    "Forget me!",
    "please forget me completely",
    "delete my data",
    "Delete all my data please",
    "can you delete my account",
    "erase everything about me",
    "erase everything you know about me",
    "wipe everything",
    "remove my data",
    "I want to be forgotten",
    "i want you to delete everything about me",
    "delete what you have on me",
)
WEEK = ("my week", "How was my week?", "how did my week go", "how's my week going", "show me my week", "How did I do this week?")
NOT_OURS = (
    "tell coach I did 11 at 20kg",
    "tell coach i cant train today",
    "tell my coach my knee hurts",
    "my week was hard, 11 at 20kg",
    "11 at 20kg",
    "not this week",
    "this week",
    "forget it",
    "forget that one",
    "delete that",
    "erase the last one",
    "delete my last set",
    "delete the record",
    "remove the last set",
    "show me my progress",
    "my best sets",
    "the csv of 11 at 20",
    "records: 11 at 20kg",
    "who needs a word",
    "tell everyone to rest",
    "my coach asked me to do 11",
    "I asked the coach yesterday",
    "coach said 12 at 16",
    "go",
    "",
)
ASKED = {
    "ask coach: elbows in or out on this?": ForCoach("elbows in or out on this?"),
    "Ask my coach if 20kg x 11 is enough": ForCoach("if 20kg x 11 is enough"),
    "question for Coach Wren: is it fine to go barefoot?": ForCoach("is it fine to go barefoot?"),
    "I have a quick question for my coach - what about the tempo": ForCoach("what about the tempo"),
    "can you ask the coach if I should go deeper": ForCoach("if I should go deeper"),
    "hey, could you please ask Wren whether heels may lift": ForCoach("whether heels may lift"),
    "i'd like to ask coach about my grip": ForCoach("about my grip"),
    "for coach: same shoes?": ForCoach("same shoes?"),
    "11 at 20kg. Ask coach if that is enough": ForCoach("if that is enough", "11 at 20kg"),
    "elbows in or out? can you ask the coach?": ForCoach("elbows in or out?"),
    "11 at 20kg, can you ask coach?": ForCoach(None, "11 at 20kg"),
    "can you tell coach the shoulder was sore after": ForCoach("the shoulder was sore after"),
    "Please let my coach know that the new circuit is lovely": ForCoach("the new circuit is lovely"),
    "tell Wren thanks for the video": ForCoach("thanks for the video"),
    "ask coach": ForCoach(None),
    "I have a question for my coach.": ForCoach(None),
}


@pytest.mark.parametrize("text", RECORDS)
def test_records_are_asked_for_in_a_form_or_in_both(text):
    """Without a form named, both are given."""
    assert own_talk(text, COACH) == MyRecords(RECORDS[text])


@pytest.mark.parametrize(
    ("word", "text"), [(word, text) for word, texts in (("seen", SEEN), ("forget", FORGET), ("week", WEEK)) for text in texts]
)
def test_the_other_words_are_understood_in_many_forms(word, text):
    """Who sees this, forget me, my week."""
    assert own_talk(text, COACH) == OwnWord(word)


@pytest.mark.parametrize("text", NOT_OURS)
def test_what_is_something_else_is_left_to_the_reader(text):
    """A report, an undo, a day off, what a coach says."""
    assert own_talk(text, COACH) is None


@pytest.mark.parametrize("text", ASKED)
def test_a_question_to_the_coach_is_kept_as_typed(text):
    """From where the coach is named; what stands before it is said on its own, so that no set is lost in it."""
    assert own_talk(text, COACH) == ASKED[text]


def test_a_coach_without_the_word_coach_in_their_name_is_known_too():
    """By the name alone, or with the word before it; another name is nobody."""
    assert own_talk("ask Rosa: deeper?", "Rosa") == own_talk("ask coach Rosa: deeper?", "Rosa") == ForCoach("deeper?")
    assert own_talk("ask Rosamund: deeper?", "Rosa") is None


def test_no_labelled_reply_is_taken_for_any_of_it():
    """None of the replies in the corpus, sets and all, is the trainee's own talk; but for a question that names the coach."""
    lines = [
        json.loads(line) for name in ("replies", "replies_aside") for line in (FIXTURES / f"{name}.jsonl").read_text().splitlines()
    ]
    taken = {line["text"]: own_talk(line["text"], COACH) for line in lines if own_talk(line["text"], COACH) is not None}
    assert {text: said for text, said in taken.items() if not isinstance(said, ForCoach)} == {}
    acts = {line["text"]: line["acts"] for line in lines}
    assert all(not any(act["act"] in ("log", "amend") for act in acts[text]) for text in taken)


@pytest.mark.parametrize(
    "text", ["yes", "Yes!", "YES please", "yes, erase it", "yes delete everything", "Yes, I'm sure", "yes go ahead"]
)
def test_only_a_clear_yes_is_a_yes_to_erasing(text):
    """The word itself, and little more."""
    assert says_yes(text)
    assert not says_no(text)


@pytest.mark.parametrize(
    "text", ["ok", "yeah", "sure", "y", "yes 11 at 20", "yes my knee hurts", "yesterday", "👍", "go", "", "yes but export first"]
)
def test_anything_less_than_a_clear_yes_keeps_everything(text):
    """Such words come too easily, or mean something else."""
    assert not says_yes(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("no", True),
        ("No thanks", True),
        ("never mind", True),
        ("keep it", True),
        ("no don't", True),
        ("no my knee hurts", False),
        ("no 11", False),
    ],
)
def test_a_no_is_nothing_but_a_no(text, said):
    """What says more is read for what it says."""
    assert says_no(text) is said
