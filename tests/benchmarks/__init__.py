"""Measured by hand, never in CI: ratios against a baseline that runs beside."""
