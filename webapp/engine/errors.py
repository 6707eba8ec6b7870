"""The engine's one exception."""


class EngineError(ValueError):
    """Input the engine cannot work with.

    Attributes
    ----------
    code : what is wrong, a stable word in snake case; the web layer words it.
    value : the offending value, as text.
    """

    def __init__(self, code, value):
        super().__init__(code + ": " + str(value))
        self.code = code
        self.value = value
