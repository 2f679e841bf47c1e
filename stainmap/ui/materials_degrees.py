"""Temperatures of furnace programmes as they are set to be written: shown, and typed.

Programmes hold degrees Celsius. Where only Fahrenheit is shown, it is typed too; where both are,
what is typed is Celsius, and Fahrenheit stands beside it.
"""

from __future__ import annotations

from dataclasses import replace

from stainmap.app.materials_curves import Plot
from stainmap.app.materials_fields import Quantity
from stainmap.units import TemperatureUnit, fahrenheit

CELSIUS = "\N{DEGREE SIGN}C"
_PATHS = ("start_c", "target_c")


def is_temperature(quantity: Quantity) -> bool:
    """Return True for a field that holds degrees Celsius."""
    return quantity.path in _PATHS


def in_degrees(words: str, degrees: TemperatureUnit) -> str:
    """Return words that name degrees Celsius, for the degrees that are typed."""
    return words.replace(CELSIUS, degrees.axis_sign)


def shown(quantity: Quantity, text: str, degrees: TemperatureUnit) -> str:
    """Return what a field holds, as it is shown."""
    if not text or not is_temperature(quantity) or degrees is not TemperatureUnit.FAHRENHEIT:
        return text
    return f"{fahrenheit(float(text)):.6g}"


def typed(quantity: Quantity, text: str, degrees: TemperatureUnit) -> str:
    """Return what was typed, as the field holds it; no number is left to the field to refuse."""
    if not is_temperature(quantity) or degrees is not TemperatureUnit.FAHRENHEIT:
        return text
    try:
        return f"{(float(text.replace(',', '.')) - 32.0) / 1.8:.6g}"
    except ValueError:
        return text


def expected(quantity: Quantity, degrees: TemperatureUnit) -> str:
    """Return what can be typed, in words."""
    if not is_temperature(quantity) or degrees is not TemperatureUnit.FAHRENHEIT:
        return quantity.expected
    low, high = fahrenheit(quantity.low), fahrenheit(quantity.high)
    return replace(quantity, low=low, high=high).expected


def beside(quantity: Quantity, text: str, degrees: TemperatureUnit) -> str:
    """Return a field's temperature in the other degrees where both are shown, or nothing."""
    if not text or not is_temperature(quantity) or degrees is not TemperatureUnit.BOTH:
        return ""
    return TemperatureUnit.FAHRENHEIT.text(float(text))


def plot_in(plot: Plot, degrees: TemperatureUnit) -> Plot:
    """Return a plot over degrees Celsius as one over those that are shown."""
    if plot.up != CELSIUS or degrees is not TemperatureUnit.FAHRENHEIT:
        return plot
    curves = tuple(replace(one, up=1.8 * one.up + 32.0) for one in plot.curves)
    return replace(plot, up=degrees.axis_sign, curves=curves)
