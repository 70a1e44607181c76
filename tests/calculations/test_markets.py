"""Markets as shipped: their rules, those taken over from another, and how a rule is cited."""

import pytest

from app.calculations.markets import MARKETS, Rule, Said, local_law_decides, market
from app.problems import NotFound


@pytest.mark.parametrize("key", MARKETS)
def test_a_market_has_each_rule_once_and_each_says_where_it_was_read(key: str) -> None:
    rules = market(key).rules
    assert len({rule.key for rule in rules}) == len(rules)
    assert all(rule.says and rule.verified for rule in rules)
    assert all(rule.clause for rule in rules if rule.verified != "common practice, no source")


def test_the_kingdom_keeps_the_unions_rules_as_its_own() -> None:
    assert market("UK").rule("pure").clause == "retained Art. 7(1)"
    assert market("UK").rule("names").clause.startswith("Textile Products (Labelling")


def test_a_rule_read_only_in_memory_is_cited_so() -> None:
    assert Rule("a", "Art. 5", "", "list title read; rule from memory").cited == (
        "Art. 5, from memory")
    assert Rule("a", "Art. 7(1)", "", "read in German").cited == "Art. 7(1)"
    assert market("EU").rule("bleeding").cited == "common practice, no source"


def test_what_is_said_carries_its_clause_and_what_to_do() -> None:
    said = Said(Rule("a", "Art. 7(1)", "", "read"), "The base says “pure wool” of a blend.", "Do.")
    assert said.words == "The base says “pure wool” of a blend (Art. 7(1))."
    assert said.told == "The base says “pure wool” of a blend (Art. 7(1)). Do."


def test_one_rule_stands_for_all_names_where_a_market_has_no_other() -> None:
    assert market("Canada").rule("pure") is market("Canada").rule("names")
    assert market("Canada").has("pure") is None


def test_no_market_is_made_up_and_local_law_decides() -> None:
    with pytest.raises(NotFound, match="“Mars”"):
        market("Mars")
    assert local_law_decides().startswith("Local law decides")
