"""The book of words: one function a message, found by the message's class."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

    from core.messages import Message


@dataclass(frozen=True)
class Worded:
    """A message in words, and the short answers that are likely, as the trainee would type them."""

    text: str
    replies: tuple[str, ...] = ()


M = TypeVar("M")
_BOOK: dict[type, Callable[[Any], Worded]] = {}


def words_for(kind: type[M]) -> Callable[[Callable[[M], Worded]], Callable[[M], Worded]]:
    """Enter a function in the book as the wording of a message class.

    Raises:
        ValueError: when the class has a wording already.
    """

    def enter(function: Callable[[M], Worded]) -> Callable[[M], Worded]:
        if kind in _BOOK:
            raise ValueError(kind)
        _BOOK[kind] = function
        return function

    return enter


def worded(message: Message) -> Worded:
    """A message in words.

    Raises:
        KeyError: when the message has no wording; a test holds that this cannot happen.
    """
    return _BOOK[type(message)](message)


def entries() -> frozenset[type]:
    """The message classes that have a wording."""
    return frozenset(_BOOK)
