"""Plans and coaches, and what the picture beside a message shows."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Add what is new."""
    op.add_column("outbox", sa.Column("shows", sa.String(), nullable=True))
    op.create_table(
        "block",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("days", sa.String(), nullable=False),
        sa.Column("weeks", sa.Integer(), nullable=False),
        sa.Column("easier_weeks", sa.String(), nullable=False),
        sa.Column("starts_on", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_block_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", name=op.f("pk_block")),
    )
    op.create_table(
        "block_circuit",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("circuit_id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["block.trainee_id"], name=op.f("fk_block_circuit_trainee_id")),
        sa.ForeignKeyConstraint(["circuit_id"], ["circuit.id"], name=op.f("fk_block_circuit_circuit_id")),
        sa.PrimaryKeyConstraint("trainee_id", "position", name=op.f("pk_block_circuit")),
    )
    op.create_table(
        "coach",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("newcomers", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["person_id"], ["trainee.id"], name=op.f("fk_coach_person_id")),
        sa.ForeignKeyConstraint(["newcomers"], ["circuit.id"], name=op.f("fk_coach_newcomers")),
        sa.PrimaryKeyConstraint("person_id", name=op.f("pk_coach")),
    )
