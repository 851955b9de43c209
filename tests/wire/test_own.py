"""What is the trainee's own, on the network: records as documents, and an account that is gone for good."""

import json

import pytest

from bot.channels.telegram.register import CHANNEL
from bot.channels.telegram.sending import Sending
from bot.errors import Gone, Unreachable, Unsure
from bot.ports import Letter, Rendered
from bot.wording.network import STRANGER
from tests.bot.given import rows
from tests.wire.conftest import ANA, BEN, ROSA, open_house
from tests.wire.standin import Fault

CUT_AFTER = Fault(cut="after")
LATER = Fault(429, "Too Many Requests: retry after 300", retry_after=300)


@pytest.fixture
async def home(network, tmp_path, clock):
    """The program at work with a data folder for files; Rosa coaches, Ana trains."""
    async with open_house(network, tmp_path / "stationcall.sqlite3", clock, pictures_in=tmp_path) as opened:
        await opened.claimed()
        await opened.ready(ANA)
        yield opened


def documents(network, chat):
    """The documents in a chat as a phone shows them: the file's name and the words under it."""
    return [(shown.document[0], shown.text) for shown in network.chats[chat] if shown.document is not None]


def sending(home):
    """The way out, called by hand."""
    return Sending(home.office.network, home.desk._register, None, home.store.state)  # noqa: SLF001


def letter(tmp_path, text="Yours."):
    """A message with a document."""
    file = tmp_path / "records.csv"
    file.write_text("trainee,at\r\n", encoding="utf-8")
    return Letter(5, Rendered(text, ("my records",), "RecordsHere", document=file))


def who(home, chat):
    """Somebody's id."""
    return home.desk._register.at(str(chat)).trainee_id  # noqa: SLF001


# Documents


async def test_records_come_as_two_documents_with_words_under_them(home, network):
    """The file's own name and bytes, in one message each."""
    await home.says(ANA, "my records")
    assert documents(network, ANA) == [
        ("records-2026-03-02.csv", "Your sets as a table, for any\nspreadsheet."),
        ("records-2026-03-02.json", "Everything I keep about you, as JSON."),
    ]
    table, whole = (shown.document[1] for shown in network.chats[ANA] if shown.document is not None)
    assert table.decode("utf-8-sig").startswith("trainee,at,circuit,")
    assert json.loads(whole)["trainee"]["name"] == "Ana"


async def test_words_that_are_too_long_for_a_caption_go_first(home, network, tmp_path):
    """Every word, with the buttons, and then the file alone, without a sound."""
    words = "\n".join(["A line of some length."] * 60)
    await sending(home).send(who(home, ANA), letter(tmp_path, words))
    text, file = network.chats[ANA][-2:]
    assert (text.text, list(text.buttons), text.document) == (words, ["my records"], None)
    assert (file.text, file.buttons, file.silent, file.document[0]) == ("", {}, True, "records.csv")


@pytest.mark.parametrize(
    ("fault", "error"),
    [
        (Fault(403, "Forbidden: bot was blocked by the user"), Gone),
        (Fault(400, "Bad Request: chat not found"), Gone),
        (Fault(429, "Too Many Requests: retry after 7", retry_after=7), Unreachable),
        (Fault(502, "Bad Gateway"), Unsure),
        (CUT_AFTER, Unsure),
    ],
    ids=lambda value: getattr(value, "description", None),
)
async def test_what_the_network_says_to_a_document_means_what_it_means_to_a_text(home, network, tmp_path, fault, error):
    """Gone, later, or out or not."""
    network.fail(fault, "sendDocument")
    with pytest.raises(error):
        await sending(home).send(who(home, ANA), letter(tmp_path))


async def test_a_document_that_is_not_taken_is_left_out(home, network, tmp_path):
    """The words go without it."""
    network.fail(Fault(400, "Bad Request: file is too big"), "sendDocument")
    await sending(home).send(who(home, ANA), letter(tmp_path))
    assert (network.last(ANA).text, network.last(ANA).document) == ("Yours.", None)


async def test_a_document_that_may_be_out_is_sent_again(home, network):
    """Rather two than none."""
    network.fail(CUT_AFTER, "sendDocument")
    await home.says(ANA, "csv")
    await home.after(10)
    assert [name for name, _ in documents(network, ANA)] == ["records-2026-03-02.csv"] * 2


# Erased


def goodbye(given):
    """Whether a call carries the last word."""
    return str(given.get("text")).startswith("Done.")


