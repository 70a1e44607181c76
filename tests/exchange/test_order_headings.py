"""What columns of orders are called."""

import pytest

from app.exchange.cells import Row, Table
from app.exchange.columns import known_columns, propose, with_remembered
from app.exchange.headings import bare
from app.exchange.order_headings import ORDERS
from app.problems import BadInput


def table(heads: str) -> Table:
    return Table((Row(1, tuple(heads.split(";"))), Row(2, ("1042",))))


def test_every_wording_is_written_as_it_is_compared_and_stands_for_one_field() -> None:
    every = [words for wordings in ORDERS.wordings.values() for words in wordings]
    assert [bare(words) for words in every] == every
    assert len(every) == len(set(every))
    assert ORDERS.wordings.keys() == ORDERS.fields.keys()
    assert {*ORDERS.needed, *ORDERS.settled} == ORDERS.fields.keys()


@pytest.mark.parametrize("heads", [
    "Order number;Product;Quantity;Order date;Customer name;E-mail;Lot;Unit price",
    "Bestellnummer;Artikelname;Menge;Bestelldatum;Kundenname;E-Mail-Adresse;Partie;Einzelpreis",
    "Numéro de commande;Produit;Quantité;Date de commande;Nom du client;Courriel;Bain;Prix",
    "Bestelnummer;Productnaam;Aantal;Besteldatum;Klantnaam;E-mail;Verfbad;Prijs",
    "Ordrenummer;Varenavn;Antall;Ordredato;Navn;E-post;Parti;Pris",
])
def test_headings_are_known_in_many_languages(heads: str) -> None:
    match = propose(table(heads), {}, None, ORDERS)
    assert match.places == {"number": 0, "what": 1, "count": 2, "placed": 3, "name": 4, "mail": 5,
                            "lot": 6, "price": 7}
    assert match.lacks(()) == ()


def test_what_is_lacking_or_in_doubt_is_asked_in_a_sentence() -> None:
    match = propose(table("Order;Product;Billing name;Shipping name"), {}, None, ORDERS)
    assert match.lacks(()) == ("count", "name")
    assert match.what_lacks(()) == (
        "No column is headed as how many. "
        "The customer's name may stand in “Billing name” and “Shipping name”.")


def test_a_doubt_may_be_settled_with_neither_and_that_is_remembered() -> None:
    heads = table("Order;Product;Quantity;Billing name;Shipping name")
    match = propose(heads, {}, {"name": ""}, ORDERS)
    assert match.lacks(()) == ()
    known = known_columns(with_remembered("{}", match))
    again = propose(heads, known, None, ORDERS)
    assert again.remembered
    assert "name" not in again.places
    assert again.lacks(()) == ()


def test_a_list_of_something_else_is_no_list_of_orders() -> None:
    with pytest.raises(BadInput, match="looks like headings of a list of orders"):
        propose(table("Tare;Gross"), {}, None, ORDERS)
    with pytest.raises(BadInput, match="nothing that a list of orders says"):
        propose(table("Order;Product;Quantity"), {}, {"tare": "Order"}, ORDERS)
