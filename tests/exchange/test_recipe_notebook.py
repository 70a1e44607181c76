"""A notebook of recipes: by fibre, bath or bottle; one bad row keeps its whole recipe out."""

from decimal import Decimal

import pytest

from app.exchange.cells import Cell, Formula, Row, Table
from app.exchange.columns import propose
from app.exchange.recipe_headings import NOTEBOOK
from app.exchange.recipe_notebook import Notebook, RecipeRead, read_notebook
from app.problems import BadInput
from app.work.recipes import ComponentIn, ZoneIn

HEADINGS = "Colourway;Base class;Look;Liquor;Zone;Dye;Amount;Unit;Form;Order"
DYES = {"b1 turquoise": "B1 turquoise"}


def notebook(*rows: str, headings: str = HEADINGS, **given: Cell) -> Notebook:
    table = Table(tuple(Row(n, tuple(row.split(";"))) for n, row in
                        enumerate((headings, *rows), 1)))
    return read_notebook(table, propose(table, {}, kind=NOTEBOOK), DYES, given)


def only(*rows: str, headings: str = HEADINGS, **given: Cell) -> RecipeRead:
    found = notebook(*rows, headings=headings, **given)
    assert found.troubles == ()
    (recipe,) = found.recipes
    return recipe


def test_rows_of_a_colourway_are_one_recipe_in_its_order_of_pouring() -> None:
    recipe = only("Ferry Ledger;untreated wool;semi-solid;20:1;;N1 navy;0.40;%;;2",
                  ";;;;;B2 mid blue;0,55;% owf;;1",
                  "ferry  ledger;;;;;citric acid;2;%;anhydrous;3",
                  "Ferry Ledger;;;;;sodium sulphate;2.5;g/L;crystals;4")
    assert (recipe.colourway, recipe.look, recipe.base_class, recipe.liquor_tenths) == (
        "Ferry Ledger", "semi-solid", "untreated wool", 200)
    assert recipe.components == (
        ComponentIn("B2 mid blue", "owf", 5500), ComponentIn("N1 navy", "owf", 4000),
        ComponentIn("citric acid", "owf", 20_000, "assistant", "anhydrous"),
        ComponentIn("sodium sulphate", "bath", 2500, "assistant", "crystals"))


def test_zones_take_what_is_in_their_bottles() -> None:
    headings = "Colourway;Zone;Share;mL per 100 g;Dye;Amount;Unit"
    recipe = only("Half-Tide Steps;a;45;60;B1 Turquoise;0.5;%",
                  ";A;;;Y1 lemon;5;g/L", ";b;35 %;45 ml;K1;1;% w/v", headings=headings)
    assert recipe.zones == (ZoneIn("A", 450, 60), ZoneIn("B", 350, 45))
    assert recipe.components == (
        ComponentIn("B1 turquoise", "bottle", 5000, zone="A"),
        ComponentIn("Y1 lemon", "bottle", 5000, zone="A"),
        ComponentIn("K1", "bottle", 10_000, zone="B"))
    assert recipe.look == "zones"


@pytest.mark.parametrize(("headings", "amount", "given", "component"), [
    ("Colourway;Dye;Amount % owf", "0.22", {}, ComponentIn("Y1", "owf", 2200)),
    ("Colourway;Dye;Amount (g/L)", "0.22", {}, ComponentIn("Y1", "bath", 220)),
    ("Colourway;Dye;Amount", "0.22 %", {}, ComponentIn("Y1", "owf", 2200)),
    ("Colourway;Dye;Amount", "220 mg/L", {}, ComponentIn("Y1", "bath", 220)),
    ("Colourway;Dye;Amount", "0,22", {"unit": "%"}, ComponentIn("Y1", "owf", 2200)),
    ("Colourway;Dye;Amount %", "2 g/L", {}, ComponentIn("Y1", "bath", 2000)),
    ("Colourway;Dye;Amount %", "1.250", {}, ComponentIn("Y1", "owf", 12_500)),
])
def test_the_unit_stands_with_the_number_in_its_column_or_in_the_heading(
    headings: str, amount: str, given: dict[str, Cell], component: ComponentIn
) -> None:
    assert only(f"Moth;Y1;{amount}", headings=headings, **given).components == (component,)


def test_numbers_of_a_workbook_are_taken_as_they_are() -> None:
    table = Table((Row(1, ("Colourway", "Dye", "Amount %")),
                   Row(2, ("Moth", "K1", Decimal("0.03")))))
    found = read_notebook(table, propose(table, {}, kind=NOTEBOOK), {})
    assert found.recipes[0].components == (ComponentIn("K1", "owf", 300),)


def test_grams_a_kilo_are_a_share_of_the_fibre_and_grams_alone_are_nothing() -> None:
    assert only("Moth;Y1;2.2 g/kg", headings="Colourway;Dye;Amount %").components == (
        ComponentIn("Y1", "owf", 2200),)
    for amount in ("2 g", "2 g/100g", "2 g/skein", "2 ml/L"):
        found = notebook(f"Moth;Y1;{amount}", headings="Colourway;Dye;Amount %")
        assert (found.recipes, found.out) == ((), ("Moth",))
        assert "it is neither % of the fibre nor g/L" in found.troubles[0].what


