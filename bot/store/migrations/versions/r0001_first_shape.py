"""The first shape: circuits, trainees and their racks, the diary, the inbox and the outbox."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make every table."""
    op.create_table(
        "circuit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("body", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_circuit")),
        sa.UniqueConstraint("name", name=op.f("uq_circuit_name")),
    )
    op.create_table(
        "trainee",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("zone", sa.String(), nullable=False),
        sa.Column("unit", sa.String(), nullable=False),
        sa.Column("rack_said", sa.Boolean(), nullable=False),
        sa.Column("cautions_accepted_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("reminder", sa.String(), nullable=True),
        sa.Column("circuit_id", sa.Integer(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("wake_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("seen_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["circuit_id"], ["circuit.id"], name=op.f("fk_trainee_circuit_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_trainee")),
        sa.UniqueConstraint("name", name=op.f("uq_trainee_name")),
    )
    op.create_index(op.f("ix_trainee_wake_at"), "trainee", ["wake_at"])

    op.create_table(
        "inbox",
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("external_id", sa.String(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_inbox_trainee_id")),
        sa.PrimaryKeyConstraint("channel", "external_id", name=op.f("pk_inbox")),
    )
    op.create_table(
        "outbox",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("replies", sa.String(), nullable=False),
        sa.Column("expires_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("status", sa.String(), nullable=False),
        sa.Column("reason", sa.String(), nullable=True),
        sa.Column("sent_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_outbox_trainee_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outbox")),
    )
    op.create_index(op.f("ix_outbox_trainee_id_status_id"), "outbox", ["trainee_id", "status", "id"])

    op.create_table(
        "pain_record",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("place", sa.String(), nullable=True),
        sa.Column("side", sa.String(), nullable=True),
        sa.Column("urgent", sa.Boolean(), nullable=False),
        sa.Column("exercise", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_pain_record_trainee_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_pain_record")),
    )
    op.create_index(op.f("ix_pain_record_trainee_id"), "pain_record", ["trainee_id"])

    op.create_table(
        "rack_item",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("amount", sa.String(), nullable=True),
        sa.Column("unit", sa.String(), nullable=True),
        sa.Column("pieces", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_rack_item_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", "position", name=op.f("pk_rack_item")),
    )
    op.create_table(
        "workout",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("circuit", sa.String(), nullable=False),
        sa.Column("body", sa.String(), nullable=False),
        sa.Column("started_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("ending", sa.String(), nullable=True),
        sa.Column("work_s", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_workout_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", "number", name=op.f("pk_workout")),
    )
    op.create_table(
        "set_record",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("workout", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("circuit", sa.String(), nullable=False),
        sa.Column("round", sa.Integer(), nullable=False),
        sa.Column("station", sa.Integer(), nullable=False),
        sa.Column("exercise", sa.String(), nullable=False),
        sa.Column("side", sa.String(), nullable=True),
        sa.Column("reps", sa.Integer(), nullable=True),
        sa.Column("amount", sa.String(), nullable=True),
        sa.Column("unit", sa.String(), nullable=True),
        sa.Column("reserve", sa.String(), nullable=True),
        sa.Column("rpe", sa.String(), nullable=True),
        sa.Column("seconds", sa.Integer(), nullable=True),
        sa.Column("work_s", sa.Integer(), nullable=True),
        sa.Column("rep_s", sa.Float(), nullable=True),
        sa.Column("replaces", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["trainee_id", "replaces"],
            ["set_record.trainee_id", "set_record.number"],
            name=op.f("fk_set_record_trainee_id_replaces"),
        ),
        sa.ForeignKeyConstraint(
            ["trainee_id", "workout"], ["workout.trainee_id", "workout.number"], name=op.f("fk_set_record_trainee_id_workout")
        ),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_set_record_trainee_id")),
        sa.PrimaryKeyConstraint("trainee_id", "number", name=op.f("pk_set_record")),
        sa.UniqueConstraint("trainee_id", "replaces", name=op.f("uq_set_record_trainee_id_replaces")),
    )
    op.create_table(
        "set_void",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["trainee_id", "number"], ["set_record.trainee_id", "set_record.number"], name=op.f("fk_set_void_trainee_id_number")
        ),
        sa.PrimaryKeyConstraint("trainee_id", "number", name=op.f("pk_set_void")),
    )
