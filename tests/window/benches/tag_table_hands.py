"""At the tag table: its piles and its figures."""

from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.lookups.printed import tags_of
from app.lookups.recent import entries
from app.lookups.tagging import pile_facts
from app.store.deed import By
from app.work.studio import choose

SMALL = "small-63x38"


def pile_of(studio, count, place, tie="red", recipe=None, cone=None):
    """A pile of one cone, with a disc as its card."""
    group = studio.wind(cone or studio.cone(), count, tie, studio.discs[place])
    if recipe is None:
        studio.dye(group)
    return studio.finish(group, **{tie: count})[0]


def eleven_on_the_table(studio):
    """Eleven skeins on disc 031; eight cells of a sheet of small tags are used by another pile."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    eleven, eight = pile_of(studio, 11, 0), pile_of(studio, 8, 1, "yellow")
    print_for_pile(
        studio.book, By("LP", "tagging"), PrintOrder(eight, 8, OnStock(SMALL)), studio.random
    )
    return eleven


def in_hand(table):
    return table.bench.in_hand


def figures(table):
    """What stands on the screen: counted, tied on, to tie on, to print, void."""
    shown_now = in_hand(table).pile_card.figures
    parts = (
        shown_now.counted,
        shown_now.tied_on,
        shown_now.waiting,
        shown_now.to_print,
        shown_now.void,
    )
    return tuple(part.number for part in parts)


def add_up(table):
    """The sum on the screen is right, and is what the book says."""
    counted, tied_on, waiting, to_print, void = figures(table)
    facts = table.studio.book.ask(pile_facts, in_hand(table).pile)
    assert counted == tied_on + waiting + to_print
    assert facts.printed == tied_on + waiting + void
    return True


def tags(table, pile, *states):
    """Tags of a pile in these states."""
    return [tag for tag in table.studio.book.ask(tags_of, pile) if tag.state in states]


def entries_say(table, words):
    return any(words in entry.said for entry in table.studio.book.ask(entries))


def pile_by_disc(studio, place):
    (row,) = studio.book.ask(bundle_facts, studio.discs[place], NOW).rows
    return row
