"""Pulls of four invented cars by a general-purpose stiff solver on the simulator's own equations.

Pipeline: inputs.json -> Car (equations.py) -> rates(t, y) -> scipy solve_ivp, phase by phase -> expected.json.

    python3 stiff_reference.py                  every run and every check, writes expected.json beside this file
    python3 stiff_reference.py S4 "bigger core" --pulls 3 --cells 12 6      one run, printed

Needs numpy and scipy (made with those of Debian 12).
"""

import argparse
import json
import math
import platform
import sys
import time
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import solve_ivp

sys.dont_write_bytecode = True
from equations import INPUTS, ZERO_C, Car  # noqa: E402

HERE = Path(__file__).resolve().parent


def pull_record(car, number, phase, times, states):
    """What is reported of one pull: peak from 1 s after opening to lift, and the values at lift."""
    points = [car.evaluate(t, y, phase)[1] for t, y in zip(times, states.T)]
    counted = [(p.T_charge, t) for p, t in zip(points, times) if t >= phase["from"] + 1 - 1e-9]
    peak, peak_at = max(counted)
    end = points[-1]
    C = lambda kelvin: round(float(kelvin) - ZERO_C, 5)
    return {
        "pull": number, "peak_degC": C(peak), "peak_at_s": round(peak_at - phase["from"], 3),
        "indicated_highest_in_pull_degC": C(max(p.indicated for p in points)),
        "heat_air_to_core_kJ": round(float(car.view(states[:, -1], "heat") - car.view(states[:, 0], "heat")), 4),
        "start": {"coolant_into_core_degC": C(points[0].coolant_in)},
        "end": {
            "mass_flow_kg_s": round(end.m, 7), "pressure_ratio": round(end.PR, 6),
            "manifold_kPa": round(end.p_manifold / 1e3, 4), "core_air_drop_kPa": round((end.p2 - end.p_manifold) / 1e3, 5),
            "discharge_degC": C(end.T2), "core_outlet_degC": C(end.T_core), "charge_degC": C(end.T_charge),
            "indicated_degC": C(end.indicated), "drive_power_kW": round(end.shaft_power / 1e3, 5),
            "coolant_flow_L_min": round(end.flow_L_min, 4), "coolant_into_core_degC": C(end.coolant_in),
            "coolant_out_of_core_degC": C(end.coolant_out), "tank_degC": C(car.view(states[:, -1], "tank")),
            "casing_degC": C(car.view(states[:, -1], "casing")), "plenum_metal_degC": C(car.view(states[:, -1], "plenum")),
        },
    }


def run(inputs, pulls, core_cells, exchanger_cells, method, rtol, atol, log=lambda text: None):
    """Integrates one cycle phase by phase (a restart at each joint) and returns its pulls."""
    car = Car(inputs, core_cells, exchanger_cells)
    cycle = inputs["cycle"]
    repeats = min(pulls or cycle["then_repeat"], cycle["then_repeat"])
    y, t, records, began, evaluations, worst = car.start(), 0.0, [], time.perf_counter(), 0, 0.0
    for phase in cycle["first"] + cycle["phases"] * repeats:
        phase = {**phase, "from": t}
        assert phase["pump_voltage_ratio"] == 1
        until = t + phase["duration_s"]
        is_pull = phase["mode"].startswith("wide open")
        if len(records) == repeats and not is_pull:
            break  # nothing is reported of the last rest
        times = np.linspace(t, until, 20 * round(phase["duration_s"]) + 1) if is_pull else [until]
        solution = solve_ivp(lambda t, y: car.evaluate(t, y, phase)[0], (t, until), y, method=method, t_eval=times,
                             rtol=rtol, atol=atol)
        assert solution.success, solution.message
        evaluations += solution.nfev
        if is_pull:
            records.append(pull_record(car, len(records) + 1, phase, solution.t, solution.y))
        y, t = solution.y[:, -1], until
        worst = max(worst, car.evaluate(t, y, phase)[1].imbalance)
        log(f"{phase['name']:14s} to {t:7.1f} s, {evaluations} evaluations, {time.perf_counter() - began:.0f} s"
            + (f", peak {records[-1]['peak_degC']:.5f} degC" if is_pull else ""))
    assert worst < 1e-10, f"first law broken: {worst:g} of the power"
    return records, {"states": car.size, "evaluations": evaluations, "first_law_worst_share_of_power": float(f"{worst:.1e}")}


def largest_change(a, b):
    return round(max(abs(x["peak_degC"] - y["peak_degC"]) for x, y in zip(a, b)), 6)


BASE = {"core_cells": (24, 12), "exchanger_cells": (12, 12), "method": "LSODA", "rtol": 1e-8, "atol": 1e-6}
CHECKS = {  # name: (what is changed, pulls)
    "tolerances / 10": ({"rtol": 1e-9, "atol": 1e-7}, None),
    "BDF instead of LSODA": ({"method": "BDF"}, 2),
    "core 48x24, exchanger 24x24": ({"core_cells": (48, 24), "exchanger_cells": (24, 24)}, 2),
}


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("scenario", nargs="?")
    parser.add_argument("variant", nargs="?", default="stock")
    parser.add_argument("--pulls", type=int)
    parser.add_argument("--cells", type=int, nargs=2, default=BASE["core_cells"])
    parser.add_argument("--method", default=BASE["method"])
    parser.add_argument("--rtol", type=float, default=BASE["rtol"])
    args = parser.parse_args()
    log = lambda text: print(text, flush=True)
    if args.scenario:
        case = next(r for r in INPUTS["runs"] if (r["scenario"], r["variant"]) == (args.scenario, args.variant))
        nx, ny = args.cells
        pulls, numbers = run(case["inputs"], args.pulls, (nx, ny), (ny, ny), args.method, args.rtol, 100 * args.rtol, log)
        log(json.dumps({"numbers": numbers, "pulls": pulls}, indent=1))
        return
    runs = []
    for case in INPUTS["runs"]:
        log(f"== {case['scenario']} {case['variant']}")
        pulls, numbers = run(case["inputs"], None, **BASE, log=log)
        checks = {}
        for name, (change, count) in CHECKS.items():
            log(f"-- {name}")
            other, _ = run(case["inputs"], count, **{**BASE, **change}, log=log)
            checks[name] = {"pulls": len(other), "largest_peak_change_K": largest_change(pulls, other)}
        runs.append({"scenario": case["scenario"], "variant": case["variant"], "numerics": numbers, "checks": checks, "pulls": pulls})
    result = {
        "about": "Pulls of four invented cars by a general-purpose stiff solver on the simulator's own equations, written "
                 "independently. Condensation is not computed (these cars condense nothing). Temperatures degC, pressures kPa absolute.",
        "made_by": "stiff_reference.py from inputs.json, both beside this file",
        "versions": {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__},
        "tolerances": {"solver": "scipy solve_ivp " + BASE["method"], "relative": BASE["rtol"], "absolute_K": BASE["atol"],
                       "restart": "at every joint of two phases", "peaks_looked_for_every_s": 0.05},
        "grid": {"core": "24 along the air, 12 along the coolant", "exchanger": "12 along the air, 12 along the coolant",
                 "lines": "one row of cells of 0.07 m or less, at least 4", "coolant_outflow": "linear upwind, no switch"},
        "runs": runs,
    }
    (HERE / "expected.json").write_text(json.dumps(result, indent=2) + "\n")


if __name__ == "__main__":
    main()
