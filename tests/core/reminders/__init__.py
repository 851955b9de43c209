"""Tests of training days, what is due of them, and what is said about them."""
