"""The tables, as SQLModel classes without behaviour. What is valid is checked in `values`; a table class checks nothing.

Instants are aware UTC. Decimals are kept as text, exactly as they were said. Enumerations are kept as their words.
"""

from datetime import date, datetime

from sqlalchemy import ForeignKeyConstraint, Index, MetaData, Table, UniqueConstraint
from sqlmodel import Field, SQLModel


class Row(SQLModel):
    """What all tables share: constraints with names, so that a migration can change them on every database."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        },
    )


class CircuitRow(Row, table=True):
    """A circuit; `body` is its JSON."""

    __tablename__ = "circuit"
    id: int | None = Field(default=None, primary_key=True)
    name: str = Field(unique=True)
    body: str


class TraineeRow(Row, table=True):
    """Who trains, and where the conversation is.

    `state` and `health` are JSON, `reminder` an RFC 5545 recurrence (`core.recurrence`) that holds from `reminders_since` on.
    `snoozed_until` is when a reminder that was put off comes again, `heard_at` when the trainee last wrote; `wake_at` is when the
    clock must look again; `seen_at` is the instant of the latest step; `revision` counts the steps, so that what is remembered in
    memory is known to be what is stored.

    `wishes` is JSON of the coach's for this trainee; `paused_at` and `paused_until` are a rest that the coach gives, `ended_at` is
    when the coach took them off the roster, `forgotten_at` when they had everything erased: the row goes with the last word.
    """

    __tablename__ = "trainee"
    id: int | None = Field(default=None, primary_key=True)
    name: str = Field(unique=True)
    zone: str
    unit: str
    rack_said: bool
    cautions_accepted_at: datetime | None = None
    reminder: str | None = None
    health: str | None = None
    reminders_since: datetime | None = None
    snoozed_until: datetime | None = None
    heard_at: datetime | None = None
    wishes: str | None = None
    paused_at: datetime | None = None
    paused_until: date | None = None
    ended_at: datetime | None = None
    forgotten_at: datetime | None = None
    circuit_id: int = Field(foreign_key="circuit.id")
    state: str
    wake_at: datetime | None = Field(default=None, index=True)
    seen_at: datetime | None = None
    revision: int


class BlockRow(Row, table=True):
    """A trainee's plan, see `core.trainee.Block`; `days` and `easier_weeks` are JSON, its circuits are rows of their own."""

    __tablename__ = "block"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    days: str
    weeks: int
    easier_weeks: str
    starts_on: date


class BlockCircuitRow(Row, table=True):
    """A circuit of a trainee's plan, in the order in which they take turns."""

    __tablename__ = "block_circuit"
    trainee_id: int = Field(primary_key=True, foreign_key="block.trainee_id")
    position: int = Field(primary_key=True)
    circuit_id: int = Field(foreign_key="circuit.id")


class CoachRow(Row, table=True):
    """A coach: somebody with a trainee's row, for the chat, who coaches instead of training.

    `state` is JSON, of a coach's talk; `newcomers` is the circuit that new trainees start with. `review_day` and `review_clock` are
    when the week is told, `reviewed_at` when it last was; `wake_at` is when the coach must be looked at again.
    """

    __tablename__ = "coach"
    person_id: int = Field(primary_key=True, foreign_key="trainee.id")
    state: str
    newcomers: int = Field(foreign_key="circuit.id")
    review_day: str | None = None
    review_clock: str | None = None
    reviewed_at: datetime | None = None
    wake_at: datetime | None = None


class ComingRow(Row, table=True):
    """The circuit that takes the place of what is on for a trainee, from a day on."""

    __tablename__ = "coming"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    circuit_id: int = Field(foreign_key="circuit.id")
    from_on: date


class RackItemRow(Row, table=True):
    """Equal things on a rack; `amount` and `unit` are both None when the load was not said."""

    __tablename__ = "rack_item"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    position: int = Field(primary_key=True)
    kind: str
    amount: str | None = None
    unit: str | None = None
    pieces: int


