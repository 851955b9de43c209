"""The next load and tempo, and the guards around them."""
