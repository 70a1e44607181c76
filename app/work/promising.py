"""What orders were promised stays there for them, until it is taken for them or called off."""

from collections.abc import Sequence

from app.lookups.left_to_sell import Left, left_of, wanting
from app.lookups.skeins import named_by_tag
from app.store.deed import Deed


def keep_for_orders(deed: Deed, tagged: Sequence[int], but: int | None = None) -> None:
    """Refused at the desk: more skeins from the shelf than the promises leave of their lot.

    `but` is the lot of the line that they are taken for: its own promise is what is filled.
    """
    for lot, code, left, taken in _touched(deed, tagged):
        if lot != but and taken > left.count:
            deed.refuse(f"{code}: {_who_wants(deed, lot)} {left.promised} of the "
                        f"{len(left.skeins)} on the shelf, so {left.count or 'none'} may go, not "
                        f"{taken}; nothing was saved.",
                        "Take them for the order, or call its line off.")


def note_for_orders(deed: Deed, tagged: Sequence[int]) -> None:
    """These skeins are gone from the shelf: it is marked where an order was promised them."""
    for lot, code, left, taken in _touched(deed, tagged):
        if taken > left.count:
            deed.note(f"{code}: {_who_wants(deed, lot)} {left.promised}, and "
                      f"{len(left.skeins) - taken or 'none'} will be on the shelf. Tell the "
                      "customer, or call the line off.")


def _touched(deed: Deed, tagged: Sequence[int]) -> list[tuple[int, str, Left, int]]:
    """Each lot by the tags of these skeins: what is left of it, and how many of that they are.

    Put-ups are looked at one by one, and together where several go at once.
    """
    named = named_by_tag(deed.connection, tagged)
    codes = {tag.lot: tag.lot_shown for tag in named.values()}
    put_ups: list[str | None] = [*dict.fromkeys(tag.put_up for tag in named.values())]
    touched = []
    for put_up in put_ups if len(put_ups) < 2 else [*put_ups, None]:
        for lot, left in left_of(deed.connection, codes, put_up).items():
            taken = len(named.keys() & set(left.skeins))
            if taken:
                touched.append((lot, codes[lot], left, taken))
    return touched


def _who_wants(deed: Deed, lot: int) -> str:
    """'order 1187 wants', 'orders 1187 and 1190 want'."""
    orders = sorted({promise.order for promise in wanting(deed.connection, lot)})
    return (f"order {orders[0]} wants" if len(orders) == 1
            else f"orders {' and '.join(orders)} want")
