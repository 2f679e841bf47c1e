"""The window's greys, type and the few style lines on top of Qt's Fusion style.

Every grey has R = G = B, because colour is judged beside it. Two hues only: one focus colour and
one caution colour, both text-strong (4.5:1) on the panels of their scheme.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QStyleFactory, QWidget

from stainmap.app.settings import Scheme as Scheme  # noqa: PLC0414 - asked for here by all windows
from stainmap.app.settings import Typeface
from stainmap.errors import StainmapError
from stainmap.paths import resource

SURROUND = "#777777"
SURROUND_TEXT = "#000000"
FAMILY = "Stainmap Sans"
_FAMILY_PROPERTY = "stainmap_family"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tones:
    """Named colours of one scheme, as ``#rrggbb``."""

    panel: str
    raised: str
    bar: str
    field: str
    line: str
    hair: str
    ink: str
    soft: str
    faint: str
    accent: str
    accent_fill: str
    on_accent: str
    caution: str

    def colour(self, role: str) -> QColor:
        """Return the colour of a role, or of a ``#rrggbb`` given instead of a role."""
        return QColor(role if role.startswith("#") else getattr(self, role))


LIGHT = Tones(
    panel="#d9d9d9",
    raised="#cfcfcf",
    bar="#c9c9c9",
    field="#e8e8e8",
    line="#b4b4b4",
    hair="#c6c6c6",
    ink="#161616",
    soft="#474747",
    faint="#8a8a8a",
    accent="#0a5c7d",
    accent_fill="#bfd0d8",
    on_accent="#ffffff",
    caution="#6b3d00",
)
DARK = Tones(
    panel="#2c2c2c",
    raised="#343434",
    bar="#242424",
    field="#3d3d3d",
    line="#545454",
    hair="#434343",
    ink="#ececec",
    soft="#b9b9b9",
    faint="#7d7d7d",
    accent="#6fbfe0",
    accent_fill="#2f4a57",
    on_accent="#0c1418",
    caution="#f0c27a",
)


def tones(widget: QWidget | None = None) -> Tones:
    """Return the tones that `widget` (or the application) wears now, told from its text colour."""
    palette = widget.palette() if widget is not None else QApplication.palette()
    # The active group: in a disabled widget the text is grey in both schemes.
    text = palette.color(QPalette.ColorGroup.Active, QPalette.ColorRole.WindowText)
    return DARK if text.lightness() > 128 else LIGHT


