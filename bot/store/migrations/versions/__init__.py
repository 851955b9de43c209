"""One file a revision, each with the way up from the one before; nothing goes down."""
