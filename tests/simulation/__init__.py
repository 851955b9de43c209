"""Simulated lives: weeks in seconds, with a hidden truth to be judged by."""
