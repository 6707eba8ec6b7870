"""`python -m webapp.phone`: print the engine as the phone gets it, or what is wrong with it."""

import sys

from .build import ENGINE, build
from .program import SubsetError


def main(arguments):
    """Print the module, or with --slow the places where a helper stands for want of an annotation."""
    try:
        text, slow = build(ENGINE)
    except SubsetError as error:
        print(error, file=sys.stderr)
        return 2
    if "--slow" in arguments:
        text = "".join(f"{place}: {what}\n" for place, what in slow)
    sys.stdout.write(text)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