class WorkoutRow(Row, table=True):
    """A workout; `body` is the circuit's JSON as it was that day."""

    __tablename__ = "workout"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    number: int = Field(primary_key=True)
    circuit: str
    body: str
    started_at: datetime
    ended_at: datetime | None = None
    ending: str | None = None
    work_s: int
    effort: str | None = None
    paused_s: int = 0


class SetRow(Row, table=True):
    """A set record. Rows are only ever added; `replaces` is the number of the record that this one corrects."""

    __tablename__ = "set_record"
    __table_args__ = (
        ForeignKeyConstraint(["trainee_id", "workout"], ["workout.trainee_id", "workout.number"]),
        ForeignKeyConstraint(["trainee_id", "replaces"], ["set_record.trainee_id", "set_record.number"]),
        UniqueConstraint("trainee_id", "replaces"),
    )
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    number: int = Field(primary_key=True)
    workout: int
    at: datetime
    circuit: str
    round: int
    station: int
    exercise: str
    side: str | None = None
    reps: int | None = None
    amount: str | None = None
    unit: str | None = None
    reserve: str | None = None
    rpe: str | None = None
    seconds: int | None = None
    work_s: int | None = None
    rep_s: float | None = None
    replaces: int | None = None


class VoidRow(Row, table=True):
    """The record of this number was undone. Rows are only ever added."""

    __tablename__ = "set_void"
    __table_args__ = (ForeignKeyConstraint(["trainee_id", "number"], ["set_record.trainee_id", "set_record.number"]),)
    trainee_id: int = Field(primary_key=True)
    number: int = Field(primary_key=True)
    at: datetime


