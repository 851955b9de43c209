"""Hearing what coaches type beside circuits and plans: `hear(text, names, today)` gives one of the values of `core.coach.asks`.

In reading order: `words` (a text as words that know where they stand), `phrases.txt` (everything that is understood, one line a way to
say it), `pattern` (the lines compiled, and matched), `slots` (who, which exercise, from when: what stands in the gaps of a line),
`days` (dates and times of day), `message` (what may go out as a coach's own words), `hearing` (the whole).
"""

from core.coach.hearing.hearing import hear

__all__ = ["hear"]
