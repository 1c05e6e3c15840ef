"""The simulator's equations in a second hand: laws, cells and rates dy/dt. stiff_reference.py integrates them.

Laws and discrete cell equations are those of the simulator (cell means as states, linear-upwind coolant outflow, air
driven by the mean of a cell's inlet and outlet); the code, the time stepping and the way in which air path and loop
are closed are not. No field of the air is a state: air path and loop flow are solved again at every evaluation.

SI inside: K, Pa, kg/s, m, W, J. Array axes: [i along the air, j along the coolant].
"""

import json
import math
from pathlib import Path
from types import SimpleNamespace

import numpy as np
from scipy.optimize import brentq

HERE = Path(__file__).resolve().parent
INPUTS = json.loads((HERE / "inputs.json").read_text())
CP, R, G = (INPUTS["constants"][key] for key in ("air_cp_J_kgK", "air_R_J_kgK", "air_g"))
ISENTROPIC = (G - 1) / G
ZERO_C = 273.15
LINE_CELL = 0.07  # m of line per cell, at least 4 cells
ROOT = {"xtol": 1e-14, "rtol": 1e-14}


def coolant_properties(volume_fraction, kelvin_for_constants):
    """Density and heat capacity (constants of a run) and the four coefficients of ln(viscosity / mPa s) in T - base."""
    c = INPUTS["coolant"]
    glycol, water = c["glycol_density_20degC_kg_m3"], c["water_density_20degC_kg_m3"]
    x = volume_fraction * glycol / (volume_fraction * glycol + (1 - volume_fraction) * water)
    in_temperature = lambda rows: [sum(v * (x - c["x_base"]) ** j for j, v in enumerate(row)) for row in rows]
    at = lambda rows: sum(v * (kelvin_for_constants - c["T_base_K"]) ** i for i, v in enumerate(in_temperature(rows)))
    return at(c["density_kg_m3"]), at(c["specific_heat_J_kgK"]), in_temperature(c["viscosity"])


def friction_factor(Re, relative_roughness):
    """Darcy friction factor of S. W. Churchill, Chem. Eng. 84(24), 1977, 91-92."""
    A = (2.457 * math.log(1 / ((7 / Re) ** 0.9 + 0.27 * relative_roughness))) ** 16
    B = (37530 / Re) ** 16
    return 8 * ((8 / Re) ** 12 + (A + B) ** -1.5) ** (1 / 12)


def faces(cells, inlet):
    """Coolant temperature entering and leaving every cell along the last axis: c_out = 1.5 T[j] - 0.5 T[j-1]."""
    edge = np.full(cells.shape[:-1] + (1,), inlet)
    leaving = 1.5 * cells - 0.5 * np.concatenate((edge, cells[..., :-1]), axis=-1)
    return np.concatenate((edge, leaving[..., :-1]), axis=-1), leaving


def film(part, flow):
    """Coolant-side conductance: reference x max[(flow / reference flow)^exponent, floor share]."""
    ratio = (flow / part["UA_coolant_at_kg_s"]) ** part["UA_coolant_exponent"]
    return part["UA_coolant_W_K"] * max(ratio, part["UA_coolant_floor_share"])


def air_effectiveness(part, mass_flow, nx):
    """Share of (metal - inlet) by which one cell warms its air: N / (1 + N/2), N = UA / (nx m cp), below N = 2."""
    N = part["UA_air_W_K"] * (mass_flow / part["UA_air_at_kg_s"]) ** part["UA_air_exponent"] / (nx * mass_flow * CP)
    assert N < 2, "cells too coarse for the linear branch"
    return N / (1 + N / 2)


def march_air(metal, inlet, eps):
    """Air temperature entering every cell, row after row along the air."""
    entering = np.empty_like(metal)
    air = np.full(metal.shape[1], inlet)
    for i, row in enumerate(metal):
        entering[i] = air
        air = air + eps * (row - air)
    return entering


