"""The same examples on every machine and at any speed: no test draws at random, and none is measured by the clock."""

from hypothesis import settings

settings.register_profile("even", derandomize=True, deadline=None)
settings.load_profile("even")
