"""The lab book: what people did and what came of it, kept in a database of the user's own.

`attempt` holds the values, `store` reads and writes them; the tables are in `tables`, their history
in `migrations`. Nothing here is loaded unless somebody practises: the database library takes a
quarter of a second to import.
"""
