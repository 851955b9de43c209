"""What Stationcall knows and decides, as plain functions over frozen values.

Read in this order:

- vocabulary: `errors`, `units`, `tempo`, `exercise`, `catalogue`, `circuit`, `rack`, `trainee`, `diary`, `messages`
- rules: `strength`, `suggestion`, `timeline`, `safety`, `reading`, `circuit_text`
- decisions: `session`, `agenda`, `reminders`, `review`

Nothing here reads a clock, a file, a socket or a database; time comes in as an argument.
"""
