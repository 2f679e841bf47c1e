"""The language of the window: Qt's translators, and the same lookup for all that knows no Qt."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QTranslator

from stainmap.paths import resource
from stainmap.words import speak

_OWN = "stainmap_language"


class Language(StrEnum):
    """Languages there are texts in."""

    ENGLISH = "en"
    GERMAN = "de"


def set_language(app: QCoreApplication, language: Language) -> None:
    """Speak a language from now on; what is on screen already stays as it is.

    Raises
    ------
    StainmapError
        If the texts of the language are not there.
    """
    for one in app.findChildren(QTranslator, _OWN):
        app.removeTranslator(one)
        one.deleteLater()
    if language is Language.ENGLISH:
        speak(None)
        return
    qt_texts = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    own_texts = resource("translations", f"stainmap_{language}.qm")
    for path in (f"{qt_texts}/qtbase_{language}.qm", str(own_texts)):
        texts = QTranslator(app)
        texts.setObjectName(_OWN)
        # Qt's own words may be missing from an installation; ours are looked for above.
        if texts.load(path):
            app.installTranslator(texts)
    speak(QCoreApplication.translate)
