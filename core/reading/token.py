"""One word, number or mark of a message."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum, auto


class Kind(Enum):
    """What a token is."""

    WORD = auto()
    NUMBER = auto()
    CLOCK = auto()  # 6:30
    ORDINAL = auto()  # 1st, 2nd
    ODD = auto()  # a number that nothing here can mean
    MARK = auto()  # punctuation


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number or mark.

    `text` is what phrases compare with; `raw` is as written; `start` and `end` are offsets in the normalised text; `glued` is
    true when no space parts it from the token before, `apart` when an emoji does.
    """

    kind: Kind
    text: str
    raw: str
    start: int
    end: int
    glued: bool = False
    value: Decimal = Decimal(-1)
    worded: bool = False
    apart: bool = False
