"""A real browser without a window, spoken to in its own debugging protocol: what it logs and asks the network for, how a page lies.

Chromium is a program of the system, not a package of Python's (Debian: `apt install chromium`). Where it is not there such tests
are left out with the reason; where `STATIONCALL_CHROMIUM` names one it must work.
"""

from __future__ import annotations

import asyncio
import base64
import contextlib
import os
import shutil
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import aiohttp
import pytest

if TYPE_CHECKING:
    from collections.abc import AsyncIterator
    from pathlib import Path

VARIABLE = "STATIONCALL_CHROMIUM"
PROGRAM = os.environ.get(VARIABLE) or shutil.which("chromium") or shutil.which("chromium-browser")
needs_browser = pytest.mark.skipif(PROGRAM is None, reason=f"no Chromium here: apt install chromium, or name one in {VARIABLE}")
ANSWERS_WITHIN_S = 60.0


@dataclass
class Browser:
    """An open page; `heard` holds every event that the browser told of."""

    socket: aiohttp.ClientWebSocketResponse
    session: str = ""
    heard: list[dict] = field(default_factory=list)
    _asked: int = 0

    async def do(self, method: str, **params) -> dict:
        """Ask for something, and wait for the answer."""
        self._asked += 1
        await self.socket.send_json({"id": self._asked, "method": method, "params": params} | self._to())
        while True:
            told = await self.socket.receive_json(timeout=ANSWERS_WITHIN_S)
            if told.get("id") == self._asked:
                assert "error" not in told, told
                return told["result"]
            self.heard.append(told)

    def _to(self) -> dict:
        return {"sessionId": self.session} if self.session else {}

    async def opens(self, file: Path, width: int, height: int = 800, *, dark: bool = False) -> None:
        """Show a file in a window of so many points, and wait until it has loaded."""
        if not self.session:
            target = (await self.do("Target.createTarget", url="about:blank"))["targetId"]
            self.session = (await self.do("Target.attachToTarget", targetId=target, flatten=True))["sessionId"]
            for part in ("Page", "Runtime", "Log", "Network", "Audits"):
                await self.do(f"{part}.enable")
        mode = [{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}]
        await self.do("Emulation.setEmulatedMedia", features=mode)
        await self.do("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=2, mobile=True)
        self.heard.clear()
        await self.do("Page.navigate", url=file.as_uri())
        while not self.told("Page.loadEventFired"):
            self.heard.append(await self.socket.receive_json(timeout=ANSWERS_WITHIN_S))

    def told(self, method: str) -> list[dict]:
        """What the events of a kind say."""
        return [event["params"] for event in self.heard if event.get("method") == method]

    async def works_out(self, expression: str):
        """The value of an expression on the page."""
        return (await self.do("Runtime.evaluate", expression=expression, returnByValue=True))["result"].get("value")

    async def pdf(self) -> bytes:
        """The page on paper, as it asks for itself."""
        return base64.b64decode((await self.do("Page.printToPDF", preferCSSPageSize=True, printBackground=True))["data"])

    async def png(self) -> bytes:
        """The whole page as it is seen."""
        return base64.b64decode((await self.do("Page.captureScreenshot", captureBeyondViewport=True))["data"])


@contextlib.asynccontextmanager
async def browser(folder: Path) -> AsyncIterator[Browser]:
    """A browser with an empty profile in a folder, which finds no host but this machine's files."""
    process = await asyncio.create_subprocess_exec(
        str(PROGRAM),
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--host-resolver-rules=MAP * ~NOTFOUND",
        f"--user-data-dir={folder}",
        "--remote-debugging-port=0",
        stdout=asyncio.subprocess.DEVNULL,
        stderr=asyncio.subprocess.PIPE,
    )
    try:
        address = await asyncio.wait_for(_address(process), ANSWERS_WITHIN_S)
        drained = asyncio.create_task(process.stderr.read())
        async with aiohttp.ClientSession() as client, client.ws_connect(address, max_msg_size=0) as socket:
            yield Browser(socket)
        drained.cancel()
    finally:
        with contextlib.suppress(ProcessLookupError):
            process.kill()
        await process.wait()


async def _address(process: asyncio.subprocess.Process) -> str:
    """Where it listens, as it says itself."""
    while line := (await process.stderr.readline()).decode(errors="replace"):
        if line.startswith("DevTools listening on "):
            return line.removeprefix("DevTools listening on ").strip()
    raise AssertionError("the browser ended before it said where it listens")
