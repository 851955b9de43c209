"""Training days as RFC 5545 recurrences, what fell due and became of it, and the zone data last seen."""

import json
from datetime import date, datetime, timedelta

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"

WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
FIRST_DAY = date(2026, 1, 5)  # a Monday, for a trainee to whom nothing has been said


def upgrade() -> None:
    """Add columns and tables, and write the days that are known as recurrence rules."""
    for column in ("reminders_since", "snoozed_until", "heard_at"):
        op.add_column("trainee", sa.Column(column, sa.DateTime(timezone=True), nullable=True))
    trainee = sa.table(
        "trainee",
        sa.column("id", sa.Integer),
        sa.column("reminder", sa.String),
        sa.column("seen_at", sa.DateTime(timezone=True)),
        sa.column("reminders_since", sa.DateTime(timezone=True)),
        sa.column("heard_at", sa.DateTime(timezone=True)),
    )
    connection = op.get_bind()
    connection.execute(trainee.update().values(heard_at=trainee.c.seen_at))
    rows = connection.execute(sa.select(trainee.c.id, trainee.c.reminder, trainee.c.seen_at).where(trainee.c.reminder.is_not(None)))
    for row in rows.all():
        columns = {"reminder": _event(row.reminder, row.seen_at), "reminders_since": row.seen_at}
        connection.execute(trainee.update().where(trainee.c.id == row.id).values(columns))
    op.create_table(
        "unasked",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("due_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("dropped", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(["trainee_id"], ["trainee.id"], name=op.f("fk_unasked_trainee_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_unasked")),
    )
    op.create_index(op.f("ix_unasked_trainee_id"), "unasked", ["trainee_id"])
    op.create_table(
        "zone_seen",
        sa.Column("zone", sa.String(), nullable=False),
        sa.Column("offsets", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("zone", name=op.f("pk_zone_seen")),
    )


def _event(reminder: str, seen_at: datetime | None) -> str:
    """The days and the time that were kept as JSON, as a recurrence."""
    said = json.loads(reminder)
    start = FIRST_DAY if seen_at is None else seen_at.date()
    while WEEK[start.weekday()] not in said["days"]:
        start += timedelta(days=1)
    codes = ",".join(day[:2].upper() for day in WEEK if day in said["days"])
    at = said["at"].replace(":", "")
    return f"BEGIN:VEVENT\nDTSTART:{start:%Y%m%d}T{at}00\nRRULE:FREQ=WEEKLY;BYDAY={codes}\nEND:VEVENT"
