"""What is weighed or measured from: a jar's fill or a stock, and how much of it."""

from app.lookups.weigh_sources import Source, source_of
from app.problems import NotFound, Refused
from app.store.deed import Deed


def source_in_book(deed: Deed, fill: int | None, stock: int | None) -> Source | None:
    """The fill or stock of a line; none where neither is said. Raises Refused, NotFound."""
    if fill is None and stock is None:
        return None
    if fill is not None and stock is not None:
        raise Refused("A line has one source; nothing was saved.", "Scan the jar or the bottle.")
    source = source_of(deed.connection, fill, stock)
    if source is None:
        raise NotFound("This jar or bottle is not in the book; nothing was saved.",
                       "Scan its plate again.")
    return source


def must_be_one_amount(
    mg: int | None, ul: int | None, fill: int | None, stock: int | None
) -> None:
    """One weight of a powder or one volume of a stock, more than nothing; raises Refused."""
    given = [size for size in (mg, ul) if size is not None]
    if len(given) != 1 or given[0] <= 0:
        raise Refused("One weight or one volume is taken, and it is more than nothing; nothing was "
                      "saved.", "Read the balance again.")
    if (fill is not None and mg is None) or (stock is not None and ul is None):
        raise Refused("A jar is weighed and a stock is measured; nothing was saved.",
                      "Give grams of powder, or millilitres of a stock.")


def amount_words(mg: int | None, ul: int | None) -> str:
    """'5.12 g' or '132.4 mL'."""
    if mg is not None:
        return f"{mg / 1000:g} g"
    return "nothing" if ul is None else f"{ul / 1000:g} mL"
