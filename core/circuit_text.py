"""A circuit as plain text, the way a coach types it on a phone, both ways.

    goblet squat, 16 kg / one-arm row, each side / push-up, 12 reps / plank
    60 work 45 rest, 3 rounds

is four stations. A line or a slash ends a station; a slash between digits does not. What a part says besides
an exercise belongs to that station; a part without an exercise speaks of the whole circuit: work, rest, rest
between rounds, rounds, warm-up. Seconds need no unit, ranges are `30-60`, what stands in quotes is the
coach's own form point. A station may add "or push-up" for a swap. `name: Monday`, or a line that
ends with a colon, names the circuit.

The text is turned into the same table that a TOML file holds and goes through the same checks, so that both
forms give the same circuit and the same faults.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING

from core import catalogue
from core.circuit import PLATE_CHANGE_S, WORK_S, Circuit, Span
from core.circuit_file import RESERVE, Draft, Fault, load_text, read_table

if TYPE_CHECKING:
    from collections.abc import Iterable

    from core.circuit import Station

UNNAMED = "Circuit"
"""What a circuit is called when its text does not say."""
MINUTE_S = 60
AMOUNT = r"\d+(?:[.,:]\d+)?"
UNIT = r"(?:s|secs?|seconds?|m|mins?|minutes?)\b"
TIME = rf"{AMOUNT}\s*(?:{UNIT})?(?:\s*(?:-|–|to)\s*{AMOUNT})?\s*(?:{UNIT})?"
TEMPO = r"(?:\d+(?:\.\d+)?|x)(?:-(?:\d+(?:\.\d+)?|x)){3}"
QUOTED = r'"(?:[^"\\]|\\.)*"|“[^”]*”'
LOAD = r"\d+(?:[.,]\d+|\s*½|\s+1/2)?\s*(?:kgs?|kilos?|lbs?|pounds?)"
COUNT = r"\d+(?:\s*(?:-|–|to)\s*\d+)?"
BETWEEN = r"between(?:\s+rounds)?"
PATTERNS = {
    "form": rf"(?:form:?\s*)?(?:{QUOTED})",
    "tempo": rf"(?:tempo:?\s*)?(?<![\w.]){TEMPO}(?![\w.-])|tempo:?\s+[^\s,]+",
    "load": rf"(?:@\s*|\b(?:at|with)\s+)?(?:[12]\s*[x×]\s*)?{LOAD}\b",
    "reserve": rf"{COUNT}\s*(?:reps?\s+)?(?:left|in reserve|in the tank|rir)\b|reserve:?\s*{COUNT}",
    "rest_between_rounds_s": rf"{TIME}\s*(?:rest\s+)?{BETWEEN}|(?:rest\s+)?{BETWEEN}:?\s*{TIME}",
    "plate_change_s": rf"{TIME}\s*(?:a\s+)?plate[ -]?change|plate[ -]?change:?\s*{TIME}",
    "warm_up_s": rf"{TIME}\s*warm[ -]?up|warm[ -]?up:?\s*{TIME}",
    "work_s": rf"{TIME}\s*(?:of\s+)?(?:work|on)\b|(?:work|on):?\s*{TIME}",
    "rest_s": rf"{TIME}\s*(?:of\s+)?(?:rest|off)\b|(?:rest|off):?\s*{TIME}",
    "work_and_rest": r"(?<![\w./])\d{2,3}/\d{2,3}(?![\w./])",
    "rounds": r"(?:(?<!\w)[x×]\s*)?\d+\s*(?:rounds?|times)(?:\s+of)?\b|rounds?:?\s*\d+",
    "reps": r"\d+\s*reps?\b|(?<!\w)[x×]\s*\d+\b|reps?:?\s*\d+",
    "sides": r"\b(?:each|per|both|every|a)\s+(?:sides?|legs?|arms?)\b|\b(?:left and right|l\s*\+\s*r)\b",
    "seconds": rf"(?<![\w.:])(?:{AMOUNT}\s*{UNIT}|\d+:\d\d)",
}
ITEM = re.compile("|".join(f"(?P<{kind}>{pattern})" for kind, pattern in PATTERNS.items()), re.IGNORECASE)
LINE_END = re.compile(rf"{QUOTED}|(?P<cut>\n|(?<!\d)/|/(?!\d))")
COMMA = re.compile(rf"{QUOTED}|(?P<cut>[,;](?!\d)|(?<!\d)[,;])")
NAME = re.compile(r"name:\s*(?P<said>.*)|(?P<heading>[^\d:]+):", re.IGNORECASE | re.DOTALL)
BULLET = re.compile(r"^\s*(?:\d{1,2}[.)]\s+|[•·*–-]\s+)")
"""What stands before the lines of a list."""
EDGES = " \t\r,;.&–-"
"""What may stand at the ends of a piece without meaning anything."""
KEYS = {"load": "load_hint", "seconds": "work_s"}
"""Items that go by another name than the key of a circuit file."""
OF_THE_CIRCUIT = frozenset({"rest_between_rounds_s", "warm_up_s", "plate_change_s", "rounds"})


def read_typed(text: str) -> Circuit | tuple[Fault, ...]:
    """The circuit a coach typed, or every fault in it, never an empty tuple.

    Rounds and rest must be said; the rest between rounds is the same rest unless said; the rest of the
    defaults are those of a circuit file.
    """
    draft = draft_typed(text)
    if draft.circuit is None or draft.faults:
        return draft.faults
    return draft.circuit


def draft_typed(text: str) -> Draft:
    """The circuit a coach typed as far as it can be read, with every fault, in the words of the text form."""
    table: dict[str, object] = {"name": UNNAMED}
    common: dict[str, object] = {}
    stations: list[dict[str, object]] = []
    for part in _cut(text, LINE_END):
        if name := NAME.fullmatch(part):
            table["name"] = _unquoted(name["heading"] or name["said"])
            continue
        found, said = _stations(part)
        for key, value in said.items():
            _set(table if key in OF_THE_CIRCUIT else common, key, value)
        stations += found
    between = "rest_between_rounds_s"
    one_rest_for_all = between not in table
    if "rest_s" in common:
        table["rest_s"] = common.pop("rest_s")
        table.setdefault(between, table["rest_s"])
    table["station"] = [_with_common(station, common) for station in stations]
    draft = read_table(table)
    faults = (fault for fault in draft.faults if not (one_rest_for_all and fault.place == between))
    return Draft(draft.circuit, tuple(map(_in_words, faults)))


def _in_words(fault: Fault) -> Fault:
    """A fault as it concerns typed text, where nobody writes brackets or keys."""
    place, says = (re.sub(r"(\w+?)(_between_rounds)?_s\b", _key_in_words, words) for words in (fault.place, fault.says))
    remedy = fault.remedy.replace("two as [min, max]", "a range such as 30-60")
    return Fault(place, says, re.sub(r"\bwork_s\b", "seconds of work", remedy))


def _key_in_words(key: re.Match[str]) -> str:
    return f"{key[1].replace('_', '-')}{' between rounds' if key[2] else ''}"


def _stations(part: str) -> tuple[list[dict[str, object]], dict[str, object]]:
    """The stations of a part, and what it says of the whole circuit.

    Commas part what is said of one exercise, and exercises too when each is known by its name.
    """
    stations: list[dict[str, object]] = []
    said: dict[str, object] = {}
    for chunk in _cut(part, COMMA):
        items, words = _items(chunk)
        if words:
            _take_words(words, stations)
        for key, value in items.items():
            _set(stations[-1] if stations and key not in OF_THE_CIRCUIT else said, key, value)
    for key in said.keys() - OF_THE_CIRCUIT if stations else ():
        _set(stations[0], key, said.pop(key))
    return stations, said


def _set(said: dict[str, object], key: str, value: object) -> None:
    """Note what was said: form points add up; two numbers for one thing are left for the checks to refuse."""
    before = said.get(key, value)
    if key == "form":
        said[key] = [*_texts(said.get(key)), *_texts(value)]
    else:
        said[key] = value if before == value else f"{before} and {value}"


def _take_words(words: str, stations: list[dict[str, object]]) -> None:
    """Add what is not a number to the stations: a new exercise, a swap, or more of a name nobody knows."""
    name, *swaps = (word.strip() for word in re.split(r"\b(?:swap:?|or)\b", words, flags=re.IGNORECASE))
    if name and (not stations or catalogue.named(name)):
        stations.append({"exercise": name})
    elif name:
        stations[-1]["exercise"] = f"{stations[-1]['exercise']}, {name}"
    if stations and swaps:
        stations[-1]["swap"] = [*_texts(stations[-1].get("swap")), *filter(None, swaps)]


def _texts(value: object) -> list[object]:
    return value if isinstance(value, list) else []


def _with_common(station: dict[str, object], common: dict[str, object]) -> dict[str, object]:
    """A station with what was said for all, where it says nothing itself; one in reps needs no seconds."""
    said = {key: value for key, value in common.items() if not (key == "work_s" and "reps" in station)}
    return {**said, **station}


def _cut(text: str, at: re.Pattern[str]) -> list[str]:
    """The text cut at a separator, quotes left whole; empty pieces are dropped."""
    pieces, start = [], 0
    for cut in at.finditer(text):
        if cut["cut"]:
            pieces.append(text[start : cut.start()])
            start = cut.end()
    pieces.append(text[start:])
    return [piece for piece in (BULLET.sub("", piece).strip(EDGES) for piece in pieces) if piece]


def _items(chunk: str) -> tuple[dict[str, object], str]:
    """What a chunk says in items that can be recognised wherever they stand, and the words left over."""
    items: dict[str, object] = {}
    for found in ITEM.finditer(chunk):
        kind, says = str(found.lastgroup), found.group()
        if kind == "work_and_rest":
            items["work_s"], items["rest_s"] = map(int, says.split("/"))
        else:
            _set(items, KEYS.get(kind, kind), _value(kind, says))
    words = " ".join(ITEM.sub(" ", chunk).split()).strip(f"{EDGES}:")
    if words.lower() == "bodyweight":
        return {**items, "load_hint": "bodyweight"}, ""
    return items, words


def _value(kind: str, says: str) -> object:
    """What an item says, in the form a circuit file has it."""
    match kind:
        case "sides":
            return True
        case "tempo" | "form":
            words = re.sub(r"^(?:tempo|form):?\s*", "", says, flags=re.IGNORECASE)
            return words if kind == "tempo" else [_unquoted(words)]
        case "load":
            load = re.sub(r"^\D*(?:[12]\s*[x×]\s*)?", "", says, flags=re.IGNORECASE)
            return re.sub(r"\s*(?:1/2|½)", ".5", load)
        case "rounds" | "reps" | "reserve":
            numbers = [int(number) for number in re.findall(r"\d+", says)]
            return numbers if len(numbers) > 1 else numbers[0]
        case _:
            return _seconds(says)


def _seconds(says: str) -> object:
    """A time or a range of times in whole seconds; a unit after a range holds for both numbers."""
    units = re.findall(rf"(?<=[\d\s])({UNIT})", says, re.IGNORECASE)
    numbers = re.findall(AMOUNT, says)
    words = [units[min(index, len(units) - 1)] if units else "s" for index in range(len(numbers))]
    times = [_one_time(number, word) for number, word in zip(numbers, words, strict=True)]
    return times if len(times) > 1 else times[0]


def _one_time(number: str, unit: str) -> object:
    """`90`, `1:30` or `1.5` minutes in seconds; half seconds and `1:99` stay, for the checks to refuse."""
    if ":" in number:
        minutes, seconds = map(int, number.split(":"))
        return MINUTE_S * minutes + seconds if seconds < MINUTE_S else number
    amount = float(number.replace(",", ".")) * (MINUTE_S if unit.lower().startswith("m") else 1)
    return int(amount) if amount.is_integer() else amount


def _unquoted(text: str) -> str:
    """The text inside its quotes, if it has any."""
    if text.startswith("“"):
        return text[1:-1]
    if text.startswith('"') and text.endswith('"') and len(text) > 1:
        return re.sub(r"\\(.)", r"\1", text[1:-1])
    return text


def write_typed(circuit: Circuit) -> str:
    """The circuit as a coach would type it; reading it gives the same circuit.

    Raises:
        ExerciseUnknown: when a station's exercise is not in the catalogue.
    """
    seconds = [station.work_s for station in circuit.stations if station.work_s is not None]
    work_s = Counter(seconds).most_common(1)[0][0] if seconds else WORK_S
    whole = [
        f"{circuit.rounds} rounds",
        f"work {work_s} s",
        f"rest {_span(circuit.rest_s)} s",
        f"between rounds {_span(circuit.rest_between_rounds_s)} s",
        *([f"warm-up {circuit.warm_up_s} s"] if circuit.warm_up_s else []),
        *([f"plate change {circuit.plate_change_s} s"] if circuit.plate_change_s != PLATE_CHANGE_S else []),
    ]
    lines = [f"name: {_quoted(circuit.name)}", *(_line(station, work_s) for station in circuit.stations)]
    return "\n".join([*lines, ", ".join(whole)]) + "\n"


def _line(station: Station, work_s: int) -> str:
    return ", ".join(_said(station, work_s))


def _said(station: Station, work_s: int) -> Iterable[str]:
    exercise = catalogue.exercise(station.exercise)
    yield exercise.name
    if station.sides:
        yield "each side"
    if station.reps is not None:
        yield f"{station.reps} reps"
    elif station.work_s != work_s:
        yield f"work {station.work_s} s"
    if station.tempo is not None and station.tempo != exercise.tempo:
        yield f"tempo {station.tempo}"
    if station.load_hint is not None:
        yield load_text(station.load_hint)
    if station.reserve != RESERVE:
        yield f"reserve {_span(station.reserve)}"
    if station.rest_s is not None:
        yield f"rest {_span(station.rest_s)} s"
    for slug in station.swap:
        yield f"or {catalogue.exercise(slug).name}"
    for point in station.form:
        yield f"form {_quoted(point)}"


def _span(span: Span) -> str:
    return str(span.low) if span.low == span.high else f"{span.low}-{span.high}"


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
