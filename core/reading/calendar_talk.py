"""What is said between workouts about days, times away and time zones, beyond a plain "remind me mon wed fri 6:30am".

A message is read only as a whole: every word of it must have its place, else it is left to the reader. `calendar_rules` reads the
days and times, `dates` the days that are named.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import TYPE_CHECKING

from core.reading.acts import Away, Calendar, InZone, Move, MyReminders
from core.reading.calendar_rules import repeat_said
from core.reading.dates import DAY, NAMED_DAY, date_named, number_named
from core.reading.zones import zone_of
from core.recurrence import EVERY_MAX

if TYPE_CHECKING:
    from datetime import date

LONGEST = 200  # characters: no message about days is longer

_OFF = r"(?:no (?:training|workouts?|reminders?)|not|skip|nothing|(?:i )?can'?t (?:train|make it|do)|cancel)"
_GONE = r"(?:away|out of town|travell?ing|on holidays?|on vacation|on leave|on a trip|gone|off|busy|ill|sick)"
_I_AM = r"(?:i'?m|i am|i'?ll be|i will be|we'?re|we are)"
_STOP = r"(?:pause|stop|hold|mute|no|quiet)(?: (?:my|the|all))?(?: reminders?| training)?"
_ZONE = r"(?:(?:another|a different|a new) time ?zone)"
_NOW = r"(?: now| right now| at the moment| today| this week)?"
_COURTESY = re.compile(r"\b(?:please|thanks|thank you|hey|hi|ok|okay|oh|actually|so)\b")


def calendar_talk(text: str, today: date, *, zone_asked: bool = False) -> Calendar | None:
    """What a message says about days, times away or time zones; None when it says something else.

    Args:
        text: the message as typed.
        today: the day on the trainee's calendar.
        zone_asked: the trainee was just asked where they are, so that a bare place is an answer.
    """
    if len(text) > LONGEST:
        return None
    line = _plain(text)
    return _zone(line, asked=zone_asked) or _moved(line, today) or _away(line, today) or _shown(line) or repeat_said(line, today)


def _plain(text: str) -> str:
    """Lower case, plain quotes, no courtesies, single spaces."""
    line = text.lower().replace("’", "'")
    line = re.sub(r"[.!?]+(?=\s|$)", " ", line)
    line = _COURTESY.sub(" ", line)
    return " ".join(line.strip(" ,").split())


def _shown(line: str) -> MyReminders | None:
    asks = (
        r"(?:what|which|when|show)(?: are| me| is| days are)?(?: my)? reminders?",
        r"my reminders",
        r"when (?:do|will) you (?:next )?remind me(?: next)?",
        r"(?:what|which) (?:are my days|days do i train|days are mine)",
        r"when(?: is|'s) (?:my|the) next (?:training|workout|session|one|training day)",
        r"when (?:do|will) i (?:next )?train(?: next| again)?",
    )
    return MyReminders() if any(re.fullmatch(ask, line) for ask in asks) else None


def _zone(line: str, *, asked: bool) -> InZone | None:
    """As "I'm in another time zone now", "I'm in Tokyo now", "my time zone is Europe/Lisbon"; or a bare place, when asked."""
    if re.fullmatch(rf"(?:{_I_AM} in {_ZONE}|(?:my )?time ?zone(?: has)? changed|change (?:my |the )?time ?zone){_NOW}", line):
        return InZone()
    named = re.fullmatch(
        rf"(?:{_I_AM} in {_ZONE}{_NOW}[,:;]? (?:in )?|(?:(?:set |change )?(?:my |the )?)?time ?zone(?: is|:| to)? )(.+)", line
    )
    if named is not None or asked:
        place = re.sub(rf"^(?:{_I_AM} (?:in|at) |in )|(?: now| time)$", "", named[1] if named is not None else line)
        zone = zone_of(place)
        return InZone(zone, None if zone is not None else place) if zone is not None or _is_place(place) else None
    place_said = re.fullmatch(
        rf"(?:{_I_AM}(?: now)? in|i(?:'ve| have)? (?:moved|flown|travelled|arrived|landed)(?: to| in)) (.+?){_NOW}", line
    )
    zone = None if place_said is None else zone_of(place_said[1])
    return None if zone is None else InZone(zone)


def _is_place(words: str) -> bool:
    """Whether an answer to "where are you?" is at least a name."""
    return re.fullmatch(r"[a-z][a-z /_'-]{2,30}", words) is not None and len(words.split()) <= 3  # noqa: PLR2004 - as "new york city"


def _moved(line: str, today: date) -> Move | None:
    """As "move today to tomorrow", "saturday instead of friday", "tomorrow instead"."""
    change = r"(?:can (?:you|we|i) )?(?:move|shift|push|put|swap|change|switch) (?:my |the )?(?:workout |training )?(?:from |of )?"
    patterns = (
        rf"{change}(?P<day>{NAMED_DAY}?)(?:'s)?(?: workout| training)? (?:to|for|with|on to|onto) (?P<to>{NAMED_DAY})",
        rf"(?:can (?:we|i) )?(?:do |train |train on |do it )?(?P<to>{NAMED_DAY}) instead of (?P<day>{NAMED_DAY})",
        rf"(?:can (?:we|i) )?(?:do |do it |train )?(?P<to>{NAMED_DAY}) instead",
        rf"not (?P<day>today|tomorrow),? (?:but )?(?P<to>{NAMED_DAY})",
    )
    for pattern in patterns:
        found = re.fullmatch(pattern, line)
        if found is None:
            continue
        named = found.groupdict().get("day") or "today"
        day = today if named in ("it", "that", "this") else date_named(named, today, first=today)
        if day is not None and day >= today and (to := _nearest(found["to"], day, today)) is not None:
            return Move(day, to)
    return None


def _nearest(words: str, day: date, today: date) -> date | None:
    """The date named that is nearest to a day, before or after it, but not before today; None when there is none but the day."""
    found = {date_named(words, today, first=day + DAY), date_named(words, today, first=today)}
    dates = sorted(to for to in found if to is not None and to != day)
    return min(dates, key=lambda to: abs(to - day), default=None)


def _away(line: str, today: date) -> Away | None:
    """Days without training: "not this week", "I'm away till the 14th", "skip tomorrow", "from monday"."""
    sunday = today + timedelta(days=6 - today.weekday())
    out = rf"(?:{_OFF}|(?:{_I_AM} )?{_GONE}|{_STOP}|take|i'?m taking)"
    week = re.fullmatch(rf"{out}(?: for)? (?P<week>this|next|the rest of the|the rest of this) week(?: off)?", line)
    if week is not None:
        return Away(today, sunday) if week["week"] != "next" else Away(sunday + DAY, sunday + timedelta(days=7))
    lasting = re.fullmatch(rf"(?:{_I_AM} )?(?:{_GONE}|{_STOP}) for (?P<count>\w+)(?: of)? (?P<of>days?|weeks?)", line)
    if lasting is not None:
        count = number_named(lasting["count"])
        days = None if count is None else count * (7 if lasting["of"].startswith("week") else 1)
        return None if days is None or not 0 < days <= EVERY_MAX * 7 else Away(today, today + timedelta(days=days - 1))
    return _away_between(line, today) or _away_once(line, today)


def _away_between(line: str, today: date) -> Away | None:
    span = rf"(?P<first>{NAMED_DAY}?) (?:to|till|until|and|through|-) (?P<last>{NAMED_DAY})"
    between = re.fullmatch(rf"(?:{_I_AM} |{_OFF} )?(?:{_GONE} )?(?:from |between ){span}", line)
    if between is not None and re.search(rf"\b(?:{_GONE}|{_OFF})\b", line):
        first = date_named(between["first"], today, first=today)
        last = None if first is None else date_named(between["last"], today, first=first)
        return None if first is None or last is None else Away(first, last)
    until = re.fullmatch(rf"(?:{_I_AM} )?(?P<gone>{_GONE}|{_STOP})(?: away)? (?:till|until|til|to) (?P<last>{NAMED_DAY})", line)
    if until is not None:
        last = date_named(until["last"], today, first=today + DAY)
        gone = re.fullmatch(_GONE, until["gone"]) is not None  # "away till friday" is away on friday; "pause till friday" is not
        return None if last is None else Away(today, last if gone else last - DAY)
    again = r"(?:(?:start(?:ing)?|begin(?:ning)?|go on|continue|resume|only)(?: again)? )?(?:from|on)|starting"
    back = re.fullmatch(rf"(?:(?:{_I_AM} )?(?:back|home)(?: again)?(?: on| from)?|{again}) (?P<day>{NAMED_DAY})", line)
    if back is not None:
        day = date_named(back["day"], today, first=today + DAY)
        return None if day is None else Away(today, day - DAY)
    return None


def _away_once(line: str, today: date) -> Away | None:
    why = rf"(?:,? (?:because |as |since |cos )?{_I_AM} {_GONE}(?: then| that day)?)?"
    once = re.fullmatch(rf"(?:{_OFF}|(?:{_I_AM} )?{_GONE})(?: training)? (?P<day>{NAMED_DAY})(?: off)?{why}", line)
    if once is None:
        return None
    day = date_named(once["day"], today, first=today)
    return None if day is None or day == today else Away(day, day)
