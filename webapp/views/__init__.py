"""One module per audience: `home`, `coach`, `athlete`, `sheets`, `phone`, and what they share.

- `connection`: the store, one connection per request
- `errors`: pages for everything that can go wrong
"""


def init_app(app):
    """Register every view."""
    from webapp.views import athlete, coach, connection, errors, home, phone, sheets

    connection.init_app(app)
    errors.init_app(app)
    for module in (home, coach, athlete, sheets, phone):
        app.register_blueprint(module.bp)
