import { frictionChurchill } from '../correlations/friction.ts';
import type { LineSegment, PumpConfig } from '../scenario/config/loop.ts';

/** A stretch of line as the flow meets it. */
export interface FlowResistance extends LineSegment {
  /** m */
  readonly roughness: number;
}

/** The flow is solved until the next correction would be below this share of it. */
const TOLERANCE = 1e-9;
/** Smooth pump curves need at most fifteen from any guess. */
const MOST_SECANT_STEPS = 30;
/** as a share of the flow */
const FIRST_STEP = 1e-4;

/**
 * Pressure that the pump makes at a flow.
 *
 *     p = r^2 H0 (1 - (Q/(r Q0))^2)    r = voltage at the pump over its rated voltage
 *
 * or straight lines through measured points, (Q, p) at rated voltage becoming (r Q, r^2 p); the first and the last line
 * run on beyond their points, the last through zero pressure and on below it.
 *
 * Assumes that the speed goes with the voltage, so flow with it and pressure with its square. Points come with rising
 * flow and falling pressure, at least two.
 *
 * @param pump - the pump
 * @param voltageRatio - voltage at the pump over its rated voltage [-]; 0 = it stands and takes pressure
 * @param flow - m3/s
 * @returns pressure rise in Pa, below 0 beyond the free flow
 */
export function pumpPressure(pump: PumpConfig, voltageRatio: number, flow: number): number {
  const { curve } = pump;
  if (curve.kind === 'parabola') {
    return curve.shutOffPressure * (voltageRatio ** 2 - (flow / curve.freeFlow) ** 2);
  }
  // Standing, it takes what a parabola from its first pressure to its free flow takes.
  if (voltageRatio === 0) return -curve.pressure[0] * (flow / freeFlow(pump, 1)) ** 2;
  const atRated = flow / voltageRatio;
  let k = 1;
  while (k < curve.flow.length - 1 && curve.flow[k] < atRated) k++;
  const slope = (curve.pressure[k] - curve.pressure[k - 1]) / (curve.flow[k] - curve.flow[k - 1]);
  return voltageRatio ** 2 * (curve.pressure[k] + slope * (atRated - curve.flow[k]));
}

/** Free-flow rating: the flow in m3/s at which the pump makes no pressure, its curve by points run on to there. */
export function freeFlow(pump: PumpConfig, voltageRatio: number): number {
  const { curve } = pump;
  if (curve.kind === 'parabola') return voltageRatio * curve.freeFlow;
  const last = curve.flow.length - 1;
  const perPressure = (curve.flow[last] - curve.flow[last - 1]) / (curve.pressure[last - 1] - curve.pressure[last]);
  return voltageRatio * (curve.flow[last] + perPressure * curve.pressure[last]);
}

/**
 * Pressure that a stretch of line takes.
 *
 *     dp = (f L/D + K) rho V^2/2, f by Churchill at Re = rho V D/mu
 *
 * @param segment - the stretch; its K is on its own bore
 * @param flow - m3/s, not below 0
 * @param density - kg/m3
 * @param viscosity - Pa s
 * @returns drop of total pressure in Pa
 */
export function segmentDrop(segment: FlowResistance, flow: number, density: number, viscosity: number): number {
  if (flow === 0) return 0;
  const { bore } = segment;
  const velocity = flow / ((Math.PI / 4) * bore * bore);
  const friction = frictionChurchill((density * velocity * bore) / viscosity, segment.roughness / bore);
  return ((friction * segment.length) / bore + segment.lossCoefficient) * 0.5 * density * velocity * velocity;
}

/**
 * Flow of the loop: where the pumps make what lines, core and exchangers take.
 *
 *     rise(Q) = 0,  rise = pumps less all resistances
 *
 * The rise falls strictly with flow, so there is one answer, between no flow and `most`. It is found by secant steps
 * kept inside that bracket. A guess good to 1e-5 costs 3 calls where pump curves are smooth, one good to 1e-3 costs 4.
 * Allocates nothing.
 *
 * @param rise - pressure gained once round at a flow [Pa], above 0 without flow
 * @param most - a flow at which it is not above 0: free flows of all pumps together [m3/s]
 * @param guess - m3/s; one outside the bracket is ignored
 * @param isSmooth - whether no pump curve has kinks
 * @returns flow in m3/s
 */
export function solveLoopFlow(rise: (flow: number) => number, most: number, guess: number, isSmooth: boolean): number {
  let low = 0;
  let high = most;
  let flow = guess > low && guess < high ? guess : 0.5 * high;
  let previousFlow = flow;
  let previousExcess = 0;
  let correctionBefore = 1;
  for (let count = 0; ; count++) {
    const excess = rise(flow);
    if (excess === 0) return flow;
    if (excess > 0) low = flow;
    else high = flow;

    const slope =
      count === 0
        ? (rise((1 + FIRST_STEP) * flow) - excess) / (FIRST_STEP * flow)
        : (excess - previousExcess) / (flow - previousFlow);
    let next = flow - excess / slope;
    // On a smooth curve a secant step leaves about its correction times the one before.
    const correction = Math.abs(next - flow) / flow;
    if (correction * (isSmooth ? correctionBefore : 1) <= TOLERANCE) return next;
    // Past the bracket, or slow (a curve with kinks): halve it.
    if (!(next > low && next < high) || count > MOST_SECANT_STEPS) next = 0.5 * (low + high);
    if (high - low <= TOLERANCE * flow) return next;
    previousFlow = flow;
    previousExcess = excess;
    correctionBefore = correction;
    flow = next;
  }
}
