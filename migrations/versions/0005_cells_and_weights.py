"""The cell each tag stands in, and what put-ups weigh at the tag table."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    op.create_table(
        "put_up_weight",
        sa.Column("yarn", sa.Integer(), nullable=False),
        sa.Column("mg", sa.Integer(), nullable=False),
        sa.Column("regain_permille", sa.Integer(), nullable=True),
        sa.Column("regain_from", sa.Text(), nullable=False),
        sa.Column("sell_as_mg", sa.Integer(), nullable=True),
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("deed", sa.Integer(), nullable=False),
        sa.Column("struck", sa.Integer(), nullable=True),
        sa.CheckConstraint("mg > 0", name=op.f("ck_put_up_weight_weighs_something")),
        sa.CheckConstraint(
            "sell_as_mg IS NULL OR sell_as_mg > 0", name=op.f("ck_put_up_weight_sold_as_something")
        ),
        sa.CheckConstraint(
            "regain_from IN ('', 'reference skein', 'humidity')",
            name=op.f("ck_put_up_weight_regain_from"),
        ),
        sa.CheckConstraint(
            "(regain_permille IS NULL) = (regain_from = '')",
            name=op.f("ck_put_up_weight_regain_from_what"),
        ),
        sa.ForeignKeyConstraint(["deed"], ["deed.seq"], name=op.f("fk_put_up_weight_deed"),
                                initially="DEFERRED", deferrable=True),
        sa.ForeignKeyConstraint(["struck"], ["deed.seq"], name=op.f("fk_put_up_weight_struck"),
                                initially="DEFERRED", deferrable=True),
        sa.ForeignKeyConstraint(["yarn"], ["yarn.id"], name=op.f("fk_put_up_weight_yarn")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_put_up_weight")),
        sqlite_strict=True,
    )
    op.create_index("ix_put_up_weight_yarn", "put_up_weight", ["yarn"])
    op.add_column("tag", sa.Column("cell", sa.Integer(), nullable=True))
