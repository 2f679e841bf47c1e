"""Measured spectra: what an instrument or a file gives, checked before anything believes it.

Nothing is rescaled in silence. A value in percent or a wavelength in micrometres is refused with
the value, its place and what was expected.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import StainmapError
from stainmap.optics.spectrum import BANDS_NM
from stainmap.words import translate, value_word

WIDEST_STEP_NM: Final = 20.0
"""A wider step between two samples is a gap; tooth-coloured spectra bend within 30 nm; assumed."""

MOST_SAMPLES: Final = 10_000
"""No instrument gives more; a longer text is no spectrum."""

# No ceramic comes near; assumed.
_LARGEST_PER_MM: Final = 1000.0


class SpectrumError(StainmapError):
    """A measured spectrum cannot be used."""


class SpectrumKind(StrEnum):
    """What a spectrum holds."""

    REFLECTANCE = "reflectance"
    TRANSMITTANCE = "transmittance"
    ABSORPTION_PER_MM = "absorption in 1/mm"
    SCATTERING_PER_MM = "scattering in 1/mm"

    @property
    def largest(self) -> float:
        """Largest value that can be meant."""
        return 1.0 if self in (self.REFLECTANCE, self.TRANSMITTANCE) else _LARGEST_PER_MM


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeasuredSpectrum:
    """A spectrum on the grid it was measured on.

    Parameters
    ----------
    wavelengths_nm
        (N,) rising, steps of at most 20 nm, from 400 nm or below to 700 nm or above.
    values
        (N,) reflectance or transmittance 0 to 1, or a coefficient in 1/mm, not negative.
    kind
        What the values are.
    name
        File or sample, for messages.

    Raises
    ------
    SpectrumError
        If any of this does not hold; the message has the value, its place and what is expected.
    """

    wavelengths_nm: NDArray[np.float64]
    values: NDArray[np.float64]
    kind: SpectrumKind = SpectrumKind.REFLECTANCE
    name: str = "spectrum"

    def __post_init__(self) -> None:
        """Check grid and values; keep read-only copies."""
        grid, values = (_copied(array, self.name) for array in (self.wavelengths_nm, self.values))
        if grid.shape != values.shape:
            raise SpectrumError(
                translate(
                    "measured spectrum", "It has {count} wavelengths and {count_2} values."
                ).format(count=len(grid), count_2=len(values)),
                where=self.name,
                advice=translate("measured spectrum", "Give one value per wavelength."),
            )
        _check_grid(grid, self.name)
        _check_values(grid, values, self.kind, self.name)
        object.__setattr__(self, "wavelengths_nm", grid)
        object.__setattr__(self, "values", values)

    def on_bands(self) -> NDArray[np.float64]:
        """Return the values at the 31 bands, 400 to 700 nm, (31,).

        A sample that lies on a band is taken as it is; between samples, a monotone cubic
        (PCHIP), which never overshoots, so values stay within their range. On grids finer than
        the bands no mean is formed: the weights of `colorimetry` take samples.
        """
        # Slopes next to a step from nothing may overflow on their way to zero.
        with np.errstate(over="ignore", divide="ignore", invalid="ignore"):
            from scipy.interpolate import PchipInterpolator  # noqa: PLC0415 - takes a third of a second

            spline = PchipInterpolator(self.wavelengths_nm, self.values)
        return np.asarray(spline(BANDS_NM), dtype=np.float64)


def spectrum_from_text(
    text: str, *, kind: SpectrumKind = SpectrumKind.REFLECTANCE, name: str = "spectrum"
) -> MeasuredSpectrum:
    """Return the spectrum of a text with two columns, wavelength in nm and value.

    Columns are parted by a comma, a semicolon, a tab or spaces; decimals have a point, or a
    comma where a semicolon or a tab parts the columns. Empty lines and lines that start with # are
    passed over, and so is one heading.

    Parameters
    ----------
    text
        Content of the file.
    kind, name
        As for `MeasuredSpectrum`.

    Raises
    ------
    SpectrumError
        If a line is no pair of numbers (the line is named), or the spectrum cannot be used.
    """
    pairs = list(_pairs(text, name))
    if not pairs:
        raise SpectrumError(
            translate("measured spectrum", "It holds no numbers."),
            where=name,
            advice=translate("measured spectrum", "Give wavelength and value on each line."),
        )
    grid, values = np.array(pairs, dtype=np.float64).T
    return MeasuredSpectrum(wavelengths_nm=grid, values=values, kind=kind, name=name)


def read_spectrum(path: Path, *, kind: SpectrumKind = SpectrumKind.REFLECTANCE) -> MeasuredSpectrum:
    """Return the spectrum of a CSV or text file; errors as `spectrum_from_text`."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except OSError as error:
        raise SpectrumError(
            translate("measured spectrum", "It cannot be read: {value}.").format(
                value=error.strerror or error
            ),
            where=path.name,
            advice=translate("measured spectrum", "Check name and permissions."),
        ) from error
    except UnicodeDecodeError as error:
        raise SpectrumError(
            translate("measured spectrum", "It is not a text file."),
            where=path.name,
            advice=translate("measured spectrum", "Export the spectrum as CSV."),
        ) from error
    return spectrum_from_text(text, kind=kind, name=path.name)


