"""Hearing that a circuit of the board comes on: "put the new circuit up from Monday", "put Market day up for Ana"."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.coach.asks import PutUp, Whom
from core.coach.hearing import hear
from core.reading.dates import DAY, DAY_NAMES, date_named

if TYPE_CHECKING:
    from datetime import date

    from core.coach.asks import Ask
    from core.coach.desk import Desk

EVERYONE = {"everyone", "everybody", "all", "all of them"}
FROM = re.compile(r"(?:(?<=[\s,;/])|^)(?:from|starts?|starting)\s+(?P<day>[^,;/\n]+)", re.IGNORECASE)
FOR = re.compile(r"(?:^|[\s,;/])for\s+(?P<who>[^/\n;\d]+?)\s*[.!]?\s*$", re.IGNORECASE)
NAMES = re.compile(r"\s*,\s*(?:and\s+)?|\s+and\s+")
PUT = re.compile(r"(?:please\s+)?(?:put|start|use|bring)\s+(?:up\s+)?(?P<circuit>[^/\n]+?)(?:\s+(?:up|on))?", re.IGNORECASE)
NEW = re.compile(r"(?:the|this|that|my)\s+(?:(?:new|last|latest)\s+)?(?:circuit|one|workout)|it|this|that", re.IGNORECASE)
DAY_WORDS = 4  # "the 3rd of march"


def heard(text: str, desk: Desk, today: date) -> Ask | None:
    """What a coach asks for or tells; a circuit is known by the board, or as the new one."""
    return hear(text, desk.names, today) or _put_up(text, desk, today)


def is_the_new_one(said: str) -> bool:
    """Whether a circuit is spoken of as the one at hand, not by its name."""
    return NEW.fullmatch(said) is not None


def _put_up(text: str, desk: Desk, today: date) -> PutUp | None:
    dated, from_on = from_day(" ".join(text.split()), today)
    whom, rest = Whom(), dated
    named = FOR.search(dated)
    if named is not None:
        who, rest = named["who"].strip(), dated[: named.start()]
        whom = Whom(everyone=True) if who.lower() in EVERYONE else Whom(tuple(NAMES.split(who)))
    put = PUT.fullmatch(rest.strip(" ,.!"))
    if put is None or not (is_the_new_one(put["circuit"]) or desk.circuit(put["circuit"]) is not None):
        return None
    return PutUp(put["circuit"], whom, from_on)


def from_day(text: str, today: date) -> tuple[str, date | None]:
    """A text without its "from Monday", and that day; None where it names none."""
    for found in FROM.finditer(text):
        words = found["day"].split()
        for count in range(min(len(words), DAY_WORDS), 0, -1):
            named = " ".join(words[:count]).lower().strip(".!")
            day = date_named(named, today, first=today + DAY if named in DAY_NAMES else today)  # a Monday said on one is the next
            if day is not None:
                return f"{text[: found.start()]} {' '.join(words[count:])}{text[found.end() :]}", day
    return text, None
