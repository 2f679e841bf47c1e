"""Writes the page of evidence and its pictures: `python3 tests --evidence`."""

from __future__ import annotations

import sys
import warnings
from pathlib import Path

from tests.evidence import contents, page

FOLDER = Path(__file__).resolve().parents[2] / "resources" / "manual"
PAGE = FOLDER / "evidence.md"


def main() -> int:
    """Write everything, remove pictures that the page no longer has, name checks that fail."""
    warnings.simplefilter("ignore")
    sections = contents.sections()
    pictures = page.pictures(sections)
    FOLDER.mkdir(parents=True, exist_ok=True)
    for old in FOLDER.glob("evidence_*.svg"):
        if old.name not in pictures:
            old.unlink()
    for name, text in pictures.items():
        (FOLDER / name).write_text(text, encoding="utf-8")
    PAGE.write_text(page.markdown(contents.TITLE, contents.OPENING, sections), encoding="utf-8")
    checks = [check for section in sections for check in section.checks]
    failed = [check for check in checks if not check.holds]
    print(f"{PAGE}: {len(checks)} checks, {len(pictures)} pictures, {len(failed)} do not hold")
    for check in failed:
        print(f"  {check.key}: {check.found} {check.unit}, asked {check.asked}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
