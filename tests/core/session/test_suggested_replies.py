"""What the assistant tells people to say is understood when they say it, there and then."""

from __future__ import annotations

import copy
import re

import pytest

from bot.channels.script import Say, read_script
from bot.wording import worded
from core.messages import FormUnknown, NothingRuns, NotUnderstood, RackNotRead, SetNotRead
from tests.dialogues.playing import DIALOGUES, script_of
from tests.walking import Walk

QUOTED = re.compile(r'"([^"]+)"')
NOT_READ = (NotUnderstood, SetNotRead, RackNotRead, FormUnknown, NothingRuns)
NAMES = sorted(path.stem for path in DIALOGUES.glob("*.txt") if path.stem != "killed")


def offered(message) -> set[str]:
    """The quick replies of a message, and everything it quotes."""
    words = worded(message)
    return {*words.replies, *QUOTED.findall(words.text.replace("\n", " "))}


def heard_in(walk: Walk, message, name: str) -> None:
    """Every reply that a message offers, tried in the state in which it was read."""
    for reply in offered(message):
        tried = copy.deepcopy(walk).says(reply)
        answered = [heard for heard in tried.said if isinstance(heard, NOT_READ)]
        assert not answered, f"{name}: {type(message).__name__} offers {reply!r}, and that is answered with {answered}"


@pytest.mark.parametrize("name", NAMES)
def test_every_reply_that_is_offered_is_understood(name):
    """Through each dialogue, after each message that waits for an answer."""
    walk = Walk().opens()
    for line in read_script(script_of((DIALOGUES / f"{name}.txt").read_text(encoding="utf-8"))):
        if walk.said:
            heard_in(walk, walk.said[-1], name)
        if isinstance(line.command, Say):
            walk.says(line.command.text)
        elif hasattr(line.command, "seconds"):
            walk.waits(line.command.seconds)
        elif line.command is not None:
            walk.waits((line.command.at - walk.now).total_seconds())
