"""`python -m journal_tools` is `tenterhook`."""

from journal_tools.commands.main import main

if __name__ == "__main__":
    main(prog_name="tenterhook")