class PainRow(Row, table=True):
    """Pain, as reported."""

    __tablename__ = "pain_record"
    id: int | None = Field(default=None, primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id", index=True)
    at: datetime
    place: str | None = None
    side: str | None = None
    urgent: bool
    exercise: str | None = None
    quality: str | None = None
    known: bool | None = None
    eased_at: datetime | None = None


class SafetyNoteRow(Row, table=True):
    """A fact about safety. Rows are only ever added; `told_at` is put in later, when the coach was told of it."""

    __tablename__ = "safety_note"
    id: int | None = Field(default=None, primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id", index=True)
    at: datetime
    kind: str
    value: str
    told_at: datetime | None = None


class UnaskedRow(Row, table=True):
    """Something that fell due between workouts and was seen to; `dropped` says why it was not said. Rows are only ever added."""

    __tablename__ = "unasked"
    id: int | None = Field(default=None, primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id", index=True)
    kind: str
    day: date
    due_at: datetime
    at: datetime
    dropped: str | None = None


class CoachWordRow(Row, table=True):
    """Words of a coach's on their way to a trainee, see `core.diary.CoachWord`."""

    __tablename__ = "coach_word"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    number: int = Field(primary_key=True)
    at: datetime
    kind: str
    text: str
    about: int | None = None
    told_at: datetime | None = None
    taken_back_at: datetime | None = None


class QuestionRow(Row, table=True):
    """Something that a trainee asked the coach, see `core.diary.Question`; `told_at` is when a coach was told of it."""

    __tablename__ = "question"
    trainee_id: int = Field(primary_key=True, foreign_key="trainee.id")
    number: int = Field(primary_key=True)
    at: datetime
    text: str
    circuit: str | None = None
    round: int | None = None
    station: int | None = None
    exercise: str | None = None
    told_at: datetime | None = None
    answered_at: datetime | None = None


class TallyRow(Row, table=True):
    """A count that stays when what was counted is erased: how many people had themselves forgotten."""

    __tablename__ = "tally"
    name: str = Field(primary_key=True)
    total: int


class ZoneSeenRow(Row, table=True):
    """What the clocks of a zone will do, as the zone data of the last start had it."""

    __tablename__ = "zone_seen"
    zone: str = Field(primary_key=True)
    offsets: str


class InboxRow(Row, table=True):
    """A message that has been handled, by its channel and the channel's id for it."""

    __tablename__ = "inbox"
    channel: str = Field(primary_key=True)
    external_id: str = Field(primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id")
    at: datetime


class AccountRow(Row, table=True):
    """Who writes under an address of a messaging network; `coach` is true for a coach, who has a trainee's row too.

    `fewer` is the wish for fewer messages; `gone_at` is set while the network says that nothing can be sent there.
    """

    __tablename__ = "account"
    channel: str = Field(primary_key=True)
    address: str = Field(primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id", unique=True)
    coach: bool
    fewer: bool
    joined_at: datetime
    gone_at: datetime | None = None


class InviteRow(Row, table=True):
    """A code that lets one person in, once, until it expires; `fingerprint` is its SHA-256, the code itself is not kept.

    `coach` is true for the code that makes a coach; `invited_by` is the coach who made it.
    """

    __tablename__ = "invite"
    fingerprint: str = Field(primary_key=True)
    coach: bool
    name: str | None = None
    invited_by: int | None = Field(default=None, foreign_key="trainee.id")
    made_at: datetime
    expires_at: datetime
    used_by: int | None = Field(default=None, foreign_key="trainee.id")


class StrangerRow(Row, table=True):
    """Somebody without an invite, who has been told so."""

    __tablename__ = "stranger"
    channel: str = Field(primary_key=True)
    address: str = Field(primary_key=True)
    at: datetime


class ClipRow(Row, table=True):
    """The coach's own film of an exercise, by the messaging network's id for it."""

    __tablename__ = "clip"
    channel: str = Field(primary_key=True)
    exercise: str = Field(primary_key=True)
    file_id: str
    at: datetime


class ParkedRow(Row, table=True):
    """What came in and could not be handled, as it came: `body` is its JSON, `reason` the type of the error."""

    __tablename__ = "parked"
    id: int | None = Field(default=None, primary_key=True)
    channel: str
    body: str
    reason: str
    at: datetime


class OutboxRow(Row, table=True):
    """A message on its way: `status` is waiting, sending, sent or dropped; `reason` says why it was dropped.

    `exercise` is the slug of what a card shows; `moment` says where the conversation was, so that a quick reply pressed later can
    be told from one that still fits; `shows` is the JSON of what the picture beside it holds.
    """

    __tablename__ = "outbox"
    __table_args__ = (Index(None, "trainee_id", "status", "id"),)
    id: int | None = Field(default=None, primary_key=True)
    trainee_id: int = Field(foreign_key="trainee.id")
    created_at: datetime
    kind: str
    text: str
    replies: str
    shows: str | None = None
    expires_at: datetime | None = None
    status: str
    reason: str | None = None
    sent_at: datetime | None = None
    exercise: str | None = None
    moment: str | None = None


def _table(name: str) -> Table:
    return Row.metadata.tables[name]


CIRCUIT = _table("circuit")
TRAINEE = _table("trainee")
BLOCK = _table("block")
BLOCK_CIRCUIT = _table("block_circuit")
COACH = _table("coach")
COMING = _table("coming")
RACK_ITEM = _table("rack_item")
WORKOUT = _table("workout")
SET_RECORD = _table("set_record")
SET_VOID = _table("set_void")
PAIN_RECORD = _table("pain_record")
SAFETY_NOTE = _table("safety_note")
UNASKED = _table("unasked")
COACH_WORD = _table("coach_word")
QUESTION = _table("question")
TALLY = _table("tally")
ZONE_SEEN = _table("zone_seen")
INBOX = _table("inbox")
OUTBOX = _table("outbox")
ACCOUNT = _table("account")
INVITE = _table("invite")
STRANGER = _table("stranger")
CLIP = _table("clip")
PARKED = _table("parked")
