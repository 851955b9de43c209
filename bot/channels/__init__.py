"""Where people are talked to. Channels are equal, and none decides anything."""
