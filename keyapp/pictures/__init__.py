"""Figures of the key: drawings worked out as plain data, then written as SVG. No Qt in here."""
