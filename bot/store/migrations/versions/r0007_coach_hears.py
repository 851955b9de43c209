"""What a coach wishes for one trainee, what comes, words and questions between them, the coach's week, and a tally."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"


def upgrade() -> None:
    """Add what is new; nobody is paused, ended or forgotten yet."""
    op.add_column("trainee", sa.Column("wishes", sa.String(), nullable=True))
    op.add_column("trainee", sa.Column("paused_at", sa.DateTime(timezone=True), nullable=True))
    op.add_column("trainee", sa.Column("paused_until", sa.Date(), nullable=True))
    op.add_column("trainee", sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True))
    op.add_column("trainee", sa.Column("forgotten_at", sa.DateTime(timezone=True), nullable=True))
    op.add_column("coach", sa.Column("review_day", sa.String(), nullable=True))
    op.add_column("coach", sa.Column("review_clock", sa.String(), nullable=True))
    op.add_column("coach", sa.Column("reviewed_at", sa.DateTime(timezone=True), nullable=True))
    op.add_column("coach", sa.Column("wake_at", sa.DateTime(timezone=True), nullable=True))
    op.create_table(
        "coming",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("circuit_id", sa.Integer(), nullable=False),
        sa.Column("from_on", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_coming_trainee_id")),
        sa.ForeignKeyConstraint(["circuit_id"], ["circuit.id"], name=op.f("fk_coming_circuit_id")),
        sa.PrimaryKeyConstraint("trainee_id", name=op.f("pk_coming")),
    )
    op.create_table(
        "coach_word",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("about", sa.Integer(), nullable=True),
        sa.Column("told_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("taken_back_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_coach_word_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", "number", name=op.f("pk_coach_word")),
    )
    op.create_table(
        "question",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("circuit", sa.String(), nullable=True),
        sa.Column("round", sa.Integer(), nullable=True),
        sa.Column("station", sa.Integer(), nullable=True),
        sa.Column("exercise", sa.String(), nullable=True),
        sa.Column("told_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("answered_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_question_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", "number", name=op.f("pk_question")),
    )
    op.create_table(
        "tally",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("total", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_tally")),
    )
