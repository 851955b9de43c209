"""Small pieces that messages are made of: loads, times, sets, places. No line is longer than a phone's."""

from __future__ import annotations

import re
import textwrap
from dataclasses import replace
from typing import TYPE_CHECKING

from core.circuit import Side
from core.units import Load, amount_text

if TYPE_CHECKING:
    from decimal import Decimal

    from core.messages import SetLine
    from core.tempo import Tempo

WIDTH = 38  # columns; two more are the terminal's margin
TIED = "\N{NO-BREAK SPACE}"  # keeps a number and its unit on one line while folding
TIES = re.compile(r"(?<=\d) (?=(?:kg|lb|s|min)\b)|(?<=×) (?=\d)|(?<=\d) (?=×)")


def page(*lines: str) -> str:
    """A message from its lines, each folded to the width; a line that starts with a bullet hangs; empty ones are dropped."""
    folded = []
    for line in lines:
        if 0 < len(line) <= WIDTH and line.isprintable() and line[-1] != " ":  # nearly all: nothing to fold, nothing odd in it
            folded.append(line)
        elif line:
            hang = "  " if line.startswith(("• ", "- ")) else ""
            folded += textwrap.wrap(TIES.sub(TIED, line), WIDTH, subsequent_indent=hang, break_on_hyphens=False)
    return "\n".join(folded).replace(TIED, " ")


def load_text(load: Load, hands: int = 1) -> str:
    """`20 kg`, `2 × 12 kg` when one goes in each hand, or `no weight`."""
    if not load.amount:
        return "no weight"
    one = f"{amount_text(load.amount)} {load.unit}"
    return f"{hands} × {one}" if hands > 1 else one


def seconds_text(seconds: int) -> str:
    """`45 s`, `2 min`, `1 min 30 s`."""
    minutes, rest = divmod(seconds, 60)
    if not minutes:
        return f"{seconds} s"
    return f"{minutes} min {rest} s" if rest else f"{minutes} min"


def minutes_text(seconds: int) -> str:
    """Whole minutes, at least one."""
    return f"{max(1, round(seconds / 60))} min"


def number_text(number: Decimal | float) -> str:
    """`2`, `1.5`."""
    return f"{float(number):g}"


def percent(value: Decimal) -> str:
    """`4`, `0.6`, `-3`: whole from one on."""
    return f"{value:.0f}" if abs(value) >= 1 else number_text(round(value, 1))


def tempo_text(tempo: Tempo) -> str:
    """A tempo in words: `down 3 s, hold 1 s, up 1 s`."""
    parts = [f"down {tempo.lowering_s:g} s"]
    if tempo.bottom_s:
        parts.append(f"hold {tempo.bottom_s:g} s")
    parts.append(f"up {tempo.lifting_s:g} s")
    if tempo.top_s:
        parts.append(f"hold {tempo.top_s:g} s")
    return ", ".join(parts)


def set_text(line: SetLine) -> str:
    """A set as people say it: `11 at 20 kg, 2 in reserve`; every example and button is read back as what it says."""
    words = []
    if line.reps is not None:
        words.append(f"{line.side} {line.reps}" if line.side in (Side.LEFT, Side.RIGHT) else str(line.reps))
    if line.side is Side.EACH:
        words.append("each side")
    if line.seconds is not None:
        words.append(f"{line.seconds} s" if line.reps is None else f"in {line.seconds} s")
    if line.load is not None:
        words.append(f"at {load_text(line.load)}" if words else load_text(line.load))
    text = " ".join(words)
    if line.reserve is not None:
        text += f", {number_text(line.reserve)} in reserve"
    if line.rpe is not None:
        text += f", rpe {number_text(line.rpe)}"
    return text


def sets_text(lines: tuple[SetLine, ...]) -> str:
    """Several sets in a row; the load once where it is the same throughout: `11, 11, 10 at 20 kg`."""
    if len(lines) > 1 and len({line.load for line in lines}) == 1 and all(line.reps is not None for line in lines):
        each = all(line.side is Side.EACH for line in lines)
        bare = [set_text(replace(line, load=None, side=None if each else line.side)) for line in lines]
        load = lines[0].load
        return ", ".join(bare) + (" each side" if each else "") + (f" at {load_text(load)}" if load is not None else "")
    return ", ".join(set_text(line) for line in lines)


def and_list(words: tuple[str, ...]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return "".join(words) if len(words) <= 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def places_text(places: tuple[str, ...], unnamed: str) -> str:
    """Places on the body as a list; `unnamed` stands for one that was not named."""
    return and_list(tuple(f"the {place}" if place else unnamed for place in places))


def emergency_text(emergency: str | None) -> str:
    """The number to call."""
    return emergency or "your local emergency number"
