"""The dye bench: recipes with their components, weigh-outs, stocks, bottles and readings."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"

_ONE_SOURCE = " + ".join(
    f"(CASE WHEN {kind} IS NULL THEN 0 ELSE 1 END)"
    for kind in ("cone", "yarn", "lot", "load", "bath", "fill")
) + " = 1"
MOMENT = sa.Text().with_variant(sa.DateTime(timezone=True), "postgresql")


def upgrade() -> None:
    op.create_table(
        "fill_reading",
        sa.Column("fill", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "kind IN ('weighed mg', 'strength permille')", name="ck_fill_reading_kind"
        ),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_fill_reading_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["fill"], ["fill.id"], name="fk_fill_reading_fill"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_fill_reading_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_fill_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_fill_reading_fill", "fill_reading", ["fill"], unique=False)

    op.create_table(
        "step",
        sa.Column("recipe_version", sa.Integer(), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("decidegrees", sa.Integer(), nullable=True),
        sa.Column("minutes", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_step_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_step_recipe_version"
        ),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_step_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_step"),
        sqlite_strict=True,
    )
    op.create_index("ix_step_recipe_version", "step", ["recipe_version", "place"], unique=False)

    op.create_table(
        "weighing",
        sa.Column("purpose", sa.Text(), nullable=False),
        sa.Column("recipe_version", sa.Integer(), nullable=True),
        sa.Column("dry_mg", sa.Integer(), nullable=True),
        sa.Column("dry_basis", sa.Text(), nullable=False),
        sa.Column("pick_up_permille", sa.Integer(), nullable=True),
        sa.Column("bath_ml", sa.Integer(), nullable=True),
        sa.Column("closed", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(dry_basis = 'weighed damp') = (pick_up_permille IS NOT NULL)",
            name="ck_weighing_damp_has_its_pick_up",
        ),
        sa.CheckConstraint(
            "(purpose = 'stock') = (recipe_version IS NULL)", name="ck_weighing_has_its_recipe"
        ),
        sa.CheckConstraint(
            "dry_basis IN ('wound', 'weighed dry', 'weighed damp')", name="ck_weighing_dry_basis"
        ),
        sa.CheckConstraint("purpose IN ('bath', 'bottles', 'stock')", name="ck_weighing_purpose"),
        sa.ForeignKeyConstraint(
            ["closed"],
            ["deed.seq"],
            name="fk_weighing_closed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_weighing_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_weighing_recipe_version"
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_weighing_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_weighing"),
        sqlite_strict=True,
    )
    op.create_index("ix_weighing_recipe_version", "weighing", ["recipe_version"], unique=False)

    op.create_table(
        "zone",
        sa.Column("recipe_version", sa.Integer(), nullable=False),
        sa.Column("letter", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("share_permille", sa.Integer(), nullable=False),
        sa.Column("ml_per_100_g", sa.Integer(), nullable=False),
        sa.Column("swatch", sa.Text(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("ml_per_100_g >= 0", name="ck_zone_pours_something"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_zone_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_zone_recipe_version"
        ),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_zone_struck", initially="DEFERRED", deferrable=True
        ),
        sa.PrimaryKeyConstraint("id", name="pk_zone"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_zone_letter",
        "zone",
        ["recipe_version", "letter"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "bottle_set",
        sa.Column("recipe_version", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("after", sa.Integer(), nullable=True),
        sa.Column("refilled", sa.Integer(), nullable=True),
        sa.Column("weighing", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["after"], ["bottle_set.id"], name="fk_bottle_set_after"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_bottle_set_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_bottle_set_recipe_version"
        ),
        sa.ForeignKeyConstraint(["refilled"], ["zone.id"], name="fk_bottle_set_refilled"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_bottle_set_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["weighing"], ["weighing.id"], name="fk_bottle_set_weighing"),
        sa.PrimaryKeyConstraint("id", name="pk_bottle_set"),
        sa.UniqueConstraint("recipe_version", "number", name="uq_bottle_set_recipe_version_number"),
        sqlite_strict=True,
    )
    op.create_index("ix_bottle_set_after", "bottle_set", ["after"], unique=False)
    op.create_index("ix_bottle_set_weighing", "bottle_set", ["weighing"], unique=False)
    op.create_table(
        "component",
        sa.Column("recipe_version", sa.Integer(), nullable=False),
        sa.Column("zone", sa.Integer(), nullable=True),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("substance", sa.Text(), nullable=False),
        sa.Column("unit", sa.Text(), nullable=False),
        sa.Column("amount", sa.Integer(), nullable=False),
        sa.Column("form", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(unit = 'bottle') = (zone IS NOT NULL)", name="ck_component_bottle_has_a_zone"
        ),
        sa.CheckConstraint("role IN ('dye', 'assistant')", name="ck_component_role"),
        sa.CheckConstraint("unit IN ('owf', 'bath', 'bottle')", name="ck_component_unit"),
        sa.CheckConstraint("amount > 0", name="ck_component_is_some"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_component_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_component_recipe_version"
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_component_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["zone"], ["zone.id"], name="fk_component_zone"),
        sa.PrimaryKeyConstraint("id", name="pk_component"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_component_recipe_version", "component", ["recipe_version", "place"], unique=False
    )

    op.create_table(
        "load_reading",
        sa.Column("load", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "kind IN ('rinse', 'bleed', 'room decidegrees', 'room permille')",
            name="ck_load_reading_kind",
        ),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_load_reading_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["load"], ["load.id"], name="fk_load_reading_load"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_load_reading_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_load_reading_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_load_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_load_reading_load", "load_reading", ["load"], unique=False)
    op.create_index("ix_load_reading_yarn", "load_reading", ["yarn"], unique=False)

    op.create_table(
        "stock",
        sa.Column("fill", sa.Integer(), nullable=True),
        sa.Column("weighing", sa.Integer(), nullable=True),
        sa.Column("from_stock", sa.Integer(), nullable=True),
        sa.Column("plate", sa.Integer(), nullable=True),
        sa.Column("mg_per_l", sa.Integer(), nullable=False),
        sa.Column("ml", sa.Integer(), nullable=False),
        sa.Column("life_days", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("mg_per_l > 0 AND ml > 0", name="ck_stock_is_a_solution"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_stock_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["fill"], ["fill.id"], name="fk_stock_fill"),
        sa.ForeignKeyConstraint(["from_stock"], ["stock.id"], name="fk_stock_from_stock"),
        sa.ForeignKeyConstraint(["plate"], ["plate.id"], name="fk_stock_plate"),
        sa.ForeignKeyConstraint(
            ["struck"], ["deed.seq"], name="fk_stock_struck", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["weighing"], ["weighing.id"], name="fk_stock_weighing"),
        sa.PrimaryKeyConstraint("id", name="pk_stock"),
        sqlite_strict=True,
    )
    op.create_index("ix_stock_fill", "stock", ["fill"], unique=False)

    op.create_table(
        "weighed_for",
        sa.Column("weighing", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_weighed_for_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_weighed_for_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["weighing"], ["weighing.id"], name="fk_weighed_for_weighing"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_weighed_for_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_weighed_for"),
        sqlite_strict=True,
    )
    op.create_index("ix_weighed_for_yarn", "weighed_for", ["yarn"], unique=False)
    op.create_index(
        "uq_weighed_for_once",
        "weighed_for",
        ["weighing", "yarn"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "bath_reading",
        sa.Column("bath", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "kind IN ('pH centi', 'decidegrees', 'clearness', 'step done', 'water ml')",
            name="ck_bath_reading_kind",
        ),
        sa.ForeignKeyConstraint(["bath"], ["bath.id"], name="fk_bath_reading_bath"),
        sa.ForeignKeyConstraint(
            ["deed"],
            ["deed.seq"],
            name="fk_bath_reading_deed",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_bath_reading_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.PrimaryKeyConstraint("id", name="pk_bath_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_bath_reading_bath", "bath_reading", ["bath"], unique=False)

    op.create_table(
        "on_board",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("board", sa.Integer(), nullable=True),
        sa.Column("bottle_set", sa.Integer(), nullable=False),
        sa.Column("bath", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["bath"], ["bath.id"], name="fk_on_board_bath"),
        sa.ForeignKeyConstraint(["board"], ["plate.id"], name="fk_on_board_board"),
        sa.ForeignKeyConstraint(["bottle_set"], ["bottle_set.id"], name="fk_on_board_bottle_set"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_on_board_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_on_board_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_on_board_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_on_board"),
        sqlite_strict=True,
    )
    op.create_index("ix_on_board_bath", "on_board", ["bath"], unique=False)
    op.create_index("ix_on_board_board", "on_board", ["board"], unique=False)
    op.create_index("ix_on_board_bottle_set", "on_board", ["bottle_set"], unique=False)
    op.create_index("ix_on_board_yarn", "on_board", ["yarn"], unique=False)

    op.create_table(
        "weigh_line",
        sa.Column("weighing", sa.Integer(), nullable=True),
        sa.Column("bath", sa.Integer(), nullable=True),
        sa.Column("component", sa.Integer(), nullable=True),
        sa.Column("fill", sa.Integer(), nullable=True),
        sa.Column("stock", sa.Integer(), nullable=True),
        sa.Column("balance", sa.Integer(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("target_mg", sa.Integer(), nullable=True),
        sa.Column("target_ul", sa.Integer(), nullable=True),
        sa.Column("mg", sa.Integer(), nullable=True),
        sa.Column("ul", sa.Integer(), nullable=True),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("taken", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(kind = 'addition') = (bath IS NOT NULL)", name="ck_weigh_line_addition_at_the_pot"
        ),
        sa.CheckConstraint(
            "kind IN ('taken', 'instead of', 'tipped back', 'thrown', 'addition')",
            name="ck_weigh_line_kind",
        ),
        sa.CheckConstraint(
            "(weighing IS NULL) <> (bath IS NULL)", name="ck_weigh_line_for_one_thing"
        ),
        sa.CheckConstraint("fill IS NULL OR stock IS NULL", name="ck_weigh_line_from_one_source"),
        sa.ForeignKeyConstraint(["balance"], ["plate.id"], name="fk_weigh_line_balance"),
        sa.ForeignKeyConstraint(["bath"], ["bath.id"], name="fk_weigh_line_bath"),
        sa.ForeignKeyConstraint(["component"], ["component.id"], name="fk_weigh_line_component"),
        sa.ForeignKeyConstraint(
            ["deed"], ["deed.seq"], name="fk_weigh_line_deed", initially="DEFERRED", deferrable=True
        ),
        sa.ForeignKeyConstraint(["fill"], ["fill.id"], name="fk_weigh_line_fill"),
        sa.ForeignKeyConstraint(["stock"], ["stock.id"], name="fk_weigh_line_stock"),
        sa.ForeignKeyConstraint(
            ["struck"],
            ["deed.seq"],
            name="fk_weigh_line_struck",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(
            ["taken"],
            ["deed.seq"],
            name="fk_weigh_line_taken",
            initially="DEFERRED",
            deferrable=True,
        ),
        sa.ForeignKeyConstraint(["weighing"], ["weighing.id"], name="fk_weigh_line_weighing"),
        sa.PrimaryKeyConstraint("id", name="pk_weigh_line"),
        sqlite_strict=True,
    )
    op.create_index("ix_weigh_line_bath", "weigh_line", ["bath"], unique=False)
    op.create_index("ix_weigh_line_fill", "weigh_line", ["fill"], unique=False)
    op.create_index("ix_weigh_line_stock", "weigh_line", ["stock"], unique=False)
    op.create_index("ix_weigh_line_weighing", "weigh_line", ["weighing"], unique=False)

    with op.batch_alter_table("bath", table_kwargs={"sqlite_strict": True}) as bath:
        bath.add_column(sa.Column("weighing", sa.Integer(), nullable=True))
        bath.create_foreign_key("fk_bath_weighing", "weighing", ["weighing"], ["id"])
    op.create_index("ix_bath_weighing", "bath", ["weighing"], unique=False)
    op.add_column("fill", sa.Column("expires", MOMENT, nullable=True))
    op.add_column("jar", sa.Column("reorder_mg", sa.Integer(), nullable=True))
    op.add_column("recipe_version", sa.Column("base_class", sa.Text(), nullable=True))
    op.add_column("recipe_version", sa.Column("liquor_tenths", sa.Integer(), nullable=True))
    with op.batch_alter_table("recipe_version", table_kwargs={"sqlite_strict": True}) as version:
        version.add_column(sa.Column("look", sa.Text(), nullable=True))
        version.create_check_constraint(
            "ck_recipe_version_look", "look IN ('solid', 'semi-solid', 'zones', 'speckle')"
        )
    op.create_index("ix_bath_recipe_version", "bath", ["recipe_version"], unique=False)
    op.create_index("ix_fill_part_from_fill", "fill_part", ["from_fill"], unique=False)
    with op.batch_alter_table("hold", table_kwargs={"sqlite_strict": True}) as hold:
        hold.add_column(sa.Column("bath", sa.Integer(), nullable=True))
        hold.add_column(sa.Column("fill", sa.Integer(), nullable=True))
        hold.create_foreign_key("fk_hold_bath", "bath", ["bath"], ["id"])
        hold.create_foreign_key("fk_hold_fill", "fill", ["fill"], ["id"])
        hold.drop_constraint("ck_hold_one_source", type_="check")
        hold.create_check_constraint("ck_hold_one_source", _ONE_SOURCE)
    put_by_now = sa.text("state = 'put by' AND until IS NULL AND struck IS NULL")
    op.create_index(
        "ix_whereabouts_put_by",
        "whereabouts",
        ["ends"],
        unique=False,
        sqlite_where=put_by_now,
        postgresql_where=put_by_now,
    )
    op.create_index(
        "ix_whereabouts_kit",
        "whereabouts",
        ["kit"],
        unique=False,
        sqlite_where=sa.text("kit IS NOT NULL"),
        postgresql_where=sa.text("kit IS NOT NULL"),
    )
