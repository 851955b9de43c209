"""From the catalogue's TOML files to exercises: a file for each movement pattern, a table for each exercise.

Every fault of every entry is collected, so that one bad line never hides the others. What an entry leaves out
has a plain meaning: no sides, counted in reps, no nicknames, nothing held, no body mass lifted, fit for
a first day.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import TYPE_CHECKING, TypeVar

from core.errors import TempoUnreadable
from core.exercise import Exercise, Implement, Joint, Measure, Pattern, Posture
from core.tempo import Tempo

if TYPE_CHECKING:
    from enum import StrEnum

MUSCLES = frozenset(
    {
        "abs",
        "adductors",
        "biceps",
        "calves",
        "chest",
        "forearms",
        "glutes",
        "hamstrings",
        "hip abductors",
        "hip flexors",
        "lats",
        "lower back",
        "obliques",
        "quads",
        "rear shoulders",
        "shins",
        "shoulders",
        "triceps",
        "upper back",
    }
)
"""The muscle groups, in the trade's everyday words."""

KEYS = frozenset(
    {
        "body_share",
        "body_share_source",
        "careful",
        "cure",
        "easier",
        "fault",
        "form",
        "harder",
        "helping",
        "implements",
        "loads_held",
        "main",
        "measure",
        "name",
        "names",
        "posture",
        "set_up",
        "sides",
        "skill",
        "spare",
        "swap_load",
        "swap_noise",
        "swap_space",
        "tempo",
    }
)
FORM_POINTS = 3
Choice = TypeVar("Choice", bound="StrEnum")


@dataclass(frozen=True)
class Entry:
    """One table of a catalogue file while it is read; what is wrong with it goes into `faults`."""

    slug: str
    table: Mapping[str, object]
    faults: list[str]

    def fault(self, says: str) -> None:
        """Note a fault of this entry."""
        self.faults.append(f"{self.slug}: {says}")

    def text(self, key: str, default: str | None = None) -> str:
        """The text at `key`; without a default it must be there and not be blank."""
        value = self.table.get(key, default)
        if isinstance(value, str) and (value.strip() or default is not None):
            return value
        self.fault(f"{key} must be text, not {value!r}")
        return ""

    def link(self, key: str) -> str | None:
        """The slug at `key`, None when the entry has none."""
        return self.text(key) if key in self.table else None

    def texts(self, key: str) -> tuple[str, ...]:
        """The list of texts at `key`, empty when the entry has none."""
        value = self.table.get(key, [])
        if isinstance(value, list) and all(isinstance(item, str) and item.strip() for item in value):
            return tuple(value)
        self.fault(f"{key} must be a list of texts, not {value!r}")
        return ()

    def choice(self, kind: type[Choice], value: object, default: Choice) -> Choice:
        """One word of a closed list."""
        try:
            return kind(str(value))
        except ValueError:
            self.fault(f"{value!r} is none of {', '.join(kind)}")
            return default

    def whole(self, key: str, default: int) -> int:
        """The whole number at `key`."""
        value = self.table.get(key, default)
        if isinstance(value, int) and not isinstance(value, bool):
            return value
        self.fault(f"{key} must be a whole number, not {value!r}")
        return default

    def flag(self, key: str) -> bool:
        """True or false at `key`; false when the entry is silent."""
        value = self.table.get(key, False)
        if isinstance(value, bool):
            return value
        self.fault(f"{key} must be true or false, not {value!r}")
        return False

    def share(self) -> Decimal:
        """The share of body mass, written as text to stay exact."""
        says = self.text("body_share", "0")
        try:
            return Decimal(says)
        except InvalidOperation:
            self.fault(f"body_share must be a number in quotes, not {says!r}")
            return Decimal(0)

    def tempo(self, measure: Measure) -> Tempo | None:
        """The default tempo: needed where reps count, out of place where seconds do."""
        if measure is not Measure.REPS:
            if "tempo" in self.table:
                self.fault(f"a {measure} has no tempo")
            return None
        try:
            return Tempo.parse(self.text("tempo"))
        except TempoUnreadable as error:
            self.fault(str(error))
            return None

    def form(self) -> tuple[str, str, str]:
        """The three form points."""
        points = self.texts("form")
        if len(points) != FORM_POINTS:
            self.fault(f"form needs {FORM_POINTS} points, not {len(points)}")
            return ("", "", "")
        return (points[0], points[1], points[2])

    def spare(self) -> dict[Joint, str]:
        """A swap for each joint this exercise can trouble."""
        value = self.table.get("spare", {})
        if not isinstance(value, dict):
            self.fault(f"spare must be a table of joints, not {value!r}")
            return {}
        return {self.choice(Joint, joint, Joint.KNEE): str(slug) for joint, slug in value.items()}


def read_entry(slug: str, table: Mapping[str, object], pattern: Pattern, faults: list[str]) -> Exercise:
    """One exercise from its table; `faults` grows by everything that is wrong with it."""
    entry = Entry(slug, table, faults)
    for key in sorted(set(table) - KEYS):
        entry.fault(f"nobody reads {key}")
    measure = entry.choice(Measure, table.get("measure", Measure.REPS), Measure.REPS)
    return Exercise(
        slug=slug,
        name=entry.text("name"),
        names=entry.texts("names"),
        implements=tuple(entry.choice(Implement, word, Implement.BODYWEIGHT) for word in entry.texts("implements")),
        loads_held=entry.whole("loads_held", 0),
        sides=entry.flag("sides"),
        measure=measure,
        pattern=pattern,
        main=entry.texts("main"),
        helping=entry.texts("helping"),
        tempo=entry.tempo(measure),
        posture=entry.choice(Posture, table.get("posture"), Posture.STANDING),
        set_up=entry.text("set_up"),
        form=entry.form(),
        fault=entry.text("fault"),
        cure=entry.text("cure"),
        careful=entry.text("careful", ""),
        easier=entry.link("easier"),
        harder=entry.link("harder"),
        spare=entry.spare(),
        swap_space=entry.link("swap_space"),
        swap_load=entry.link("swap_load"),
        swap_noise=entry.link("swap_noise"),
        body_share=entry.share(),
        body_share_source=entry.text("body_share_source", ""),
        skill=entry.whole("skill", 1),
    )


def read_files(files: Mapping[str, str]) -> tuple[dict[str, Exercise], list[str]]:
    """All exercises of the given files (name to TOML text), and every fault found while reading them."""
    exercises: dict[str, Exercise] = {}
    faults: list[str] = []
    for file_name, text in sorted(files.items()):
        try:
            tables = tomllib.loads(text)
        except tomllib.TOMLDecodeError as error:
            faults.append(f"{file_name}: {error}")
            continue
        pattern_word = tables.pop("pattern", None)
        if pattern_word not in set(Pattern):
            faults.append(f"{file_name}: pattern {pattern_word!r} is none of {', '.join(Pattern)}")
            continue
        for slug, table in tables.items():
            if slug in exercises:
                faults.append(f"{slug}: described twice")
            elif isinstance(table, dict):
                exercises[slug] = read_entry(slug, table, Pattern(pattern_word), faults)
            else:
                faults.append(f"{file_name}: {slug} must be a table")
    return exercises, faults
