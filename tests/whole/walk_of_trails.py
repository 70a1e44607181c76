"""At the end of every story its trails are drawn: the short one is the whole one with less in it.
"""

from sqlalchemy import Connection, select

from app.exchange.reports import trace_pdf
from app.exchange.tracing import traced
from app.lookups.graph import Graph, graph
from app.lookups.graph_web import Centre
from app.lookups.recall import recall_list
from app.lookups.things import Found, by_codes, lot_found
from app.records import Cone, DyeLot
from tests.lookups.graphs import ends
from tests.whole.walk_of_faults import FaultsWalk


class TrailsWalk(FaultsWalk):
    """All that a studio does, and what came of each cone and lot as a picture and on paper."""

    def teardown(self) -> None:
        ask, now = self.studio.book.ask, self.studio.clock.now
        things = ask(_cones_and_lots)
        for found in things:
            whole = ask(graph, Centre(found.kind, (found.id,)))
            self.the_short_trail_leaves_out_what_was_passed_and_changes_nothing(found, whole)
            self.picture_tables_and_recall_are_of_one_mind(found, whole)
        assert ask(trace_pdf, things[-1], now, "OW").startswith(b"%PDF")
        super().teardown()

    def the_short_trail_leaves_out_what_was_passed_and_changes_nothing(
        self, found: Found, whole: Graph
    ) -> None:
        short = self.studio.book.ask(graph, Centre(found.kind, (found.id,)), short=True)
        assert ends(short) == ends(whole)
        assert short.together == whole.together
        told = {knot.key: (knot.count, knot.sure, knot.held) for knot in whole.knots}
        assert {knot.key: (knot.count, knot.sure, knot.held) for knot in short.knots
                if knot.key in told}.items() <= told.items()

    def picture_tables_and_recall_are_of_one_mind(self, found: Found, whole: Graph) -> None:
        """As many there, and as many of it: on the Desk, in the picture and on the recall list."""
        drawn = whole.together
        listed = self.studio.book.ask(recall_list, found.kind, found.id)
        one = self.studio.book.ask(traced, found, self.studio.clock.now)
        assert sum(now.count for now in one.now) == listed.count == drawn.of
        told = listed.together, one.together.link if one.together else None
        assert all(link is None or (link.least, link.most, link.expected) == (
            drawn.least, drawn.most, drawn.expected) for link in told)


def _cones_and_lots(connection: Connection) -> list[Found]:
    cones = connection.execute(select(Cone.code).where(Cone.struck.is_(None))).scalars()
    lots = connection.execute(select(DyeLot.id).where(DyeLot.struck.is_(None))).scalars().all()
    return [*by_codes(connection, cones), *(lot_found(connection, lot) for lot in lots)]
