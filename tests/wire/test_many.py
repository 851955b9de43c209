"""Fifty trainees at once, under the limits that the network documents."""

from datetime import timedelta

from bot.pace import Limits
from core.session.states import Idle
from tests.wire.conftest import FIRST_TALK, open_house

TRAINEES = range(101, 151)
STATIONS = 2
CHAT_BURST, ALL_A_SECOND = 4, 30  # a message a second in a chat after a short burst, about thirty over all


class Watch:
    """When each message went out, by the simulated clock."""

    def __init__(self, network, clock):
        self.network, self.clock, self.sent = network, clock, []
        show = network._show  # noqa: SLF001

        def timed(given, *rest, **more):
            self.sent.append((int(given["chat_id"]), clock.now(), given.get("text") or given.get("caption")))
            return show(given, *rest, **more)

        network._show = timed  # noqa: SLF001

    def most_within(self, seconds, chat=None):
        """The most messages that went out within any so many seconds, in one chat or over all."""
        instants = [at for to, at, _ in self.sent if chat in (None, to)]
        return max(sum(start <= at < start + timedelta(seconds=seconds) for at in instants) for start in instants)


async def test_fifty_trainees_at_once(network, tmp_path, clock):
    """Everybody starts in the same second: every set is noted once, every question asked once, order and limits kept."""
    async with open_house(network, tmp_path / "stationcall.sqlite3", clock, Limits()) as house:
        await house.claimed()
        for chat in TRAINEES:
            await house.invited(chat)
        watch = Watch(network, clock)
        for text in (*FIRST_TALK, "go", "go", "go"):
            for chat in TRAINEES:
                await network.text(chat, text)
            await house.settled()
            await house.after(6)
        for station in range(STATIONS):
            asked = dict.fromkeys(TRAINEES)
            while not all(asked.values()):
                await house.after(1)
                for chat in TRAINEES:
                    if asked[chat] is None and network.last(chat).text.startswith("DOWN"):
                        asked[chat] = network.last(chat).text
                        await network.text(chat, f"{10 + station} at 8kg")
            await house.after(10)
        for number, chat in enumerate(TRAINEES, start=2):
            sets = (await house.store.diary(number)).standing()
            assert [(record.station, record.reps) for record in sets] == [(1, 10), (2, 11)]
            texts = [text.split("\n")[0] for to, _, text in watch.sent if to == chat]
            assert sum(text.startswith("<b>DOWN") for text in texts) == STATIONS
            order = [text for text in texts if text.startswith(("<b>GO", "<b>DOWN", "<b>SWITCH"))]
            assert [text.split("!")[0].split(".")[0] for text in order[:5]] == ["<b>GO", "<b>DOWN", "<b>GO", "<b>SWITCH", "<b>DOWN"]
            assert not isinstance(await house.store.state(number), Idle)
            assert watch.most_within(10, chat) <= CHAT_BURST + 10
        assert watch.most_within(1) <= ALL_A_SECOND * 2  # a burst, and what comes back within the second
        assert watch.most_within(30) <= ALL_A_SECOND * 31
