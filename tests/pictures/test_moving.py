"""The figures of cup and card: every step is there, and the short way shows exactly these."""

from __future__ import annotations

import pytest

from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.keyfile.cache import cached_keyset
from keyapp.pictures.moving import SHOWN, STEPS, draw_cup_and_card
from keyapp.pictures.shape import box_of
from keyapp.wording import MOVE_FIGURES, PHOTO_FIGURE


@pytest.mark.parametrize("step", STEPS)
def test_every_step_stays_on_the_canvas_and_shows_the_animal(step):
    drawing = draw_cup_and_card({"step": step})
    box = box_of(drawing.items)
    assert box.left >= 0
    assert box.right <= 100
    assert box.top >= 0
    assert box.bottom <= 100
    assert drawing.count("animal") == 1
    assert drawing.count("cup") == (0 if step == "photo" else 1)
    assert drawing.count("card") == (1 if step in ("slide", "carry") else 0)


def test_a_step_that_there_is_not_is_refused():
    with pytest.raises(UserError, match="fly"):
        draw_cup_and_card({"step": "fly"})


def test_the_short_way_shows_these_figures_and_the_key_has_them():
    assert (*MOVE_FIGURES, PHOTO_FIGURE) == SHOWN
    figures = cached_keyset(keys_folder()).figures
    assert [figures[name].with_["step"] for name in SHOWN] == list(STEPS)
