"""The shell: store, outbox, alarms, assistant."""