def _pairs(text: str, name: str) -> Iterator[tuple[float, float]]:
    heading_allowed = True
    count = 0
    for number, raw in enumerate(text.splitlines(), start=1):
        line = raw.strip()
        if not line or line.startswith("#"):
            continue
        pair = _numbers(line)
        if pair is None and not (heading_allowed and _is_heading(line)):
            shown = line if len(line) <= 40 else f"{line[:40]}..."
            raise SpectrumError(
                translate("measured spectrum", "Line {number} is '{shown}'.").format(
                    number=number, shown=shown
                ),
                where=name,
                advice=translate(
                    "measured spectrum", "Expected are two numbers, wavelength in nm and value."
                ),
            )
        heading_allowed = False
        if pair is not None:
            yield pair
            count += 1
        if count > MOST_SAMPLES:
            raise SpectrumError(
                translate("measured spectrum", "It has more than {most_samples} samples.").format(
                    most_samples=MOST_SAMPLES
                ),
                where=name,
                advice=translate("measured spectrum", "Expected is one spectrum."),
            )


def _columns(line: str) -> list[str]:
    for mark in (";", "\t"):
        if mark in line:
            return [part.strip().replace(",", ".") for part in line.split(mark)]
    return [part.strip() for part in (line.split(",") if "," in line else line.split())]


def _numbers(line: str) -> tuple[float, float] | None:
    parts = _columns(line)
    if len(parts) != 2:
        return None
    try:
        return float(parts[0]), float(parts[1])
    except ValueError:
        return None


def _is_heading(line: str) -> bool:
    """Return True if none of the columns is a number."""
    for part in _columns(line):
        try:
            float(part)
        except ValueError:
            continue
        return False
    return True


def _copied(values: ArrayLike, name: str) -> NDArray[np.float64]:
    array = np.array(values, dtype=np.float64)
    if array.ndim != 1 or len(array) == 0:
        raise SpectrumError(
            translate("measured spectrum", "It has the shape {shape}.").format(shape=array.shape),
            where=name,
            advice=translate("measured spectrum", "Expected are two lists of equal length."),
        )
    array.flags.writeable = False
    return array


def _check_grid(grid: NDArray[np.float64], name: str) -> None:
    _refuse_first(
        ~np.isfinite(grid),
        lambda i: translate("measured spectrum", "Wavelength {number} is {value}.").format(
            number=i + 1, value=grid[i]
        ),
        name,
        translate("measured spectrum", "Expected is a number in nm."),
    )
    if grid.max() < 50.0:
        raise SpectrumError(
            translate(
                "measured spectrum",
                "Its wavelengths run from {min:g} to {max:g}, which looks like micrometres.",
            ).format(min=grid.min(), max=grid.max()),
            where=name,
            advice=translate("measured spectrum", "Give them in nm, as 400 to 700."),
        )
    if len(grid) > 1:
        step = np.diff(grid)
        _refuse_first(
            step <= 0.0,
            lambda i: translate(
                "measured spectrum",
                "Wavelength {number} is {value:g} nm and follows {before:g} nm.",
            ).format(number=i + 2, value=grid[i + 1], before=grid[i]),
            name,
            translate("measured spectrum", "Expected are rising wavelengths, each once."),
        )
        _refuse_first(
            step > WIDEST_STEP_NM,
            lambda i: translate(
                "measured spectrum", "There is a gap between {low:g} and {high:g} nm."
            ).format(low=grid[i], high=grid[i + 1]),
            name,
            translate("measured spectrum", "Expected are steps of at most {widest:g} nm.").format(
                widest=WIDEST_STEP_NM
            ),
        )
    if grid[0] > BANDS_NM[0] or grid[-1] < BANDS_NM[-1]:
        raise SpectrumError(
            translate("measured spectrum", "It runs from {grid:g} to {grid_2:g} nm.").format(
                grid=grid[0], grid_2=grid[-1]
            ),
            where=name,
            advice=translate(
                "measured spectrum", "Expected are {bands_nm:g} to {bands_nm_2:g} nm or more."
            ).format(bands_nm=BANDS_NM[0], bands_nm_2=BANDS_NM[-1]),
        )


def _check_values(
    grid: NDArray[np.float64], values: NDArray[np.float64], kind: SpectrumKind, name: str
) -> None:
    def said(i: int) -> str:
        return translate("measured spectrum", "The {kind} at {grid:g} nm is {value:g}.").format(
            kind=value_word(kind), grid=grid[i], value=values[i]
        )

    limit = kind.largest
    expected = translate("measured spectrum", "Expected are 0 to {limit:g}.").format(limit=limit)
    _refuse_first(~np.isfinite(values), said, name, expected)
    _refuse_first(values < 0.0, said, name, expected)
    if limit == 1.0 and np.median(values) > limit:
        first = int(np.argmax(values > limit))
        raise SpectrumError(
            translate(
                "measured spectrum",
                "The {value} at {grid:g} nm is {values:g}, which looks like percent.",
            ).format(value=kind.value, grid=grid[first], values=values[first]),
            where=name,
            advice=expected,
        )
    _refuse_first(values > limit, said, name, expected)


def _refuse_first(
    wrong: NDArray[np.bool_], said: Callable[[int], str], name: str, expected: str
) -> None:
    if wrong.any():
        raise SpectrumError(said(int(np.argmax(wrong))), where=name, advice=expected)
