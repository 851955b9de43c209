"""What Alembic runs: the migrations, over the connection and in the transaction of the caller."""

from alembic import context

from bot.store.tables import Row

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Row.metadata,
    render_as_batch=True,  # SQLite cannot change a constraint: the table is rebuilt
)
with context.begin_transaction():
    context.run_migrations()
