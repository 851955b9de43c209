"""Everything the assistant can say, as values: one frozen dataclass a message, numbers in fields with their units.

A file a subject, as in `bot.wording`, where the words for them are, one function a message. Exercises are named as a card names
them, not by slug.

- `first_talk`: greeting, unit, rack
- `health`: cautions, health questions, clearance
- `between`: what today holds, progress, help
- `days`: training days, reminders, times away, zones
- `readiness`: warm-up, how one is today, lighter days
- `walk`: cards, the calls of the clock, what is asked for on the way
- `reports`: sets read back, corrected, asked about
- `pain`: warning signs, pain, fear, feeling unwell
- `effort`: too much, and how hard it was
- `summary`: the end of a workout
- `coach_words`: what a trainee reads of their coach
- `account`: joining, wishes, what cannot be read
"""

from core.coach_messages import CoachMessage
from core.messages.account import (
    AccountMessage,
    ClipKept,
    ClipUnnamed,
    CoachHelp,
    CoachWelcome,
    FewerNoted,
    InviteMade,
    MayHaveMissed,
    TextOnly,
    TraineeBack,
    TraineeGone,
    TraineeJoined,
)
from core.messages.between import (
    BetweenMessage,
    HelpShown,
    MannersReturned,
    NoHurry,
    NothingRuns,
    NotUnderstood,
    ProgressLine,
    ProgressShown,
    StationLine,
    TodayInBlock,
    TodayPlan,
    UnitNoted,
    WelcomeBack,
)
from core.messages.coach_words import CoachAnswers, CoachChanged, CoachWordsMessage, CoachWrites, RestGiven
from core.messages.days import (
    ComeBack,
    DayAt,
    DayMoved,
    DaySkipped,
    DaysMessage,
    DaysOffNoted,
    FollowUp,
    HalfAsked,
    NothingToMove,
    PlanOver,
    Reminder,
    ReminderNoted,
    ReminderPartMissing,
    RemindersOff,
    RestDay,
    Snoozed,
    SnoozeTimeAsked,
    ZoneAsked,
    ZoneNoted,
    ZoneUnknown,
)
from core.messages.effort import EffortAsked, EffortMessage, EffortNoted, ReliefTaken, TooMuchSeen
from core.messages.first_talk import (
    FirstTalkMessage,
    Greeting,
    HowItWorks,
    NotNeeded,
    PairsAsked,
    RackAsked,
    RackMoreAsked,
    RackNoted,
    RackNotRead,
    UnitAsked,
)
from core.messages.health import (
    Cautions,
    CautionsNeeded,
    ClearanceNeeded,
    ClearanceNoted,
    ClearanceTooSoon,
    HealthAsked,
    HealthLater,
    HealthMessage,
    HealthOffered,
    HealthOutcome,
    SafetyNews,
)
from core.messages.pain import (
    FearHeard,
    GoodToHear,
    NothingSpared,
    PainAdvice,
    PainGone,
    PainHeard,
    PainKept,
    PainMessage,
    PainStays,
    PainStop,
    UnwellPause,
    UrgentStop,
)
from core.messages.readiness import FeelingNoted, FeverRest, IllAsked, LighterDay, ReadinessMessage, SameMuscles, WarmUp
from core.messages.reports import (
    AlreadyNoted,
    ChoiceLine,
    Corrected,
    EditNotRead,
    FormPoint,
    LeftOpen,
    Lighter,
    NoSuchNumber,
    NotDoneYet,
    Noted,
    NothingToCorrect,
    OtherSideAsked,
    PartMissing,
    ReportMessage,
    SetLine,
    SetNotRead,
    Slower,
    StillMissing,
    TooManySets,
    Undone,
    WhichOne,
)
from core.messages.summary import BestSet, NextChange, Summary, SummaryLine
from core.messages.walk import (
    AlreadyGoing,
    BackNow,
    Card,
    Down,
    FeltRight,
    FormShown,
    FormUnknown,
    GetReady,
    Go,
    HalfWay,
    LoadChanged,
    NoOtherLoad,
    NoSwap,
    PausedNow,
    PlatePlan,
    PlateStretch,
    PutDown,
    SecondsLeft,
    Skipped,
    StillThere,
    Swapped,
    SwitchSides,
    TimeTold,
    WalkMessage,
    WhereWeWere,
)
from core.own_messages import OwnMessage
from core.review_messages import ReviewMessage

Message = (
    FirstTalkMessage
    | BetweenMessage
    | DaysMessage
    | HealthMessage
    | ReadinessMessage
    | PainMessage
    | EffortMessage
    | WalkMessage
    | ReportMessage
    | Summary
    | CoachWordsMessage
    | AccountMessage
    | OwnMessage
    | CoachMessage
    | ReviewMessage
)

__all__ = [
    "AlreadyGoing", "AlreadyNoted", "BackNow", "BestSet", "Card", "Cautions", "CautionsNeeded", "ChoiceLine", "ClearanceNeeded",
    "ClearanceNoted", "ClearanceTooSoon", "ClipKept", "ClipUnnamed", "CoachAnswers", "CoachChanged", "CoachHelp",
    "CoachWelcome", "CoachWrites", "ComeBack", "Corrected", "DayAt", "DayMoved", "DaySkipped", "DaysOffNoted", "Down",
    "EditNotRead", "EffortAsked", "EffortNoted", "FearHeard", "FeelingNoted", "FeltRight", "FeverRest", "FewerNoted",
    "FollowUp", "FormPoint", "FormShown", "FormUnknown", "GetReady", "Go", "GoodToHear", "Greeting", "HalfAsked", "HalfWay",
    "HealthAsked", "HealthLater", "HealthOffered", "HealthOutcome", "HelpShown", "HowItWorks", "IllAsked", "InviteMade",
    "LeftOpen", "Lighter", "LighterDay", "LoadChanged", "MannersReturned", "MayHaveMissed", "Message",
    "NextChange", "NoHurry", "NoOtherLoad", "NoSuchNumber",
    "NoSwap", "NotDoneYet", "NotNeeded", "NotUnderstood", "Noted", "NothingRuns", "NothingSpared", "NothingToCorrect",
    "NothingToMove", "OtherSideAsked",
    "PainAdvice", "PainGone", "PainHeard", "PainKept", "PainStays", "PainStop", "PairsAsked", "PartMissing", "PausedNow",
    "PlanOver", "PlatePlan", "PlateStretch", "ProgressLine", "ProgressShown", "PutDown", "RackAsked", "RackMoreAsked",
    "RackNotRead", "RackNoted", "ReliefTaken", "Reminder", "ReminderNoted", "ReminderPartMissing", "RemindersOff", "RestDay",
    "RestGiven", "SafetyNews", "SameMuscles", "SecondsLeft", "SetLine", "SetNotRead", "Skipped", "Slower", "SnoozeTimeAsked",
    "Snoozed", "StationLine", "StillMissing", "StillThere", "Summary", "SummaryLine", "Swapped", "SwitchSides", "TextOnly",
    "TimeTold", "TodayInBlock", "TodayPlan", "TooManySets", "TooMuchSeen", "TraineeBack", "TraineeGone", "TraineeJoined",
    "Undone", "UnitAsked", "UnitNoted", "UnwellPause", "UrgentStop", "WarmUp", "WelcomeBack", "WhereWeWere", "WhichOne",
    "ZoneAsked", "ZoneNoted", "ZoneUnknown",
]  # fmt: skip
