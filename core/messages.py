"""Everything the assistant can say, as values: one frozen dataclass a message, numbers in fields with their units.

The words for them are in `bot.wording`, one function a message.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Greeting:
    """The first message to a new trainee."""

    name: str
    coach: str


Message = Greeting
