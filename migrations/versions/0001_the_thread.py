"""the thread."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

MOMENT = sa.Text().with_variant(sa.DateTime(timezone=True), "postgresql")
STAYS = {"plate_stay": "plate", "whereabouts": "yarn", "tag_on": "yarn", "on_bundle": "yarn"}


def by_deed(column: str, name: str) -> sa.ForeignKeyConstraint:
    """Points at the deed's own row."""
    return sa.ForeignKeyConstraint(
        [column], ["deed.seq"], name=name, initially="DEFERRED", deferrable=True
    )


def keep_stays_apart(table: str, key: str) -> None:
    """Stays of one thing never overlap."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute(
            f"""CREATE TRIGGER {table}_apart BEFORE INSERT ON {table} WHEN EXISTS (
            SELECT 1 FROM {table} o WHERE o.{key} = NEW.{key} AND o.struck IS NULL
            AND o.since < coalesce(NEW.until, '9') AND coalesce(o.until, '9') > NEW.since)
            BEGIN SELECT RAISE(ABORT, 'two stays of one thing overlap'); END"""
        )
        return
    op.execute("CREATE EXTENSION IF NOT EXISTS btree_gist")
    op.execute(
        f"""ALTER TABLE {table} ADD CONSTRAINT {table}_apart EXCLUDE USING gist
        ({key} WITH =, tstzrange(since, until) WITH &&) WHERE (struck IS NULL)
        DEFERRABLE INITIALLY IMMEDIATE"""
    )


def upgrade() -> None:
    op.create_table(
        "deed",
        sa.Column("seq", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("happened", MOMENT, nullable=False),
        sa.Column("written", MOMENT, nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("station", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("token", sa.Text(), nullable=False),
        sa.Column("undoes", sa.Integer(), nullable=True),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("hash", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["undoes"], ["deed.seq"], name="fk_deed_undoes"),
        sa.PrimaryKeyConstraint("seq", name="pk_deed"),
        sa.UniqueConstraint("hash", name="uq_deed_hash"),
        sa.UniqueConstraint("token", name="uq_deed_token"),
        sa.UniqueConstraint("undoes", name="uq_deed_undoes"),
        sqlite_strict=True,
    )
    op.create_table(
        "head",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("seq", sa.Integer(), nullable=False),
        sa.Column("written", MOMENT, nullable=False),
        sa.Column("hash", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_head"),
        sqlite_strict=True,
    )
    op.create_table(
        "base",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_base_deed"),
        by_deed("struck", "fk_base_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_base"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_base_name",
        "base",
        ["name"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "bundle",
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_bundle_deed"),
        by_deed("struck", "fk_bundle_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_bundle"),
        sqlite_strict=True,
    )
    op.create_table(
        "colourway",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("swatch", sa.Text(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_colourway_deed"),
        by_deed("struck", "fk_colourway_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_colourway"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_colourway_name",
        "colourway",
        ["name"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "customer",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_customer_deed"),
        by_deed("struck", "fk_customer_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_customer"),
        sqlite_strict=True,
    )
    op.create_table(
        "jar",
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("dye", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_jar_deed"),
        by_deed("struck", "fk_jar_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_jar"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_jar_code",
        "jar",
        ["code"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "kit",
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_kit_deed"),
        by_deed("struck", "fk_kit_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_kit"),
        sa.UniqueConstraint("code", name="uq_kit_code"),
        sqlite_strict=True,
    )
    op.create_table(
        "person",
        sa.Column("initials", sa.Text(), nullable=False),
        sa.Column("left", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_person_deed"),
        by_deed("left", "fk_person_left"),
        by_deed("struck", "fk_person_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_person"),
        sa.UniqueConstraint("initials", name="uq_person_initials"),
        sqlite_strict=True,
    )
    op.create_table(
        "plate",
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_plate_deed"),
        by_deed("struck", "fk_plate_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_plate"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_plate_code",
        "plate",
        ["code"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "print_sheet",
        sa.Column("stock", sa.Text(), nullable=False),
        sa.Column("first_cell", sa.Integer(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("first_cell > 0", name="ck_print_sheet_begins_at_a_cell"),
        by_deed("deed", "fk_print_sheet_deed"),
        by_deed("struck", "fk_print_sheet_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_print_sheet"),
        sqlite_strict=True,
    )
    op.create_table(
        "setting",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_setting_deed"),
        by_deed("struck", "fk_setting_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_setting"),
        sqlite_strict=True,
    )
    op.create_index("ix_setting_key", "setting", ["key", "id"], unique=False)

    op.create_table(
        "supplier",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_supplier_deed"),
        by_deed("struck", "fk_supplier_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_supplier"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_supplier_name",
        "supplier",
        ["name"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "touched",
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("tbl", sa.Text(), nullable=False),
        sa.Column("row", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["deed"], ["deed.seq"], name="fk_touched_deed"),
        sa.PrimaryKeyConstraint("deed", "tbl", "row", name="pk_touched"),
        sqlite_strict=True,
    )
    op.create_index("ix_touched_row", "touched", ["tbl", "row", "deed"], unique=False)

    op.create_table(
        "base_version",
        sa.Column("base", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("fibre", sa.Text(), nullable=False),
        sa.Column("millitex", sa.Integer(), nullable=False),
        sa.Column("oil_permille", sa.Integer(), nullable=False),
        sa.Column("relax_permille", sa.Integer(), nullable=False),
        sa.Column("regain_permille", sa.Integer(), nullable=False),
        sa.Column("knit", sa.Text(), nullable=False),
        sa.Column("care", sa.Text(), nullable=False),
        sa.Column("origin", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("millitex > 0", name="ck_base_version_has_a_count"),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_base_version_base"),
        by_deed("deed", "fk_base_version_deed"),
        by_deed("struck", "fk_base_version_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_base_version"),
        sa.UniqueConstraint("base", "number", name="uq_base_version_base_number"),
        sqlite_strict=True,
    )
    op.create_table(
        "customer_order",
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("customer", sa.Integer(), nullable=True),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("placed", MOMENT, nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("channel IN ('shop', 'web', 'fair')", name="ck_customer_order_channel"),
        sa.ForeignKeyConstraint(["customer"], ["customer.id"], name="fk_customer_order_customer"),
        by_deed("deed", "fk_customer_order_deed"),
        by_deed("struck", "fk_customer_order_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_customer_order"),
        sqlite_strict=True,
    )
    op.create_index("ix_customer_order_customer", "customer_order", ["customer"], unique=False)
    op.create_index(
        "uq_customer_order_number",
        "customer_order",
        ["number"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "delivery",
        sa.Column("supplier", sa.Integer(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("note_no", sa.Text(), nullable=False),
        sa.Column("arrived", MOMENT, nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("kind IN ('delivery', 'opening stock')", name="ck_delivery_kind"),
        by_deed("deed", "fk_delivery_deed"),
        by_deed("struck", "fk_delivery_struck"),
        sa.ForeignKeyConstraint(["supplier"], ["supplier.id"], name="fk_delivery_supplier"),
        sa.PrimaryKeyConstraint("id", name="pk_delivery"),
        sqlite_strict=True,
    )
    op.create_table(
        "fill",
        sa.Column("jar", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("strength_permille", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("mg > 0", name="ck_fill_holds_something"),
        by_deed("deed", "fk_fill_deed"),
        sa.ForeignKeyConstraint(["jar"], ["jar.id"], name="fk_fill_jar"),
        by_deed("struck", "fk_fill_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_fill"),
        sa.UniqueConstraint("jar", "number", name="uq_fill_jar_number"),
        sqlite_strict=True,
    )
    op.create_table(
        "load",
        sa.Column("step", sa.Text(), nullable=False),
        sa.Column("plate", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "step IN ('soak', 'wash', 'spin', 'rail', 'steamer')", name="ck_load_step"
        ),
        by_deed("deed", "fk_load_deed"),
        sa.ForeignKeyConstraint(["plate"], ["plate.id"], name="fk_load_plate"),
        by_deed("struck", "fk_load_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_load"),
        sqlite_strict=True,
    )
    op.create_table(
        "personal",
        sa.Column("customer", sa.Integer(), nullable=True),
        sa.Column("person", sa.Integer(), nullable=True),
        sa.Column("field", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=True),
        sa.Column("salt", sa.Text(), nullable=True),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("(customer IS NULL) <> (person IS NULL)", name="ck_personal_about_one"),
        sa.CheckConstraint("(value IS NULL) = (salt IS NULL)", name="ck_personal_erased_together"),
        sa.ForeignKeyConstraint(["customer"], ["customer.id"], name="fk_personal_customer"),
        by_deed("deed", "fk_personal_deed"),
        sa.ForeignKeyConstraint(["person"], ["person.id"], name="fk_personal_person"),
        by_deed("struck", "fk_personal_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_personal"),
        sqlite_strict=True,
    )
    op.create_index("ix_personal_customer", "personal", ["customer"], unique=False)
    op.create_index("ix_personal_person", "personal", ["person"], unique=False)

    op.create_table(
        "plate_stay",
        sa.Column("plate", sa.Integer(), nullable=False),
        sa.Column("bundle", sa.Integer(), nullable=False),
        sa.Column("since", MOMENT, nullable=False),
        sa.Column("until", MOMENT, nullable=True),
        sa.Column("ended_by", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "until IS NULL OR until >= since", name="ck_plate_stay_ends_after_it_began"
        ),
        sa.ForeignKeyConstraint(["bundle"], ["bundle.id"], name="fk_plate_stay_bundle"),
        by_deed("deed", "fk_plate_stay_deed"),
        by_deed("ended_by", "fk_plate_stay_ended_by"),
        sa.ForeignKeyConstraint(["plate"], ["plate.id"], name="fk_plate_stay_plate"),
        by_deed("struck", "fk_plate_stay_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_plate_stay"),
        sqlite_strict=True,
    )
    op.create_index("ix_plate_stay_bundle", "plate_stay", ["bundle"], unique=False)
    op.create_index("ix_plate_stay_when", "plate_stay", ["plate", "since"], unique=False)
    op.create_index(
        "uq_plate_holds_one",
        "plate_stay",
        ["plate"],
        unique=True,
        sqlite_where=sa.text("until IS NULL AND struck IS NULL"),
        postgresql_where=sa.text("until IS NULL AND struck IS NULL"),
    )

    op.create_table(
        "price",
        sa.Column("base", sa.Integer(), nullable=False),
        sa.Column("put_up", sa.Text(), nullable=False),
        sa.Column("price", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("price >= 0", name="ck_price_is_a_price"),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_price_base"),
        by_deed("deed", "fk_price_deed"),
        by_deed("struck", "fk_price_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_price"),
        sqlite_strict=True,
    )
    op.create_index("ix_price_base", "price", ["base", "put_up", "id"], unique=False)

    op.create_table(
        "recipe_version",
        sa.Column("colourway", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["colourway"], ["colourway.id"], name="fk_recipe_version_colourway"
        ),
        by_deed("deed", "fk_recipe_version_deed"),
        by_deed("struck", "fk_recipe_version_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_recipe_version"),
        sa.UniqueConstraint("colourway", "number", name="uq_recipe_version_colourway_number"),
        sqlite_strict=True,
    )
    op.create_table(
        "supplier_lot",
        sa.Column("supplier", sa.Integer(), nullable=False),
        sa.Column("said", sa.Text(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_supplier_lot_deed"),
        by_deed("struck", "fk_supplier_lot_struck"),
        sa.ForeignKeyConstraint(["supplier"], ["supplier.id"], name="fk_supplier_lot_supplier"),
        sa.PrimaryKeyConstraint("id", name="pk_supplier_lot"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_supplier_lot_said",
        "supplier_lot",
        ["supplier", "said"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "bath",
        sa.Column("plate", sa.Integer(), nullable=True),
        sa.Column("recipe_version", sa.Integer(), nullable=False),
        sa.Column("lifted", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_bath_deed"),
        by_deed("lifted", "fk_bath_lifted"),
        sa.ForeignKeyConstraint(["plate"], ["plate.id"], name="fk_bath_plate"),
        sa.ForeignKeyConstraint(
            ["recipe_version"], ["recipe_version.id"], name="fk_bath_recipe_version"
        ),
        by_deed("struck", "fk_bath_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_bath"),
        sqlite_strict=True,
    )
    op.create_index("ix_bath_plate", "bath", ["plate"], unique=False)

    op.create_table(
        "cone",
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("delivery", sa.Integer(), nullable=False),
        sa.Column("supplier_lot", sa.Integer(), nullable=False),
        sa.Column("base_version", sa.Integer(), nullable=False),
        sa.Column("gross_mg", sa.Integer(), nullable=False),
        sa.Column("tare_mg", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("tare_mg >= 0 AND tare_mg < gross_mg", name="ck_cone_weighs_something"),
        sa.ForeignKeyConstraint(["base_version"], ["base_version.id"], name="fk_cone_base_version"),
        by_deed("deed", "fk_cone_deed"),
        sa.ForeignKeyConstraint(["delivery"], ["delivery.id"], name="fk_cone_delivery"),
        by_deed("struck", "fk_cone_struck"),
        sa.ForeignKeyConstraint(["supplier_lot"], ["supplier_lot.id"], name="fk_cone_supplier_lot"),
        sa.PrimaryKeyConstraint("id", name="pk_cone"),
        sqlite_strict=True,
    )
    op.create_index("ix_cone_delivery", "cone", ["delivery"], unique=False)
    op.create_index(
        "uq_cone_code",
        "cone",
        ["code"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "fill_part",
        sa.Column("fill", sa.Integer(), nullable=False),
        sa.Column("supplier_lot", sa.Integer(), nullable=True),
        sa.Column("from_fill", sa.Integer(), nullable=True),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(supplier_lot IS NULL) <> (from_fill IS NULL)", name="ck_fill_part_one_source"
        ),
        sa.CheckConstraint("mg > 0", name="ck_fill_part_adds_something"),
        by_deed("deed", "fk_fill_part_deed"),
        sa.ForeignKeyConstraint(["fill"], ["fill.id"], name="fk_fill_part_fill"),
        sa.ForeignKeyConstraint(["from_fill"], ["fill.id"], name="fk_fill_part_from_fill"),
        by_deed("struck", "fk_fill_part_struck"),
        sa.ForeignKeyConstraint(
            ["supplier_lot"], ["supplier_lot.id"], name="fk_fill_part_supplier_lot"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_fill_part"),
        sqlite_strict=True,
    )
    op.create_index("ix_fill_part_fill", "fill_part", ["fill"], unique=False)

    op.create_table(
        "put_up",
        sa.Column("base_version", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("turns", sa.Integer(), nullable=False),
        sa.Column("reel_mm", sa.Integer(), nullable=False),
        sa.Column("nominal_mg", sa.Integer(), nullable=False),
        sa.Column("nominal_mm", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("turns > 0 AND reel_mm > 0", name="ck_put_up_is_wound"),
        sa.ForeignKeyConstraint(
            ["base_version"], ["base_version.id"], name="fk_put_up_base_version"
        ),
        by_deed("deed", "fk_put_up_deed"),
        by_deed("struck", "fk_put_up_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_put_up"),
        sa.UniqueConstraint("base_version", "name", name="uq_put_up_base_version_name"),
        sqlite_strict=True,
    )
    op.create_table(
        "yarn",
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("base", sa.Integer(), nullable=False),
        sa.Column("put_up", sa.Text(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("tie", sa.Text(), nullable=True),
        sa.Column("base_version", sa.Integer(), nullable=True),
        sa.Column("closed", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("kind <> 'skein' OR count = 1", name="ck_yarn_one_skein_a_row"),
        sa.CheckConstraint(
            "kind IN ('group', 'pile', 'skein', 'find', 'candidates')", name="ck_yarn_kind"
        ),
        sa.CheckConstraint("count > 0 AND mg >= 0", name="ck_yarn_is_something"),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_yarn_base"),
        sa.ForeignKeyConstraint(["base_version"], ["base_version.id"], name="fk_yarn_base_version"),
        by_deed("closed", "fk_yarn_closed"),
        by_deed("deed", "fk_yarn_deed"),
        by_deed("struck", "fk_yarn_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_yarn"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_yarn_in_work",
        "yarn",
        ["kind", "base"],
        unique=False,
        sqlite_where=sa.text("closed IS NULL AND struck IS NULL AND kind <> 'skein'"),
        postgresql_where=sa.text("closed IS NULL AND struck IS NULL AND kind <> 'skein'"),
    )
    op.create_table(
        "draw",
        sa.Column("cone", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("mm", sa.Integer(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_draw_basis",
        ),
        sa.CheckConstraint("mg > 0 AND mm > 0", name="ck_draw_draws_something"),
        sa.ForeignKeyConstraint(["cone"], ["cone.id"], name="fk_draw_cone"),
        by_deed("deed", "fk_draw_deed"),
        by_deed("struck", "fk_draw_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_draw_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_draw"),
        sqlite_strict=True,
    )
    op.create_index("ix_draw_cone", "draw", ["cone", "yarn", "struck"], unique=False)
    op.create_index("ix_draw_yarn", "draw", ["yarn"], unique=False)

    op.create_table(
        "dye_lot",
        sa.Column("code", sa.Text(), nullable=True),
        sa.Column("bath", sa.Integer(), nullable=True),
        sa.Column("base", sa.Integer(), nullable=False),
        sa.Column("colourway", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["base"], ["base.id"], name="fk_dye_lot_base"),
        sa.ForeignKeyConstraint(["bath"], ["bath.id"], name="fk_dye_lot_bath"),
        sa.ForeignKeyConstraint(["colourway"], ["colourway.id"], name="fk_dye_lot_colourway"),
        by_deed("deed", "fk_dye_lot_deed"),
        by_deed("struck", "fk_dye_lot_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_dye_lot"),
        sa.UniqueConstraint("bath", "base", name="uq_dye_lot_bath_base"),
        sa.UniqueConstraint("code", name="uq_dye_lot_code"),
        sqlite_strict=True,
    )
    op.create_table(
        "in_load",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("load", sa.Integer(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_in_load_basis",
        ),
        by_deed("deed", "fk_in_load_deed"),
        sa.ForeignKeyConstraint(["load"], ["load.id"], name="fk_in_load_load"),
        by_deed("struck", "fk_in_load_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_in_load_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_in_load"),
        sqlite_strict=True,
    )
    op.create_index("ix_in_load_load", "in_load", ["load", "yarn", "struck"], unique=False)
    op.create_index("ix_in_load_yarn", "in_load", ["yarn"], unique=False)
    op.create_index(
        "uq_in_load_once",
        "in_load",
        ["yarn", "load"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "on_bundle",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("bundle", sa.Integer(), nullable=False),
        sa.Column("since", MOMENT, nullable=False),
        sa.Column("until", MOMENT, nullable=True),
        sa.Column("ended_by", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "until IS NULL OR until >= since", name="ck_on_bundle_ends_after_it_began"
        ),
        sa.ForeignKeyConstraint(["bundle"], ["bundle.id"], name="fk_on_bundle_bundle"),
        by_deed("deed", "fk_on_bundle_deed"),
        by_deed("ended_by", "fk_on_bundle_ended_by"),
        by_deed("struck", "fk_on_bundle_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_on_bundle_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_on_bundle"),
        sqlite_strict=True,
    )
    op.create_index("ix_on_bundle_bundle", "on_bundle", ["bundle"], unique=False)
    op.create_index("ix_on_bundle_yarn", "on_bundle", ["yarn"], unique=False)

    op.create_table(
        "part",
        sa.Column("child", sa.Integer(), nullable=False),
        sa.Column("parent", sa.Integer(), nullable=False),
        sa.Column("took", sa.Integer(), nullable=False),
        sa.Column("gave", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_part_basis",
        ),
        sa.CheckConstraint("child <> parent", name="ck_part_not_of_itself"),
        sa.CheckConstraint("took >= 0 AND gave > 0 AND mg >= 0", name="ck_part_is_something"),
        sa.ForeignKeyConstraint(["child"], ["yarn.id"], name="fk_part_child"),
        by_deed("deed", "fk_part_deed"),
        sa.ForeignKeyConstraint(["parent"], ["yarn.id"], name="fk_part_parent"),
        by_deed("struck", "fk_part_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_part"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_part_down", "part", ["parent", "child", "struck", "took", "mg"], unique=False
    )
    op.create_index("ix_part_up", "part", ["child", "parent", "struck"], unique=False)
    op.create_index(
        "uq_part_once",
        "part",
        ["child", "parent"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "reading",
        sa.Column("cone", sa.Integer(), nullable=True),
        sa.Column("yarn", sa.Integer(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "kind IN ('wrap mg', 'moisture permille', 'ecru centi-delta', 'weight mg')",
            name="ck_reading_kind",
        ),
        sa.CheckConstraint("(cone IS NULL) <> (yarn IS NULL)", name="ck_reading_of_one_thing"),
        sa.ForeignKeyConstraint(["cone"], ["cone.id"], name="fk_reading_cone"),
        by_deed("deed", "fk_reading_deed"),
        by_deed("struck", "fk_reading_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_reading_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_reading"),
        sqlite_strict=True,
    )
    op.create_index("ix_reading_cone", "reading", ["cone"], unique=False)
    op.create_index("ix_reading_yarn", "reading", ["yarn"], unique=False)

    op.create_table(
        "second",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_second_deed"),
        by_deed("struck", "fk_second_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_second_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_second"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_second_yarn",
        "second",
        ["yarn"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "told",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("pool", sa.Integer(), nullable=False),
        sa.Column("parent", sa.Integer(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_told_basis",
        ),
        sa.CheckConstraint("count > 0", name="ck_told_tells_of_some"),
        by_deed("deed", "fk_told_deed"),
        sa.ForeignKeyConstraint(["parent"], ["yarn.id"], name="fk_told_parent"),
        sa.ForeignKeyConstraint(["pool"], ["yarn.id"], name="fk_told_pool"),
        by_deed("struck", "fk_told_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_told_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_told"),
        sqlite_strict=True,
    )
    op.create_index("ix_told_pool", "told", ["pool"], unique=False)
    op.create_index(
        "uq_told_once",
        "told",
        ["yarn", "pool"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "waste",
        sa.Column("cone", sa.Integer(), nullable=True),
        sa.Column("yarn", sa.Integer(), nullable=True),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("(cone IS NULL) <> (yarn IS NULL)", name="ck_waste_of_one_thing"),
        sa.CheckConstraint("mg > 0", name="ck_waste_weighs_something"),
        sa.ForeignKeyConstraint(["cone"], ["cone.id"], name="fk_waste_cone"),
        by_deed("deed", "fk_waste_deed"),
        by_deed("struck", "fk_waste_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_waste_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_waste"),
        sqlite_strict=True,
    )
    op.create_index("ix_waste_cone", "waste", ["cone"], unique=False)
    op.create_index("ix_waste_yarn", "waste", ["yarn", "mg", "struck"], unique=False)

    op.create_table(
        "hold",
        sa.Column("cone", sa.Integer(), nullable=True),
        sa.Column("yarn", sa.Integer(), nullable=True),
        sa.Column("lot", sa.Integer(), nullable=True),
        sa.Column("load", sa.Integer(), nullable=True),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("lifted", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(CASE WHEN cone IS NULL THEN 0 ELSE 1 END) + (CASE WHEN yarn IS NULL THEN 0 ELSE 1 END) + (CASE WHEN lot IS NULL THEN 0 ELSE 1 END) + (CASE WHEN load IS NULL THEN 0 ELSE 1 END) = 1",
            name="ck_hold_one_source",
        ),
        sa.ForeignKeyConstraint(["cone"], ["cone.id"], name="fk_hold_cone"),
        by_deed("deed", "fk_hold_deed"),
        by_deed("lifted", "fk_hold_lifted"),
        sa.ForeignKeyConstraint(["load"], ["load.id"], name="fk_hold_load"),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_hold_lot"),
        by_deed("struck", "fk_hold_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_hold_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_hold"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_hold_live",
        "hold",
        ["id"],
        unique=False,
        sqlite_where=sa.text("lifted IS NULL AND struck IS NULL"),
        postgresql_where=sa.text("lifted IS NULL AND struck IS NULL"),
    )

    op.create_table(
        "in_bath",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_in_bath_basis",
        ),
        by_deed("deed", "fk_in_bath_deed"),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_in_bath_lot"),
        by_deed("struck", "fk_in_bath_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_in_bath_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_in_bath"),
        sqlite_strict=True,
    )
    op.create_index("ix_in_bath_lot", "in_bath", ["lot", "yarn", "struck"], unique=False)
    op.create_index("ix_in_bath_yarn", "in_bath", ["yarn"], unique=False)
    op.create_index(
        "uq_in_bath_once",
        "in_bath",
        ["yarn", "lot"],
        unique=True,
        sqlite_where=sa.text("struck IS NULL"),
        postgresql_where=sa.text("struck IS NULL"),
    )

    op.create_table(
        "order_line",
        sa.Column("customer_order", sa.Integer(), nullable=False),
        sa.Column("wanted", sa.Integer(), nullable=False),
        sa.Column("what", sa.Text(), nullable=False),
        sa.Column("lot", sa.Integer(), nullable=True),
        sa.Column("price", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("wanted > 0", name="ck_order_line_wants_something"),
        sa.ForeignKeyConstraint(
            ["customer_order"], ["customer_order.id"], name="fk_order_line_customer_order"
        ),
        by_deed("deed", "fk_order_line_deed"),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_order_line_lot"),
        by_deed("struck", "fk_order_line_struck"),
        sa.PrimaryKeyConstraint("id", name="pk_order_line"),
        sqlite_strict=True,
    )
    op.create_index("ix_order_line_order", "order_line", ["customer_order"], unique=False)

    op.create_table(
        "tag",
        sa.Column("mark", sa.Text(), nullable=False),
        sa.Column("lot", sa.Integer(), nullable=False),
        sa.Column("pile", sa.Integer(), nullable=True),
        sa.Column("base_version", sa.Integer(), nullable=True),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("sheet", sa.Integer(), nullable=False),
        sa.Column("void", sa.Integer(), nullable=True),
        sa.Column("successor", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["base_version"], ["base_version.id"], name="fk_tag_base_version"),
        by_deed("deed", "fk_tag_deed"),
        sa.ForeignKeyConstraint(["lot"], ["dye_lot.id"], name="fk_tag_lot"),
        sa.ForeignKeyConstraint(["pile"], ["yarn.id"], name="fk_tag_pile"),
        sa.ForeignKeyConstraint(["sheet"], ["print_sheet.id"], name="fk_tag_sheet"),
        by_deed("struck", "fk_tag_struck"),
        sa.ForeignKeyConstraint(["successor"], ["tag.id"], name="fk_tag_successor"),
        by_deed("void", "fk_tag_void"),
        sa.PrimaryKeyConstraint("id", name="pk_tag"),
        sa.UniqueConstraint("mark", name="uq_tag_mark"),
        sqlite_strict=True,
    )
    op.create_index("ix_tag_lot", "tag", ["lot"], unique=False)
    op.create_index("ix_tag_pile", "tag", ["pile"], unique=False)
    op.create_index("ix_tag_sheet", "tag", ["sheet"], unique=False)
    op.create_index(
        "ix_tag_successor",
        "tag",
        ["successor"],
        unique=False,
        sqlite_where=sa.text("successor IS NOT NULL"),
        postgresql_where=sa.text("successor IS NOT NULL"),
    )

    op.create_table(
        "clear",
        sa.Column("hold", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("evidence", sa.Text(), nullable=False),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        by_deed("deed", "fk_clear_deed"),
        sa.ForeignKeyConstraint(["hold"], ["hold.id"], name="fk_clear_hold"),
        by_deed("struck", "fk_clear_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_clear_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_clear"),
        sqlite_strict=True,
    )
    op.create_index("ix_clear_hold", "clear", ["hold"], unique=False)

    op.create_table(
        "tag_on",
        sa.Column("tag", sa.Integer(), nullable=False),
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("since", MOMENT, nullable=False),
        sa.Column("until", MOMENT, nullable=True),
        sa.Column("ended_by", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("until IS NULL OR until >= since", name="ck_tag_on_ends_after_it_began"),
        by_deed("deed", "fk_tag_on_deed"),
        by_deed("ended_by", "fk_tag_on_ended_by"),
        by_deed("struck", "fk_tag_on_struck"),
        sa.ForeignKeyConstraint(["tag"], ["tag.id"], name="fk_tag_on_tag"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_tag_on_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_tag_on"),
        sqlite_strict=True,
    )
    op.create_index("ix_tag_on_tag", "tag_on", ["tag"], unique=False)
    op.create_index("ix_tag_on_when", "tag_on", ["yarn", "since"], unique=False)
    op.create_index(
        "uq_skein_wears_one",
        "tag_on",
        ["yarn"],
        unique=True,
        sqlite_where=sa.text("until IS NULL AND struck IS NULL"),
        postgresql_where=sa.text("until IS NULL AND struck IS NULL"),
    )
    op.create_index(
        "uq_tag_hangs_once",
        "tag_on",
        ["tag"],
        unique=True,
        sqlite_where=sa.text("until IS NULL AND struck IS NULL"),
        postgresql_where=sa.text("until IS NULL AND struck IS NULL"),
    )

    op.create_table(
        "whereabouts",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("place", sa.Integer(), nullable=True),
        sa.Column("line", sa.Integer(), nullable=True),
        sa.Column("kit", sa.Integer(), nullable=True),
        sa.Column("customer", sa.Integer(), nullable=True),
        sa.Column("ends", MOMENT, nullable=True),
        sa.Column("basis", sa.Text(), nullable=False),
        sa.Column("since", MOMENT, nullable=False),
        sa.Column("until", MOMENT, nullable=True),
        sa.Column("ended_by", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint(
            "(state IN ('taken','sent')) = (line IS NOT NULL)", name="ck_whereabouts_is_on_an_order"
        ),
        sa.CheckConstraint(
            "basis IN ('scanned', 'counted', 'recognised', 'matched', 'stated')",
            name="ck_whereabouts_basis",
        ),
        sa.CheckConstraint("state <> 'kit' OR kit IS NOT NULL", name="ck_whereabouts_is_in_a_kit"),
        sa.CheckConstraint(
            "state <> 'put by' OR ends IS NOT NULL", name="ck_whereabouts_put_by_until"
        ),
        sa.CheckConstraint(
            "state IN ('table', 'shelf', 'put by', 'kit', 'taken', 'sent', 'fair', 'lost', 'given', 'discarded')",
            name="ck_whereabouts_state",
        ),
        sa.CheckConstraint(
            "state NOT IN ('shelf','fair') OR place IS NOT NULL", name="ck_whereabouts_has_a_place"
        ),
        sa.CheckConstraint(
            "until IS NULL OR until >= since", name="ck_whereabouts_ends_after_it_began"
        ),
        sa.ForeignKeyConstraint(["customer"], ["customer.id"], name="fk_whereabouts_customer"),
        by_deed("deed", "fk_whereabouts_deed"),
        by_deed("ended_by", "fk_whereabouts_ended_by"),
        sa.ForeignKeyConstraint(["kit"], ["kit.id"], name="fk_whereabouts_kit"),
        sa.ForeignKeyConstraint(["line"], ["order_line.id"], name="fk_whereabouts_line"),
        sa.ForeignKeyConstraint(["place"], ["plate.id"], name="fk_whereabouts_place"),
        by_deed("struck", "fk_whereabouts_struck"),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name="fk_whereabouts_yarn"),
        sa.PrimaryKeyConstraint("id", name="pk_whereabouts"),
        sqlite_strict=True,
    )
    op.create_index(
        "ix_whereabouts_line",
        "whereabouts",
        ["line"],
        unique=False,
        sqlite_where=sa.text("line IS NOT NULL"),
        postgresql_where=sa.text("line IS NOT NULL"),
    )
    op.create_index(
        "ix_whereabouts_place",
        "whereabouts",
        ["place"],
        unique=False,
        sqlite_where=sa.text("place IS NOT NULL"),
        postgresql_where=sa.text("place IS NOT NULL"),
    )
    op.create_index("ix_whereabouts_when", "whereabouts", ["yarn", "since"], unique=False)
    op.create_index(
        "uq_one_state_a_skein",
        "whereabouts",
        ["yarn"],
        unique=True,
        sqlite_where=sa.text("until IS NULL AND struck IS NULL"),
        postgresql_where=sa.text("until IS NULL AND struck IS NULL"),
    )

    for table, key in STAYS.items():
        keep_stays_apart(table, key)
    head = sa.table(
        "head",
        sa.column("id"),
        sa.column("seq"),
        sa.column("written", MOMENT),
        sa.column("hash", sa.LargeBinary),
    )
    op.execute(
        head.insert().values(
            id=1,
            seq=0,
            hash=b"",
            written=sa.literal_column("'1970-01-01T00:00:00.000000Z'"),
        )
    )
