"""Body plans of spiders: measurements in mm, colours and markings, to start a figure from.

Proportions are from memory of living animals and of descriptions of the families; the figures show them as drawn.
"""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.errors import UserError
from keyapp.pictures.plans_ground import GROUND_HUNTERS
from keyapp.pictures.plans_hunters import HUNTERS
from keyapp.pictures.plans_mesh import MESH_SPIDERS
from keyapp.pictures.plans_orb import ORB_WEAVERS
from keyapp.pictures.plans_orb_2 import MORE_ORB_WEAVERS
from keyapp.pictures.plans_plants import OTHER_HUNTERS
from keyapp.pictures.plans_sac_trapdoor import SAC_AND_TRAPDOOR
from keyapp.pictures.plans_webs import WEB_SPIDERS
from keyapp.pictures.settings import nearest

__all__ = ["PLANS", "merged", "planned"]

PLANS: dict[str, Mapping[str, object]] = {
    **WEB_SPIDERS,
    **ORB_WEAVERS,
    **GROUND_HUNTERS,
    **OTHER_HUNTERS,
    **MESH_SPIDERS,
    **SAC_AND_TRAPDOOR,
    **MORE_ORB_WEAVERS,
    **HUNTERS,
}
"""Plan name to settings of the recipe `spider`. A plan may itself start from another by its own `plan`."""


def merged(base: Mapping[str, object], over: Mapping[str, object]) -> dict[str, object]:
    """`base` with `over` laid on it: groups of settings are merged, anything else replaced."""
    result = dict(base)
    for name, value in over.items():
        below = result.get(name)
        if isinstance(below, Mapping) and isinstance(value, Mapping):
            result[name] = merged(below, value)
        else:
            result[name] = value
    return result


def planned(settings: Mapping[str, object]) -> dict[str, object]:
    """The settings laid over the plan they name, if any. UserError for an unknown plan."""
    name = settings.get("plan")
    if name is None:
        return dict(settings)
    if name not in PLANS:
        raise UserError(f"unknown plan {name!r}.", where="spider", fix=nearest(str(name), PLANS))
    return merged(planned(PLANS[str(name)]), settings)
