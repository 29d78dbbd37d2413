"""The plugins that put a journal on a site."""
