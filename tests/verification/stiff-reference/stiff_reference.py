"""Pulls of four invented cars by a general-purpose stiff solver on the simulator's own equations.

Pipeline: inputs.json -> Car (equations.py) -> rates(t, y) -> scipy solve_ivp, phase by phase -> expected.json.

    python3 stiff_reference.py                  every run and every check (20 min of one core), writes expected.json
    python3 stiff_reference.py S4 "bigger core" --pulls 3 --cells 12 6      one run, printed

Needs numpy and scipy (made with those of Debian 12).
"""

import argparse
import json
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
PEAK_STEP = 0.05  # s between the instants of a pull at which the charge temperature is evaluated
BASE = {"core_cells": (24, 12), "exchanger_cells": (12, 12), "method": "BDF", "rtol": 1e-8, "atol": 1e-6}
CHECKS = {  # what is changed against BASE; pulls: no more than these
    "tolerances / 10": {"rtol": 1e-9, "atol": 1e-7},
    "LSODA instead of BDF": {"method": "LSODA"},
    "Radau instead of BDF": {"method": "Radau"},
    "core 48x24, exchanger 24x24, LSODA 1e-7": {
        "core_cells": (48, 24), "exchanger_cells": (24, 24), "method": "LSODA", "rtol": 1e-7, "atol": 1e-5,
        "pulls": 1},
}


def celsius(kelvin):
    return round(float(kelvin) - ZERO_C, 5)


def instant(car, y, a):
    """The reported values of one instant."""
    return {
        "mass_flow_kg_s": round(a.m, 7), "recirculation": round(a.r, 6),
        "compressor_inlet_degC": celsius(a.T1), "compressor_inlet_kPa": round(a.p1 / 1e3, 5),
        "pressure_ratio": round(a.PR, 6), "manifold_kPa": round(a.p_manifold / 1e3, 4),
        "core_air_drop_kPa": round((a.p2 - a.p_manifold) / 1e3, 5), "discharge_degC": celsius(a.T2),
        "core_outlet_degC": celsius(a.T_core), "charge_degC": celsius(a.T_charge),
        "indicated_degC": celsius(a.indicated),
        "gas_power_kW": round(a.W_gas / 1e3, 6), "drive_power_kW": round(a.shaft_power / 1e3, 6),
        "heat_air_to_core_kW": round(a.heat_to_core / 1e3, 6), "coolant_flow_L_min": round(a.flow_L_min, 4),
        "coolant_into_core_degC": celsius(a.coolant_in), "coolant_out_of_core_degC": celsius(a.coolant_out),
        "tank_degC": celsius(car.view(y, "tank")), "casing_degC": celsius(car.view(y, "casing")),
        "plenum_metal_degC": celsius(car.view(y, "plenum")),
    }


def pull_record(car, number, phase, times, states):
    """What is reported of one pull: peak from 1 s after opening to lift, heat, and the values at lift."""
    points = [car.evaluate(t, y, phase)[1] for t, y in zip(times, states.T)]
    peak, peak_at = max((p.T_charge, t - phase["from"]) for p, t in zip(points, times) if t - phase["from"] > 1 - 1e-9)
    return {
        "pull": number, "peak_degC": celsius(peak), "peak_at_s": round(peak_at, 3),
        "indicated_highest_in_pull_degC": celsius(max(p.indicated for p in points)),
        "heat_air_to_core_kJ": round(float(car.view(states[:, -1], "heat") - car.view(states[:, 0], "heat")), 4),
        "coolant_into_core_at_start_degC": celsius(points[0].coolant_in),
        "end": instant(car, states[:, -1], points[-1]),
    }


