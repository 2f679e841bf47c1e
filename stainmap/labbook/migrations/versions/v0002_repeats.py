"""Version 2: after how many days a trainee wants to repeat what was practised."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make the table of repeats; who has no rows in it has the usual ones."""
    op.create_table(
        "practice_repeats",
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("days", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("trainee_id", "position", name=op.f("pk_practice_repeats")),
        sa.ForeignKeyConstraint(
            ["trainee_id"],
            ["practice_trainees.id"],
            name=op.f("fk_practice_repeats_trainee_id_practice_trainees"),
            ondelete="CASCADE",
        ),
        sa.CheckConstraint("days >= 1 AND days <= 3650", name=op.f("ck_practice_repeats_days")),
    )
