"""What the picture beside a message shows."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0001"


def upgrade() -> None:
    """Add what is new."""
    op.add_column("outbox", sa.Column("shows", sa.String(), nullable=True))