def font(px: int, weight: int = 400) -> QFont:
    """Return the window's face in pixels; the shipped one has tabular figures.

    There are cuts at 300, 400, 500 and 600; a weight in between gets the lighter one.
    """
    face = QFont(family())
    face.setPixelSize(px)
    face.setWeight(QFont.Weight(weight // 100 * 100))
    face.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return face


def family() -> str:
    """Return the family that the window is written in: what `apply_theme` has told the application.

    Without the shipped files it is the desktop's own.
    """
    app = QApplication.instance()
    worn = None if app is None else app.property(_FAMILY_PROPERTY)
    return str(worn) if worn else FAMILY


def _family_of(typeface: Typeface) -> str:
    if typeface is Typeface.OWN and load_fonts():
        return FAMILY
    return QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont).family()


@lru_cache(maxsize=1)
def load_fonts() -> int:
    """Make the shipped faces known to Qt, once; return how many there are."""
    try:
        files = sorted(resource("fonts").glob("*.ttf"))
    except StainmapError:
        return 0
    return sum(QFontDatabase.addApplicationFont(str(file)) >= 0 for file in files)


def scheme_tones(app: QApplication, scheme: Scheme) -> Tones:
    """Return the tones of a scheme; `Scheme.SYSTEM` asks the desktop."""
    if scheme is Scheme.SYSTEM:
        dark = app.styleHints().colorScheme() == Qt.ColorScheme.Dark
        return DARK if dark else LIGHT
    return DARK if scheme is Scheme.DARK else LIGHT


def is_worn(app: QApplication, scheme: Scheme, typeface: Typeface) -> bool:
    """Return True if the application is dressed like that already."""
    return family() == _family_of(typeface) and tones() is scheme_tones(app, scheme)


def apply_theme(
    app: QApplication, scheme: Scheme = Scheme.SYSTEM, typeface: Typeface = Typeface.OWN
) -> Tones:
    """Dress the application in a scheme and a face, and return its tones."""
    chosen = scheme_tones(app, scheme)
    before, now = family(), _family_of(typeface)
    app.setProperty(_FAMILY_PROPERTY, now)
    app.setStyle(QStyleFactory.create("Fusion"))
    app.setPalette(_palette(chosen))
    app.setFont(font(13, 450))
    app.setStyleSheet(_style_sheet(chosen))
    if now != before:
        _write_again(before, now)
    return chosen


def _write_again(before: str, now: str) -> None:
    """Give the new family to whatever was made with a face of its own, at its size and weight."""
    for widget in QApplication.allWidgets():
        face = widget.font()
        if face.family() == before:
            face.setFamily(now)
            widget.setFont(face)
        widget.update()


def _palette(t: Tones) -> QPalette:
    role = QPalette.ColorRole
    palette = QPalette()
    for which, name in (
        (role.Window, t.panel),
        (role.WindowText, t.ink),
        (role.Base, t.field),
        (role.AlternateBase, t.raised),
        (role.Text, t.ink),
        (role.Button, t.field),
        (role.ButtonText, t.ink),
        (role.BrightText, t.on_accent),
        (role.Light, t.field),
        (role.Midlight, t.hair),
        (role.Mid, t.line),
        (role.Dark, t.line),
        (role.Shadow, t.soft),
        (role.Highlight, t.accent),
        (role.HighlightedText, t.on_accent),
        (role.Accent, t.accent),
        (role.Link, t.accent),
        (role.LinkVisited, t.accent),
        (role.ToolTipBase, t.field),
        (role.ToolTipText, t.ink),
        (role.PlaceholderText, t.soft),
    ):
        palette.setColor(which, QColor(name))
    for which in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, which, QColor(t.faint))
    palette.setColor(QPalette.ColorGroup.Disabled, role.Highlight, QColor(t.line))
    return palette


