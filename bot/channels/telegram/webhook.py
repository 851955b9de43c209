"""Being brought updates: each is answered with 200 when it is committed, so that one that is not comes again."""

from __future__ import annotations

import hmac
import json
import logging
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from aiohttp import web

if TYPE_CHECKING:
    from collections.abc import Callable

    from bot.channels.telegram.desk import Desk
    from bot.settings import WebhookSettings

HEADER = "X-Telegram-Bot-Api-Secret-Token"
BODY_MAX = 1_000_000
OTHER_THAN_JSON = "no update"

_log = logging.getLogger(__name__)


class Webhook:
    """Listens on the machine's own address; TLS is for whoever stands in front. Calls `heard` for every update that was taken."""

    def __init__(self, desk: Desk, settings: WebhookSettings, heard: Callable[[], None] = lambda: None) -> None:
        self._heard = heard
        self._desk = desk
        self._settings = settings
        self._runner: web.AppRunner | None = None
        self.port = settings.port

    async def start(self) -> None:
        """Begin to listen.

        Raises:
            OSError: the address is taken, or none of this machine's.
        """
        app = web.Application(client_max_size=BODY_MAX)
        app.router.add_post(urlsplit(self._settings.url).path or "/", self._receive)
        self._runner = web.AppRunner(app, access_log=None, handle_signals=False)
        await self._runner.setup()
        site = web.TCPSite(self._runner, self._settings.host, self._settings.port)
        await site.start()
        self.port = self._runner.addresses[0][1]

    async def stop(self) -> None:
        """Listen no more; updates at hand are finished."""
        if self._runner is not None:
            await self._runner.cleanup()

    async def _receive(self, request: web.Request) -> web.Response:
        """Take one update in.

        One without the secret is refused; one that is not kept is answered with 500, and the network brings it again.
        """
        given = request.headers.get(HEADER, "").encode()
        if not hmac.compare_digest(given, self._settings.secret.reveal().encode()):
            return web.Response(status=403)
        try:
            raw = json.loads(await request.read())
        except ValueError:
            return web.Response(status=400, text=OTHER_THAN_JSON)
        if not isinstance(raw, dict):
            return web.Response(status=400, text=OTHER_THAN_JSON)
        try:
            await self._desk.take(raw, backlog=False)
        except Exception:  # noqa: BLE001 - whatever it was, it was not kept
            _log.exception("update %s could not be kept", raw.get("update_id"))
            return web.Response(status=500)
        self._heard()
        return web.Response()
