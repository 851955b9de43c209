"""Who and what is meant by names as a coach types them: settled against the desk, or asked about; nothing is ever guessed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.catalogue import exercise, find, named, nearest
from core.catalogue.matching import words_of
from core.coach import people
from core.coach.people import Found, Near, Nobody, Several
from core.deeds import MovementUnknown, NobodyCalled, WhoMeant

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import datetime

    from core.circuit import Circuit
    from core.coach.asks import Whom
    from core.coach.desk import Client, Desk
    from core.exercise import Exercise

FIRSTS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
NUMBERED = re.compile(rf"(?:the\s+)?(?:(?P<number>\d{{1,2}})|(?P<word>{'|'.join(FIRSTS)}))(?:\s+one)?")


@dataclass(frozen=True)
class Meant:
    """What is settled: each name as typed, and whose it is."""

    pairs: tuple[tuple[str, str], ...] = ()

    def name(self, said: str) -> str | None:
        """Whose a name as typed is, None when that is not settled."""
        return dict(self.pairs).get(said)


NOTHING_SETTLED = Meant()
Doubt = WhoMeant | NobodyCalled


def person(said: str, desk: Desk, meant: Meant = NOTHING_SETTLED) -> Client | Doubt:
    """The one client of this name, or what there is to ask."""
    settled = meant.name(said)
    found = people.find(said, desk.names) if settled is None else Found(settled)
    match found:
        case Found(name):
            there = next((client for client in desk.clients if client.name == name), None)
            return NobodyCalled(said, desk.names) if there is None else there
        case Several(names):
            return WhoMeant(said, names, sure=bool(people.called(said, desk.names)))
        case Near(name):
            return WhoMeant(said, (name,), sure=False)
        case Nobody():
            return NobodyCalled(said, desk.names)


def those_meant(whom: Whom, desk: Desk, meant: Meant = NOTHING_SETTLED) -> tuple[Client, ...] | Doubt:
    """The clients that are meant, each once, or the first doubt."""
    found: list[Client] = []
    for said in whom.names:
        client = person(said, desk, meant)
        if isinstance(client, Doubt):
            return client
        found.append(client)
    if whom.everyone:
        return tuple(client for client in desk.clients if client not in found)
    return tuple(dict.fromkeys(found))


def chosen(text: str, names: Sequence[str]) -> str | None:
    """Which of some names an answer takes: by the name, by its place ("the first"), a yes where there is one; None for none."""
    plain = " ".join(text.lower().split()).strip(" .!")
    place = NUMBERED.fullmatch(plain)
    if place is not None:
        number = FIRSTS.index(place["word"]) + 1 if place["word"] else int(place["number"])
        return names[number - 1] if 1 <= number <= len(names) else None
    if len(names) == 1 and plain in {"yes", "y", "yep", "yeah", "ok", "that one"}:
        return names[0]
    found = people.find(text.strip(" .!"), tuple(names))
    return found.name if isinstance(found, Found) else None


def movement(said: str, clients: Iterable[Client], now: datetime) -> Exercise | MovementUnknown:
    """The exercise that is meant: the one in the circuits of these people that has such a name, else the catalogue's."""
    slugs = dict.fromkeys(
        station.exercise for client in clients for circuit in circuits_of(client, now) for station in circuit.stations
    )
    theirs = [exercise(slug) for slug in slugs]
    exact, words = named(said), set(words_of(said))
    if exact is not None and exact.slug in slugs:
        return exact
    like = [one for one in theirs if any(words <= set(words_of(name)) for name in (one.name, *one.names))] if words else []
    found = like[0] if len(like) == 1 else exact or find(said)
    if found is not None:
        return found
    offered = [one.name for one in like] or [one.name for one in nearest(said)]
    return MovementUnknown(said, tuple(offered))


def circuits_of(client: Client, now: datetime) -> tuple[Circuit, ...]:
    """Every circuit that is on for a client, and what is coming."""
    circuit, block = client.on(now)
    coming = client.trainee.coming
    return (*((circuit,) if block is None else block.circuits), *((coming.circuit,) if coming is not None else ()))
