"""The labelled messages of coaches, as `core.coach.asks` has them (format: fixtures/README.md, "What coaches type")."""

import json
import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from core.coach import asks
from core.units import Load, Unit

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures"
DEVELOPMENT = FIXTURES / "coach_messages.jsonl"
ASIDE = FIXTURES / "coach_messages_aside.jsonl"

KINDS = {re.sub(r"(?<!^)(?=[A-Z])", "_", kind.__name__).lower(): kind for kind in asks.Ask.__args__}


@dataclass(frozen=True)
class Message:
    """One message, what it asks (None: nothing that is heard), and what it is a case of."""

    text: str
    names: tuple[str, ...]
    today: date
    ask: asks.Ask | None
    tags: tuple[str, ...]


def messages_in(path: Path) -> list[Message]:
    """Every message of one file, in its order."""
    return [message_of(json.loads(line)) for line in path.read_text(encoding="utf-8").splitlines() if line]


def message_of(row: dict[str, Any]) -> Message:
    """A line as the values it stands for."""
    ask = None if row["ask"] is None else ask_of(row["ask"])
    return Message(row["text"], tuple(row["names"]), date.fromisoformat(row["today"]), ask, tuple(row["tags"]))


def ask_of(label: dict[str, Any]) -> asks.Ask:
    """A label as the ask it stands for."""
    fields = {key: _value(key, value) for key, value in label.items() if key != "ask"}
    return KINDS[label["ask"]](**fields)


def _value(key: str, value: Any) -> Any:
    match key, value:
        case "whom", {"names": names}:
            return asks.Whom(tuple(names), everyone=value.get("everyone", False))
        case "most", str():
            amount, unit = value.split()
            return Load(Decimal(amount), Unit(unit))
        case (("from_on" | "until"), str()):
            return date.fromisoformat(value)
        case _:
            return value


def everything() -> list[Message]:
    """All messages of both files."""
    return messages_in(DEVELOPMENT) + messages_in(ASIDE)
