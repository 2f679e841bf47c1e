"""What Alembic runs for every upgrade; `upgrading` gives the connection, in a transaction."""

from alembic import context

from stainmap.labbook.tables import METADATA, VERSION_TABLE

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=METADATA,
    version_table=VERSION_TABLE,
    transactional_ddl=True,
    render_as_batch=True,
)
context.run_migrations()
