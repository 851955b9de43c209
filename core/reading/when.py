"""What days and times ask for: a reminder plan, the end of reminders, or "later"."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Act, Remind, Snooze, Unclear, Weekday
from core.reading.clock import DAY_WORDS, GROUPS, WEEK, Clock, Moment, in_week_order
from core.reading.damaged_days import loses_a_day
from core.reading.in_stories import is_quoted, is_told_to_bother
from core.reading.lexicon import COURTESY, GUARDS, PLACES, listed, sayings
from core.reading.occasions import is_an_occasion, without_reasons
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

REMIND_WORDS = listed("when", "remind")
_OFF = listed("when", "off")
_PLAN = listed("words_when", "plan")
_MOVES = listed("words_when", "moves")
_DONE = listed("words_when", "done")
_LEADS = sayings("moment_leads")
_WAIT_LEADS = sayings("wait_leads")
SMALL = listed("words_when", "small") | COURTESY
"""Words that stand around days and times and say nothing else."""

_ASKING_AGAIN = frozenset({"snooze", "later", "remind", "ask", "ping", "nudge", "buzz", "shout", "yell", "poke", "bug", "hmu"})
_LONGEST_PAUSE_MINUTES = 5
_BEFORE_A_DELAY = frozenset({"in", "after", "more", "another", "within"})
_AFTER_A_DELAY = frozenset({"more", "from", "till", "until", "again"})
_QUESTIONS = frozenset({"is", "are", "should", "does", "do", "was", "will", "what", "which", "why"})
_LEAVING_OUT = frozenset(
    {"drop", "cut", "bin", "scrap", "lose", "axe", "ditch", "kill", "stop", "cancel", "mute", "silence", "quit", "remove"}
)
_SHORT = 5
_OF_TRAINING = frozenset({"train", "workout", "exercise", "lift", "work", "sweat", "move", "do"})
_BEFORE_AN_HOUR = frozenset({"at", "@", "by", "till", "until", "til", "from", "after", "before", "around", "about", "past", "to"})
_NOT_THEN = frozenset({"no", "not", "stop", "without", "except", "never", "cancel"})
_SHIFTS = frozenset({"bump", "push", "shift", "move", "delay", "hold", "put", "shove", "slide", "drag", "nudge", "knock"})
_MANNERS = frozenset({"can", "could", "would", "will", "you", "kindly", "lets", "let", "us", "may", "might", "need", "to", "want"})
_OFF_REACH = 7
_ALONE = ("me", "alone")
_WHERE_ONE_IS = (["i", "am"], ["we", "are"], ["i", "will"], ["am", "on"], ["am", "away"])
_HOLDING_OFF = {("hold", "off"), ("hold", "on"), ("hold", "until"), ("hold", "till")}


def when_acts(tokens: Sequence[Token], first: int, last: int, *, timed: bool) -> list[Act]:
    """The reminders or the snooze that tokens `[first, last)` ask for; none when they ask for neither.

    `timed` says that a bare length of time may be a set just held, so that it is no snooze by itself.
    """
    first, last = without_reasons(tokens, first, last)
    if timed and last - first == 1 and tokens[first].kind is Kind.CLOCK:
        return []  # "19:45", where reps are awaited
    clock = Clock(tokens, first, last)
    words = [token.text for token in tokens[first:last]]
    said = set(words)
    moments = clock.moments()
    used = {i for moment in moments for i in range(moment.first, moment.last)}
    days, off_days = clock.days(first, last)
    minutes, spent = clock.span(used)
    reminds = (
        (bool(said & REMIND_WORDS) and not _is_bothered(tokens, first, last) and "went" not in said and not _hears_an_alarm(words))
        or "remember me" in " ".join(words)
        or "leave me alone on" in " ".join(words)
        or "make me remember" in " ".join(words)
    )
    busy = not timed and _is_busy_until(words, moments)
    if (reminds and asks_about_reminders(words)) or (not reminds and words[0] in _QUESTIONS and _is_asked(tokens, last)):
        return []
    if (
        said & (_DONE - {"got"} if busy or "ask me" in " ".join(words) else _DONE)
        and not reminds
        and not _HOLDING_OFF & set(pairwise(words))
    ):
        return []
    loose = [
        i
        for i in range(first, last)
        if tokens[i].kind in {Kind.NUMBER, Kind.CLOCK, Kind.ODD, Kind.ORDINAL}
        and i not in used | spent
        and clock.text(i - 1) not in {"round", "station"}
        and not _stands_for_a_word(clock, i, used)
    ]
    if timed and not reminds and not said & _ASKING_AGAIN and any(_counts_now(clock, moment) for moment in moments):
        return []
    bare = _bare_minutes(clock, loose, words, timed=timed)
    if bare is not None:
        minutes, loose = bare, []
    planned = _plans(
        words,
        days,
        off_days,
        moments,
        reminds=reminds and (minutes is None or bool(days)),
        small=_is_small(tokens, first, last, used),
    )
    later = busy or _is_later(words, moments, minutes, small=_is_small(tokens, first, last, used | spent), timed=timed)
    if not (planned or reminds or later):
        return []
    if loose and said & _DONE:
        return []
    if reminds and minutes is not None and "before" in said:
        return [Unclear()]  # "an hour before sunset"
    if loose or (moments and minutes is not None):
        return [Unclear()]
    for_a_while = not days and not moments and bool({"week", "weeks", "fortnight"} & said) and bool(_OFF & said)
    if reminds and (_is_vague(words) or for_a_while):
        return [Unclear()]
    if (planned or reminds) and (loses_a_day(tokens, first, last) or ("days" in said and not days and not off_days)):
        return [Unclear()]
    if planned and _leaves_out_a_date(words):
        return [Unclear()]
    if planned:
        return _plan(clock, words, days, off_days, moments)
    if len(moments) > 1:
        return [Unclear()]
    if moments:
        return [_at(words, moments[0])]
    if reminds and minutes is None and not later:
        return []
    return [Snooze(minutes=minutes)]


def _stands_for_a_word(clock: Clock, at: int, used: set[int]) -> bool:
    """Whether a figure at `at` is a "to" or a "for": "change it 2 sat", "my reminder 2 7pm", "remind me two train"."""
    if clock.text(at) not in {"2", "4"}:
        return False
    after = clock.text(at + 1)
    return after in DAY_WORDS or after in GROUPS or after in _OF_TRAINING or (at + 1 in used and at not in used)


def _counts_now(clock: Clock, moment: Moment) -> bool:
    """Whether a number before "this arvo" or "tonight" counts what was done then, no word such as "at" making it an hour."""
    lead = clock.text(moment.first - 1)
    plain = clock.is_number(moment.first) and not clock.tokens[moment.first].value % 1
    dated = clock.text(moment.first + 1) == "this" or clock.text(moment.first + 1) == "tonight"
    if lead == "@" and moment.last == moment.first + 1:
        return plain  # "@20"
    return plain and dated and lead not in _BEFORE_AN_HOUR


def _is_bothered(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether something else does or does not leave somebody alone: "my shoulder is bugging me", "the noise isn't bothering me"."""
    return any(
        tokens[at].text in REMIND_WORDS
        and (
            any(token.text in PLACES for token in tokens[max(at - 2, 0) : at])
            or is_told_to_bother(tokens, at)
            or is_quoted(tokens, at + 1, last)
        )
        for at in range(first, last)
    )


