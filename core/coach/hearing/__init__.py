"""Hearing what coaches type beside circuits and plans: `hear(text, names, today)` gives one of the values of `core.coach.asks`.

In reading order: `words` (a text as words that know where they stand, by the lists of `words.toml`), `phrases.txt` (what is
understood, one line a way to say it), `pattern` (the lines compiled, and matched), `whom` and `slots` (what stands in the gaps of a
line), `days` (dates and times of day), `message` (what may go out as a coach's own words), `frames` and `questions` (what no line
says, caught by its words), `hearing` (the whole).
"""

from core.coach.hearing.hearing import hear

__all__ = ["hear"]
