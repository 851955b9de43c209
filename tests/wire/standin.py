"""A stand-in for the messaging network: a small HTTP server on loopback that speaks its bot interface.

It answers as the network documents it: an offset confirms updates, a second asker ends the first, ids of messages rise, formatting
that cannot be read is refused, an edit to the same text is refused. Faults are put in by tests. Everything that was called is kept,
in order: tests read from that what a phone would show.
"""

from __future__ import annotations

import asyncio
import html
import json
import re
from dataclasses import dataclass, field
from datetime import UTC, datetime
from html.parser import HTMLParser
from urllib.parse import parse_qsl

import aiohttp
from aiohttp import web

TOKEN = "123456789:an-invented-token-for-the-loopback"  # noqa: S105 - no account has it
BOT = {"id": 123456789, "is_bot": True, "first_name": "Stationcall", "username": "stationcall_standin_bot"}
WAIT_S = 30  # a test that waits longer than this has failed
TEXT_MAX, CAPTION_MAX, CALLBACK_BYTES_MAX = 4096, 1024, 64
TAGS = {"b", "i", "u", "s", "code", "pre"}


@dataclass
class Shown:
    """A message in a chat, as a phone shows it now; `versions` are all the texts it has had."""

    message_id: int
    text: str
    silent: bool
    buttons: dict[str, str]
    film: str | None = None
    picture: int = 0
    document: tuple[str, bytes] | None = None
    versions: list[str] = field(default_factory=list)
    html: str = ""


@dataclass
class Call:
    """A call of the bot's: the method, what came with it, and what it was answered with (None: the connection was cut)."""

    method: str
    given: dict
    code: int | None = None


@dataclass(frozen=True)
class Fault:
    """What goes wrong with a call: an answer instead of carrying it out, or a cut after (or before) carrying it out."""

    code: int = 0
    description: str = ""
    retry_after: int = 0
    cut: str = ""  # "before" or "after"


