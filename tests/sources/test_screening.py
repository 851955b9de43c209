"""The screening against the published algorithm (entry 43) and the share it should hold back (entry 44).

Riebe D et al. Med Sci Sports Exerc 2015;47:2473-2479: that three factors decide, and risk factors do not, was read in the abstract;
the branches are from memory. Whitfield GP et al. Med Sci Sports Exerc 2017, doi 10.1249/MSS.0000000000001331 (read): of US adults
of 40 and over, 54.2 % would be sent for a clearance before any exercise, and 2.6 % before vigorous exercise only.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from random import Random

import pytest

from core.health import AgeBand, Branch, Condition, Health, Outcome, Symptom
from core.safety.screening import verdict

FREE = Health(
    open=(), age=AgeBand.ADULT, pregnant=False, conditions=(), symptoms=(), injuries=(), active=True, checked=None, medicine=False
)
READ, MEMORY, CAUTION = "read", "from memory", "our caution, no source"

BRANCHES = [
    # active, disease, symptoms, cleared in a year, outcome, branch, source, status
    (False, False, False, False, Outcome.LIGHT, Branch.STARTING, "43: start light to moderate, no clearance", MEMORY),
    (True, False, False, False, Outcome.GO, Branch.FREE, "43: active, nothing known: go on, no clearance", MEMORY),
    (False, True, False, False, Outcome.CLEARANCE, Branch.DISEASE, "43: inactive, known disease: clearance first", MEMORY),
    (
        False,
        True,
        False,
        True,
        Outcome.CLEARANCE,
        Branch.DISEASE,
        "43: the same; a yes to hard work was for an active life",
        CAUTION,
    ),
    (
        True,
        True,
        False,
        False,
        Outcome.LIGHT,
        Branch.DISEASE_ACTIVE,
        "43: active, known disease: moderate without clearance",
        MEMORY,
    ),
    (True, True, False, True, Outcome.GO, Branch.FREE, "43: vigorous work with a clearance within 12 months", MEMORY),
    (False, False, True, False, Outcome.CLEARANCE, Branch.SYMPTOMS, "43: any symptoms: clearance whatever else", MEMORY),
    (True, False, True, True, Outcome.CLEARANCE, Branch.SYMPTOMS, "43: the same; if active, stop first", MEMORY),
    (False, True, True, False, Outcome.CLEARANCE, Branch.SYMPTOMS, "43: the same", MEMORY),
    (True, True, True, True, Outcome.CLEARANCE, Branch.SYMPTOMS, "43: the same", MEMORY),
]


@pytest.mark.parametrize(("active", "disease", "symptoms", "checked", "outcome", "branch", "source", "status"), BRANCHES)
def test_a_branch_of_the_algorithm(active, disease, symptoms, checked, outcome, branch, source, status):
    """Each combination of activity, known disease and symptoms leads where the algorithm says."""
    assert source.startswith("43")
    assert status in (READ, MEMORY, CAUTION)
    told = replace(
        FREE,
        active=active,
        conditions=(Condition.HEART,) if disease else (),
        symptoms=(Symptom.CHEST,) if symptoms else (),
        checked=checked,
    )
    assert (verdict(told).outcome, verdict(told).branch) == (outcome, branch)


@pytest.mark.parametrize("condition", Condition)
def test_each_known_disease_counts_alike(condition):
    """Cardiovascular, metabolic, renal: entry 43 names the three together (read)."""
    assert verdict(replace(FREE, active=False, conditions=(condition,))).outcome is Outcome.CLEARANCE


@pytest.mark.parametrize("symptom", Symptom)
def test_each_symptom_alone_asks_for_a_clearance(symptom):
    """The topics of the signs-and-symptoms table, entry 45 (read, 8th edition): one is enough."""
    assert verdict(replace(FREE, symptoms=(symptom,))).outcome is Outcome.CLEARANCE


def test_the_topics_of_the_signs_and_symptoms_table_are_all_asked():
    """Entry 45 lists nine topics."""
    assert len(Symptom) == 9


@pytest.mark.parametrize(("active", "disease", "symptoms"), list(product([True, False], repeat=3)))
def test_under_18_and_pregnancy_wait_whatever_else_is_true(active, disease, symptoms):
    """Entries 47 and 48 leave both to the coach and a clinician (the use made of them here is caution)."""
    told = replace(
        FREE,
        active=active,
        conditions=(Condition.KIDNEY,) if disease else (),
        symptoms=(Symptom.FATIGUE,) if symptoms else (),
    )
    assert verdict(replace(told, age=AgeBand.UNDER_18)).branch is Branch.YOUNG
    assert verdict(replace(told, pregnant=True)).branch is Branch.PREGNANT
    assert verdict(replace(told, pregnant=True)).outcome is Outcome.WAIT


@pytest.mark.parametrize("left_out", ["age", "pregnant", "conditions", "symptoms", "active"])
def test_what_was_not_answered_never_frees(left_out):
    """A question left out means light at most, never go."""
    assert verdict(replace(FREE, **{left_out: None})).outcome is Outcome.LIGHT
    assert verdict(replace(FREE, **{left_out: None})).branch is Branch.UNANSWERED


def test_nothing_answered_is_light_and_known_signs_count_before_the_rest_is_answered():
    """A first answer that asks for a clearance does so at once."""
    assert verdict(Health()).outcome is Outcome.LIGHT
    assert verdict(Health(symptoms=(Symptom.DIZZY,))).outcome is Outcome.CLEARANCE
    assert verdict(Health(conditions=(Condition.HEART,))).outcome is Outcome.CLEARANCE


def people(count, *, seed):
    """Invented adults of 40 and over.

    How common things are, by rough knowledge and no source: 30 % have a known disease (heart and vessels, diabetes, kidneys); 55 %
    of those without it are not active, 70 % of those with it; 25 % and 55 % have one of the nine symptoms; half of the active ones
    with disease saw a doctor about exercise.
    """
    draw = Random(seed)  # noqa: S311 - nothing is kept secret with it
    for _ in range(count):
        disease = draw.random() < 0.30
        symptoms = draw.random() < (0.55 if disease else 0.25)
        yield replace(
            FREE,
            age=draw.choice([AgeBand.MIDDLE, AgeBand.OLDER]),
            active=draw.random() >= 0.55 + (0.15 if disease else 0.0),
            conditions=(draw.choice(list(Condition)),) if disease else (),
            symptoms=(draw.choice(list(Symptom)),) if symptoms else (),
            checked=draw.random() < 0.5,
        )


def shares(count=20_000, *, seed=44):
    """The share of each outcome among invented people, and of those with disease who go light until a doctor's yes to hard work."""
    found = [verdict(told) for told in people(count, seed=seed)]
    by_outcome = {outcome: sum(one.outcome is outcome for one in found) / count for outcome in Outcome}
    return by_outcome, sum(one.branch is Branch.DISEASE_ACTIVE for one in found) / count


@pytest.mark.parametrize("seed", [1, 44, 365])
def test_neither_almost_nobody_nor_everybody_is_held_back(seed):
    """Entry 44 found 54.2 % before any exercise and 2.6 % before vigorous only; ours lies within 15 and 3 points of that.

    The people are invented, so this is a check of the order of size, not of the figures.
    """
    by_outcome, before_hard_work = shares(seed=seed)
    assert abs(by_outcome[Outcome.CLEARANCE] - 0.542) < 0.15
    assert abs(before_hard_work - 0.026) < 0.03
    assert by_outcome[Outcome.GO] > 0.15
    assert by_outcome[Outcome.LIGHT] > 0.10


if __name__ == "__main__":
    outcomes, hard = shares()
    for outcome, share in outcomes.items():
        print(f"{outcome}: {share:.1%}")  # noqa: T201 - shown on request
    print(f"light until a doctor's yes to hard work: {hard:.1%}")  # noqa: T201
