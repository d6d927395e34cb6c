"""The nearest right name for a wrong one."""

from __future__ import annotations

from keyapp.model.names import nearest

__all__ = ["nearest"]
