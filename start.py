#!/usr/bin/env python3
"""Tenterhook in one command, with nothing but Python 3.11 or newer on the machine.

    python3 start.py                  build the demonstration journal and serve it
    python3 start.py --port 8400      the same, at another port
    python3 start.py build            build it into site/
    python3 start.py test             run every check (more words go to pytest: test -k hems)
    python3 start.py past cottolin-22-2    any other command of tenterhook, in the folder you stand in

The first start makes an environment of its own in .venv and takes half a minute; later ones a moment.
"""
# An old Python must be able to read this file, to say what is wrong. The work is in starter/.

import sys

if sys.version_info < (3, 11):
    sys.exit(
        "Tenterhook needs Python 3.11 or newer, and this is Python %d.%d. Install a newer one beside it "
        "and start with its name, for example: python3.11 start.py" % sys.version_info[:2]
    )

from starter.main import run

if __name__ == "__main__":
    sys.exit(run(sys.argv[1:], __doc__))
