"""A month of twelve invented people and their coach, lived by the real program on a simulated clock: `stationcall demo`."""
