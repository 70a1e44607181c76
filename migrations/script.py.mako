"""${message}."""

import sqlalchemy as sa
from alembic import op

revision = "${up_revision}"
down_revision = ${f'"{down_revision}"' if down_revision else None}

MOMENT = sa.Text().with_variant(sa.DateTime(timezone=True), "postgresql")


def upgrade() -> None:
    ${upgrades if upgrades else "pass"}
