"""Orders: what a line was read as, and what was called off."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    with op.batch_alter_table("order_line", table_kwargs={"sqlite_strict": True}) as line:
        line.add_column(sa.Column("colourway", sa.Integer(), nullable=True))
        line.add_column(sa.Column("base", sa.Integer(), nullable=True))
        line.add_column(sa.Column("put_up", sa.Text(), nullable=True))
        line.add_column(sa.Column("over", sa.Integer(), nullable=True))
        line.create_foreign_key("fk_order_line_colourway", "colourway", ["colourway"], ["id"])
        line.create_foreign_key("fk_order_line_base", "base", ["base"], ["id"])
        line.create_foreign_key(
            "fk_order_line_over", "deed", ["over"], ["seq"], initially="DEFERRED", deferrable=True
        )
    op.create_index(
        "ix_order_line_lot",
        "order_line",
        ["lot"],
        unique=False,
        sqlite_where=sa.text("lot IS NOT NULL"),
        postgresql_where=sa.text("lot IS NOT NULL"),
    )
