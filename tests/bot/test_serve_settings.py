"""Settings of the messaging account: everything that is wrong at once, and no secret shown."""

import pytest

from bot.__main__ import main
from bot.errors import SettingsWrong
from bot.settings import read_serve_settings

TOKEN = "123456789:an-invented-token-of-nobody"  # noqa: S105
SECRET = "an-invented-secret-word"  # noqa: S105
WEBHOOK = {
    "STATIONCALL_TOKEN": TOKEN,
    "STATIONCALL_WEBHOOK": "https://coach.example/stationcall/9f2c",
    "STATIONCALL_WEBHOOK_SECRET": SECRET,
}


def faults(environ):
    """What is wrong with an environment, by variable."""
    with pytest.raises(SettingsWrong) as wrong:
        read_serve_settings("/tmp/nowhere", environ)  # noqa: S108 - nothing is made there
    return [fault.split(" ")[0] for fault in wrong.value.faults]


def test_a_token_is_enough(tmp_path):
    """Updates are then asked for, at the network itself."""
    settings = read_serve_settings(str(tmp_path), {"STATIONCALL_TOKEN": TOKEN})
    assert settings.webhook is None
    assert settings.api == "https://api.telegram.org"
    assert settings.token.reveal() == TOKEN


def test_a_webhook_has_a_secret_and_a_place_to_listen(tmp_path):
    """It listens on the machine itself unless told otherwise: TLS stands in front."""
    webhook = read_serve_settings(str(tmp_path), WEBHOOK).webhook
    assert (webhook.url, webhook.host, webhook.port) == (WEBHOOK["STATIONCALL_WEBHOOK"], "127.0.0.1", 8080)
    elsewhere = read_serve_settings(str(tmp_path), WEBHOOK | {"STATIONCALL_LISTEN": "0.0.0.0:9000"}).webhook
    assert (elsewhere.host, elsewhere.port) == ("0.0.0.0", 9000)  # noqa: S104 - said, not opened


def test_no_setting_shows_its_secret(tmp_path):
    """Neither the token nor the webhook's secret nor a database's password, however it is printed."""
    settings = read_serve_settings(str(tmp_path), WEBHOOK | {"STATIONCALL_DATABASE": "postgresql://ana:open-sesame@db/x"})
    for shown in (repr(settings), str(settings), f"{settings.webhook}"):
        assert not any(secret in shown for secret in (TOKEN, SECRET, "open-sesame"))


def test_everything_that_is_wrong_is_said_at_once(capsys, monkeypatch, tmp_path):
    """In one line on stderr, with code 2, and without what was given."""
    given = {
        "STATIONCALL_TOKEN": "my secret token",
        "STATIONCALL_API": "somewhere",
        "STATIONCALL_WEBHOOK": "http://coach.example:1234",
        "STATIONCALL_WEBHOOK_SECRET": "öhm",
        "STATIONCALL_LISTEN": "nowhere",
    }
    assert faults(given) == list(given)
    for name, value in given.items():
        monkeypatch.setenv(name, value)
    assert main(["serve", "--data", str(tmp_path)]) == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert all(name in said for name in given)
    assert not any(value in said for value in ("my secret token", "öhm"))


@pytest.mark.parametrize(
    ("environ", "wrong"),
    [
        ({}, ["STATIONCALL_TOKEN"]),
        ({"STATIONCALL_TOKEN": "123:short"}, ["STATIONCALL_TOKEN"]),
        (WEBHOOK | {"STATIONCALL_WEBHOOK_SECRET": ""}, ["STATIONCALL_WEBHOOK_SECRET"]),
        (WEBHOOK | {"STATIONCALL_WEBHOOK_SECRET": "x" * 257}, ["STATIONCALL_WEBHOOK_SECRET"]),
        (WEBHOOK | {"STATIONCALL_WEBHOOK": "https://coach.example:8080/x"}, ["STATIONCALL_WEBHOOK"]),
        (WEBHOOK | {"STATIONCALL_WEBHOOK": "https://coach.example:port/x"}, ["STATIONCALL_WEBHOOK"]),
        (WEBHOOK | {"STATIONCALL_LISTEN": "127.0.0.1:70000"}, ["STATIONCALL_LISTEN"]),
        (
            {"STATIONCALL_TOKEN": TOKEN, "STATIONCALL_WEBHOOK_SECRET": SECRET, "STATIONCALL_LISTEN": "127.0.0.1:1"},
            ["STATIONCALL_WEBHOOK_SECRET", "STATIONCALL_LISTEN"],
        ),
    ],
)
def test_what_a_setting_must_be(environ, wrong):
    """The network's own rules: ports 443, 80, 88 or 8443, a secret of its letters; half a webhook is none."""
    assert faults(environ) == wrong
