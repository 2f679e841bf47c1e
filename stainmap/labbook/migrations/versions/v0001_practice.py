"""Version 1: trainees, packs of exercises, attempts and their skills."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the first tables."""
    op.create_table(
        "practice_trainees",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(24), nullable=False),
        sa.Column("added_at", sa.DateTime(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_practice_trainees")),
        sa.UniqueConstraint("code", name=op.f("uq_practice_trainees_code")),
    )
    op.create_table(
        "practice_packs",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("sha256", sa.String(64), nullable=False),
        sa.Column("title", sa.String(60), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.Column("added_at", sa.DateTime(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_practice_packs")),
        sa.UniqueConstraint("sha256", name=op.f("uq_practice_packs_sha256")),
    )
    op.create_table(
        "practice_attempts",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(36), nullable=False),
        sa.Column("trainee_id", sa.Integer(), nullable=False),
        sa.Column("pack_sha256", sa.String(64), nullable=True),
        sa.Column("exercise", sa.String(60), nullable=False),
        sa.Column("exercise_sha256", sa.String(64), nullable=False),
        sa.Column("kind", sa.String(60), nullable=False),
        sa.Column("seed", sa.Integer(), nullable=False),
        sa.Column("started_at", sa.DateTime(), nullable=False),
        sa.Column("finished_at", sa.DateTime(), nullable=False),
        sa.Column("score", sa.Float(), nullable=False),
        sa.Column("details", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_practice_attempts")),
        sa.UniqueConstraint("key", name=op.f("uq_practice_attempts_key")),
        sa.ForeignKeyConstraint(
            ["trainee_id"],
            ["practice_trainees.id"],
            name=op.f("fk_practice_attempts_trainee_id_practice_trainees"),
            ondelete="RESTRICT",
        ),
        sa.CheckConstraint("score >= 0 AND score <= 100", name=op.f("ck_practice_attempts_score")),
        sa.CheckConstraint("finished_at >= started_at", name=op.f("ck_practice_attempts_times")),
    )
    for column in ("trainee_id", "exercise_sha256"):
        op.create_index(op.f(f"ix_practice_attempts_{column}"), "practice_attempts", [column])
    op.create_table(
        "practice_skill_results",
        sa.Column("attempt_id", sa.Integer(), nullable=False),
        sa.Column("skill", sa.String(60), nullable=False),
        sa.Column("score", sa.Float(), nullable=False),
        sa.PrimaryKeyConstraint("attempt_id", "skill", name=op.f("pk_practice_skill_results")),
        sa.ForeignKeyConstraint(
            ["attempt_id"],
            ["practice_attempts.id"],
            name=op.f("fk_practice_skill_results_attempt_id_practice_attempts"),
            ondelete="CASCADE",
        ),
        sa.CheckConstraint(
            "score >= 0 AND score <= 100", name=op.f("ck_practice_skill_results_score")
        ),
    )