def _at(words: Sequence[str], moment: Moment) -> Act:
    """One time with no days: a snooze, unless it speaks of the reminder itself."""
    if not moment.settled:
        return Unclear()
    if {"today", "tonight", "tomorrow"} & set(words):
        return Snooze(at=moment.text)
    speaks_of_plan = _PLAN & set(words) or (
        "reminder" in words
        and (
            _MOVES & set(words) or {"new", "time"} <= set(words) or "should be" in " ".join(words) or {"from", "now"} <= set(words)
        )
        and not {"a", "another", "one"} & set(words[:4])
    )
    return Remind(at=moment.text) if speaks_of_plan else Snooze(at=moment.text)


def _plans(
    words: Sequence[str],
    days: set[Weekday],
    off_days: set[Weekday],
    moments: Sequence[Moment],
    *,
    reminds: bool,
    small: bool,
) -> bool:
    """Whether the words are about days to be reminded on, or about reminders no more."""
    said = set(words)
    off = bool(said & _OFF)
    if reminds and (days or off_days or (not moments and _turns_off(words))):
        return True
    if is_an_occasion(words) or ("see", "you") in set(pairwise(words)):
        return False
    if days and moments:
        return True
    moved = ("make it" in " ".join(words) or "change" in said or "switch" in said) and len(days) > 1
    left_out = bool(days or off_days) and off and (small or (words[0] in _LEAVING_OUT and len(words) <= _SHORT))
    left_out |= (
        bool(off_days) and words[:2] in (["not", "on"], ["never", "on"]) and not moments
    )  # "not on tuesdays pls I have choir"
    return bool(moved or left_out or (len(days) > 1 and small))