async def forgotten(home, chat=ANA):
    """Somebody has had everything erased, by the button."""
    await home.says(chat, "forget me")
    await home.presses(chat, "yes")


async def test_the_account_is_gone_after_the_goodbye(home, network, tmp_path):
    """The goodbye arrives; then nothing is left, and a new message from there is a stranger's."""
    await home.says(ANA, "go")
    await forgotten(home)
    assert network.last(ANA).text.startswith("Done. Everything about you is erased.")
    assert [row["address"] for row in rows(tmp_path / "stationcall.sqlite3", "account")] == [str(ROSA)]
    assert [row["name"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")] == ["Rosa"]
    await home.says(ANA, "11 at 12kg", "hello?")
    assert [shown.text for shown in network.chats[ANA]][-2:] == [network.chats[ANA][-2].text, STRANGER]
    assert network.chats[ANA][-2].text.startswith("Done.")


async def test_the_coach_hears_a_count_and_no_name(home, network):
    """Nothing that is said to the coach from then on names them."""
    before = len(network.shown(ROSA))
    await forgotten(home)
    assert network.shown(ROSA)[before:] == ["Somebody had everything about them\nerased."]


async def test_the_code_that_let_them_in_cannot_be_used_again(home, network):
    """A new one can, also by the same person; a new beginning knows nothing of the old one."""
    await home.says(ROSA, "invite Ben")
    code = network.last(ROSA).text.rsplit(" ", 1)[1]
    await home.says(BEN, f"/start {code}", "yes", "kg", "a pair of 8s")
    await forgotten(home, BEN)
    await home.says(BEN, f"/start {code}")
    assert network.last(BEN).text == STRANGER
    await home.ready(BEN, "Ben")
    assert "noted" not in network.last(BEN).text
    assert await home.sets(BEN) == ()


async def test_a_chat_that_is_blocked_before_the_goodbye_is_buried_without_a_word_to_the_coach(home, network, tmp_path):
    """The coach is told of those who cannot be reached by name; not of somebody who is erased."""
    await home.says(ANA, "forget me")
    before = len(network.shown(ROSA))
    await network.block(ANA)
    await home.says(ANA, "yes")
    assert network.shown(ROSA)[before:] == ["Somebody had everything about them\nerased."]
    assert [row["name"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")] == ["Rosa"]


async def test_somebody_may_come_back_before_the_goodbye_is_out(home, network, tmp_path):
    """The goodbye waits for the network; a new code lets them in meanwhile, as somebody new."""
    await home.says(ROSA, "invite Ana")
    code = network.last(ROSA).text.rsplit(" ", 1)[1]
    await home.says(ANA, "forget me")
    network.fail(LATER, when=goodbye)
    await home.says(ANA, "yes", f"/start {code}")
    assert network.last(ANA).text == STRANGER  # that code was made out to their name, and is erased with it
    await home.ready(ANA, "Somebody")
    await home.after(400)
    assert {row["name"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")} == {"Rosa", "Somebody"}
    assert len(rows(tmp_path / "stationcall.sqlite3", "account")) == 2


async def test_killed_before_the_goodbye_it_goes_out_after_the_next_start(network, tmp_path, clock):
    """From the account that is kept for it; then the account goes too."""
    file = tmp_path / "stationcall.sqlite3"
    async with open_house(network, file, clock, pictures_in=tmp_path) as home:
        await home.claimed()
        await home.ready(ANA)
        await home.says(ANA, "forget me")
        network.fail(LATER, when=goodbye)
        await home.says(ANA, "yes")
        assert [row["address"] for row in rows(file, "account")] == [str(ROSA), str(ANA)]
        assert home.desk._register.at(str(ANA)) is None  # noqa: SLF001
    async with open_house(network, file, clock, pictures_in=tmp_path) as home:
        await home.settled()
        assert home.desk._register.of_trainee(2) is None  # noqa: SLF001
    assert network.last(ANA).text.startswith("Done.")
    assert [row["address"] for row in rows(file, "account") if row["channel"] == CHANNEL] == [str(ROSA)]


async def test_a_coach_who_says_it_stays(home, network):
    """They are told who can remove a coach."""
    await home.says(ROSA, "forget me")
    assert network.last(ROSA).text.endswith("Nothing is erased.")
    await home.says(ROSA, "yes", "invite Ben")
    assert "Ben" in network.last(ROSA).text
