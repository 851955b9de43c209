"""The shell around the core: channels, store, clock, wording."""
