"""The shapes the database has had, one file a revision."""
