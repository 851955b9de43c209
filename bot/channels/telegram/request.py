"""Carrying the library's calls over aiohttp, through the library's own interface for that.

The library's default client goes through its whole pool of connections for every call; with many calls in flight that costs more
than anything else here. No error says where it was going: the address holds the token.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, ClassVar, cast

import aiohttp
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest

if TYPE_CHECKING:
    from telegram._utils.types import ODVInput
    from telegram.request import RequestData

CONNECT_S = 10.0
ANSWER_S = 20.0  # an upload of a picture included
AT_ONCE = 100  # calls in flight: far more end in the network holding all of them up
JSON = {"Content-Type": "application/json"}
NEEDLESS = ("Accept", "Accept-Encoding", "User-Agent")  # headers that nobody reads there


class NotSent(NetworkError):
    """No connection was made: the network has not seen the call."""


@dataclass(frozen=True)
class _Plain:
    """What goes along with a call, as the network has it: in place of the library's object with the same two fields."""

    parameters: dict[str, Any]
    contains_files: ClassVar[bool] = False


class Carrier(BaseRequest):
    """The library's calls over one aiohttp session; times out after `answer_s` seconds unless a call says otherwise."""

    def __init__(self, answer_s: float = ANSWER_S) -> None:
        self._answer_s = answer_s
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float:
        """Seconds to wait for an answer."""
        return self._answer_s

    async def initialize(self) -> None:
        """Open the session, in the running event loop."""
        if self._session is None:
            connector = aiohttp.TCPConnector(limit=AT_ONCE, keepalive_timeout=60.0)
            self._session = aiohttp.ClientSession(
                connector=connector, cookie_jar=aiohttp.DummyCookieJar(), skip_auto_headers=NEEDLESS
            )

    async def shutdown(self) -> None:
        """Close the session."""
        if self._session is not None:
            await self._session.close()
            self._session = None

    async def call(self, url: str, given: dict[str, Any]) -> Any:  # noqa: ANN401 - as the network has it
        """A call with plain values; what it is answered with, as plain values.

        Raises:
            telegram.error.TelegramError: what the library makes of an answer that is no success; see also `do_request`.
        """
        return await self.post(url, cast("RequestData", _Plain(given)))

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: ODVInput[float] = BaseRequest.DEFAULT_NONE,
        write_timeout: ODVInput[float] = BaseRequest.DEFAULT_NONE,
        connect_timeout: ODVInput[float] = BaseRequest.DEFAULT_NONE,
        pool_timeout: ODVInput[float] = BaseRequest.DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """One call; the answer's code and body.

        Raises:
            NotSent: no connection could be made.
            telegram.error.TimedOut: no answer in time; the call may have been carried out.
            telegram.error.NetworkError: the connection broke; the call may have been carried out.
        """
        del write_timeout, connect_timeout, pool_timeout  # one time for the whole call is enough
        if self._session is None:
            await self.initialize()
        assert self._session is not None  # noqa: S101 - just opened
        wait_s = read_timeout if isinstance(read_timeout, int | float) else self._answer_s
        timeout = aiohttp.ClientTimeout(total=wait_s + CONNECT_S, sock_connect=CONNECT_S, sock_read=wait_s)
        body, headers = _body(request_data)
        try:
            async with self._session.request(method, url, data=body, headers=headers, timeout=timeout) as answer:
                return answer.status, await answer.read()
        except (aiohttp.ClientConnectorError, aiohttp.ConnectionTimeoutError) as error:
            raise NotSent(type(error).__name__) from None
        except TimeoutError:
            raise TimedOut from None
        except aiohttp.ClientError as error:
            raise NetworkError(type(error).__name__) from None


def _body(data: RequestData | None) -> tuple[bytes | aiohttp.FormData | None, dict[str, str] | None]:
    if data is None:
        return None, None
    if not data.contains_files:
        return json.dumps(data.parameters).encode(), JSON
    form = aiohttp.FormData()
    for name, value in data.json_parameters.items():
        form.add_field(name, value)
    for name, (filename, content, kind) in data.multipart_data.items():
        form.add_field(name, content, filename=filename, content_type=kind)
    return form, None
