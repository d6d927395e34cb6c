"""The garden arthropod key: from a lay description to a careful family-level answer."""

__version__ = "0.1.0"
