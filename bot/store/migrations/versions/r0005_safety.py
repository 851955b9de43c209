"""Health answers, pain described and gone, the effort of a workout, notes on safety."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Add the columns and the table."""
    op.add_column("trainee", sa.Column("health", sa.String(), nullable=True))
    op.add_column("workout", sa.Column("effort", sa.String(), nullable=True))
    op.add_column("pain_record", sa.Column("quality", sa.String(), nullable=True))
    op.add_column("pain_record", sa.Column("known", sa.Boolean(), nullable=True))
    op.add_column("pain_record", sa.Column("eased_at", sa.DateTime(timezone=True), nullable=True))
    op.create_table(
        "safety_note",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("value", sa.String(), nullable=False),
        sa.Column("told_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_safety_note_trainee_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_safety_note")),
    )
    op.create_index(op.f("ix_safety_note_trainee_id"), "safety_note", ["trainee_id"])
