"""The few words that only the terminal says."""

QUIT_WORDS = frozenset({"quit", "exit", "/quit", "/exit"})
HOW_TO_LEAVE = '(Ctrl-D or "quit" leaves; all is kept.)'
GOODBYE = "All is kept. Start me again to go on."
NOT_KEPT = "Something went wrong in here. That\nmessage is not kept; please send it\nagain."
PICTURE = "As a picture:"
DOCUMENT = "As a file:"
TO = "(to {name})"
