"""Weeks of trainees, a messenger and a program that dies: `python -m tests.simulation.weeks --seed N --weeks W`."""
