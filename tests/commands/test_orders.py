"""orders."""

import json
from pathlib import Path

import pytest

from tests.commands.said import Say
from tests.commands.test_doing import entries

GOOD = ("Order;Date;Customer;E-mail;Product;Quantity\n"
        "#9001;2026-03-02;Ada Nygård;ada.n@post.example;Ferry Ledger, Tarnfield 4-ply;2\n"
        "#9002;2026-03-02;Bo Lind;;Gift card;1\n")
BAD = "#9003;2026-03-02;Cy;;Ferry Ledger;two\n"


def written(folder: Path, text: str) -> Path:
    path = folder / "orders.csv"
    path.write_text(text, "utf-8")
    return path


def test_only_looking_saves_nothing(say: Say, studio_book: Path, tmp_path: Path) -> None:
    before = entries(studio_book)
    said = say("orders", written(tmp_path, GOOD + BAD), "--by", "OW", "--look")
    assert (said.code, said.out) == (0, "2 orders, 3 pieces; nothing was saved.\n")
    assert "Row 4, Quantity: it is no whole number. It says: two" in said.err
    assert "Order 9003 stays out whole" in said.err
    assert "“Gift card” names no colourway of the studio. It is kept as words." in said.err
    assert entries(studio_book) == before


def test_whole_orders_are_taken_in_once_in_the_name_of_who_says_so(
    say: Say, studio_book: Path, tmp_path: Path
) -> None:
    before = entries(studio_book)
    said = say("orders", written(tmp_path, GOOD + BAD), "--by", "ow", "--json")
    data = json.loads(said.out)
    assert (said.code, data["taken_in"], data["left_out"]) == (0, True, ["9003"])
    assert [order["customer"] for order in data["orders"]] == ["new", "new"]
    assert "ada.n@" not in said.out
    assert entries(studio_book) == before + 1
    again = say("orders", tmp_path / "orders.csv", "--by", "OW")
    assert (again.code, again.out) == (1, "")
    assert "Order 9001 of 2 Mar 2026 is in the book already: it is skipped." in again.err
    assert "Nothing of this list can be taken in; nothing was saved." in again.err


@pytest.mark.usefixtures("studio_book")
def test_a_column_that_is_lacking_is_named_by_the_person(say: Say, tmp_path: Path) -> None:
    path = written(tmp_path, GOOD.replace("Quantity", "Balls"))
    lacking = say("orders", path, "--by", "OW")
    assert lacking.code == 1
    assert "No column is headed as how many; nearest is “Balls”." in lacking.err
    assert "Nothing was saved." in lacking.err
    assert "--column FIELD=HEADING" in lacking.err
    assert say("orders", path, "--by", "OW", "--column", "count=Balls").code == 0


@pytest.mark.usefixtures("studio_book")
def test_a_file_that_cannot_be_read_and_a_stranger_are_refused(say: Say, tmp_path: Path) -> None:
    assert "cannot be read" in say("orders", tmp_path / "gone.csv", "--by", "OW").err
    (tmp_path / "orders.csv").write_bytes(b"%PDF-1.4")
    assert "This is a PDF" in say("orders", tmp_path / "orders.csv", "--by", "OW").err
    stranger = say("orders", written(tmp_path, GOOD), "--by", "ZZ")
    assert "Nobody here signs as ZZ" in stranger.err