class Car:
    """Constants of one scenario, layout of its state vector, and its rates."""

    def __init__(self, inputs, core_cells, exchanger_cells):
        self.inputs = inputs
        self.engine, self.compressor, self.bypass = inputs["engine"], inputs["compressor"], inputs["bypass"]
        self.casing, self.plenum, self.sensor = inputs["casing"], inputs["plenum"], inputs["sensor"]
        self.core, self.exchanger, self.pump, self.tank = (inputs[k] for k in ("core", "exchanger", "pump", "tank"))
        self.ambient = inputs["ambient"]["temperature_degC"] + ZERO_C
        self.p0 = inputs["ambient"]["pressure_kPa"] * 1e3
        assert self.bypass["throttle"] == "upstream" and self.bypass["route"] == "before"
        assert inputs["intake"]["drop_kPa"] == 0 and self.compressor["kind"] == 1
        self.T0 = self.ambient + inputs["intake"]["pickup_K"]
        coolant = inputs["coolant"]
        self.rho, self.c, self.viscosity = coolant_properties(
            coolant["glycol_volume_fraction"], coolant["density_and_heat_capacity_at_degC"] + ZERO_C)
        self.inner_efficiency = self.scaled_efficiency()
        self.layout(core_cells, exchanger_cells)

    # ---- state vector -------------------------------------------------------------------------------------------

    def layout(self, core_cells, exchanger_cells):
        """Slices and heat capacities [J/K] of all states; the heat counter (kJ) stands last with capacity 0."""
        self.slices, self.shapes, capacities, size = {}, {}, [], 0

        def add(name, shape, capacity):
            nonlocal size
            count = math.prod(shape)
            self.slices[name], self.shapes[name] = slice(size, size + count), shape
            capacities.append(np.full(count, capacity / count))
            size += count

        per_litre = self.rho * self.c * 1e-3
        for name, part, shape in (("core", self.core, core_cells), ("exchanger", self.exchanger, exchanger_cells)):
            add(name + " metal", shape, part["metal_kJ_K"] * 1e3)
            add(name + " coolant", shape, part["coolant_L"] * per_litre)
        lines = self.inputs["lines"]
        self.segments = lines["segments"]
        for k, segment in enumerate(self.segments):
            assert segment["air"] == "bay"
            length, area = segment["length_m"], math.pi / 4 * (segment["bore_mm"] * 1e-3) ** 2
            cells = (max(4, math.ceil(length / LINE_CELL - 1e-9)),)
            add(f"wall {k}", cells, lines["wall_heat_capacity_J_mK"] * length)
            add(f"line {k}", cells, length * area * self.rho * self.c)
        add("tank", (1,), self.tank["water_or_coolant_L"] * per_litre)
        add("casing", (1,), self.casing["heat_capacity_kJ_K"] * 1e3)
        add("plenum", (1,), self.plenum["heat_capacity_kJ_K"] * 1e3)
        add("sensor", (1,), 0.0)
        add("heat", (1,), 0.0)
        self.capacities, self.size = np.concatenate(capacities), size

    def view(self, y, name):
        values = y[self.slices[name]]
        return values[0] if self.shapes[name] == (1,) else values.reshape(self.shapes[name])

    def start(self):
        begin = self.inputs["start"]
        y = np.full(self.size, begin["coolant_degC"] + ZERO_C)
        assert begin["core_metal_degC"] == begin["coolant_degC"]
        for name, key in (("casing", "casing_degC"), ("plenum", "plenum_metal_degC"), ("sensor", "sensor_degC")):
            y[self.slices[name]] = begin[key] + ZERO_C
        y[self.slices["heat"]] = 0.0
        return y

    # ---- laws of the machine ------------------------------------------------------------------------------------

    def idle_power(self, n, p1):
        k = self.compressor
        speed = n / k["idle_power_reference_rpm"]
        return k["idle_power_kW"] * 1e3 * speed ** k["idle_power_speed_exponent"] * p1 / 1e5

    def mechanical_loss(self, n):
        k = self.compressor
        speed = n / k["idle_power_reference_rpm"]
        return k["mechanical_loss_kW_at_reference_rpm"] * 1e3 * speed ** k["mechanical_loss_speed_exponent"]

    def delivered(self, n, PR, p1, T1):
        k = self.compressor
        filling = 1 - k["leak_1000rpm_per_PR"] * (PR - 1) / (n / 1000)
        return filling * k["swept_L_rev"] * 1e-3 * n / 60 * p1 / (R * T1)

    def scaled_efficiency(self):
        """The quoted efficiency holds for the total, idle power included, at the quoted point."""
        q = self.compressor["quoted_efficiency_point"]
        T1, p1 = q["T1"] + ZERO_C, q["p1"] * 1e3
        compression = self.delivered(q["speed"], q["PR"], p1, T1) * CP * T1 * (q["PR"] ** ISENTROPIC - 1)
        return compression / (compression / q["eta"] - self.idle_power(q["speed"], p1))

    def swallowing(self, rpm, p, T):
        """Mass flow of the engine at manifold pressure p and charge temperature T."""
        e = self.engine
        eta = e["volumetric_efficiency"] * (T / e["reference_charge_temperature_K"]) ** e["temperature_exponent"]
        return eta * e["displacement_L"] * 1e-3 * rpm / 120 * p / (R * T)

    def core_drop_term(self, m, mean_T):
        """p_before^2 - p_behind^2 = 2 D rho_ref R T: what drop = D rho_ref/rho is with rho at the mean pressure."""
        k = self.core
        D = k["air_drop_kPa"] * 1e3 * (m / k["air_drop_at_kg_s"]) ** k["air_drop_flow_exponent"]
        return 2 * D * k["air_drop_at_kg_m3"] * R * mean_T

    def core_and_plenum(self, m, T2, row_means, T_plenum):
        """Air temperature behind the core and behind the plenum. Flow is even, so row means suffice."""
        nx = len(row_means)
        eps = air_effectiveness(self.core, m, nx)
        left = 1 - eps
        behind = left ** nx * T2 + eps * float(left ** np.arange(nx - 1, -1, -1) @ row_means)
        return behind, T_plenum + (behind - T_plenum) * math.exp(-self.plenum["to_charge_air_W_K"] / (m * CP)), eps

    def wide_open(self, rpm, T_casing, T_plenum, row_means):
        """Valve closed: the pressure ratio at which the engine swallows what the compressor delivers."""
        n, T1, p1 = rpm * self.compressor["drive_ratio"], self.T0, self.p0
        a = SimpleNamespace(n=n, T1=T1, p1=p1, r=0.0)

        def surplus(PR):
            a.PR, a.p2 = PR, PR * p1
            a.m = a.m_compressor = self.delivered(n, PR, p1, T1)
            a.W_gas = a.m * CP * T1 * (PR ** ISENTROPIC - 1) / self.inner_efficiency + self.idle_power(n, p1)
            a.T_rotor = T1 + a.W_gas / (a.m * CP)
            a.T2 = T_casing + (a.T_rotor - T_casing) * math.exp(-self.casing["to_discharge_air_W_K"] / (a.m * CP))
            a.T_core, a.T_charge, a.eps = self.core_and_plenum(a.m, a.T2, row_means, T_plenum)
            behind_squared = a.p2 ** 2 - self.core_drop_term(a.m, (a.T2 + a.T_core) / 2)
            a.p_manifold = a.m / self.swallowing(rpm, 1.0, a.T_charge)
            return (behind_squared - a.p_manifold ** 2) / p1 ** 2

        surplus(brentq(surplus, 0.9, 3.0, **ROOT))  # the last call leaves the solution in a
        return a

    def part_load(self, rpm, p_manifold, T_casing, T_plenum, row_means):
        """Valve open, throttle upstream, air returned from before the core: the recirculation r that fits."""
        n = rpm * self.compressor["drive_ratio"]
        a = SimpleNamespace(n=n, p_manifold=p_manifold, T2=T_casing, T_core=row_means[-1], T_charge=T_plenum)

        def surplus(r):
            a.r = r
            for _ in range(200):  # contraction by about 0.1 a round; r is what is bracketed
                before = a.T2, a.T_charge
                a.m = self.swallowing(rpm, p_manifold, a.T_charge)
                a.m_compressor = (1 + r) * a.m
                a.p2 = math.sqrt(p_manifold ** 2 + self.core_drop_term(a.m, (a.T2 + a.T_core) / 2))
                through = r * a.m / self.bypass["drop_at_kg_s"]
                a.p1 = a.p2 - self.bypass["drop_kPa"] * 1e3 * through * abs(through)
                a.PR = a.p2 / a.p1
                heating = (a.PR ** ISENTROPIC - 1) / self.inner_efficiency
                idle_rise = self.idle_power(n, a.p1) / (a.m_compressor * CP)
                kept = math.exp(-self.casing["to_discharge_air_W_K"] / (a.m_compressor * CP))
                # T2 = T_casing + kept (T_rotor - T_casing) with T1 = (T0 + r T2)/(1 + r), solved for T2
                a.T2 = (T_casing * (1 - kept) + kept * ((1 + heating) * self.T0 / (1 + r) + idle_rise)) / (
                    1 - kept * (1 + heating) * r / (1 + r))
                a.T1 = (self.T0 + r * a.T2) / (1 + r)
                a.T_rotor = a.T1 * (1 + heating) + idle_rise
                a.T_core, a.T_charge, a.eps = self.core_and_plenum(a.m, a.T2, row_means, T_plenum)
                if abs(a.T2 - before[0]) + abs(a.T_charge - before[1]) < 1e-11:
                    break
            else:
                raise ArithmeticError("part load: temperatures do not settle")
            a.W_gas = a.m_compressor * CP * (a.T_rotor - a.T1)
            return 1 - self.delivered(n, a.PR, a.p1, a.T1) / a.m_compressor

        surplus(brentq(surplus, 0.0, 3.0, **ROOT))
        return a

    def loop_flow(self, line_means):
        """Volume flow [m3/s] where the pump's parabola meets lines (friction and K), core and exchanger (k Q^1.8)."""
        lines, top = self.inputs["lines"], self.pump["free_flow_L_min"]
        k_parts = self.core["coolant_drop_Pa_per_Lmin_1p8"] + self.exchanger["coolant_drop_Pa_per_Lmin_1p8"]
        pieces = []
        for segment, T in zip(self.segments, line_means):
            above_base = T - INPUTS["coolant"]["T_base_K"]
            mu = 1e-3 * math.exp(sum(v * above_base ** i for i, v in enumerate(self.viscosity)))
            bore = segment["bore_mm"] * 1e-3
            pieces.append((4 / (math.pi * bore ** 2), self.rho * bore / mu, lines["roughness_um"] * 1e-6 / bore,
                           segment["length_m"] / bore, segment["sum_K"]))

        def surplus(Q):
            drop = k_parts * Q ** lines["core_and_exchanger_drop_exponent"]
            for per_area, Re_per_speed, roughness, slenderness, K in pieces:
                speed = Q / 60e3 * per_area
                drop += (friction_factor(Re_per_speed * speed, roughness) * slenderness + K) * self.rho * speed ** 2 / 2
            return self.pump["shut_off_kPa"] * 1e3 * (1 - (Q / top) ** 2) - drop

        return brentq(surplus, 1e-3 * top, top, **ROOT) / 60e3

    # ---- rates --------------------------------------------------------------------------------------------------

    def evaluate(self, t, y, phase):
        """All rates dy/dt and, beside them, every algebraic quantity that is reported."""
        share = (t - phase["from"]) / phase["duration_s"]
        at = lambda key: float(np.interp(share, (0, 1), np.broadcast_to(phase[key], 2)))
        rpm, bay = at("engine_rpm"), self.ambient + at("bay_above_ambient_K")
        see = lambda name: self.view(y, name)
        T_casing, T_plenum, T_tank = float(see("casing")), float(see("plenum")), float(see("tank"))
        core_metal = see("core metal")
        if phase["mode"].startswith("wide open"):
            a = self.wide_open(rpm, T_casing, T_plenum, core_metal.mean(axis=1))
        else:
            a = self.part_load(rpm, at("manifold_kPa") * 1e3, T_casing, T_plenum, core_metal.mean(axis=1))
        a.heat_to_core = a.m * CP * (a.T2 - a.T_core)

        heat = np.zeros(self.size)  # W into each state's capacity
        put = lambda name, watts: heat.__setitem__(self.slices[name], np.ravel(watts))
        flow = self.loop_flow([see(f"line {k}").mean() for k in range(4)])
        a.flow_L_min, w = flow * 60e3, flow * self.rho * self.c
        boundary = a.W_gas - a.m * CP * (a.T_charge - self.T0)

        def along_line(k, inlet):
            """One row of cells: wall against coolant and bay air."""
            wall, coolant = see(f"wall {k}"), see(f"line {k}")
            metres = self.segments[k]["length_m"] / len(wall)
            exchange = self.inputs["lines"]["coolant_to_wall_W_mK"] * metres * (coolant - wall)
            from_bay = self.inputs["lines"]["wall_to_air_W_mK"] * metres * (bay - wall)
            entering, leaving = faces(coolant, inlet)
            put(f"wall {k}", from_bay + exchange)
            put(f"line {k}", w * (entering - leaving) - exchange)
            return leaving[-1], from_bay.sum()

        def across(name, part, inlet, air_flow, air_inlet, eps, extra):
            """A block of cells: air over metal, metal against coolant, extra heat [W] into each cell's metal."""
            metal, coolant = see(name + " metal"), see(name + " coolant")
            nx, ny = metal.shape
            air = march_air(metal, air_inlet, eps)
            from_air = air_flow * CP / ny * eps * (air - metal)
            exchange = film(part, flow * self.rho) / metal.size * (coolant - metal)
            entering, leaving = faces(coolant, inlet)
            put(name + " metal", from_air + exchange + extra)
            put(name + " coolant", w / nx * (entering - leaving) - exchange)
            return leaving[:, -1].mean(), from_air.sum()

        # Ring in flow order: tank, line 3, pump, line 0, core, line 1, exchanger, line 2, tank.
        to_pump, bay3 = along_line(3, T_tank)
        pump_heat = self.pump["electrical_power_W"] * self.pump["share_to_coolant"]
        a.coolant_in, bay0 = along_line(0, to_pump + pump_heat / w)
        # Both conductances are spread evenly over the cells; each cell's heat goes by its own temperature.
        flange = self.casing["to_core_flange_W_K"] / core_metal.size * (T_casing - core_metal)
        bay_core = self.core["to_bay_W_K"] / core_metal.size * (bay - core_metal)
        a.coolant_out, _ = across("core", self.core, a.coolant_in, a.m, a.T2, a.eps, flange + bay_core)
        to_exchanger, bay1 = along_line(1, a.coolant_out)
        front = self.ambient + self.exchanger["air_pickup_K"]
        front_flow = at("exchanger_air_m_s") * self.exchanger["face_area_m2"] * self.p0 / (R * front)
        front_eps = air_effectiveness(self.exchanger, front_flow, self.shapes["exchanger metal"][0])
        to_line2, front_heat = across("exchanger", self.exchanger, to_exchanger, front_flow, front, front_eps, 0.0)
        to_tank, bay2 = along_line(2, to_line2)
        tank_gain = self.tank["ambient_gain_W_K"] * (bay - T_tank)
        put("tank", w * (to_tank - T_tank) + tank_gain)

        loss = self.mechanical_loss(a.n)
        a.shaft_power = a.W_gas + loss
        to_casing = self.compressor["mechanical_loss_share_to_casing"] * loss
        casing_outside = self.casing["to_bay_W_K"] * (bay - T_casing) + self.casing["to_oil_W_K"] * (
            phase["oil_degC"] + ZERO_C - T_casing)
        casing_plenum = self.casing["to_plenum_W_K"] * (T_casing - T_plenum)
        from_gas = a.m_compressor * CP * (a.T_rotor - a.T2)
        put("casing", from_gas + to_casing + casing_outside - casing_plenum - flange.sum())
        plenum_outside = self.plenum["to_engine_W_K"] * (phase["engine_degC"] + ZERO_C - T_plenum) + self.plenum[
            "to_bay_W_K"] * (bay - T_plenum)
        put("plenum", a.m * CP * (a.T_core - a.T_charge) + plenum_outside + casing_plenum)

        # First law over the whole car at this instant: heat into all states = heat over all boundaries.
        boundary += to_casing + casing_outside + plenum_outside + bay_core.sum() + tank_gain + bay0 + bay1 + bay2 + bay3
        a.imbalance = abs(heat.sum() - boundary - pump_heat - front_heat) / (a.shaft_power + a.heat_to_core)

        rates = np.divide(heat, self.capacities, out=np.zeros_like(heat), where=self.capacities > 0)
        s = self.sensor
        assert s["air_share"] == 1
        tau = s["tau_moving_s"] * math.sqrt(s["tau_moving_at_kg_s"] / a.m)
        tau = min(max(tau, s["tau_moving_s"]), s["tau_still_s"])
        a.indicated = float(see("sensor"))
        rates[self.slices["sensor"]] = (a.T_charge - a.indicated) / tau
        rates[self.slices["heat"]] = a.heat_to_core / 1e3
        return rates, a
