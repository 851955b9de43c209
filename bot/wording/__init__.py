"""Every word that people read: short, warm, plain, readable on a phone in three seconds.

`book` finds the wording of a message; the other files hold one function a message, by subject. To add one, see DEVELOPERS.md.
"""

from bot.wording import (
    account,
    between,
    coach,
    coach_asks,
    coach_clearing,
    coach_deeds,
    coach_help,
    coach_words,
    days,
    effort,
    first_talk,
    health,
    own,
    pain,
    readiness,
    reports,
    review,
    summary,
    walk,
)
from bot.wording.book import Worded, entries, worded

__all__ = [
    "Worded",
    "account",
    "between",
    "coach",
    "coach_asks",
    "coach_clearing",
    "coach_deeds",
    "coach_help",
    "coach_words",
    "days",
    "effort",
    "entries",
    "first_talk",
    "health",
    "own",
    "pain",
    "readiness",
    "reports",
    "review",
    "summary",
    "walk",
    "worded",
]
