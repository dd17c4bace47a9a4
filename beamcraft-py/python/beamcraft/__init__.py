"""Hollow, mitred, wall-hung timber-look beams: panels, saw settings, cleat, checks, stock and finish.

Every quantity carries its unit in its name: millimetre, newton, MPa, kilogram, litre, degree, percent. A function takes
keywords and returns an object that holds the whole working; ``call`` does the same by name with dicts or JSON.

Results on fire, structure, lifting and dust carry their caution and defer to local codes, the appliance's listing and
licensed practice. Who uses a result is responsible for it.

Examples
--------
>>> import beamcraft
>>> seam = beamcraft.mitre_pair(thickness_a_mm=20, thickness_b_mm=20)
>>> seam.tilt_a_deg
45.0
"""

from beamcraft import _native, choices
from beamcraft._errors import (
    BeamcraftError,
    DoorError,
    FasteningError,
    Fault,
    GeometryError,
    InputError,
    InternalError,
    WoodError,
)
from beamcraft._native import *  # noqa: F403

__all__ = [
    "BeamcraftError",
    "DoorError",
    "FasteningError",
    "Fault",
    "GeometryError",
    "InputError",
    "InternalError",
    "WoodError",
    "__version__",
    "choices",
]
__all__ += _native.__all__

__version__: str = _native.__version__

if _native._DEBUG_BUILD:
    import warnings

    warnings.warn("beamcraft was built without optimisation: it is correct but slow", RuntimeWarning, stacklevel=2)
    del warnings
