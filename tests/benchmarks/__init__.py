"""Speed, run by hand: a ratio against something simple beside it, never a test that fails on a slow machine."""
