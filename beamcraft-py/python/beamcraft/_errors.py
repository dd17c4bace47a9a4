"""Exceptions: one base class, and a subclass for each page of the error table."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

__all__ = [
    "BeamcraftError",
    "DoorError",
    "FasteningError",
    "Fault",
    "GeometryError",
    "InputError",
    "InternalError",
    "StaticsError",
    "WoodError",
]


class Fault(NamedTuple):
    """One thing that is wrong.

    Attributes
    ----------
    code : int
        Number of the error code; it never changes its meaning.
    name : str
        Name of the error code, such as ``out_of_range``.
    field : str
        Path of the field at fault, such as ``body.legs[0].length_mm``; empty for the whole input.
    value : str
        What was given, as text; empty where nothing was given.
    allowed : str
        What is allowed, as text.
    cure : str
        What to change, as text; may be empty.
    message : str
        All of it in one line.
    """

    code: int
    name: str
    field: str
    value: str
    allowed: str
    cure: str
    message: str


class BeamcraftError(ValueError):
    """What was given cannot be calculated.

    Holds every fault that was found; the attributes ``code``, ``name``, ``field``, ``value``, ``allowed`` and ``cure``
    are those of the first one.

    Parameters
    ----------
    details : iterable of Fault
        The faults, at least one.

    Examples
    --------
    >>> import beamcraft
    >>> try:
    ...     beamcraft.mitre_pair(thickness_a_mm=0, thickness_b_mm=20)
    ... except beamcraft.InputError as fault:
    ...     print(fault.name, fault.field, fault.value, "|", fault.allowed)
    out_of_range thickness_a_mm 0 mm | 1 mm to 150 mm
    """

    details: tuple[Fault, ...]

    def __init__(self, details: Iterable[Fault]) -> None:
        self.details = tuple(Fault(*detail) for detail in details)
        if not self.details:
            raise TypeError("an error holds at least one fault")
        # The arguments make an equal exception: pickle, copy and repr use them.
        super().__init__(self.details)

    def __str__(self) -> str:
        return "\n".join(fault.message for fault in self.details)

    @property
    def code(self) -> int:
        """Number of the error code of the first fault."""
        return self.details[0].code

    @property
    def name(self) -> str:
        """Name of the error code of the first fault."""
        return self.details[0].name

    @property
    def field(self) -> str:
        """Path of the first field at fault; empty for the whole input."""
        return self.details[0].field

    @property
    def value(self) -> str:
        """What was given there, as text."""
        return self.details[0].value

    @property
    def allowed(self) -> str:
        """What is allowed there, as text."""
        return self.details[0].allowed

    @property
    def cure(self) -> str:
        """What to change, as text; may be empty."""
        return self.details[0].cure


class InputError(BeamcraftError):
    """A field is unknown, missing, of the wrong type, out of range, or at odds with another."""


class GeometryError(BeamcraftError):
    """The shapes given leave no body, or no hollow in it."""


class WoodError(BeamcraftError):
    """The material has no published value for something that is needed."""


class FasteningError(BeamcraftError):
    """A fastener cannot do what it is asked to."""


class StaticsError(BeamcraftError):
    """A cross-section or a beam that statics cannot answer for."""


class DoorError(BeamcraftError):
    """A door of the library was used against its contract."""


class InternalError(BeamcraftError):
    """A defect of this library; please report the input."""


# Upper byte of a code -> class.
PAGES: dict[int, type[BeamcraftError]] = {
    0x01: InputError,
    0x02: GeometryError,
    0x03: WoodError,
    0x04: FasteningError,
    0x05: StaticsError,
    0x0E: DoorError,
    0x0F: InternalError,
}


def error_of(details: Iterable[Iterable[object]]) -> BeamcraftError:
    """Exception of the faults that the compiled part reports; its class is that of the first one."""
    faults = tuple(Fault(*detail) for detail in details)  # type: ignore[arg-type]
    return PAGES.get(faults[0].code >> 8, BeamcraftError)(faults)
