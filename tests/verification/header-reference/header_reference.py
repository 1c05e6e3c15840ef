"""Flow over the layers between two headers, from their momentum equations as differential equations.

With x from 0 to 1 along the stack from the inlet port, m(x) the share of the flow still in the dividing header and n
layers on the unit length,

    dm/dx = -n f,   P = a f + b f |f|,   P = drop + head (C_d (1 - m^2) - C_c (1 - w^2)),   m(0) = 1, m(1) = 0

where w is the share in the combining header at the same place: m for ports at one end (U), 1 - m at opposite ends (Z);
C_d = 1 and C_c = 2; P and drop in units of rho/2 (flow/area)^2 = head. The drop is found by Brent's method so that
nothing is left at the end; the integration is scipy's DOP853 at 1e-12. A layer takes what m loses over its length.

Run with Debian's python3-scipy:  python3 header_reference.py  writes expected.json beside itself.
"""

import json
import math
import pathlib

from scipy.integrate import solve_ivp
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).parent
DIVIDING, COMBINING = 1.0, 2.0


def shares(case):
    n = case["layers"]
    total = case["totalFlow"]
    head = case["density"] / 2 * (total / case["headerArea"]) ** 2
    a = case["linear"] * total
    b = case["quadratic"] * total**2

    def layer(pressure):
        if b == 0:
            return pressure / a
        size = (-a + math.sqrt(a * a + 4 * b * abs(pressure))) / (2 * b)
        return math.copysign(size, pressure)

    def slope(drop):
        def f(_, y):
            m = y[0]
            w = m if case["arrangement"] == "U" else 1 - m
            pressure = drop + head * (DIVIDING * (1 - m * m) - COMBINING * (1 - w * w))
            return [-n * layer(pressure)]

        return f

    def walk(drop, places=None):
        return solve_ivp(slope(drop), (0, 1), [1.0], method="DOP853", rtol=1e-12, atol=1e-14, t_eval=places)

    even = a / n + b / n**2
    drop = brentq(lambda d: walk(d).y[0, -1], 0.05 * even, 20 * even + 4 * head, xtol=1e-13 * even, rtol=1e-14)
    left = walk(drop, [k / n for k in range(n + 1)]).y[0]
    return [float(left[k] - left[k + 1]) for k in range(n)]


if __name__ == "__main__":
    cases = json.loads((HERE / "inputs.json").read_text())
    expected = [[round(share, 10) for share in shares(case)] for case in cases]
    (HERE / "expected.json").write_text(json.dumps(expected) + "\n")
