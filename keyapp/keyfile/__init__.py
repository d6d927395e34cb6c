"""The key files: YAML to model, with every fault reported in one go."""

from keyapp.keyfile.codes import LOADER_CODES
from keyapp.keyfile.links import broken_links
from keyapp.keyfile.load import KeyFolderError, Loaded, load_keyset, require_keyset
from keyapp.keyfile.problem import Problem

__all__ = [
    "LOADER_CODES",
    "KeyFolderError",
    "Loaded",
    "Problem",
    "broken_links",
    "load_keyset",
    "require_keyset",
]
