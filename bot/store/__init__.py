"""The store: everything that is kept, and the one transaction a message.

`tables` says what a row is, `values` maps rows to core values with checks both ways, `ledger` says what an entry makes of the
diary, `writing` puts entries into rows, `store` runs the transaction, `outgoing` keeps the messages on their way, `engine` opens
the database and `revision` brings it to the newest shape (`upgrade` and `migrations` are the only door to Alembic).
"""
