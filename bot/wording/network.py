"""What is said beside any conversation on a messaging network: to strangers, groups, and on a pressed button."""

from __future__ import annotations

STRANGER = "Hello! I only talk with people whose\ncoach has invited me. If yours did,\nplease use the link or code you got."
GROUP = "I only talk one to one, so I leave\nthis group. Text me directly!"
NOT_KEPT = "Something went wrong in here. That\nmessage is not kept; please send it\nagain."
TOO_LATE = "That moment has passed."
HERE_IS_LEFT = {True: "{exercise}: {left} left", False: "{left} left"}
FEWER_WORDS = frozenset({"fewer messages", "less messages", "fewer texts", "too many messages", "not so many messages"})
ALL_WORDS = frozenset({"all messages", "more messages", "all texts"})
INVITE_WORDS = ("invite", "/invite")
TRAIN_WORDS = frozenset({"train", "/train", "train me", "i train too"})
HELP_WORDS = frozenset({"help", "/help", "what can i say", "what can i say?"})
COMMANDS = {"today": "What do I do today?", "help": "What can I say?", "progress": "How am I doing?"}
CLAIM = "First start. To become the coach, open {link} or text this code to @{bot} within {hours} hours: {code}"
READY = "Stationcall talks as @{bot}. Stop it with Ctrl-C."


def face(exercise: str, left_s: int, whole_s: int) -> str:
    """The work clock as it is edited: what is done, a bar, and the seconds left."""
    blocks = 10
    done = round(blocks * (whole_s - left_s) / whole_s)
    return f"{exercise}\n{'▓' * done}{'░' * (blocks - done)} {left_s} s"


def face_over(exercise: str) -> str:
    """The work clock when it has run down."""
    return f"{exercise}\n{'▓' * 10} done"
