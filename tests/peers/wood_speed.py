"""Moisture and movement in vectorised NumPy: the columns of `beamcraft-core/benches/wood.rs`, and what they take here.

Prints nanoseconds an element, the best of ten runs on one core. The formulas are compared with a few values of the
verification rows first, so that the time belongs to the right numbers.
"""

import sys
import time

import numpy

COUNT = 100_000


def equilibrium_moisture(t, h):
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    a = k * h / 100
    one, two = k1 * a, k1 * k2 * a**2
    return 1800 / w * (a / (1 - a) + (one + 2 * two) / (1 + one + two))


def humidity_for_moisture(t, m):
    """Halving on the whole column: what vectorised code without branches does for a monotone function."""
    low, high = numpy.zeros_like(t), numpy.full_like(t, 95.0)
    for _ in range(52):
        middle = 0.5 * (low + high)
        above = equilibrium_moisture(t, middle) > m
        high = numpy.where(above, middle, high)
        low = numpy.where(above, low, middle)
    return 0.5 * (low + high)


def board_movement(width, angle, c_r, c_t, s_r, s_t, saturation, source, target):
    cosine, sine = numpy.cos(numpy.radians(angle)) ** 2, numpy.sin(numpy.radians(angle)) ** 2
    c, s = c_t * cosine + c_r * sine, s_t * cosine + s_r * sine
    inside = (source >= 6) & (source <= 14) & (target >= 6) & (target <= 14)
    start, end = numpy.minimum(source, saturation), numpy.minimum(target, saturation)
    law = (end - start) / (100 * saturation / s - saturation + start)
    return width * numpy.where(inside, c * (target - source), law)


def best(function, *columns):
    times = []
    for _ in range(10):
        start = time.perf_counter()
        function(*columns)
        times.append(time.perf_counter() - start)
    return min(times) / COUNT * 1e9


def check():
    # Wood Handbook, Table 4-2 at 70 F and the worked example of chapter 13.
    assert abs(equilibrium_moisture(numpy.array([21.1]), numpy.array([40.0]))[0] - 7.7) < 0.05
    assert abs(humidity_for_moisture(numpy.array([20.0]), numpy.array([8.0]))[0] - 41.8) < 0.05
    fir = board_movement(232.0, 0.0, 0.00112, 0.00245, 3.3, 7.0, 30.0, numpy.array([8.0]), numpy.array([11.0]))
    assert abs(fir[0] - 1.7) < 0.05


def main():
    check()
    spread = lambda low, high: numpy.linspace(low, high, COUNT)  # noqa: E731
    t, h, m = spread(0.0, 40.0), spread(10.0, 90.0), spread(4.0, 16.0)
    moving = (215.0, spread(0.0, 90.0), 0.00169, 0.00274, 4.9, 7.8, 30.0, spread(5.0, 13.0), spread(14.0, 4.0))
    print(f"numpy {numpy.__version__}, {COUNT} elements")
    print(f"equilibrium_moisture  {best(equilibrium_moisture, t, h):8.2f} ns an element")
    print(f"humidity_for_moisture {best(humidity_for_moisture, t, m):8.2f} ns an element")
    print(f"board_movement        {best(board_movement, *moving):8.2f} ns an element")
    return 0


if __name__ == "__main__":
    sys.exit(main())
