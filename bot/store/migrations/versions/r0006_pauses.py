"""Seconds of a workout with the clock stopped."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"


def upgrade() -> None:
    """Add the column; of workouts before it no pause is known."""
    op.add_column("workout", sa.Column("paused_s", sa.Integer(), nullable=False, server_default="0"))
