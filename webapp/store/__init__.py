"""SQLite: one file, all SQL in this package.

- `database`: opening the file, transactions, backup, what can go wrong
- `migrations`: the schema, step by step, numbered by `user_version`
- `settings`: what the installation keeps for itself, such as its signing key
- `workouts`: one row per workout a coach has set
"""
