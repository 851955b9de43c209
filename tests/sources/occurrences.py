"""Training days in every IANA zone against independent libraries: `python -m tests.sources.occurrences [--from YEAR]`.

The recurrence is checked by dateutil's rrule, zones by pytz with its own copy of the IANA database and its own arithmetic. pytz
says only whether a local time exists once, twice or never; what to do then is RFC 5545, section 3.3.5 (from memory): a local time
that occurs more than once is the first of them, and one that does not occur is read with the UTC offset before the gap.
"""

from __future__ import annotations

import argparse
import zoneinfo
from collections import defaultdict
from contextlib import contextmanager
from datetime import UTC, date, datetime, timedelta
from importlib.resources import files
from typing import TYPE_CHECKING

import pytz
from dateutil.rrule import rrulestr

from core.recurrence import Extra, Recurrence, Rule, text_of
from core.reminders import next_training

if TYPE_CHECKING:
    from collections.abc import Iterator

YEARS = 10
RULES = {
    "mon wed fri 06:30": Recurrence((Rule(date(2026, 1, 2), "06:30", days=("mon", "wed", "fri")),)),
    "every day 02:30, where clocks change": Recurrence((Rule(date(2026, 1, 1), "02:30", of="day"),)),
    "every other day 00:15, where clocks change at midnight": Recurrence((Rule(date(2026, 1, 1), "00:15", 2, "day"),)),
    "every other week on sun 03:00": Recurrence((Rule(date(2026, 1, 4), "03:00", 2, "week", ("sun",)),)),
    "weekends 01:45, less some, and some more": Recurrence(
        (Rule(date(2026, 1, 3), "01:45", days=("sat", "sun"), until=date(2035, 6, 30)),),
        (date(2026, 3, 29), date(2028, 10, 29)),
        (Extra(date(2026, 11, 3), "02:15"), Extra(date(2028, 2, 29), "01:30")),
    ),
}


@contextmanager
def packaged_zones() -> Iterator[None]:
    """Zone data of the tzdata package alone, whatever the machine has: the same release as pytz's copy."""
    zoneinfo.reset_tzpath(to=())
    zoneinfo.ZoneInfo.clear_cache()
    try:
        yield
    finally:
        zoneinfo.reset_tzpath()
        zoneinfo.ZoneInfo.clear_cache()


def every_zone() -> list[str]:
    """The names of every IANA zone."""
    return (files("tzdata") / "zones").read_text(encoding="utf-8").split()


def distinct_zones() -> list[str]:
    """One name for each set of data: links share their data byte for byte, and so must share every occurrence."""
    by_data = defaultdict(list)
    for zone in every_zone():
        by_data[(files("tzdata") / "zoneinfo" / zone).read_bytes()].append(zone)
    return sorted(min(zones) for zones in by_data.values())


def shifted(recurrence: Recurrence, years: int) -> Recurrence:
    """The same rules a whole number of 28-year cycles of the calendar away, or so many years: the days of the week are kept."""
    days = timedelta(days=round(years * 365.25 / 7) * 7)
    return Recurrence(
        tuple(
            Rule(rule.start + days, rule.at, rule.every, rule.of, rule.days, None if rule.until is None else rule.until + days)
            for rule in recurrence.rules
        ),
        tuple(day + days for day in recurrence.excluded),
        tuple(Extra(extra.day + days, extra.at) for extra in recurrence.added),
    )


def ours(recurrence: Recurrence, zone: str) -> list[datetime]:
    """Every instant (UTC) in ten years from the first day on, as reminders are planned: one after the other."""
    start = recurrence.rules[0].start
    after, until = (
        datetime(start.year, start.month, start.day, tzinfo=UTC) - timedelta(days=2),
        start.replace(year=start.year + YEARS),
    )
    found = []
    while (coming := next_training(recurrence, zone, after)) is not None and coming[0] < until:
        after = coming[1]
        found.append(after)
    return found


def local_times(recurrence: Recurrence) -> list[datetime]:
    """The local times of ten years by dateutil, from the iCalendar text."""
    until = recurrence.rules[0].start.replace(year=recurrence.rules[0].start.year + YEARS)
    text = "\n".join(line for line in text_of(recurrence).splitlines() if not line.endswith("VEVENT"))
    last = datetime(until.year, until.month, until.day)  # noqa: DTZ001 - a local time
    return list(rrulestr(text, forceset=True).between(datetime(1, 1, 1), last))  # noqa: DTZ001


def theirs(times: list[datetime], zone: str) -> list[datetime]:
    """Local times as instants (UTC): by pytz where they exist, by RFC 5545 where they do not or come twice. Sorted, each once."""
    place = pytz.timezone("UTC" if zone == "Factory" else zone)  # Factory is "no zone was set": pytz leaves it out
    found = set()
    for local in times:
        try:
            found.add(place.localize(local, is_dst=None).astimezone(UTC))
        except pytz.AmbiguousTimeError:
            found.add(min(place.localize(local, is_dst=late).astimezone(UTC) for late in (True, False)))
        except pytz.NonExistentTimeError:
            found.add((local - _offset_before(place, local)).replace(tzinfo=UTC))
    return sorted(found)


def _offset_before(place, local):
    """The offset before the gap that a local time falls into."""
    earlier = local
    while True:
        earlier -= timedelta(minutes=15)
        try:
            return place.localize(earlier, is_dst=None).utcoffset()
        except pytz.NonExistentTimeError:
            continue
        except pytz.AmbiguousTimeError:
            return max(
                (place.localize(earlier, is_dst=late) for late in (True, False)), key=lambda at: at.astimezone(UTC)
            ).utcoffset()


def differences(zones: list[str], first_year: int) -> Iterator[str]:
    """A line for each zone and rule where the two lists differ."""
    for name, recurrence in RULES.items():
        rules = shifted(recurrence, first_year - 2026)
        times = local_times(rules)
        for zone in zones:
            here, there = ours(rules, zone), theirs(times, zone)
            if here != there:
                only = sorted(set(here) ^ set(there))
                yield f"{zone}, {name}: {len(only)} differ, the first at {only[0].isoformat() if only else 'another place'}"


def main() -> int:
    """Check every zone, print each difference, and say how many occurrences were compared."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--from", dest="year", type=int, default=2026, help="the first of the ten years (default 2026)")
    parser.add_argument("--zones", default="", help="only zones whose name holds this")
    asked = parser.parse_args()
    zones = [zone for zone in every_zone() if asked.zones in zone]
    with packaged_zones():
        found = list(differences(zones, asked.year))
    each = sum(len(local_times(shifted(recurrence, asked.year - 2026))) for recurrence in RULES.values())
    print("\n".join([*found, f"{len(zones)} zones, {len(zones) * each:,} occurrences, {len(found)} differences"]))  # noqa: T201 - a command
    return 1 if found else 0


if __name__ == "__main__":
    raise SystemExit(main())
