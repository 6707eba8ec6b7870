"""Headers of every answer: what a page may load, and who may embed or read it."""

from flask import request
from flask.sessions import SecureCookieSessionInterface

# Nothing inline and nothing from elsewhere, so pages kept on a phone need no nonce.
CONTENT_POLICY = "; ".join((
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "connect-src 'self'",
    "font-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "object-src 'none'",
    "frame-ancestors 'none'",
    "require-trusted-types-for 'script'",
    "trusted-types heatside",
))
HEADERS = {
    "Content-Security-Policy": CONTENT_POLICY,
    "Strict-Transport-Security": "max-age=63072000; includeSubDomains",
    "X-Content-Type-Options": "nosniff",
    # same-origin and not stricter: forms sent over https are checked by their referrer
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Frame-Options": "DENY",
    # unless a view knows better: what changes with a click must not come from a browser's memory
    "Cache-Control": "no-cache",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=(), payment=(), usb=(), screen-wake-lock=(self)",
}
# A style sheet or a module is no page: it loads nothing itself and needs only not to be taken for something else. Dozens of them make up a
# first view, so every byte here counts fifty times.
OF_A_FILE = {
    "Content-Security-Policy": "default-src 'none'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'",
    **{name: HEADERS[name] for name in ("Strict-Transport-Security", "X-Content-Type-Options", "Cross-Origin-Resource-Policy", "Cache-Control")},
}


class SchemeSession(SecureCookieSessionInterface):
    """The session cookie, bound to this host and to https where there is https.

    At a gym the tool may also run on a plain local address, where a Secure cookie would never come back.
    """

    def get_cookie_name(self, app):
        """Named so that browsers themselves refuse it from anybody else."""
        return "__Host-heatside" if request.is_secure else "heatside"

    def get_cookie_secure(self, app):
        """Only over https, where the page itself came over https."""
        return request.is_secure


def init_app(app):
    """Send them with every answer, error pages included."""
    app.session_interface = SchemeSession()
    app.after_request(_add)


def _add(response):
    is_file = request.path.startswith("/static/") and response.status_code == 200
    for name, value in (OF_A_FILE if is_file else HEADERS).items():
        response.headers.setdefault(name, value)
    return response
