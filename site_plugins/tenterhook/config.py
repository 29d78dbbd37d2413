"""What can be set for the plugin in mkdocs.yml. The journal's own settings are in journal.md."""

from __future__ import annotations

from mkdocs.config import config_options as c
from mkdocs.config.base import Config


class TenterhookConfig(Config):
    """The plugin's options.

    ```yaml
    plugins:
      - search
      - tenterhook:
          public: true
    ```
    """

    journal = c.Optional(c.Dir(exists=True))
    """The folder of the records, beside mkdocs.yml. Left out, it is `docs_dir`."""

    public = c.Type(bool, default=False)
    """True builds the journal for others: shared warps alone, and nothing private in them.

    The environment variable TENTERHOOK_PUBLIC (yes or no) goes before this.
    """

    cache = c.Type(str, default=".cache/tenterhook")
    """Where drawn pictures are kept between builds, beside mkdocs.yml. It may be deleted."""