def run(inputs, core_cells, exchanger_cells, method, rtol, atol, pulls=None):
    """Integrates one cycle phase by phase (a restart at each joint); the rest behind the last pull is left out."""
    car = Car(inputs, core_cells, exchanger_cells)
    cycle = inputs["cycle"]
    repeats = min(pulls or cycle["then_repeat"], cycle["then_repeat"])
    y, t, began, worst = car.start(), 0.0, time.perf_counter(), 0.0
    result = {"end_of_first_phase": None, "pulls": []}
    for phase in cycle["first"] + cycle["phases"] * repeats:
        phase = {**phase, "from": t}
        assert phase["pump_voltage_ratio"] == 1
        until, is_pull = t + phase["duration_s"], phase["mode"].startswith("wide open")
        times = np.linspace(t, until, round(phase["duration_s"] / PEAK_STEP) + 1) if is_pull else [until]
        solution = solve_ivp(lambda t, y: car.evaluate(t, y, phase)[0], (t, until), y, method=method, t_eval=times,
                             rtol=rtol, atol=atol)
        assert solution.success, solution.message
        y, t = solution.y[:, -1], until
        at_end = car.evaluate(t, y, phase)[1]
        worst = max(worst, at_end.imbalance)
        result["end_of_first_phase"] = result["end_of_first_phase"] or instant(car, y, at_end)
        if is_pull:
            result["pulls"].append(pull_record(car, len(result["pulls"]) + 1, phase, solution.t, solution.y))
            print(f"  {time.perf_counter() - began:5.0f} s: pull {len(result['pulls'])} peaks at "
                  f"{result['pulls'][-1]['peak_degC']:.5f} degC", flush=True)
            if len(result["pulls"]) == repeats:
                break
    assert worst < 1e-10, f"first law broken: {worst:g} of the power"
    return {"states": car.size, "first_law_worst_share_of_power": float(f"{worst:.1e}"), **result}


def text(value, indent=""):
    """JSON in the project's format: lists of plain values on one line, everything else one entry a line."""
    inner = indent + "  "
    if isinstance(value, dict):
        entries = [f"{inner}{json.dumps(key)}: {text(v, inner)}" for key, v in value.items()]
    elif isinstance(value, (list, tuple)) and any(isinstance(v, (dict, list)) for v in value):
        entries = [inner + text(v, inner) for v in value]
    else:
        return json.dumps(value).replace("e-0", "e-")
    opening, closing = "{}" if isinstance(value, dict) else "[]"
    return opening + "\n" + ",\n".join(entries) + "\n" + indent + closing


def checked(case):
    """One run with its checks: the same pulls by other tolerances, methods and cells."""
    print(f"{case['scenario']} {case['variant']}", flush=True)
    base = run(case["inputs"], **BASE)
    peaks = [p["peak_degC"] for p in base["pulls"]]
    checks = []
    for name, change in CHECKS.items():
        print(f" {name}", flush=True)
        others = [p["peak_degC"] for p in run(case["inputs"], **{**BASE, **change})["pulls"]]
        largest = max(abs(a - b) for a, b in zip(others, peaks))
        checks.append({"change": name, "largest_peak_change_K": round(largest, 5), "peaks_degC": others})
    return {"scenario": case["scenario"], "variant": case["variant"], "checks": checks, **base}


def document(runs):
    """expected.json as a dictionary."""
    return {
        "about": "Pulls of four invented cars by a general-purpose stiff solver on the simulator's own equations, "
                 "written independently. Condensation is not computed: these cars condense nothing. Temperatures degC, "
                 "pressures kPa absolute; peak: charge behind core and plenum, from 1 s after opening to lift; "
                 "end: at lift, values of the wide-open side.",
        "made_by": "stiff_reference.py and equations.py from inputs.json, all beside this file",
        "versions": {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__},
        "tolerances": {"solver": "scipy solve_ivp " + BASE["method"], "relative": BASE["rtol"],
                       "absolute_K": BASE["atol"], "restart": "at every joint of two phases",
                       "peak_looked_for_every_s": PEAK_STEP},
        "grid": {"core_cells_along_air_and_coolant": BASE["core_cells"],
                 "exchanger_cells_along_air_and_coolant": BASE["exchanger_cells"],
                 "lines": "one row of cells of at most 0.07 m, at least 4",
                 "coolant_outflow": "linear upwind everywhere, no switch"},
        "runs": runs,
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
    if args.scenario:
        case = next(r for r in INPUTS["runs"] if (r["scenario"], r["variant"]) == (args.scenario, args.variant))
        nx, ny = args.cells
        print(text(run(case["inputs"], (nx, ny), (ny, ny), args.method, args.rtol, 100 * args.rtol, args.pulls)))
        return
    (HERE / "expected.json").write_text(text(document([checked(case) for case in INPUTS["runs"]])) + "\n")


if __name__ == "__main__":
    main()
