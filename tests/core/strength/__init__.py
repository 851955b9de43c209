"""The belief about strength and what goes into it."""
