from dataclasses import dataclass

import pytest
from PySide6.QtCore import Qt

from app.window.tables.record_table import SWATCH_ROLE, WINDOW, Column, RecordTable


@dataclass(frozen=True, slots=True)
class Cone:
    code: str
    grams: int


@pytest.fixture
def fetched():
    return []


@pytest.fixture
def table(qapp, fetched):
    def fetch(keys):
        fetched.append((keys[0], keys[-1]))
        return {key: Cone(f"C·{key:04}", key) for key in keys if key != 666}

    code: Column[Cone] = Column("Cone", lambda cone: cone.code, codes=True)
    grams: Column[Cone] = Column(
        "g", lambda cone: f"{cone.grams}", right=True, swatch=lambda cone: "#1B856E"
    )
    table = RecordTable([code, grams], fetch)
    table.show_keys(range(250_000))
    return table


def test_it_keeps_the_rules_of_models(table, qtmodeltester):
    table.show_keys(range(450))
    qtmodeltester.check(table)


def test_only_what_is_looked_at_is_fetched(table, fetched):
    assert table.index(249_999, 0).data() == "C·249999"
    assert fetched == [(249_800, 249_999)]
    table.index(249_900, 1).data()
    assert len(fetched) == 1


def test_only_so_much_is_remembered(table, fetched):
    for window in range(30):
        table.index(window * WINDOW, 0).data()
    table.index(29 * WINDOW, 0).data()
    assert len(fetched) == 30
    table.index(0, 0).data()
    assert len(fetched) == 31


def test_a_change_repaints_only_its_window(qtbot, table, fetched):
    table.index(0, 0).data()
    table.index(1000, 0).data()
    with qtbot.waitSignal(table.dataChanged) as said:
        table.refresh({1010})
    assert (said.args[0].row(), said.args[1].row()) == (1000, 1199)
    table.index(0, 0).data()
    assert len(fetched) == 2


def test_what_has_gone_meanwhile_is_blank(table):
    assert table.index(666, 0).data() == ""
    assert table.row_at(666) is None


def test_numbers_keep_to_the_right_and_swatches_are_told(table):
    side = table.index(0, 1).data(Qt.ItemDataRole.TextAlignmentRole)
    assert side & Qt.AlignmentFlag.AlignRight
    assert table.index(0, 1).data(SWATCH_ROLE) == "#1B856E"
    assert table.index(0, 0).data(SWATCH_ROLE) is None
