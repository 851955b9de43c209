"""A message as typed becomes plain lower-case text that the rest of the reader can rely on.

Full-width and other digits become 0-9, halves and quarters become "1/2" set apart by a space, curly quotes and dashes become
plain ones, a cross becomes "x", invisible characters go, a few emoji that answer something become words, all others a parting.
Line ends stay: they part what is said. Nothing here ever joins two numbers into one.
"""

from __future__ import annotations

import re
import unicodedata

LONGEST = 4096
"""The longest message the network carries, in characters; what lies beyond is not read."""

_PLAIN = {
    "’": "'", "‘": "'", "ʼ": "'", "´": "'", "“": '"', "”": '"', "„": '"', "«": '"', "»": '"',
    "–": "-", "—": " - ", "−": "-", "‐": "-", "‑": "-", "‒": "-", "―": " - ",
    "×": "x", "✕": "x", "✖": "x", "✗": "x", "⨯": "x", "⁄": "/", "∕": "/", "…": "... ", "·": " ", "•": "\n",
    "👍": " :yes: ", "👌": " :yes: ", "✅": " :yes: ", "✔": " :yes: ", "☑": " :yes: ", "👎": " :no: ",
    "🔟": " 10 ", "▶": " :go: ", "⏸": " :pause: ", "💯": " ", "⏭": " :skip: ",
}  # fmt: skip

_INVISIBLE = {
    *"\u00ad\u034f\u061c\u180e\u200b\u200c\u200d\u200e\u200f\u202a\u202b\u202c\u202d\u2060\u2061\u2062\u2063\u2064"
    "\u2066\u2067\u2068\u2069\ufeff\ufe0e\ufe0f\u20e3"
}

PARTING = "\N{INFORMATION SEPARATOR ONE}"
"""Stands for an emoji: a breath between two words, and no word."""

_REVERSED = "\u202e"
"""Text after this shows backwards: a number in it is not the number seen."""

_DOTTED_PERIOD = re.compile(r"(?<![a-z'])([ap])[. ]\s?m\b\.?(?!')")

_EMPHASIS = re.compile(r"</?(?:b|i|u|em|strong|code|pre|p|br|span)\s*/?>|\*{2,}|_{2,}|`+|(?<!\w)_|_(?!\w)")
_CHANGE = re.compile(r"(?<=\d)\s*[→➡⇒]\ufe0f?\s*(?=\d)")
_CHEVRONS = re.compile(r">{2,}|<{2,}")
_STARRED = re.compile(r"(?<![\w*])\*(?=[^\s*])([^*\n]*[^\s*])\*(?![\w*])")
_DAY = r"(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*"
_DAY_RANGE = re.compile(rf"(?<!-)\b({_DAY})\s?-\s?({_DAY})\b(?!\s?-)")
_JOINED_DAYS = re.compile(
    r"\b(?:(?:mon|tues?|weds?|thurs?|thu|fri|sat|sun)(?=mon|tue|wed|thu|fri|sat|sun))+(?:mon|tues?|weds?|thurs?|thu|fri|sat|sun)\b"
)
_DAY_SLASH = re.compile(r"(?<![a-z])(m|t|w|f|tu|th|sa|su)/(?=(?:m|t|w|f|tu|th|sa|su)(?![a-z]))")
_ONE_DAY = re.compile(r"(?:mon|tue|wed|thu|fri|sat|sun)(?:rs|s|r)?")
_HYPHENATED = re.compile(r"(?<=[a-z])-(?=[a-z])")

_SPELLED = re.compile(r"(?<![a-z'])(k[. ] ?g|l[. ] ?b|r[. ] ?p[. ] ?e|r[. ] ?i[. ] ?r)([. ] ?s)?(?![a-z'])\.?")
_SPELLED_OUT = re.compile(r"(?<![a-z'])[a-z](?:(?: |\. ?)[a-z]){3,}(?![a-z'])")
_SHOUTED = frozenset({"pause", "stop", "skip", "help", "start", "next", "swap", "resume", "finish", "done", "undo", "back", "wait"})
"""Commands that people spell out, letter by letter: "P A U S E please"."""

_UNIT_ASIDE = re.compile(r"(?<=\d)\s?\(\s?(kgs?|kilos?|lbs?|pounds?)\s?\)")
_WITHOUT = re.compile(r"(?<![a-z])w/o(?:ut)?(?![a-z])")
_NOT_APART = re.compile(r"\bno t(?=\d)")
"""The last letter of "not" typed with the number it rejects: "14 no t12"."""

_KISSES = re.compile(r"(?<=\s)x{2,}(?=$|[\s.!?])")
_SPACES = re.compile(r"[^\S\n\x1f]+")
_OUTER = " \n\x1f"


def normalise(text: str) -> str:
    """The text in plain lower-case characters; at most `LONGEST` characters of it are read."""
    text = text[:LONGEST].replace(PARTING, " ")
    text = text if text.isascii() else _CHANGE.sub(" > ", text)
    plain = text.lower() if text.isascii() else "".join(map(_plain_character, unicodedata.normalize("NFC", text))).lower()
    plain = plain.replace("&nbsp;", " ").replace("\r", "\n").replace("\t", " ").replace("\x00", " ")
    plain = _CHEVRONS.sub(" ", _KISSES.sub("", plain))
    plain = _NOT_APART.sub("not ", _UNIT_ASIDE.sub(r" \1", _WITHOUT.sub("without", plain)))
    plain = _DAY_SLASH.sub(r"\1 ", plain)
    plain = _JOINED_DAYS.sub(lambda found: " ".join(_ONE_DAY.findall(found[0])), plain)
    plain = _SPELLED.sub(lambda found: found[0].replace(".", "").replace(" ", ""), plain)
    plain = _SPELLED_OUT.sub(_spelled_out, plain)
    plain = _HYPHENATED.sub(" ", _DAY_RANGE.sub(r"\1 to \2", _STARRED.sub(r" \1 ", _EMPHASIS.sub(" ", plain))))
    return _SPACES.sub(" ", _DOTTED_PERIOD.sub(r"\1m", plain)).strip(_OUTER)


def _spelled_out(found: re.Match[str]) -> str:
    """The word that was typed letter by letter, or what was typed when that is no command."""
    word = found[0].replace(" ", "").replace(".", "")
    return word if word in _SHOUTED else found[0]


def _plain_character(character: str) -> str:
    """What stands for one character."""
    if character.isascii():
        return character
    if character in _PLAIN:
        return _PLAIN[character]
    if character in _INVISIBLE:
        return ""
    if character == _REVERSED:
        return " :reversed: "
    category = unicodedata.category(character)
    if category == "Nd":
        return str(unicodedata.decimal(character))
    if category in {"No", "Nl"}:
        return f" {unicodedata.normalize('NFKC', character).replace('⁄', '/')} "
    if category in {"Mn", "Me", "Cf"}:
        return character if category == "Mn" else ""
    if category in {"Zl", "Zp"}:
        return "\n"
    if category == "So" and character != "°":
        return f" {PARTING} "
    if category[0] in "SCZ" and character not in "£€¥₹₦°":
        return " "
    return unicodedata.normalize("NFKC", character)
