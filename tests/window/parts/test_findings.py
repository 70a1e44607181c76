import pytest

from app.window.parts.findings import MOST_SHOWN, Finding, Findings
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words


@pytest.fixture
def findings(qtbot):
    findings = Findings()
    qtbot.addWidget(findings)
    return findings


def keys(findings):
    return [key for key in findings.findChildren(KeyButton) if key.isVisibleTo(findings)]


def words(findings):
    return [word.text() for word in findings.findChildren(Words) if word.isVisibleTo(findings)]


def test_nothing_found_takes_no_room(findings):
    findings.show_findings([Finding("Pale with red.")])
    assert findings.isVisible()
    findings.show_findings([])
    assert not findings.isVisible()


def test_at_most_three_are_shown_and_the_rest_is_counted(findings):
    findings.show_findings([Finding(f"Warning {n}.") for n in range(5)])
    assert len(keys(findings)) == MOST_SHOWN
    assert words(findings) == ["Warning 0.", "Warning 1.", "Warning 2.", "and 2 more"]


def test_where_the_text_is_large_one_is_shown_so_that_the_bench_keeps_its_room(
    qtbot, findings, dressed
):
    dressed(2.0)
    findings.show_findings([Finding(f"Warning {n}.") for n in range(2)])
    assert words(findings) == ["Warning 0.", "and 1 more"]
    keys(findings)[0].click()
    qtbot.waitUntil(lambda: words(findings) == ["Warning 1."])


def test_one_tap_answers_and_the_next_moves_up(qtbot, findings):
    first = Finding("97 g is too light.", ("Sell as 97 g", "Seconds"))
    findings.show_findings([first, *(Finding(f"Warning {n}.") for n in range(3))])
    with qtbot.waitSignal(findings.answered) as heard:
        keys(findings)[1].click()
    assert heard.args == [first, "Seconds"]
    qtbot.waitUntil(lambda: words(findings) == ["Warning 0.", "Warning 1.", "Warning 2."])


def test_the_same_warning_twice_is_answered_twice(qtbot, findings):
    findings.show_findings([Finding("Warning."), Finding("Warning.")])
    keys(findings)[0].click()
    qtbot.waitUntil(lambda: words(findings) == ["Warning."])
    keys(findings)[0].click()
    assert not findings.isVisible()


def test_an_answer_is_heard_with_its_warning(findings):
    findings.show_findings([Finding("Pale with red.", ("Leave it out",))])
    (key,) = keys(findings)
    assert (key.accessibleName(), key.accessibleDescription()) == ("Leave it out", "Pale with red.")