def test_a_number_that_was_cut_at_its_comma_is_not_taken_for_another() -> None:
    found = notebook("Moth;Y1;1;5", headings="Colourway;Dye;Amount %")
    assert (found.recipes, found.troubles[0].kept) == ((), "5")
    assert "Was a number cut at its comma?" in found.troubles[0].what


def test_a_dye_twice_under_one_name_is_told_unless_its_order_is_said() -> None:
    found = notebook("Moth;Y1;0.4", "Coal;K1;1", "MOTH;y1;0.5", "Moth;citric acid;1",
                     "Moth;citric acid;1", headings="Colourway;Dye;Amount %")
    assert [one.colourway for one in found.recipes] == ["Coal"]
    assert [(one.row, one.what) for one in found.troubles] == [
        (4, "row 2 has this dye already for Moth. Two recipes of one name? Poured twice, it needs "
            "its order.")]
    twice = only("Moth;Y1;0.4;1", ";Y1;0.5;2", headings="Colourway;Dye;Amount %;Order")
    assert [one.amount for one in twice.components] == [4000, 5000]


def test_a_notebook_kept_as_shares_is_said_to_look_so() -> None:
    for amounts, said in ((("0.0085", "0.01"), True), (("0.0085", "0.4"), False)):
        found = notebook(*(f"Moth {n};Y1;{amount}" for n, amount in enumerate(amounts)),
                         headings="Colourway;Dye;Amount %")
        assert bool(found.notes) is said


def test_a_row_of_nobody_does_not_go_to_the_recipe_before_it() -> None:
    found = notebook("Moth;Y1;0.4", f"{'N' * 81};K1;1", ";R1;1", headings="Colourway;Dye;Amount %")
    assert [len(one.components) for one in found.recipes] == [1]
    assert [one.row for one in found.troubles] == [3, 4]


@pytest.mark.parametrize(("row", "column", "what"), [
    ("Moth;;;;;K1;x;%;;", "Amount", "it is no number"),
    ("Moth;;;;;K1;;%;;", "Amount", "nothing stands there"),
    ("Moth;;;;;;0.3;%;;", "Dye", "nothing stands there"),
    ("Moth;;;;;K1;0.3;;;", "Unit", "nobody says whether it is % of the fibre or g/L"),
    ("Moth;;;;;K1;0.3;spoon;;", "Unit", "it is neither % of the fibre nor g/L"),
    ("Moth;;;;;K1;0.3;% w/v;;", "Unit", "what is in a bottle needs its zone"),
    ("Moth;;;;;K1;220;%;;", "Amount", "220 % cannot be a share of the fibre"),
    ("Moth;;plaid;;;K1;0.3;%;;", "Look", "it is none of solid, semi-solid, zones, speckle"),
    ("Moth;;;a lot;;K1;0.3;%;;", "Liquor", "it is no ratio. Write it like 20:1"),
    ("Moth;silk;;;;K1;0.3;%;;", "Base class", "row 2 says it otherwise"),
    ("Moth;;;;;K1;0.3;%;;first", "Order", "it is no number"),
])
def test_one_bad_row_is_named_by_its_number_and_keeps_its_recipe_out(
    row: str, column: str, what: str
) -> None:
    found = notebook("Moth;wool;;;;R1;0.01;%;;", row, "Coal Hatch;;;;;N1;1.6;%;;")
    assert [(one.row, one.column) for one in found.troubles] == [(3, column)]
    assert what in found.troubles[0].what
    assert (found.out, [one.colourway for one in found.recipes]) == (("Moth",), ["Coal Hatch"])


def test_a_formula_is_told_once_and_its_recipe_stays_out() -> None:
    table = Table((Row(1, ("Colourway", "Dye", "Amount %")),
                   Row(2, ("Moth", "K1", Formula("=A1")))))
    found = read_notebook(table, propose(table, {}, kind=NOTEBOOK), {})
    assert [one.what[:10] for one in found.troubles] == ["it reckons"]
    assert (found.recipes, found.out) == ((), ("Moth",))


def test_zones_that_contradict_themselves_are_trouble() -> None:
    found = notebook("Moth;A;60;K1;0.3;%", "Moth;A;45;R1;0.3;%",
                     headings="Colourway;Zone;mL per 100 g;Dye;Amount;Unit")
    assert found.troubles[0].what == "another row says it otherwise for this zone."


def test_a_role_may_be_said_and_is_else_known_by_the_jars_and_the_words() -> None:
    recipe = only("Moth;citric acid;1;dye", ";Helper X;1;assistant", ";vinegar 5 %;1;",
                  ";B1 turquoise;1;", headings="Colourway;Dye;Amount %;Role")
    assert [one.role for one in recipe.components] == ["dye", "assistant", "assistant", "dye"]
    assert notebook("Moth;K1;1;pot", headings="Colourway;Dye;Amount %;Role").troubles[0].what == (
        "it is neither dye nor assistant.")


def test_a_row_before_any_colourway_and_a_list_of_one_name_are_told() -> None:
    found = notebook(";K1;1", headings="Colourway;Dye;Amount %")
    assert found.troubles[0].what == "nothing stands there."
    long = notebook(*(f"Moth;K{n};1" for n in range(61)), headings="Colourway;Dye;Amount %")
    assert (long.recipes, long.out) == ((), ("Moth",))
    assert long.notes == ("Moth has more than 60 rows: it is left out.",)
    with pytest.raises(BadInput, match="No column is headed as how much"):
        notebook("Moth;K1", headings="Colourway;Dye")
