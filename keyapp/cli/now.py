"""`keyapp now`: what people are likely to ask about in a place and a month, the dangerous first."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from keyapp.browse import Filters, Found, Hit, asked_about, find, in_season
from keyapp.cli.open import open_tables, require_month, require_region
from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables
from keyapp.wording import Words, kind_title, season_line

__all__ = ["run"]


def run(out: Terminal, folder: Path, region: str, month: int, language: str, as_json: bool, most: int = 15) -> int:
    """List what may be asked about in `region` (region or state code) in `month` (1-12); returns 0.

    Raises UserError for a region that the key does not know or a month that is none.
    """
    tables = open_tables(folder)
    require_region(tables.keyset, region)
    require_month(month)
    words = Words(tables.keyset, language)
    found = find(tables, "", Filters(region=region, month=month))
    if as_json:
        out.say(json.dumps(_data(tables, words, found, region, month), ensure_ascii=False, indent=2))
        return 0
    out.say(words.fixed("families.dangers-head"))
    for hit in found.dangers:
        out.say(_line(tables, words, hit, region))
    place = tables.keyset.regions[region].name.say(language) if region in tables.keyset.regions else region
    out.say("")
    out.say(words.fixed("families.now-head", place=place, month=words.fixed(f"month.{month}")))
    for hit in found.others[:most]:
        out.say(_line(tables, words, hit, region))
    out.say("")
    for line in ("now-why", "limits", "limits-why"):
        out.say(words.fixed(f"families.{line}"))
    return 0


def _line(tables: Tables, words: Words, hit: Hit, region: str) -> str:
    title = kind_title(words, hit.kind.id)
    season = season_line(words, in_season(tables, hit.kind, region), of_region=True)
    unusual = [words.fixed(f"families.unusual.{name}") for name in hit.unusual]
    return f"  {title}. {' '.join([season, *unusual])}"


def _data(tables: Tables, words: Words, found: Found, region: str, month: int) -> dict[str, Any]:
    def one(hit: Hit) -> dict[str, Any]:
        return {
            "id": hit.kind.id,
            "title": kind_title(words, hit.kind.id),
            "months": list(in_season(tables, hit.kind, region)),
            "weight": round(asked_about(tables, hit.kind, region, month), 4),
            "unusual": list(hit.unusual),
        }

    return {
        "region": region,
        "month": month,
        "dangers": [one(hit) for hit in found.dangers],
        "others": [one(hit) for hit in found.others],
        "limits": words.fixed("families.limits"),
    }