def _hears_an_alarm(words: Sequence[str]) -> bool:
    """Whether an alarm goes off, or nobody is to be alarmed, so that no reminder is meant."""
    if set(words) & REMIND_WORDS != {"alarm"}:
        return False
    at = words.index("alarm")
    return (
        "goes" in words[at:]
        or words[at - 1] in {"fire", "smoke", "car", "burglar", "house"}
        or words[at + 1 : at + 2]
        in (
            ["you"],
            ["is"],
            ["went"],
            ["going"],
        )
    )


def _is_asked(tokens: Sequence[Token], last: int) -> bool:
    return last < len(tokens) and tokens[last].text == "?"


def asks_about_reminders(words: Sequence[str]) -> bool:
    """Whether reminders are asked about ("what time do you remind me on mondays?") or are for another ("remind my husband")."""
    if any(
        one == "remind"
        and (other in {"him", "her", "them", "everyone"} or (other in {"my", "our", "the"} and whom in GUARDS["people"]))
        for one, other, whom in zip(words, words[1:], words[2:], strict=False)
    ):
        return True
    asks = words[0] in {"what", "which", "how", "did", "does", "why"} and words[1:2] not in (["about"], ["if"])
    return asks or words[:2] in (["when", "do"], ["when", "will"], ["when", "are"], ["when", "is"], ["do", "you"])


def _turns_off(words: Sequence[str]) -> bool:
    """Whether a word such as "stop" is about the reminders: "ditch the reminders", "reminders off", "do not remind me any more"."""
    at = next((i for i, word in enumerate(words) if word in REMIND_WORDS), None)
    if at is None or "forget" in words[:at]:
        return False
    if _ALONE in set(pairwise(words)):
        return True
    before = words[max(at - _OFF_REACH, 0) : at]
    while "," in before:
        before = before[before.index(",") + 1 :]
    return bool((set(before) | set(words[at + 1 :])) & _OFF) and not ("not" in before and "yet" in before)


def _plan(clock: Clock, words: Sequence[str], days: set[Weekday], off_days: set[Weekday], moments: Sequence[Moment]) -> list[Act]:
    """The reminders that days and times plan."""
    if _is_vague(words):
        return [Unclear()]
    said = set(words)
    if len(moments) > 1:
        return _by_moment(clock, moments)
    if moments and not moments[0].settled:
        return [Unclear()]
    at = moments[0].text if moments else None
    if not moments and (said & _OFF or _ALONE in set(pairwise(words))) and not (days and off_days):
        without = off_days or days
        return [Remind(days=() if without == set(WEEK) else in_week_order(without), off=True)]  # "turn off the daily nudges"
    if off_days and days - off_days == days and days != set(WEEK) and not off_days <= days:
        return [Remind(days=in_week_order(days), at=at), Remind(days=in_week_order(off_days), off=True)]
    if off_days:
        days = (days or set(WEEK)) - off_days
    return [Remind(days=in_week_order(days), at=at)]


