"""Measured beside a baseline in the same run. Nothing here is asserted by the tests."""
