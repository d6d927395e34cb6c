"""Building blocks of the pages."""
