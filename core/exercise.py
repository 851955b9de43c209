"""What an exercise is: a movement with implement, sides, tempo, form points, cautions, easier and harder variants."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from core.tempo import Tempo


class Pattern(StrEnum):
    """The movement pattern an exercise trains."""

    SQUAT = "squat"
    HINGE = "hinge"
    LUNGE = "lunge"
    HORIZONTAL_PUSH = "horizontal push"
    HORIZONTAL_PULL = "horizontal pull"
    VERTICAL_PUSH = "vertical push"
    VERTICAL_PULL = "vertical pull"
    CARRY = "carry"
    CORE_EXTENSION = "core against extension"
    CORE_ROTATION = "rotation and side-bending"
    ARMS = "arms"
    CALVES = "calves"
    BALANCE = "balance"
    MOBILITY = "mobility"
    WARM_UP = "warm-up"


class Measure(StrEnum):
    """What counts at a station: repetitions, or seconds held or carried."""

    REPS = "reps"
    HOLD = "hold"
    CARRY = "carry"


class Implement(StrEnum):
    """What the exercise is done with."""

    DUMBBELL = "dumbbell"
    KETTLEBELL = "kettlebell"
    BAND = "band"
    CHAIR = "chair"
    FLOOR = "floor"
    WALL = "wall"
    BODYWEIGHT = "bodyweight"


class Posture(StrEnum):
    """How the body is placed: changing between the floor and standing takes time."""

    STANDING = "standing"
    FLOOR = "floor"
    SEATED = "seated"


class Joint(StrEnum):
    """The joints a swap can spare."""

    KNEE = "knee"
    HIP = "hip"
    LOWER_BACK = "lower back"
    SHOULDER = "shoulder"
    ELBOW = "elbow"
    WRIST = "wrist"


@dataclass(frozen=True)
class Exercise:
    """A movement, as the catalogue describes it.

    Attributes:
        slug: its key, words joined by hyphens.
        name: what a card calls it.
        names: nicknames people type for it, lower case.
        implements: what it is done with; the first is the usual one.
        loads_held: 0 for bodyweight, 1 for one dumbbell or bell (held by one or both hands), 2 for one in each hand.
        sides: true when it is done one side after the other.
        measure: what counts.
        pattern: the movement pattern.
        main: muscles that do the work; `helping`: those that assist.
        tempo: the default tempo; for a hold or carry it has no meaning and is None.
        posture: how the body is placed.
        set_up: one or two sentences.
        form: three form points, the most important first.
        fault, cure: the most common fault, and what mends it.
        careful: what to be careful about and for whom; may be empty.
        easier, harder: slugs of variants, None at the end of a line.
        spare: a swap for each joint that this exercise can trouble.
        swap_space, swap_load, swap_noise: slugs for no room, no load, no noise.
        body_share: the share of body mass that is part of the load (0 to 1); `body_share_source` says where it comes from.
        skill: 1 fit for a first day, 2 after some weeks, 3 for the practised.
    """

    slug: str
    name: str
    names: tuple[str, ...]
    implements: tuple[Implement, ...]
    loads_held: int
    sides: bool
    measure: Measure
    pattern: Pattern
    main: tuple[str, ...]
    helping: tuple[str, ...]
    tempo: Tempo | None
    posture: Posture
    set_up: str
    form: tuple[str, str, str]
    fault: str
    cure: str
    careful: str
    easier: str | None
    harder: str | None
    spare: Mapping[Joint, str]
    swap_space: str | None
    swap_load: str | None
    swap_noise: str | None
    body_share: Decimal
    body_share_source: str
    skill: int
