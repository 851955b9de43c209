"""Accounts of a messaging network: who they are, invites, strangers, clips, what could not be handled."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Add the tables, and to the outbox what a card shows and where the conversation was."""
    op.create_table(
        "account",
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("coach", sa.Boolean(), nullable=False),
        sa.Column("fewer", sa.Boolean(), nullable=False),
        sa.Column("joined_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("gone_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_account_trainee_id")),
        sa.PrimaryKeyConstraint("channel", "address", name=op.f("pk_account")),
        sa.UniqueConstraint("trainee_id", name=op.f("uq_account_trainee_id")),
    )
    op.create_table(
        "invite",
        sa.Column("fingerprint", sa.String(), nullable=False),
        sa.Column("coach", sa.Boolean(), nullable=False),
        sa.Column("name", sa.String(), nullable=True),
        sa.Column("invited_by", sa.Integer(), nullable=True),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("expires_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("used_by", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["invited_by"], ["trainee.id"], name=op.f("fk_invite_invited_by")),
        sa.ForeignKeyConstraint(["used_by"], ["trainee.id"], name=op.f("fk_invite_used_by")),
        sa.PrimaryKeyConstraint("fingerprint", name=op.f("pk_invite")),
    )
    op.create_table(
        "stranger",
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("channel", "address", name=op.f("pk_stranger")),
    )
    op.create_table(
        "clip",
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("exercise", sa.String(), nullable=False),
        sa.Column("file_id", sa.String(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("channel", "exercise", name=op.f("pk_clip")),
    )
    op.create_table(
        "parked",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("body", sa.String(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_parked")),
    )
    op.add_column("outbox", sa.Column("exercise", sa.String(), nullable=True))
    op.add_column("outbox", sa.Column("moment", sa.String(), nullable=True))
