"""Figures checked against their published sources."""
