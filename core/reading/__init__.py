"""Reading what people text: `read(text, context)` gives the acts of one message.

In reading order: `acts` (what a message can mean), `normal`, `token`, `tokens`, `dictation`, `number_words` and `spelling`
(text to words and numbers), `lexicon` (the words, from `lexicon.toml` and `english.txt`), `phrases` and `naming` (set phrases,
from `phrases.txt`), `parts`, `side_words` and `quantities` (numbers and their marks, by `grammar.lark`), `sets`, `assembly`,
`restated`, `corrections`, `amends`, `clock`, `when`, `unit_talk`, `gear` with `gear_list`, `gear_things` and `gear_words`,
`pain`, `places`, `urgent_spelling` and `answers` (meaning), `guards`, `whose` and `company` (when to ask), `records` (an
account of every number), `spans`, `standing`, `sentences`, `gist`, `second_look` and `reader` (the whole).
"""

from core.reading.acts import (
    Act,
    Again,
    Amend,
    Answer,
    Awaiting,
    Context,
    Feel,
    Finish,
    Form,
    Have,
    Help,
    Item,
    LastSet,
    Log,
    Pain,
    Pause,
    Progress,
    Remind,
    Resume,
    Side,
    Skip,
    Snooze,
    Start,
    Swap,
    TimeLeft,
    Today,
    Unclear,
    Undo,
    Units,
    Weekday,
)
from core.reading.phrases import make_ready
from core.reading.reader import read

__all__ = [
    "Act", "Again", "Amend", "Answer", "Awaiting", "Context", "Feel", "Finish", "Form", "Have", "Help", "Item", "LastSet",
    "Log", "Pain", "Pause", "Progress", "Remind", "Resume", "Side", "Skip", "Snooze", "Start", "Swap", "TimeLeft", "Today",
    "Unclear", "Undo", "Units", "Weekday", "make_ready", "read",
]  # fmt: skip
