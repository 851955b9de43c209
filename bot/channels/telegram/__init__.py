"""A messaging account, through python-telegram-bot: the only door to it, and to aiohttp.

`request` carries the library's calls, `network` is what is called there, `incoming` what comes in as values of our own, `desk` who
may say what, `polling` and `webhook` the two ways in, `sending` the way out, `keyboard` and `face` what is for thumbs and eyes.
"""

import os

os.environ.setdefault("PTB_TIMEDELTA", "1")  # the library's spans of time as such; without it each wait is a warning
