"""The engine on the phone: checks the Python subset of `webapp/engine` and turns it into one ES module.

`build_engine()` gives the module's text or raises SubsetError with every breach as `file:line: what to write instead`. The
steps, each in a module: `program` reads and orders the files, `subset` (with `statements` and `expressions`) checks them, `naming` gives
comprehension variables names of their own, `kinds` finds what is a number, text, list or dict, `lowering` writes simpler
Python that means the same in JavaScript, `build` has PScript translate that and joins it with the helpers.

`python -m webapp.phone` prints the module; `--slow` prints where an annotation would make it faster.
"""

from .build import build_engine
from .program import SubsetError

__all__ = ["SubsetError", "build_engine"]
