"""The trajectory of integrate.ts by scipy's DOP853 at the same tolerance: milliseconds for one, the last radius."""

import json
import math
import time

try:
    import scipy
    from scipy.integrate import solve_ivp
except ImportError:
    print(json.dumps(None))
    raise SystemExit


def rate(t, y):
    r, _, up, along, m = y
    speed = math.sqrt(up * up + along * along)
    drag = 0.5 * 1.225 * math.exp(-(r - 6378137) / 7200) * speed * 3 / m
    pitch = 1.5 * math.exp(-t / 150)
    push = 1.6e6 / m
    return (
        up,
        along / r,
        push * math.sin(pitch) - drag * up - 3.986004418e14 / (r * r) + along * along / r,
        push * math.cos(pitch) - drag * along - up * along / r,
        -250.0,
    )


def fly():
    return solve_ivp(rate, (0, 300), [6378137, 0, 10, 400, 100000], method="DOP853", rtol=1e-9, atol=1e-9)


fly()
count = 50
start = time.perf_counter()
for _ in range(count):
    flown = fly()
each = (time.perf_counter() - start) / count * 1000
print(json.dumps({"each_ms": each, "radius_m": float(flown.y[0, -1]), "evaluations": int(flown.nfev), "version": scipy.__version__}))
