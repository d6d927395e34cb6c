"""Report something seen: a character and its states, or a size."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QDoubleSpinBox,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Option, Picks, Tick
from keyapp.gui.widgets.select import Select
from keyapp.gui.widgets.texts import button, clear, label, row, with_symbol
from keyapp.gui.widgets.view_question import ViewQuestion
from keyapp.model import Character, Evidence, Sureness, View

__all__ = ["SeenPage"]

THING = "thing"
"""What there is belongs to the settings and is not asked here again."""

SURENESS = (Sureness.SURE, Sureness.THINK_SO)


class SeenPage(Page):
    """Characters to the left, what was seen of the chosen one to the right."""

    stage = Stage.SEEN
    first_focus = "characters"

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._list: QListWidget | None = None
        self._form = QVBoxLayout()
        self._across: QBoxLayout = QHBoxLayout()
        self._shown = ""
        self._ticks: dict[str, Tick] = {}
        self._view: ViewQuestion | None = None
        self._both: QWidget | None = None
        self._give: QWidget | None = None
        self._cant: QWidget | None = None
        session.drafted.connect(self._on_drafted)

    def subject(self) -> object:
        return (self.stage, self.session.is_asking)

    def forget(self) -> None:
        self._view = self._both = self._give = self._cant = self._list = None
        self._ticks = {}

    def build(self) -> None:
        session = self.session
        self._view = self._both = self._give = self._cant = self._list = None
        self._shown = ""
        self._ticks = {}
        if not session.is_open:
            return
        if session.is_asking:
            title = self.tr("One thing to look at")
            text = self.tr("Tick what you saw. Then you are back where you were.")
        else:
            title = self.tr("Report something seen")
            text = self.tr(
                "Choose what you looked at, then tick what you saw. It counts beside the key's own questions."
            )
        self.body.addWidget(label(title, "title"))
        self.body.addWidget(label(text, "soft"))
        across = self._across = QHBoxLayout()
        across.setSpacing(SPACE.large)
        self._list = self._characters()
        self._fit()
        across.addWidget(self._list, 0, Qt.AlignmentFlag.AlignTop)
        if session.is_asking:
            # One question alone needs no list to choose from.
            self._list.hide()
        holder = QWidget()
        self._form = QVBoxLayout(holder)
        self._form.setContentsMargins(0, 0, 0, 0)
        self._form.setSpacing(SPACE.small)
        across.addWidget(holder, 1)
        self.body.addLayout(across, 1)
        back = button(self.tr("Back"), "back", says=self.tr("Back without reporting"))
        back.clicked.connect(session.leave_seen)
        self._cant = button(
            self.tr("Can't tell"), "seen-cant-tell", says=self.tr("Can't tell: go on, and do not ask this again")
        )
        self._cant.clicked.connect(session.cant_tell)
        self._give = button(self.tr("Report this"), "give", "primary", says=self.tr("Report this and go on"))
        self._give.clicked.connect(session.report)
        self.footer.addWidget(back)
        self.footer.addStretch(1)
        self.footer.addWidget(self._cant)
        self.footer.addWidget(self._give)
        self._on_drafted()

    # Parts ---------------------------------------------------------------------------------------

    def _characters(self) -> QListWidget:
        session = self.session
        made = QListWidget()
        made.setObjectName("characters")
        made.setAccessibleName(self.tr("What you looked at"))
        made.setMinimumWidth(SPACE.list_width)
        made.setWordWrap(True)
        made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for title, characters in self._grouped():
            head = QListWidgetItem(title)
            head.setFlags(Qt.ItemFlag.NoItemFlags)
            made.addItem(head)
            for character in characters:
                item = self._item(made, character.question.say(session.language))
                item.setData(Qt.ItemDataRole.UserRole, character.id)
                if session.case.note(character.id) is not None:
                    item.setIcon(self.kit.look.icon("check", "accent"))
                    item.setToolTip(self.tr("Reported already"))
                made.addItem(item)
                if character.id == session.seen_draft.character:
                    made.setCurrentItem(item)
        made.setIconSize(QSize(SPACE.icon, SPACE.icon))
        made.currentItemChanged.connect(lambda item, _old: self._on_picked(item))
        return made

    @staticmethod
    def _item(owner: QListWidget, text: str) -> QListWidgetItem:
        """An entry as high as its wrapped text needs."""
        item = QListWidgetItem(text)
        room = QRect(0, 0, SPACE.list_width - SPACE.huge - SPACE.wide, SPACE.window_height)
        needed = owner.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, text)
        item.setSizeHint(QSize(SPACE.label_width, max(SPACE.target, needed.height() + SPACE.small)))
        return item

    def _fit(self) -> None:
        """List beside the form where there is room, above it where there is not."""
        if self._list is None:
            return
        is_narrow = self.width() < 2 * SPACE.list_width + SPACE.portrait
        way = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        self._across.setDirection(way)
        high = SPACE.portrait if is_narrow else max(SPACE.figure, self.height() - SPACE.portrait)
        self._list.setFixedHeight(high)
        self._list.setMaximumWidth(SPACE.column if is_narrow else SPACE.list_width)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _grouped(self) -> list[tuple[str, list[Character]]]:
        thing = self.session.case.settings.thing
        titles = {
            View.ANY: self.tr("In general"),
            View.WEB: self.tr("The web"),
            View.TOP: self.tr("Seen from above"),
            View.SIDE: self.tr("Seen from the side"),
            View.UNDERSIDE: self.tr("Seen from beneath"),
            View.FACE: self.tr("The face, close up"),
        }
        found: dict[str, list[Character]] = {title: [] for title in titles.values()}
        sizes = self.tr("Sizes")
        found[sizes] = []
        for character in self.session.keyset.characters.values():
            forms = character.applies_to.forms
            if character.id == THING or (thing and forms and thing not in forms):
                continue
            found[sizes if character.number else titles[character.view]].append(character)
        return [(title, some) for title, some in found.items() if some]

    def _fill_form(self, character: Character) -> None:
        session, form = self.session, self._form
        language = session.language
        form.addWidget(label(character.question.say(language), "head"))
        form.addLayout(with_symbol(self.kit, "eye", character.look.say(language), "soft", "soft"))
        ask = character.ask_caller.say(language)
        if ask:
            form.addLayout(with_symbol(self.kit, "phone", self.tr("“{text}”").replace("{text}", ask), "soft", "soft"))
        if character.number is not None:
            self._add_size(character)
        else:
            self._add_states(character)
        form.addLayout(self._how_sure())
        form.addStretch(1)

    def _add_states(self, character: Character) -> None:
        session, language = self.session, self.session.language
        for state in character.states:
            tick = Tick(
                self.kit,
                state.label.say(language),
                f"state-{state.id}",
                note=state.means.say(language),
                figure=state.figure,
            )
            tick.setChecked(state.id in session.seen_draft.states)
            self._ticks[state.id] = tick
            tick.toggled.connect(lambda on, state_id=state.id: self._on_ticked(state_id, on))
            self._form.addWidget(tick)
        options = [
            Option(self.kit, self.tr("One of these, not sure which"), "seen-one-of"),
            Option(self.kit, self.tr("All of these at once"), "seen-both"),
        ]
        holder = QWidget()
        inside = row(*options, gap=SPACE.small)
        holder.setLayout(inside)
        Picks(holder, options, lambda i: session.draft_seen(both=i == 1), None, 1 if session.seen_draft.both else 0)
        self._both = holder
        self._form.addWidget(holder)
        self._view = ViewQuestion(self.kit, "seen-view", lambda seen: session.draft_seen(view_seen=seen))
        self._form.addWidget(self._view)

    def _add_size(self, character: Character) -> None:
        number = character.number
        assert number is not None
        box = QDoubleSpinBox()
        box.setObjectName("size")
        box.setAccessibleName(character.question.say(self.session.language))
        box.setRange(0.0, number.most)
        box.setDecimals(1)
        box.setSuffix(self.tr(" mm"))
        box.setSpecialValueText(self.tr("not measured"))
        box.setMaximumWidth(SPACE.label_width)
        box.lineEdit().setTextMargins(SPACE.small, 0, SPACE.small, 0)
        box.setValue(self.session.seen_draft.mm or 0.0)
        box.valueChanged.connect(lambda value: self.session.draft_seen(mm=value if value > 0 else None))
        said = self.tr("From {least} to {most} mm. One inch is 25.4 mm.")
        said = said.replace("{least}", f"{number.least:g}").replace("{most}", f"{number.most:g}")
        self._form.addLayout(row(box, None))
        self._form.addWidget(label(said, "small"))

    def _how_sure(self) -> QVBoxLayout:
        session, words = self.session, self.session.words
        draft = session.seen_draft
        options = [Option(self.kit, words.fixed(f"sureness.{one}"), f"seen-sureness-{one}") for one in SURENESS]
        Picks(
            options[0],
            options,
            lambda i: session.draft_seen(sureness=SURENESS[i]),
            None,
            SURENESS.index(draft.sureness),
        )
        kinds = [(words.fixed(f"evidence.{one}"), one) for one in Evidence]
        rests = Select(
            self.kit,
            "seen-evidence",
            self.tr("This report rests on"),
            kinds,
            lambda value: session.draft_seen(evidence=value),
        )
        rests.choose(draft.evidence or session.case.settings.evidence)
        made = QVBoxLayout()
        made.setSpacing(SPACE.small)
        made.addLayout(row(label(self.tr("How sure?"), "soft", wrap=False), *options, None))
        made.addLayout(row(label(self.tr("Rests on"), "soft", wrap=False), rests))
        return made

    # News ----------------------------------------------------------------------------------------

    def _on_picked(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            self.session.pick_character(str(item.data(Qt.ItemDataRole.UserRole)))

    def _on_ticked(self, state_id: str, on: bool) -> None:
        states = self.session.seen_draft.states
        self.session.draft_seen(states=states | {state_id} if on else states - {state_id})

    def _on_drafted(self) -> None:
        session = self.session
        if self._list is None or session.stage is not self.stage:
            return
        draft = session.seen_draft
        if draft.character != self._shown:
            self._shown = draft.character
            self._view = self._both = None
            self._ticks.clear()
            clear(self._form)
            character = session.keyset.characters.get(draft.character)
            if character is not None:
                self._fill_form(character)
        is_alone = session.is_asking and bool(self._ticks)
        self.first_focus = f"state-{next(iter(self._ticks))}" if is_alone else "characters"
        if not draft.character and self._form.count() == 0:
            self._form.addWidget(label(self.tr("Choose from the list what you looked at."), "soft"))
            self._form.addStretch(1)
        for state_id, tick in self._ticks.items():
            tick.setChecked(state_id in draft.states)
        if self._both is not None:
            self._both.setVisible(len(draft.states) > 1)
        if self._view is not None:
            self._view.ask(session.seen_needs_view(), draft.view_seen)
        if self._give is not None:
            self._give.setEnabled(session.can_report())
        if self._cant is not None:
            character = session.keyset.characters.get(draft.character)
            self._cant.setEnabled(character is not None and bool(character.states))