def _leaves_out_a_date(words: Sequence[str]) -> bool:
    """Whether what is left out is one day, and not that day of every week: "not this Thursday", "skip next monday"."""
    dated = any(one in {"this", "next", "coming"} and day in DAY_WORDS for one, day in pairwise(words))
    return dated and bool(set(words) & (_OFF | _NOT_THEN))


def _is_vague(words: Sequence[str]) -> bool:
    """Whether the days are left open ("every other day", "twice a week")."""
    line = " ".join(words)
    if "," in words and set(words[: words.index(",")]) & _OFF and words[words.index(",") + 1 :][:2] in _WHERE_ONE_IS:
        line = " ".join(words[: words.index(",")])  # "no more reminders, I'm on the road all month"
    return any(
        vague in line
        for vague in (
            "every other",
            "twice a",
            "times a week",
            "once a",
            "twice",
            "two times",
            "2 times",
            "month",
            "alternate",
            "every second",
            "christmas",
            "easter",
            "new year",
            "birthday",
            "boxing day",
        )
    ) or any(
        one in DAY_WORDS and link == "or" and other in DAY_WORDS and not set(words) & _NOT_THEN
        for one, link, other in zip(words, words[1:], words[2:], strict=False)
    )


def _by_moment(clock: Clock, moments: Sequence[Moment]) -> list[Act]:
    """Two times for two days: each time with the days said since the one before, or with those after it."""
    acts: list[Act] = []
    before = clock.first
    led = not any(clock.days(clock.first, moments[0].first))  # "at 5 from monday to friday and at 7 on saturday"
    ends = [*(moment.first for moment in moments[1:]), clock.last]
    for moment, end in zip(moments, ends, strict=True):
        days, off = clock.days(moment.last, end) if led else clock.days(before, moment.first)
        if not days or off or not moment.settled:
            return [Unclear()]
        acts.append(Remind(days=in_week_order(days), at=moment.text))
        before = moment.last
    return acts


def _is_small(tokens: Sequence[Token], first: int, last: int, used: set[int]) -> bool:
    """Whether the words are days and times and little else."""
    return all(
        i in used
        or tokens[i].kind is Kind.MARK
        or tokens[i].text in SMALL
        or tokens[i].text in DAY_WORDS
        or tokens[i].text in GROUPS
        for i in range(first, last)
    )


