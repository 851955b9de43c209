"""The clauses of a message as pain is told in them: what a comma or an emoji parts may belong together, or be two things."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import PLACES
from core.reading.places import Place, places_in, side_alone
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_Span = tuple[int, int]


def joined_clauses(tokens: Sequence[Token], clauses: Sequence[_Span]) -> list[_Span]:
    """The clauses, with a place that only a comma parts from "I do not feel it" in one: "my left arm, I don't feel it"."""
    joined: list[_Span] = []
    for first, last in (span for clause in clauses for span in _after_a_side(tokens, *clause)):
        if joined and [tokens[i].text for i in range(joined[-1][1] - 1, joined[-1][1] + 1)] == ["even", "though"]:
            joined[-1] = (joined[-1][0], last)
            continue  # "panting even though I sit"
        if len(joined) > 1 and _tells_how(tokens, first, last) and side_alone(tokens, *joined[-1]) is not None:
            begin = joined[-2][0]
            if joined[-2][1] + 1 == joined[-1][0] and is_only_named(tokens, *joined[-2], places_in(tokens, *joined[-2])):
                joined[-2:] = [(begin, last)]
                continue  # "knee. left. sharp."
        if joined and tokens[joined[-1][1]].text == "," and joined[-1][1] + 1 == first:
            begin, end = joined[-1]
            if _tells_how(tokens, first, last) and is_only_named(tokens, begin, end, places_in(tokens, begin, end)):
                joined[-1] = (begin, last)
                continue  # "left knee, sharp"
            sided = len(joined) > 1 and joined[-2][1] + 1 == begin and side_alone(tokens, begin, end) is not None
            if sided and _is_unfelt(tokens, first, last) and is_only_named(tokens, *joined[-2], places_in(tokens, *joined[-2])):
                joined[-2:] = [(joined[-2][0], last)]  # "my leg, the left one, I don't feel it"
                continue
            named = any(
                _is_unfelt(tokens, *other) and is_only_named(tokens, *span, places_in(tokens, *span))
                for span, other in (((begin, end), (first, last)), ((first, last), (begin, end)))
            )
            if named:
                joined[-1] = (begin, last)
                continue
        joined.append((first, last))
    return joined


def _after_a_side(tokens: Sequence[Token], first: int, last: int) -> list[_Span]:
    """A clause, parted at an emoji that follows a side alone: "wrist hurts, the right" and then something else."""
    cut = next((i for i in range(first + 1, last) if tokens[i].apart), None)
    return [(first, last)] if cut is None or side_alone(tokens, first, cut) is None else [(first, cut), (cut, last)]


def _tells_how(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a clause tells nothing but how something feels: "sharp", "a bit stiff again"."""
    end = next((i for i in range(first + 1, last) if tokens[i].text in _AT_WHAT), last)
    return all(tokens[i].text in _HOW or tokens[i].kind is Kind.MARK for i in range(first, end))


_AT_WHAT = frozenset({"when", "whenever", "while", "as", "if", "on", "every"})
"""Words after which is told when it hurts: "left knee, sharp when I bend"."""


_HOW = frozenset(
    {
        "sharp", "stabbing", "shooting", "stabby", "jabby", "dodgy", "stiff", "iffy", "crunchy", "clicky", "twingy", "tender",
        "achey", "not", "good", "happy", "great", "wonky", "dicky", "gammy", "off", "bad", "weird", "swollen", "again", "really",
        "very", "quite", "pretty", "so", "a", "bit", "little", "kinda", "proper",
    }
)  # fmt: skip


def _is_unfelt(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a clause says of something named elsewhere that it is not felt: "can't feel a thing"."""
    words = {tokens[i].text for i in range(first, last)}
    return bool(words & {"feel", "feeling"}) and bool(words & {"not", "no", "nothing"}) and bool(words & _UNFELT)


_UNFELT = frozenset({"it", "them", "am", "anything", "thing", "nothing"})


def is_only_named(tokens: Sequence[Token], first: int, last: int, places: Sequence[Place]) -> bool:
    """Whether a clause names a place and says nothing else: "ouch, my toe"."""
    named = {place.at for place in places}
    named |= {at - 1 for at in named if tokens[at - 1].text in {"lower", "upper"}}
    return bool(named) and all(i in named or tokens[i].kind is Kind.MARK or tokens[i].text in NAMING for i in range(first, last))


NAMING = frozenset({"my", "the", "left", "right", "in", "it", "is", "poor", "both"})
"""Words that may stand around a place that is only named."""


def is_an_excuse(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a clause only says that a part of the body is bad, and what is left out for it follows: "bad back so skip this"."""
    words = {tokens[i].text for i in range(first, last)}
    ahead = {token.text for token in tokens[last + 1 : last + 1 + _REACH_OF_EXCUSE]}
    only = all(word in NAMING | _BAD | _HAVING or word in PLACES for word in words)
    return only and bool(words & _BAD) and last < len(tokens) and tokens[last].text in _LEADING_ON and bool(ahead & _LEFT_OUT)


_BAD = frozenset({"bad", "dodgy", "gammy", "wonky", "iffy", "ropey", "dicky", "crook", "bung", "cranky", "gippy", "knackered"})
_HAVING = frozenset({"a", "have", "got", "with", "i", "am", "having", "today", "day", "now", "again", "sorry", "coach", "of"})
_LEADING_ON = frozenset({"so", ",", ".", "-", "then"})
_LEFT_OUT = frozenset({"skip", "skipping", "pass", "passing", "swap", "miss", "avoid", "leave", "no"})
_REACH_OF_EXCUSE = 5
