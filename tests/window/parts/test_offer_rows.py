"""Rows to choose from: each a key as wide as its place, many of them shown as they come."""

from app.window.parts.offer_rows import AT_ONCE, Offer, OfferRows


def rows_of(qtbot, *offers):
    rows = OfferRows()
    qtbot.addWidget(rows)
    rows.show()
    rows.show_offers(offers)
    return rows


def test_a_row_says_all_of_its_offer_and_does_what_it_offers(qtbot):
    chosen = []
    rows = rows_of(qtbot, Offer("26·15·R6F", "dyed 6 Apr", "Glove", lambda: chosen.append(1),
                                "3 left", "#1B856E"))
    (row,) = rows.rows
    assert row.accessibleName() == "26·15·R6F, dyed 6 Apr, Glove, 3 left"
    row.click()
    assert chosen == [1]


def test_what_cannot_be_chosen_is_passed_over(qtbot):
    rows = rows_of(qtbot, Offer("26·15·R6H", "not known here", "", None),
                   Offer("26·15·R6F", "", "", lambda: None))
    qtbot.waitUntil(rows.isVisible)
    rows.begin()
    assert [row.isEnabled() for row in rows.rows] == [False, True]
    assert rows.focusWidget() is rows.rows[1]


def test_of_many_the_first_stand_there_at_once(qtbot):
    rows = rows_of(qtbot, *[Offer(str(n), "", "", lambda: None) for n in range(AT_ONCE + 3)])
    assert len(rows.rows) == AT_ONCE
    qtbot.waitUntil(lambda: len(rows.rows) == AT_ONCE + 3)
