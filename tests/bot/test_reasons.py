"""The sentence for every reason: plain, one line, with its numbers."""

import typing
from decimal import Decimal

import pytest

from bot.wording.reasons import why
from core import reasons
from core.units import Unit

LAST = reasons.LastSet(Decimal(16), Unit.KG, 13, 13, 3, 2, today=False, rep_s=4.0)
SHORT = reasons.LastSet(Decimal(16), Unit.KG, 9, 13, None, 0, today=True, rep_s=4.0)
FULL = reasons.LastSet(Decimal(16), Unit.KG, 13, 13, None, 1, today=False, rep_s=5.5)

SENTENCES = {
    reasons.NothingToHold(): "No weights here yet: do the version without.",
    reasons.BodyOnly(): "Your own weight is the load today.",
    reasons.BodyOnly(12, 2.0): "Your own weight is the load: 12 and 2 left last time.",
    reasons.StartLight(Decimal(8), Unit.KG, known=True): "First time: 8 kg is a careful start.",
    reasons.StartLight(Decimal(8), Unit.KG, known=False): "New to me, this one: starting light with 8 kg.",
    reasons.StartFromOthers(Decimal("17.5"), Unit.LB, 3): "First time: 17.5 lb, going by your 3 other stations.",
    reasons.StepUp(LAST, Decimal(18)): "13 and 3 left, twice: up to 18 kg.",
    reasons.StepDown(SHORT, Decimal(12)): "9 of 13 just now: down to 12 kg so the time is filled.",
    reasons.Stay(LAST, Decimal(20)): "13 and 3 left, twice: 16 kg again before 20 kg.",
    reasons.Stay(FULL, None): "All 13 last time: 16 kg again.",
    reasons.OtherTempo(LAST, Decimal(20), Unit.KG, 4.0, 5.5): "13 and 3 left, twice: 20 kg with slower reps, 5.5 s each.",
    reasons.OtherTempo(LAST, Decimal(16), Unit.KG, 4.0, 3.0): "13 and 3 left, twice: 16 kg with quicker reps, 3 s each.",
    reasons.OtherTempo(FULL, Decimal(16), Unit.KG, 4.0, 5.5): "All 13 last time: 16 kg again, still 5.5 s a rep.",
    reasons.OtherTempo(None, Decimal(20), Unit.KG, 4.0, 3.0): "20 kg at 3 s a rep, not 4.",
    reasons.HeaviestIsLight(Decimal(24), Unit.KG, 7): "24 kg is your heaviest, and about 7 will be left.",
    reasons.LightestIsHeavy(Decimal(8), Unit.KG, 6): "8 kg is your lightest: about 6 to expect, stop when form goes.",
    reasons.LightestIsHeavy(Decimal(40), Unit.KG, 0): "40 kg is your lightest, and too heavy here yet: do the version without.",
    reasons.AfterBreak(Decimal(12), Unit.KG, 40): "40 days off: 12 kg to come back gently.",
    reasons.Tired(FULL, Decimal(14), 3): "Round 3, and rounds tire: 14 kg, so the time is filled.",
    reasons.TodaysForm(Decimal(14), Unit.KG, -4): "Today runs about 4 % under your usual: 14 kg.",
    reasons.TodaysForm(Decimal(18), Unit.KG, 3): "Today runs about 3 % over your usual: 18 kg.",
}


@pytest.mark.parametrize(("reason", "sentence"), SENTENCES.items(), ids=lambda value: type(value).__name__)
def test_a_reason_reads_as_a_coach_would_say_it(reason, sentence):
    """One sentence, with the numbers the choice rests on."""
    assert why(reason) == sentence


def test_every_reason_has_its_sentence():
    """No reason is left without words."""
    assert {type(reason) for reason in SENTENCES} == set(typing.get_args(reasons.Reason))