class _Formatting(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.open, self.text, self.fine = [], "", True

    def handle_starttag(self, tag, _attrs):
        self.fine = self.fine and tag in TAGS
        self.open.append(tag)

    def handle_endtag(self, tag):
        self.fine = self.fine and bool(self.open) and self.open.pop() == tag

    def handle_data(self, data):
        self.text += data


def plain(text):
    """What a phone shows of formatted text, None when it cannot be parsed."""
    if re.search(r"<(?!/?(?:b|i|u|s|code|pre)>)|&(?!(?:amp|lt|gt|quot|#\d+);)", text):
        return None
    reader = _Formatting()
    reader.feed(text)
    reader.close()
    return reader.text if reader.fine and not reader.open else None


class Refused(Exception):
    """A call that the network refuses."""

    def __init__(self, code, description, **parameters):
        super().__init__(description)
        self.code, self.description, self.parameters = code, description, parameters


class StandIn:
    """The network. `now` gives the time that messages carry."""

    def __init__(self, now=None):
        self.now = now or (lambda: datetime.now(UTC))
        self.calls: list[Call] = []
        self.chats: dict[int, list[Shown]] = {}
        self.blocked: set[int] = set()
        self.left: list[int] = []
        self.answers: dict[str, str | None] = {}
        self.faults: list[tuple[object, Fault]] = []
        self.webhook: dict | None = None
        self.delivered: list[int] = []
        self._pending: dict[int, dict] = {}
        self._next_update, self._next_message = 1000, 1
        self._changed = asyncio.Condition()
        self._poll: asyncio.Future | None = None
        self._waiting = False
        self._closing = False
        self.running = 0
        self._runner: web.AppRunner | None = None
        self.url = ""

    async def __aenter__(self):
        app = web.Application(client_max_size=60_000_000)
        app.router.add_route("*", "/bot{token}/{method}", self._answer)
        self._runner = web.AppRunner(app, access_log=None, handle_signals=False, shutdown_timeout=0)
        await self._runner.setup()
        site = web.TCPSite(self._runner, "127.0.0.1", 0)
        await site.start()
        self.url = f"http://127.0.0.1:{self._runner.addresses[0][1]}"
        return self

    async def __aexit__(self, *_):
        self._closing = True
        await self._notify()
        await self._runner.cleanup()

    # What people do

    async def text(self, chat, text, **more):
        """Somebody sends a text; returns its message id."""
        return await self._message(chat, text=text, **more)

    async def edit(self, chat, message_id, text):
        """Somebody changes a text they sent."""
        when = int(self.now().timestamp())
        message = self._body(chat, message_id) | {"text": text, "edit_date": when}
        await self.update(edited_message=message)

    async def press(self, chat, label, message=None):
        """Somebody presses a button, of the latest message that has it or of one given; returns the press's id."""
        found = message or next(shown for shown in reversed(self.chats[chat]) if label in shown.buttons)
        press_id = str(len(self.answers) + 1)
        self.answers[press_id] = "waiting"
        await self.update(
            callback_query={
                "id": press_id,
                "from": self._user(chat),
                "chat_instance": "1",
                "data": found.buttons[label],
                "message": self._body(chat, found.message_id) | {"from": BOT, "text": found.text},
            }
        )
        return press_id

    async def send(self, chat, **content):
        """Somebody sends something else, such as `voice={…}`."""
        return await self._message(chat, **content)

    async def block(self, chat, *, blocked=True):
        """Somebody blocks the bot, or unblocks it."""
        (self.blocked.add if blocked else self.blocked.discard)(chat)

    async def membership(self, chat, status, kind="private"):
        """The bot is told that its standing in a chat has changed."""
        member = {"user": BOT, "status": status} | ({"until_date": 0} if status == "kicked" else {})
        old = {"user": BOT, "status": "left"}
        await self.update(
            my_chat_member={
                "chat": self._chat(chat, kind),
                "from": self._user(abs(chat)),
                "date": int(self.now().timestamp()),
                "old_chat_member": old,
                "new_chat_member": member,
            }
        )

    async def update(self, update_id=None, **content):
        """Queue an update, or bring it to the webhook; returns its id."""
        if update_id is None:
            update_id, self._next_update = self._next_update, self._next_update + 1
        update = {"update_id": update_id, **content}
        if self.webhook is not None:
            await self.bring(update)
        else:
            self._pending[update_id] = update
            await self._notify()
        return update_id

    async def again(self, *updates):
        """Queue updates as they are, such as one that was confirmed before."""
        for update in updates:
            self._pending[update["update_id"]] = update
        await self._notify()

    async def bring(self, update, secret=None):
        """Bring an update to the webhook, again until it is taken (at most five times); returns the codes."""
        codes = []
        headers = {"X-Telegram-Bot-Api-Secret-Token": self.webhook["secret_token"] if secret is None else secret}
        async with aiohttp.ClientSession() as session:
            while len(codes) < 5 and (not codes or codes[-1] >= 500):
                async with session.post(self.webhook["front"], json=update, headers=headers) as answer:
                    codes.append(answer.status)
        return codes

    # What tests ask

    def shown(self, chat):
        """The texts of a chat as a phone shows them now, oldest first."""
        return [message.text for message in self.chats.get(chat, [])]

    def last(self, chat):
        """The latest message of a chat."""
        return self.chats[chat][-1]

    def sounds(self, chat):
        """The first lines of the messages of a chat that made a sound."""
        return [message.versions[0].split("\n")[0] for message in self.chats.get(chat, []) if not message.silent]

    def sends(self, chat):
        """Every call that put a message into a chat, whether it was answered or not."""
        return [call for call in self.calls if call.method.startswith("send") and int(call.given["chat_id"]) == chat]

    def fail(self, fault, method="sendMessage", when=lambda _: True, times=1):
        """Let the next calls of a method go wrong for which `when` holds."""
        self.faults += [((method, when), fault)] * times

    @property
    def all_confirmed(self):
        """Whether the bot has confirmed every update and nothing else runs."""
        return not self._pending and self.running == 0 and (self.webhook is not None or self._waiting)

    async def until(self, holds, wait_s=WAIT_S):
        """Wait until something holds; it is looked at whenever anything was called."""
        async with asyncio.timeout(wait_s), self._changed:
            await self._changed.wait_for(holds)

    # The interface

    async def _answer(self, request):
        if request.match_info["token"] != TOKEN:
            return _refusal(401, "Unauthorized")
        method = request.match_info["method"]
        call = Call(method, await _given(request))
        if method == "getUpdates":
            return await self._get_updates(call)
        self.calls.append(call)
        self.running += 1
        try:
            fault = self._fault(call)
            if fault is not None and fault.cut != "after":
                if fault.cut:
                    request.transport.close()
                    return web.Response()
                call.code = fault.code
                return _refusal(fault.code, fault.description, retry_after=fault.retry_after)
            try:
                result = getattr(self, f"_{_snake(method)}")(call.given)
            except Refused as refused:
                call.code = refused.code
                return _refusal(refused.code, refused.description, **refused.parameters)
            if fault is not None:
                request.transport.close()
                return web.Response()
            call.code = 200
            return _well(result)
        finally:
            self.running -= 1
            await self._notify()

    async def _get_updates(self, call):
        if self.webhook is not None:
            return _refusal(409, "Conflict: can't use getUpdates method while webhook is active")
        if self._poll is not None and not self._poll.done():
            self._poll.set_result("ended")
        fault = self._fault(call)
        if fault is not None:
            return _refusal(fault.code, fault.description, retry_after=fault.retry_after)
        mine = self._poll = asyncio.get_running_loop().create_future()
        offset = int(call.given.get("offset", 0))
        for number in [number for number in self._pending if number < offset]:
            self.delivered.append(number)
            del self._pending[number]
        self._waiting = not self._pending and int(call.given.get("timeout", 0)) > 0
        await self._notify()
        if int(call.given.get("timeout", 0)):
            async with self._changed:
                await self._changed.wait_for(lambda: self._pending or mine.done() or self._closing)
        self._waiting = False
        if mine.done():
            return _refusal(
                409, "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running"
            )
        given = list(self._pending.values())  # in the order they were queued, which a test may have disturbed
        return _well(given[: int(call.given.get("limit", 100))])

    def _get_me(self, _given):
        return BOT

    def _delete_webhook(self, given):
        assert not given.get("drop_pending_updates")
        self.webhook = None
        return True

    def _set_webhook(self, given):
        assert not given.get("drop_pending_updates")
        self.webhook = dict(given)
        return True

    def _set_my_commands(self, _given):
        return True

    def _send_message(self, given):
        return self._show(given, given["text"], TEXT_MAX)

    def _send_video(self, given):
        return self._show(given, given.get("caption", ""), CAPTION_MAX, film=given["video"])

    def _send_photo(self, given):
        return self._show(given, given.get("caption", ""), CAPTION_MAX, picture=len(given["photo"]))

    def _send_document(self, given):
        if not given["document"][1]:
            raise Refused(400, "Bad Request: file must be non-empty")
        return self._show(given, given.get("caption", ""), CAPTION_MAX, document=given["document"])

    def _edit_message_text(self, given):
        shown = self._find(given)
        text = self._text(given, given["text"], TEXT_MAX)
        if text == shown.text:
            raise Refused(400, "Bad Request: message is not modified: specified new message content is exactly the same")
        shown.text, shown.buttons = text, _buttons(given)
        shown.versions.append(text)
        return self._sent(int(given["chat_id"]), shown)

    def _edit_message_reply_markup(self, given):
        shown = self._find(given)
        if shown.buttons == _buttons(given):
            raise Refused(400, "Bad Request: message is not modified")
        shown.buttons = _buttons(given)
        return self._sent(int(given["chat_id"]), shown)

    def _answer_callback_query(self, given):
        self.answers[given["callback_query_id"]] = given.get("text")
        return True

    def _leave_chat(self, given):
        self.left.append(int(given["chat_id"]))
        return True

    # Within

    def _show(self, given, text, longest, **more):
        chat = int(given["chat_id"])
        if chat in self.blocked:
            raise Refused(403, "Forbidden: bot was blocked by the user")
        visible = self._text(given, text, longest)
        number, self._next_message = self._next_message, self._next_message + 1
        silent = bool(given.get("disable_notification"))
        shown = Shown(number, visible, silent, _buttons(given), versions=[visible], html=text, **more)
        self.chats.setdefault(chat, []).append(shown)
        return self._sent(chat, shown)

    def _text(self, given, text, longest):
        visible = plain(text) if given.get("parse_mode") == "HTML" else text
        if visible is None:
            raise Refused(400, "Bad Request: can't parse entities: unsupported start tag")
        if not visible.strip() and longest != CAPTION_MAX:  # a picture may go without a caption
            raise Refused(400, "Bad Request: message text is empty")
        if len(visible) > longest:
            raise Refused(400, "Bad Request: message is too long")
        return visible

    def _find(self, given):
        for shown in self.chats.get(int(given["chat_id"]), []):
            if shown.message_id == int(given["message_id"]):
                return shown
        raise Refused(400, "Bad Request: message to edit not found")

    def _sent(self, chat, shown):
        return self._body(chat, shown.message_id) | {"from": BOT, "text": shown.text}

    async def _message(self, chat, *, kind="private", **content):
        number, self._next_message = self._next_message, self._next_message + 1
        await self.update(message=self._body(chat, number, kind) | content)
        return number

    def _body(self, chat, number, kind="private"):
        return {
            "message_id": number,
            "date": int(self.now().timestamp()),
            "chat": self._chat(chat, kind),
            "from": self._user(abs(chat)),
        }

    def _chat(self, chat, kind):
        if kind != "private":
            return {"id": chat, "type": kind, "title": "A group"}
        return {"id": chat, "type": "private", "first_name": NAMES.get(chat, f"Trainee {chat}")}

    def _user(self, chat):
        return {"id": chat, "is_bot": False, "first_name": NAMES.get(chat, f"Trainee {chat}")}

    def _fault(self, call):
        for at, ((method, when), fault) in enumerate(self.faults):
            if method == call.method and when(call.given):
                del self.faults[at]
                return fault
        return None

    async def _notify(self):
        async with self._changed:
            self._changed.notify_all()


NAMES = {1: "Rosa", 11: "Ana", 12: "Ben <b>", 13: "Zoë & Co"}


async def _given(request):
    if request.content_type == "application/json":
        return json.loads(await request.read())
    if request.content_type == "multipart/form-data":
        return _gathered(await request.post())
    return dict(request.query) | dict(parse_qsl((await request.read()).decode()))


def _gathered(form):
    """The fields of a form; a file is its bytes, a document its name too. A field may name the part that holds its file."""
    files = {name: (value.filename, value.file.read()) for name, value in form.items() if hasattr(value, "file")}
    given = {name: value for name, value in form.items() if name not in files}
    for name, value in list(given.items()):
        if value.startswith("attach://"):
            files[name] = files.pop(value.removeprefix("attach://"))
    return given | {name: (file if name == "document" else file[1]) for name, file in files.items()}


def _buttons(given):
    markup = given.get("reply_markup") or {}
    markup = json.loads(markup) if isinstance(markup, str) else markup
    found = {}
    for row in markup.get("inline_keyboard", []):
        for button in row:
            assert 1 <= len(button["callback_data"].encode()) <= CALLBACK_BYTES_MAX
            found[button["text"]] = button["callback_data"]
    return found


def _snake(method):
    return re.sub(r"(?<!^)([A-Z])", r"_\1", method).lower()


def _well(result):
    return web.json_response({"ok": True, "result": result})


def _refusal(code, description, **parameters):
    body = {"ok": False, "error_code": code, "description": html.unescape(description)}
    told = {name: value for name, value in parameters.items() if value}
    return web.json_response(body | ({"parameters": told} if told else {}), status=code)
