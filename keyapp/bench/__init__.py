"""How fast the engine is on a large made-up key, beside plain Python and a general-purpose library."""
