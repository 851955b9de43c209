"""Tests of the safety rules."""
