"""Shades, kits by their patterns, offers, reports of faults, recalls and stocktakes."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"

_ONE_SOURCE = (
    " + ".join(
        f"(CASE WHEN {kind} IS NULL THEN 0 ELSE 1 END)"
        for kind in ("cone", "yarn", "lot", "load", "bath", "fill", "supplier_lot")
    )
    + " = 1"
)
MOMENT = sa.Text().with_variant(sa.DateTime(timezone=True), "postgresql")


def upgrade() -> None:
    op.create_table(
        "kit_pattern",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("price", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_kit_pattern_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_kit_pattern_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_kit_pattern"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_kit_pattern_name",
        "kit_pattern",
        ["name"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "room_reading",
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.Column("fibre", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(kind = 'regain permille') = (fibre <> '')", name="ck_room_reading_regain_of_a_fibre"
        ),
        sa.CheckConstraint(
            "kind IN ('room decidegrees', 'room permille', 'regain permille')",
            name="ck_room_reading_kind",
        ),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_room_reading_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_room_reading_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_room_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_room_reading_kind", "room_reading", ["kind", "id"], unique=False)

    op.create_table(
        "kit_place",
        sa.Column("pattern", sa.Integer(), nullable=False),
        sa.Column("letter", sa.Text(), nullable=False),
        sa.Column("wanted", sa.Integer(), nullable=False),
        sa.Column("colourway", sa.Integer(), nullable=False),
        sa.Column("base", sa.Integer(), nullable=False),
        sa.Column("put_up", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("wanted > 0", name="ck_kit_place_wants_something"),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_kit_place_base"),
        sa.ForeignKeyConstraint(["colourway"], ["colourway.id"], name="fk_kit_place_colourway"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_kit_place_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["pattern"], ["kit_pattern.id"], name="fk_kit_place_pattern"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_kit_place_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_kit_place"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_kit_place_letter",
        "kit_place",
        ["pattern", "letter"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "stocktake",
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_stocktake_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["place"], ["plate.id"], name="fk_stocktake_place"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_stocktake_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_stocktake"),
        sqlite_strict=True,
    )
    op.create_index("ix_stocktake_place", "stocktake", ["place"], unique=False)

    op.create_table(
        "kit_substitute",
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("colourway", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["colourway"], ["colourway.id"], name="fk_kit_substitute_colourway"
        ),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_kit_substitute_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["place"], ["kit_place.id"], name="fk_kit_substitute_place"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_kit_substitute_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_kit_substitute"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_kit_substitute",
        "kit_substitute",
        ["place", "colourway"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "counted",
        sa.Column("stocktake", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=True),
        sa.Column("lot", sa.Integer(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("(yarn IS NULL) <> (lot IS NULL)", name="ck_counted_of_one_thing"),
        sa.CheckConstraint("count > 0", name="ck_counted_is_some"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_counted_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_counted_lot"),
        sa.ForeignKeyConstraint(["stocktake"], ["stocktake.id"], name="fk_counted_stocktake"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_counted_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_counted_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_counted"),
        sqlite_strict=True,
    )
    op.create_index("ix_counted_stocktake", "counted", ["stocktake"], unique=False)
    op.create_index("ix_counted_yarn", "counted", ["yarn"], unique=False)

    op.create_table(
        "grey_step",
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("against", sa.Integer(), nullable=True),
        sa.Column("scale", sa.Text(), nullable=False),
        sa.Column("half_steps", sa.Integer(), nullable=False),
        sa.Column("lamp", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("scale IN ('change', 'staining')", name="ck_grey_step_scale"),
        sa.CheckConstraint("half_steps BETWEEN 2 AND 10", name="ck_grey_step_is_a_step"),
        sa.ForeignKeyConstraint(["against"], ["dye_lot.id"], name="fk_grey_step_against"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_grey_step_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_grey_step_lot"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_grey_step_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_grey_step"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_grey_step_against",
        "grey_step",
        ["against"],
        unique=False,
        sqlite_where=sa.text("against IS NOT NULL"),
        postgresql_where=sa.text("against IS NOT NULL"),
    )
    op.create_index("ix_grey_step_lot", "grey_step", ["lot"], unique=False)

    op.create_table(
        "offer",
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("wanted", sa.Integer(), nullable=False),
        sa.Column("way", sa.Text(), nullable=False),
        sa.Column("other_lot", sa.Integer(), nullable=True),
        sa.Column("centi_delta", sa.Integer(), nullable=True),
        sa.Column("answer", sa.Text(), nullable=False),
        sa.Column("customer", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "answer IN ('taken', 'thinks it over', 'declined')", name="ck_offer_answer"
        ),
        sa.CheckConstraint(
            "way IN ('same lot', 'sister lot', 'nearest lot', 'blend', 'other design', 'kit substitute', 'redye', 'all new')",
            name="ck_offer_way",
        ),
        sa.CheckConstraint("wanted > 0", name="ck_offer_wants_something"),
        sa.ForeignKeyConstraint(["customer"], ["customer.id"], name="fk_offer_customer"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_offer_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_offer_lot"),
        sa.ForeignKeyConstraint(["other_lot"], ["dye_lot.id"], name="fk_offer_other_lot"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_offer_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_offer"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_offer_customer",
        "offer",
        ["customer"],
        unique=False,
        sqlite_where=sa.text("customer IS NOT NULL"),
        postgresql_where=sa.text("customer IS NOT NULL"),
    )
    op.create_index("ix_offer_lot", "offer", ["lot"], unique=False)

    op.create_table(
        "report",
        sa.Column("fault", sa.Text(), nullable=False),
        sa.Column("where_on", sa.Text(), nullable=False),
        sa.Column("repeat_mm", sa.Integer(), nullable=True),
        sa.Column("seen_at", sa.Text(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("customer", sa.Integer(), nullable=True),
        sa.Column("lot", sa.Integer(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(where_on = 'repeats') = (repeat_mm IS NOT NULL)", name="ck_report_repeats_at"
        ),
        sa.CheckConstraint(
            "fault IN ('streak', 'stain', 'bleed', 'short', 'knot', 'felt', 'hole', 'off shade', 'smell', 'thin place', 'tie mark', 'other')",
            name="ck_report_fault",
        ),
        sa.CheckConstraint(
            "seen_at IN ('inspection', 'tag table', 'return', 'counter', 'stocktake', 'customer')",
            name="ck_report_seen_at",
        ),
        sa.CheckConstraint(
            "where_on IN ('whole', 'one place', 'repeats', 'one end', 'not said')",
            name="ck_report_where_on",
        ),
        sa.CheckConstraint("repeat_mm IS NULL OR repeat_mm > 0", name="ck_report_is_a_distance"),
        sa.ForeignKeyConstraint(["customer"], ["customer.id"], name="fk_report_customer"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_report_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_report_lot"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_report_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_report"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_report_customer",
        "report",
        ["customer"],
        unique=False,
        sqlite_where=sa.text("customer IS NOT NULL"),
        postgresql_where=sa.text("customer IS NOT NULL"),
    )
    op.create_index(
        "ix_report_lot",
        "report",
        ["lot"],
        unique=False,
        sqlite_where=sa.text("lot IS NOT NULL"),
        postgresql_where=sa.text("lot IS NOT NULL"),
    )

    op.create_table(
        "shade_reading",
        sa.Column("lot", sa.Integer(), nullable=True),
        sa.Column("colourway", sa.Integer(), nullable=True),
        sa.Column("base", sa.Integer(), nullable=True),
        sa.Column("cone", sa.Integer(), nullable=True),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("l_milli", sa.Integer(), nullable=False),
        sa.Column("a_milli", sa.Integer(), nullable=False),
        sa.Column("b_milli", sa.Integer(), nullable=False),
        sa.Column("lamp", sa.Text(), nullable=False),
        sa.Column("observer", sa.Integer(), nullable=False),
        sa.Column("wet", sa.Integer(), nullable=False),
        sa.Column("readings", sa.Integer(), nullable=False),
        sa.Column("spread_milli", sa.Integer(), nullable=True),
        sa.Column("came", sa.Text(), nullable=False),
        sa.Column("instrument", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("came IN ('typed', 'csv', 'cgats')", name="ck_shade_reading_came"),
        sa.CheckConstraint(
            "(CASE WHEN lot IS NULL THEN 0 ELSE 1 END) + (CASE WHEN colourway IS NULL THEN 0 ELSE 1 END) + (CASE WHEN cone IS NULL THEN 0 ELSE 1 END) = 1",
            name="ck_shade_reading_of_one_thing",
        ),
        sa.CheckConstraint(
            "(colourway IS NULL) = (base IS NULL)", name="ck_shade_reading_standard_has_a_base"
        ),
        sa.CheckConstraint("readings > 0", name="ck_shade_reading_was_read"),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_shade_reading_base"),
        sa.ForeignKeyConstraint(["colourway"], ["colourway.id"], name="fk_shade_reading_colourway"),
        sa.ForeignKeyConstraint(["cone"], ["cone.id"], name="fk_shade_reading_cone"),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_shade_reading_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_shade_reading_lot"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_shade_reading_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_shade_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_shade_reading_cone", "shade_reading", ["cone"], unique=False)
    op.create_index("ix_shade_reading_lot", "shade_reading", ["lot"], unique=False)
    op.create_index(
        "ix_shade_reading_standard", "shade_reading", ["colourway", "base"], unique=False
    )

    op.create_table(
        "tags_in_hand",
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("count >= 0", name="ck_tags_in_hand_is_a_count"),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_tags_in_hand_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_tags_in_hand_lot"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_tags_in_hand_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_tags_in_hand"),
        sqlite_strict=True,
    )
    op.create_index("ix_tags_in_hand_lot", "tags_in_hand", ["lot"], unique=False)

    op.create_table(
        "chosen_swatch",
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("swatch", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_chosen_swatch_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_chosen_swatch_lot"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_chosen_swatch_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_chosen_swatch"),
        sqlite_strict=True,
    )
    op.create_index("ix_chosen_swatch_lot", "chosen_swatch", ["lot"], unique=False)

    op.create_table(
        "verdict",
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("verdict", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "verdict <> 'one-off' OR name <> ''", name="ck_verdict_one_off_has_a_name"
        ),
        sa.CheckConstraint(
            "verdict IN ('standard', 'sister group', 'one-off', 'seconds', 'hold')",
            name="ck_verdict_verdict",
        ),
        sa.CheckConstraint(
            "verdict NOT IN ('seconds', 'hold') OR why <> ''", name="ck_verdict_says_why"
        ),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_verdict_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_verdict_lot"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_verdict_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_verdict"),
        sqlite_strict=True,
    )
    op.create_index("ix_verdict_lot", "verdict", ["lot"], unique=False)

    op.create_table(
        "cause",
        sa.Column("report", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("thing", sa.Integer(), nullable=True),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "kind IN ('cone', 'fill', 'bath', 'lot', 'load', 'winder-day', 'not found')",
            name="ck_cause_kind",
        ),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_cause_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["report"], ["report.id"], name="fk_cause_report"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_cause_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_cause"),
        sqlite_strict=True,
    )
    op.create_index("ix_cause_report", "cause", ["report"], unique=False)

    op.create_table(
        "line_agreed",
        sa.Column("line", sa.Integer(), nullable=False),
        sa.Column("how", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "how IN ('customer agreed', 'rows card put in')", name="ck_line_agreed_how"
        ),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_line_agreed_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["line"], ["order_line.id"], name="fk_line_agreed_line"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_line_agreed_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_line_agreed"),
        sqlite_strict=True,
    )
    op.create_index("ix_line_agreed_line", "line_agreed", ["line"], unique=False)

    op.create_table(
        "photo",
        sa.Column("report", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("picture", sa.LargeBinary(), nullable=True),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_photo_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["report"], ["report.id"], name="fk_photo_report"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_photo_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_photo"),
        sqlite_strict=True,
    )
    op.create_index("ix_photo_report", "photo", ["report"], unique=False)

    op.create_table(
        "recall",
        sa.Column("practice", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("thing", sa.Integer(), nullable=False),
        sa.Column("hold", sa.Integer(), nullable=True),
        sa.Column("began", MOMENT, nullable=False),
        sa.Column("skeins", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("accounted", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("practice IN (0, 1)", name="ck_recall_earnest_or_practice"),
        sa.CheckConstraint("skeins >= 0 AND mg >= 0", name="ck_recall_is_an_amount"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_recall_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["hold"], ["hold.id"], name="fk_recall_hold"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_recall_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_recall"),
        sqlite_strict=True,
    )
    op.create_table(
        "sighting",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("report", sa.Integer(), nullable=True),
        sa.Column("faulty", sa.Integer(), nullable=False),
        sa.Column("seen_at", sa.Text(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_sighting_basis",
        ),
        sa.CheckConstraint(
            "seen_at IN ('inspection', 'tag table', 'return', 'counter', 'stocktake', 'customer')",
            name="ck_sighting_seen_at",
        ),
        sa.CheckConstraint(
            "faulty = 0 OR report IS NOT NULL", name="ck_sighting_fault_is_reported"
        ),
        sa.CheckConstraint("faulty IN (0, 1)", name="ck_sighting_good_or_faulty"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_sighting_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["report"], ["report.id"], name="fk_sighting_report"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_sighting_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_sighting_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_sighting"),
        sqlite_strict=True,
    )
    op.create_index("ix_sighting_report", "sighting", ["report"], unique=False)
    op.create_index("ix_sighting_yarn", "sighting", ["yarn"], unique=False)

    with op.batch_alter_table("hold", table_kwargs={"sqlite_strict": True}) as hold:
        hold.add_column(sa.Column("supplier_lot", sa.Integer(), nullable=True))
        hold.create_foreign_key("fk_hold_supplier_lot", "supplier_lot", ["supplier_lot"], ["id"])
        hold.drop_constraint("ck_hold_one_source", type_="check")
        hold.create_check_constraint("ck_hold_one_source", _ONE_SOURCE)
    with op.batch_alter_table("kit", table_kwargs={"sqlite_strict": True}) as kit:
        kit.add_column(sa.Column("pattern", sa.Integer(), nullable=True))
        kit.create_foreign_key("fk_kit_pattern", "kit_pattern", ["pattern"], ["id"])
    op.create_index("ix_kit_pattern", "kit", ["pattern"], unique=False)
    op.create_index("ix_cone_supplier_lot", "cone", ["supplier_lot"], unique=False)
    op.create_index("ix_fill_part_supplier_lot", "fill_part", ["supplier_lot"], unique=False)
