"""The language of the window: Qt's translators, and the same lookup for all that knows no Qt."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from stainmap.app.settings import Language
from stainmap.paths import resource
from stainmap.words import speak

_OWN = "stainmap_language"


def set_language(app: QCoreApplication, language: Language) -> None:
    """Speak a language from now on; what is on screen already stays as it is.

    Numbers keep the point in all languages, in fields as in sentences, whatever the desktop does.

    Raises
    ------
    StainmapError
        If the texts of the language are not there.
    """
    for one in app.findChildren(QTranslator, _OWN):
        app.removeTranslator(one)
        one.deleteLater()
    QLocale.setDefault(QLocale.c())
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
