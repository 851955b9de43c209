"""What a coach can say, short enough for a phone: an overview, and a page on each topic."""

from __future__ import annotations

from bot.wording.book import Worded, words_for
from bot.wording.coach import EXAMPLE, PLAN_EXAMPLE
from bot.wording.coach_asks import DAYS
from bot.wording.phrases import page
from core.coach_messages import BoardHelp

TOPICS = ("help people", "help words", "help changes", "help circuits")
PAGES = {
    "people": (
        "How it goes:",
        '• "who trained", "who missed last week"',
        '• "who needs a word"',
        '• "how is Ana"',
        '• "the week", "last week", "sheet" for a file to read or print',
        '• "week on fridays at 18:00", "stop the week"',
        '• "clear Ana" when you and the clinician have agreed that somebody who waits may train',
        '• "pause Ana until the 14th", "Ana is back", "remove Ben"',
    ),
    "words": (
        "Words to people:",
        '• "tell Ana: well done", "tell everyone but Ben: …"',
        '• "answer Ana: …" when she has asked, or "answer: …" when only one has',
        "I show who gets it first. It comes outside their quiet hours, and after a workout.",
        '"undo" takes back what nobody has read.',
    ),
    "changes": (
        "For one, some or all:",
        '• "swap squats for glute bridges for Ana", "put Ana back on squats"',
        '• "keep Ana at 12 kg on the row", "hold Ana back", "let Ana go up again"',
        '• "note on Ana\'s row: elbows in", "take the note off Ana\'s row"',
        "A name that fits two is asked about. They hear of it kindly.",
    ),
    "circuits": (
        "Circuits and plans:",
        f'• a circuit: "{EXAMPLE}"; first "name: Monday" if you like, at the end "in 30 min", "for Ana" or "from Monday"',
        '• "put it up from Monday", "put Market day up for Ana"',
        f"• a plan: {PLAN_EXAMPLE}; the last week is the easier one unless you say otherwise",
        '• "yes" puts in force what I showed, "yes for Ana" for one person only, "no" drops it',
        '• "circuits", "show Kitchen seven", "plans"',
    ),
}


@words_for(BoardHelp)
def board_help(message: BoardHelp) -> Worded:
    """What a coach can say."""
    if message.topic != "all":
        return Worded(page(*PAGES[message.topic]), tuple(topic for topic in TOPICS if topic != f"help {message.topic}"))
    told = "Not told unasked." if message.day is None else f"I tell it on {DAYS[message.day]} at {message.at}."
    return Worded(
        page(
            "Say it in your own words:",
            '• how it goes: "who trained", "who needs a word", "how is Ana"',
            f'• "the week": everyone at a glance. {told}',
            '• "tell everyone: …", "answer Ana: …"',
            '• for one, some or all: "swap …", "keep … at 12 kg", "note …", "pause …", "remove …"',
            "• a circuit or a plan, typed as on a board",
            '• "yes" does what I showed, "no" drops it, "undo" takes the last one back',
            'More: "help people", "help words", "help changes", "help circuits"',
        ),
        TOPICS,
    )
