"""How long one reading takes: `python -m tests.benchmarks.reading_speed`.

Beside it, as the baselines, a bare compiled regular expression for "11 at 20kg" and lark's slowest general parser (Earley) on
the same words. A typical reply is to be read within 1 ms (median, one core), the worst 4,096 characters within 100 ms.
"""

from __future__ import annotations

import random
import re
import sys
from functools import partial
from statistics import median
from time import perf_counter

from lark import Lark

from core.reading import Awaiting, Context, make_ready, read
from core.reading.normal import LONGEST
from tests.core.reading.reading import replies

AWAITED = Context(awaiting=Awaiting.REPS)
TYPICAL = "11 at 20kg"
REPEATS = 300
BARE = re.compile(r"(\d+) at (\d+)(kg|lb)")
EARLEY = Lark(
    'start: NUMBER "at" NUMBER UNIT\nNUMBER: /\\d+/\nUNIT: "kg" | "lb"\n%import common.WS\n%ignore WS',
    parser="earley",
)


def median_ms(call, repeats: int = REPEATS) -> float:
    """Median of many calls, in milliseconds."""
    taken = []
    for _ in range(repeats):
        start = perf_counter()
        call()
        taken.append(1000 * (perf_counter() - start))
    return median(taken)


def worst_texts() -> dict[str, str]:
    """Texts of the longest length that try the reader's patience."""
    rnd = random.Random(20260302)  # noqa: S311 - a repeatable text, no secret
    letters = "abcdefghijklmnopqrstuvwxyz "
    pieces = {
        "nines": "9 ",
        "commas": "1,",
        "units": "20kg x ",
        "chest": "my chest hurts ",
        "how": "how do i do the ",
        "left": "2 left ",
        "a": "a ",
        "dots": ".",
    }
    return {
        **{name: (piece * LONGEST)[:LONGEST] for name, piece in pieces.items()},
        "letters": "".join(rnd.choice(letters) for _ in range(LONGEST)),
        "typos": " ".join("".join(rnd.choice(letters[:16]) for _ in range(5)) for _ in range(700))[:LONGEST],
        "signs": "".join(chr(rnd.randrange(0x600, 0x700)) for _ in range(LONGEST)),
    }


def main() -> None:
    """Print the times, and their ratio to the baselines'."""
    out = sys.stdout.write
    make_ready()
    read(TYPICAL)  # builds all that is built once
    bare, earley, typical = (
        median_ms(lambda: BARE.match(TYPICAL)),
        median_ms(lambda: EARLEY.parse(TYPICAL)),
        median_ms(lambda: read(TYPICAL, AWAITED)),
    )
    out(f"{TYPICAL!r}: {typical:.3f} ms, {typical / bare:.0f} times the bare expression, {typical / earley:.2f} times Earley\n")
    taken = []
    for reply in replies("replies.jsonl"):
        start = perf_counter()
        read(reply.text)
        taken.append(1000 * (perf_counter() - start))
    out(f"{len(taken)} replies: median {median(taken):.3f} ms, slowest {max(taken):.1f} ms\n")
    for name, text in worst_texts().items():
        out(f"{LONGEST} characters of {name}: {median_ms(partial(read, text), 5):.1f} ms\n")


if __name__ == "__main__":
    main()
