"""The time zone that a place named in a message is in: cities of the IANA database, and countries that have one zone."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from rapidfuzz import fuzz, process

LIKE = 75  # of 100: how alike a place must be written to be offered
OFFERED = 3
NOT_PLACES = {"Etc", "SystemV", "US", "Brazil", "Canada", "Chile", "Mexico"}  # old names; each has one of the kind Area/City


def zone_of(place: str) -> str | None:
    """The IANA zone of a place as typed: a city, a country with a single zone, or the zone's own name; None when not known."""
    return _places().get(_plain(place))


def near_places(place: str) -> tuple[str, ...]:
    """Places that are written much like this one, as they are named, most alike first."""
    found = process.extract(_plain(place), _places().keys(), scorer=fuzz.ratio, score_cutoff=LIKE, limit=OFFERED)
    return tuple(dict.fromkeys(place_name(_places()[name]) for name, _, _ in found))


def place_name(zone: str) -> str:
    """The place a zone is named after: "New York" for America/New_York."""
    return zone.rpartition("/")[2].replace("_", " ")


def _plain(place: str) -> str:
    return " ".join(place.lower().replace("_", " ").replace("-", " ").replace(".", "").split())


@cache
def _places() -> dict[str, str]:
    """Every name that is understood, and its zone."""
    data = files("tzdata")
    zones = data.joinpath("zones").read_text(encoding="utf-8").split()
    found = {"utc": "UTC", "gmt": "UTC"}
    for zone in sorted(zones, key=lambda zone: zone.count("/")):
        if "/" in zone and zone.split("/")[0] not in NOT_PLACES:
            found[_plain(zone)] = zone
            found.setdefault(_plain(place_name(zone)), zone)
    return found | {country: zone for country, zone in _single_zone_countries().items() if country not in found}


def _single_zone_countries() -> dict[str, str]:
    folder = files("tzdata").joinpath("zoneinfo")
    names = dict(_columns(folder.joinpath("iso3166.tab").read_text(encoding="utf-8"), 0, 1))
    zones: dict[str, list[str]] = {}
    for code, zone in _columns(folder.joinpath("zone.tab").read_text(encoding="utf-8"), 0, 2):
        zones.setdefault(code, []).append(zone)
    single = {_plain(names[code]): own[0] for code, own in zones.items() if len(own) == 1}
    return single | {"england": "Europe/London", "scotland": "Europe/London", "wales": "Europe/London", "uk": "Europe/London"}


def _columns(table: str, key: int, value: int) -> list[tuple[str, str]]:
    rows = [line.split("\t") for line in table.splitlines() if line and not line.startswith("#")]
    return [(row[key], row[value]) for row in rows]