def _style_sheet(t: Tones) -> str:
    # A style sheet takes pictures from files only, so the arrow comes ready-made in both inks.
    arrow = resource("icons", f"arrow_{'dark' if t is DARK else 'light'}.svg").as_posix()
    return f"""
QPushButton {{ background: {t.field}; color: {t.ink}; border: 1px solid {t.line};
  border-radius: 4px; padding: 5px 13px; min-height: 18px; }}
QPushButton[main="true"] {{ border-color: {t.soft}; }}
QPushButton:hover {{ background: {t.raised}; }}
QPushButton:pressed, QPushButton:checked {{ background: {t.accent_fill}; }}
QPushButton:focus {{ border: 2px solid {t.accent}; padding: 4px 12px; }}
QPushButton:disabled {{ color: {t.faint}; border-color: {t.hair}; }}
QPushButton[link="true"] {{ background: transparent; border: 0; color: {t.accent};
  padding: 2px 0; text-align: left; }}
QPushButton[link="true"]:hover {{ text-decoration: underline; }}
QPushButton[link="true"]:focus {{ border-bottom: 2px solid {t.accent}; }}
QToolButton {{ background: transparent; color: {t.ink}; border: 1px solid transparent;
  border-radius: 4px; padding: 3px; }}
QToolButton[framed="true"] {{ background: {t.field}; border-color: {t.hair}; }}
QToolButton:hover {{ background: {t.field}; border-color: {t.line}; }}
QToolButton:checked {{ background: {t.field}; border-color: {t.line}; }}
QToolButton[framed="true"]:checked {{ background: {t.accent_fill}; border: 2px solid {t.accent};
  padding: 2px; }}
QToolButton:focus {{ border: 2px solid {t.accent}; padding: 2px; }}
QToolButton:disabled {{ color: {t.faint}; }}
QComboBox, QSpinBox, QDoubleSpinBox, QDateTimeEdit, QLineEdit {{
  background: {t.field}; color: {t.ink}; border: 1px solid {t.line}; border-radius: 3px;
  padding: 2px 6px; min-height: 18px; }}
QComboBox:focus, QSpinBox:focus, QDoubleSpinBox:focus, QDateTimeEdit:focus, QLineEdit:focus {{
  border: 2px solid {t.accent}; padding: 1px 5px; }}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ width: 0; height: 0; border: 0; }}
QComboBox::drop-down {{ border: 0; width: 20px; }}
QComboBox::down-arrow {{ image: url("{arrow}"); width: 12px; height: 12px; }}
QRadioButton::indicator {{ width: 12px; height: 12px; border-radius: 7px;
  background: {t.field}; border: 1px solid {t.soft}; }}
QRadioButton::indicator:checked {{ width: 6px; height: 6px; border: 4px solid {t.accent}; }}
QRadioButton:focus, QCheckBox:focus {{ color: {t.accent}; text-decoration: underline; }}
QAbstractScrollArea:focus {{ border: 2px solid {t.accent}; }}
QToolButton[framed="true"]:checked:focus {{ border-color: {t.ink}; }}
QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; }}
QComboBox[quiet="true"] {{ background: transparent; border-color: transparent; }}
QComboBox[large="true"] {{ min-height: 42px; max-height: 42px; }}
QComboBox[quiet="true"]:hover {{ background: {t.field}; border-color: {t.line}; }}
QComboBox[quiet="true"]:focus {{ background: {t.field}; border: 2px solid {t.accent}; }}
QComboBox QAbstractItemView {{ background: {t.field}; color: {t.ink}; border: 1px solid {t.line};
  selection-background-color: {t.accent_fill}; selection-color: {t.ink}; outline: 0; }}
QTreeView {{ background: {t.field}; color: {t.ink}; border: 1px solid {t.line};
  selection-background-color: {t.accent_fill}; selection-color: {t.ink}; }}
QTreeView:focus {{ border: 1px solid {t.accent}; }}
QMenuBar {{ background: transparent; }}
#qt_menubar_ext_button {{ padding: 0; margin: 0; }}
QMenuBar::item {{ background: transparent; color: {t.ink}; padding: 5px 9px;
  border-radius: 4px; }}
QMenuBar::item:selected {{ background: {t.field}; }}
QMenu {{ background: {t.field}; color: {t.ink}; border: 1px solid {t.line}; padding: 4px 0; }}
QMenu::item {{ padding: 5px 24px 5px 12px; }}
QMenu::item:selected {{ background: {t.accent_fill}; }}
QMenu::item:disabled {{ color: {t.faint}; }}
QMenu::separator {{ height: 1px; background: {t.hair}; margin: 4px 0; }}
QTabWidget::pane {{ background: {t.panel}; border: 1px solid {t.line}; border-radius: 4px;
  top: -1px; }}
QTabBar::tab {{ background: transparent; color: {t.soft}; padding: 5px 12px;
  border: 2px solid transparent; border-bottom: 3px solid transparent; }}
QTabBar::tab:selected {{ color: {t.ink}; border-bottom-color: {t.accent}; }}
QTabBar::tab:hover {{ background: {t.raised}; }}
QTabBar::tab:selected:focus {{ border-color: {t.accent}; }}
QToolTip {{ background: {t.field}; color: {t.ink}; border: 1px solid {t.line}; padding: 3px 6px; }}
QProgressBar {{ background: {t.line}; border: 0; border-radius: 3px; }}
QProgressBar::chunk {{ background: {t.ink}; border-radius: 3px; }}
QSlider::groove:horizontal {{ height: 4px; background: {t.line}; border-radius: 2px; }}
QSlider::sub-page:horizontal {{ height: 4px; background: {t.soft}; border-radius: 2px; }}
QSlider::handle:horizontal {{ width: 12px; height: 12px; margin: -5px 0; border-radius: 7px;
  background: {t.field}; border: 1px solid {t.soft}; }}
QSlider::handle:horizontal:focus {{ border: 2px solid {t.accent}; width: 11px; height: 11px; }}
QScrollArea {{ background: {t.panel}; border: 2px solid transparent; }}
QScrollArea:focus {{ border-color: {t.accent}; }}
QScrollArea[quiet="true"] {{ border: 0; }}
QScrollBar:vertical {{ background: transparent; width: 10px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 10px; margin: 0; }}
QScrollBar::handle {{ background: {t.line}; border-radius: 3px; min-height: 24px;
  min-width: 24px; margin: 2px; }}
QScrollBar::handle:hover {{ background: {t.faint}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QMainWindow::separator {{ background: {t.line}; width: 1px; height: 1px; }}
"""
