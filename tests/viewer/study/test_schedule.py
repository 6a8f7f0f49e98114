"""A learner's weeks against what is published of the scheduler.

Sources: the algorithm's own description (open-spaced-repetition, "free-spaced-repetition-
scheduler" README and py-fsrs ALGORITHM.md): stability is the interval at which recall falls to
90 %; the harder a card, the more stable it already is, and the better it is still remembered, the
less stability a right answer adds; difficulty lies in 1-10. The forgetting curve is
R = (1 + F t / S)^D with F = 0.9^(1/D) - 1; D of the version in use is its last parameter.
"""

import json
import random
from datetime import UTC, datetime, timedelta

import pytest
from fsrs import Scheduler

from viewer.study.results import Answered, Results

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
REVIEW = 2
DECAY = -Scheduler().parameters[20]
FACTOR = 0.9 ** (1 / DECAY) - 1


@pytest.fixture
def results(tmp_path):
    results = Results(tmp_path / "results.db")
    results.add_learner("Ada")
    yield results
    results.close()


def card(results, structure):
    """Return the kept card of a structure as the scheduler's own values."""
    (state,) = results._base.execute(
        "select state from card where structure = ?", (structure,)
    ).fetchone()
    return json.loads(state)


def answer(results, structure, right, now, seconds=5.0):
    results.keep("Ada", Answered(structure, "name", 2, right, seconds=seconds), now)
    return card(results, structure)


def remembered(card, now):
    """Return how likely the card is still known, by the published curve."""
    days = (now - datetime.fromisoformat(card["last_review"])).total_seconds() / 86400
    return (1 + FACTOR * days / card["stability"]) ** DECAY


def learn(results, structure, now):
    """Answer a new card right until it is asked in days, not minutes."""
    kept = answer(results, structure, True, now)
    while kept["state"] != REVIEW:
        now = datetime.fromisoformat(kept["due"])
        kept = answer(results, structure, True, now)
    return kept


def weeks(results, days, knows):
    """Answer all that is due, morning and evening; returns (before, right, now, after)."""
    names = [f"structure_{k}" for k in range(40)]
    history = []
    for half in range(2 * days):
        now = START + timedelta(hours=12 * half)
        new = names[4 * half : 4 * half + 4]
        for name in [s for s, _ in results.due("Ada", now)] + new:
            before = None if name in new else card(results, name)
            right = knows(name, before, now)
            history.append((before, right, now, answer(results, name, right, now)))
    return history


def test_a_week_of_sittings_keeps_to_the_published_properties(results):
    rng = random.Random(4)
    weak = {f"structure_{k}" for k in range(0, 40, 5)}
    history = weeks(results, 7, lambda name, *_: rng.random() < (0.4 if name in weak else 0.95))
    judged = 0
    for before, right, now, after in history:
        assert 1 <= after["difficulty"] <= 10
        if after["state"] == REVIEW:
            rest = datetime.fromisoformat(after["due"]) - now
            # The interval is the stability, in whole days and one at least.
            assert rest == timedelta(days=max(1, round(after["stability"])))
            due = datetime.fromisoformat(after["due"])
            if after["stability"] >= 3:
                assert remembered(after, due) == pytest.approx(0.9, abs=0.02)
        if before is None or before["state"] != REVIEW:
            continue
        judged += 1
        if right:
            assert after["stability"] >= before["stability"]
            assert after["difficulty"] <= before["difficulty"] + 1e-9
        else:
            assert after["stability"] < before["stability"]
            assert after["difficulty"] > before["difficulty"]
            assert datetime.fromisoformat(after["due"]) - now < timedelta(days=1)
    assert judged > 20
    asked = results.by_structure("Ada", START + timedelta(days=7))
    often = {w.name: w.answers for w in asked}
    mean = {
        group: sum(often[n] for n in names) / len(names)
        for group, names in (("weak", weak), ("other", set(often) - weak))
    }
    assert mean["weak"] > 1.5 * mean["other"]
    # Among the five weakest chance may put one who was unlucky.
    assert len({w.name for w in asked[:5]} & weak) >= 4


def test_what_is_better_remembered_gains_less(results):
    early, late = learn(results, "early", START), learn(results, "late", START)
    assert early["stability"] == late["stability"]
    due = datetime.fromisoformat(early["due"])
    gained = answer(results, "early", True, due)["stability"] / early["stability"]
    more = answer(results, "late", True, due + timedelta(days=9))["stability"] / late["stability"]
    assert 1 < gained < more


def test_the_more_stable_and_the_harder_gain_less(results):
    kept, gains = learn(results, "steady", START), []
    for _ in range(4):
        due = datetime.fromisoformat(kept["due"])
        after = answer(results, "steady", True, due)
        gains.append(after["stability"] / kept["stability"])
        kept = after
    assert gains == sorted(gains, reverse=True)
    # A card that was missed three times is hard; a right answer adds a smaller share.
    hard = learn(results, "hard", START)
    for _ in range(3):
        hard = answer(results, "hard", False, datetime.fromisoformat(hard["due"]))
        while hard["state"] != REVIEW:
            hard = answer(results, "hard", True, datetime.fromisoformat(hard["due"]))
    after = answer(results, "hard", True, datetime.fromisoformat(hard["due"]))
    assert after["stability"] / hard["stability"] < gains[0]


def test_a_slow_right_answer_counts_between_a_quick_one_and_a_wrong_one(results):
    kept = {}
    for name, right, seconds in (("quick", True, 4.0), ("slow", True, 40.0), ("wrong", False, 4.0)):
        due = datetime.fromisoformat(learn(results, name, START)["due"])
        kept[name] = answer(results, name, right, due, seconds)["stability"]
    assert kept["quick"] > kept["slow"] > kept["wrong"]


def test_who_forgets_by_the_published_curve_knows_nine_in_ten_of_what_is_asked(results):
    rng = random.Random(11)

    def knows(_name, before, now):
        if before is None or before["state"] != REVIEW:
            return True
        return rng.random() < remembered(before, now)

    history = weeks(results, 42, knows)
    asked = [right for before, right, _, _ in history if before and before["state"] == REVIEW]
    assert len(asked) > 100
    # 0.9 is what the scheduler aims at; three standard errors of so many answers.
    error = (0.9 * 0.1 / len(asked)) ** 0.5
    assert sum(asked) / len(asked) == pytest.approx(0.9, abs=3 * error)
