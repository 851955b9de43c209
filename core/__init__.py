"""What Stationcall knows and decides, as plain functions over frozen values.

Read in this order:

- vocabulary: `errors`, `units`, `tempo`, `exercise`, `catalogue`, `circuit`, `rack`, `recurrence`, `health`, `wishes`, `changed`,
  `trainee`, `diary`, `reasons`, `deeds`, `messages`, `coach_messages`, `own_messages`, `review_messages`, `pictures`, `sheet`,
  `records_file`, `review_facts`
- rules: `reading`, `strength`, `suggestion`, `rack_plan`, `timeline`, `circuit_file`, `circuit_text`, `circuit_warnings`,
  `body_effect`, `safety`, `progress`, `review`
- decisions: `session`, `reminders`, `agenda`, `plan`, `coach`

Nothing here reads a clock, a file, a socket or a database; time comes in as an argument.
"""
