"""The window: pages and widgets over one session."""
