"""Trying the messaging account by hand, with no account and no internet: the stand-in network, and phones as lines of text.

    PYTHONPATH=. python -m tests.wire.by_hand

It prints the command that serves on it. Then `1 hello` lets person 1 send a text, `1 [go]` press the button "go",
`1 edit 12 at 8kg` change their last text, `1 film goblet squat` send a film so captioned, `1 voice` a voice message,
`1 block` and `1 unblock` the bot. Silent messages are marked with ·, those that sound with ♪, edits with ✎.
"""

from __future__ import annotations

import asyncio
import sys

from tests.wire.standin import TOKEN, StandIn

FILM = {"file_id": "a-film", "file_unique_id": "f", "width": 9, "height": 16, "duration": 5}
VOICE = {"file_id": "a-voice", "file_unique_id": "v", "duration": 3}
WIDTH = 40


class Phones(StandIn):
    """The stand-in, showing each message on the phone it goes to."""

    def _show(self, given, text, longest, **more):
        sent = super()._show(given, text, longest, **more)
        shown = self.last(int(given["chat_id"]))
        self.draw(int(given["chat_id"]), shown, "·" if shown.silent else "♪")
        return sent

    def _edit_message_text(self, given):
        sent = super()._edit_message_text(given)
        self.draw(int(given["chat_id"]), self._find(given), "✎")
        return sent

    @staticmethod
    def draw(chat, shown, mark):
        """A message as a phone shows it."""
        film = "[film]\n" if shown.film else "[picture]\n" if shown.picture else ""
        document = f"[{shown.document[0]}]\n" if shown.document else ""
        lines = (film + document + shown.text).split("\n")
        print(f"  {mark} to {chat} " + "─" * WIDTH)
        print("\n".join(f"    {line}" for line in lines))
        if shown.buttons:
            print("    " + " ".join(f"[{label}]" for label in shown.buttons))


async def act(network, own, line):
    """One line of a person's."""
    who, _, what = line.partition(" ")
    chat = int(who)
    if what.startswith("[") and what.endswith("]"):
        press = await network.press(chat, what[1:-1])
        await network.until(lambda: network.answers[press] != "waiting")
        print(f"    {network.answers[press] or 'pressed'}")
    elif what.startswith("edit "):
        await network.edit(chat, own[chat], what[5:])
    elif what.startswith("film"):
        await network.send(chat, video=FILM, caption=what[5:])
    elif what == "voice":
        await network.send(chat, voice=VOICE)
    elif what in ("block", "unblock"):
        await network.block(chat, blocked=what == "block")
        await network.membership(chat, "kicked" if what == "block" else "member")
    else:
        own[chat] = await network.text(chat, what)


async def main():
    """Serve until the end of input."""
    async with Phones() as network:
        print(f"STATIONCALL_TOKEN={TOKEN} STATIONCALL_API={network.url} stationcall serve --data /tmp/tried")
        own = {}
        while line := await asyncio.to_thread(sys.stdin.readline):
            if line.strip():
                try:
                    await act(network, own, line.strip())
                except (ValueError, KeyError, StopIteration, RuntimeError) as error:
                    print(f"    not done: {type(error).__name__}")


if __name__ == "__main__":
    asyncio.run(main())