def _is_later(words: Sequence[str], moments: Sequence[Moment], minutes: int | None, *, small: bool, timed: bool) -> bool:
    """Whether the words put the workout off."""
    line = f" {' '.join(words)} "
    said = set(words)
    if moments and not timed and words[0] in {"i", "we"} and said & {"ready", "free", "available"}:
        return True  # "I shall be ready at half past five"
    asks = bool({"remind", "ask", "try", "ping", "later", "snooze", "again", "me", "us", "more", "postpone"} & said)
    led_by_span = minutes is not None and words[0] in {"in", "after"} and not timed
    moved = bool(moments) and _first_asked(words) in _SHIFTS | _MOVES
    if (
        not asks
        and not small
        and not led_by_span
        and not moved
        and (said & (GUARDS["substance"] | GUARDS["people"]) or "went" in said)
    ):
        return False
    if (
        minutes is not None
        and _first_asked(words) in _SHIFTS
        and said & {"me", "it", "this", "session", "workout", "by"}
        and not timed
    ):
        return True
    if {"snooze", "postpone"} & said or any(
        f" {late} " in line.replace(" back in a ", " back ")
        for late in ("in a while", "in a bit", "not right now", "maybe later", "bit later")
    ):
        return True
    if "later" in said and " the later " not in line and not {"see", "talk", "speak", "catch", "sooner"} & said:
        return True
    told = (
        {"is", "was"} & said
        and not any(f" {lead} " in line for lead in _LEADS)
        and not said & COURTESY - {"i", "my", "the", "a", "it"}
    )
    if moments and not asks and (words[:2] == ["it", "is"] or told):
        return False  # "it's 7pm" tells the time, "my train is the 17:42" another
    if moments and not asks and words[0] in {"my", "the", "our"} and is_an_occasion(words):
        return False  # "my shift is till 9 pm"
    if moments and timed and not any(moment.settled for moment in moments) and _only_until(line):
        return False  # "could until 8"
    if moments and said & _MOVES and said & {"me", "it", "this", "us", "session", "workout"}:
        return True
    if moments:
        return small or any(f" {lead} " in line for lead in _LEADS)
    led = any(f" {lead} " in line for lead in _WAIT_LEADS)
    if minutes is None:
        return False
    if timed and not any(
        f" {lead} " in line
        for lead in ("later", "in", "hold on", "hang on", "more", "ask me", "give me", "give us", "another", "after")
    ):
        return False
    if minutes <= _LONGEST_PAUSE_MINUTES:
        at = words.index("minutes") if "minutes" in words else len(words)
        put_off = set(words[max(at - 3, 0) : at]) & _BEFORE_A_DELAY or set(words[at + 1 : at + 2]) & _AFTER_A_DELAY
        return bool(put_off or said & _ASKING_AGAIN) and (led or small)  # "gimme 5 minutes" is a pause, "5 more minutes" is not
    return led or small or line.startswith((" half ", " an hours "))


def _first_asked(words: Sequence[str]) -> str:
    """The first word that is more than manners: "delay" of "could you please delay it by an hour"."""
    return next((word for word in words if word not in COURTESY | _MANNERS), "")


def _is_busy_until(words: Sequence[str], moments: Sequence[Moment]) -> bool:
    """Whether the trainee is kept from training until a time of day: "in a meeting until 4pm"."""
    own = words[0] in {"i", "we", "in", "at", "on", "busy", "got", "have", "still", "stuck", "working", "driving", "no", "not"}
    return own and len(moments) == 1 and moments[0].settled and bool({"until", "till"} & set(words[: moments[0].last]))


def _only_until(line: str) -> bool:
    """Whether nothing but "until" makes the words a time."""
    return not any(f" {lead} " in line for lead in _LEADS if lead not in {"until", "till", "i can", "i could"})


def _bare_minutes(clock: Clock, loose: Sequence[int], words: Sequence[str], *, timed: bool) -> int | None:
    """Such as "snooze 20", "remind me in 20", "ready in 20": a lone number that can only be minutes."""
    if len(loose) != 1 or not clock.is_number(loose[0]) or clock.tokens[loose[0]].value % 1:
        return None
    led = clock.text(loose[0] - 1) in {"in", "snooze", "for", "later", "another"}
    returns = clock.text(loose[0] - 1) == "in" and clock.text(loose[0] - 2) in {"back", "again", "ready"}
    if clock.text(loose[0] - 2) == "give" and clock.text(loose[0] - 1) in {"me", "us"} and not timed:
        led = clock.tokens[loose[0]].value % 5 == 0
    about = (
        returns
        or _ASKING_AGAIN & set(words)
        or "give" in words
        or (clock.text(loose[0] - 1) == "in" and not timed and not _DONE & set(words))
    )
    after = clock.text(loose[0] + 1)
    ends = after in {"", "later", ".", ","} or (after in COURTESY and after not in {"a", "the"})
    return int(clock.tokens[loose[0]].value) if led and about and ends else None
