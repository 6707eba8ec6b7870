"""Heatside: every athlete's own plan for the class's workout.

The package's rooms are described in DEVELOPERS.md. This module imports nothing, so that
`import webapp.engine` stays free of the web framework and the database.
"""
