"""shades, customer-data."""

import json
from pathlib import Path

import pytest

from app.store.book import Book
from app.store.deed import By
from app.work.selling import know_customer
from tests.commands.said import Say

CARDS = "Lot;L*;a*;b*;Readings\n2615R6F;48.3;-36.6;3.3;4\n"


def written(folder: Path, text: str) -> Path:
    path = folder / "cards.csv"
    path.write_text(text, "utf-8")
    return path


@pytest.mark.usefixtures("studio_book")
def test_readings_are_taken_in_and_bad_rows_are_told(say: Say, tmp_path: Path) -> None:
    for_all = ("--by", "OW", "--say", "lamp=D65", "--say", "observer=2")
    path = written(tmp_path, CARDS)
    lacking = say("shades", path, "--by", "OW")
    assert (lacking.code, lacking.out) == (1, "")
    assert "No column is headed as the lamp" in lacking.err
    taken = say("shades", path, *for_all)
    assert (taken.code, taken.err) == (0, "")
    assert taken.out == "read 26·15·R6F: 48.3 -36.6 3.3, D65, 2°, dry, 4 readings.\n"
    written(tmp_path, CARDS + "2619K44;48;0;0;4\n")
    refused = say("shades", path, *for_all)
    assert refused.code == 1
    assert "Row 3, Lot: no lot of the book has this code." in refused.err
    left = say("shades", path, *for_all, "--leave-bad-rows", "--json")
    assert json.loads(left.out)["taken_in"] is True


def test_a_customers_data_is_written_for_the_only_one_of_the_name(
    say: Say, studio_book: Path, tmp_path: Path
) -> None:
    book = Book(studio_book)
    for name in ("Ada Nygård", "Ada Berg"):
        book.do(know_customer, name, by=By("OW", "counter"))
    book.close()
    out = tmp_path / "ada.json"
    assert "2 customers are called “ada”" in say("customer-data", "ada", out).err
    assert not out.exists()
    done = say("customer-data", "ada nyg", out)
    assert done.out == f"All that is kept of Ada Nygård: {out}.\n"
    assert json.loads(out.read_bytes())["about you"] == {"name": "Ada Nygård"}
    table = tmp_path / "ada.csv"
    assert say("customer-data", "ada nyg", table).code == 0
    assert table.read_text("utf-8-sig").startswith("order,placed,")
    assert "neither a .json nor a .csv" in say("customer-data", "ada", tmp_path / "ada.pdf").err
    assert "No customers are called" in say("customer-data", "nobody", out).err
