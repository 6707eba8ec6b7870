"""The one exception."""


class EngineError(ValueError):
    """As in the engine."""

    def __init__(self, code, value):
        super().__init__(code)
        self.code = code
        self.value = value
