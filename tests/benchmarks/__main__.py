"""All benchmarks by one command: `python -m benchmarks` in the folder `tests`, or the names of some: `optimum whole phone server page`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from benchmarks import optimum, page_speed, phone_speed, server_speed, whole_optimum  # noqa: E402 (the path comes first)

ALL = {"server": server_speed.main, "phone": phone_speed.main, "page": page_speed.main, "optimum": optimum.main, "whole": whole_optimum.main}


def main():
    """Run those named, or all."""
    for name in sys.argv[1:] or ALL:
        print(f"--- {name}")
        ALL[name]()


main()
