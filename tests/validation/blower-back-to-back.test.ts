import { describe, expect, it } from 'vitest';
import { type PullSummary, summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { crossing } from '../support/settled-air.ts';
import { shippedDocument } from '../support/shipped.ts';
import { type LooseDocument, shortConfig } from '../support/short-session.ts';

/**
 * Dynamometer runs of a car with a belt-driven displacement blower, before and after a liquid-cooled core was fitted
 * behind it, same pulley: the charge at the end of the run fell from 147 to 125 degF, the gauge from 8.5 to 7.5 psi.
 *
 * Source: a technical note on an engine-management firm's web page, read in full. Ambient pressure, engine speed,
 * intake and core drop are not stated; 101 kPa assumed, gauge good to 0.1 psi at best. So this is a check of sign and
 * size.
 */
const WARM = 273.15 + 63.9;
const COOL = 273.15 + 51.7;
const GAUGE = 58.6e3;
const MEASURED_RATIO = 0.957;
const WITHIN = 0.02;
const ASSUMED_AMBIENT = 101e3;

/** The invented estate's own core and leak. */
const { core: CORE, compressor: MACHINE } = shippedDocument('rolling-road-estate') as LooseDocument;
const WIND = { exchangerAirSpeed: 2.5, bayAboveAmbient: 25 };
/** Its idle and its pull. */
const RUN = [
  { kind: 'idle', duration: 60, engineSpeed: 1200, manifoldPressure: 38, ...WIND },
  { kind: 'pull', duration: 12, engineSpeed: [2500, 6600], ...WIND },
];
/** Pa */
const PSI = 6894.757;

/** Without a leak the mass stays and the pressures go with T^(1 - b); psi. */
const BY_HAND = [
  { exponent: 0, ratio: 0.964, gauge: 7.66 },
  { exponent: 0.25, ratio: 0.973, gauge: 7.87 },
];

interface Setup {
  readonly exponent: number;
  readonly driveRatio: number;
  /** on both conductances of the core */
  readonly coreScale: number;
  readonly leak: number;
}

function endOfRun({ exponent, driveRatio, coreScale, leak }: Setup): PullSummary {
  const config = shortConfig({
    'ambient.pressure': ASSUMED_AMBIENT / 1e3,
    'engine.temperatureExponent': exponent,
    'compressor.driveRatio': driveRatio,
    'compressor.leak': leak,
    'core.airConductance': coreScale * CORE.airConductance,
    'core.coolantConductance': coreScale * CORE.coolantConductance,
    cycle: RUN,
  });
  return summarisePulls(simulate(config), config.limit.chargeTemperature)[0];
}

/** Core scale that brings the charge at the end of the run to a temperature. */
function coreFor(temperature: number, setup: Omit<Setup, 'coreScale'>): number {
  const gap = (log: number) => endOfRun({ ...setup, coreScale: Math.exp(log) }).peak - temperature;
  return Math.exp(crossing(gap, Math.log(0.2), Math.log(6), 16));
}

/** The car at 8.5 psi with the warm charge, then with the cool one on the same pulley. */
function backToBack(exponent: number, leak: number) {
  const warmOn = (driveRatio: number): Setup => {
    const setup = { exponent, driveRatio, leak };
    return { ...setup, coreScale: coreFor(WARM, setup) };
  };
  const driveRatio = crossing(
    (ratio) => endOfRun(warmOn(ratio)).atEnd.manifoldPressure - ASSUMED_AMBIENT - GAUGE,
    1.3,
    1.62,
    10,
  );
  const setup = { exponent, driveRatio, leak };
  const warm = endOfRun(warmOn(driveRatio));
  const cool = endOfRun({ ...setup, coreScale: coreFor(COOL, setup) });
  const { manifoldPressure, airFlow, drivePower } = cool.atEnd;
  return {
    warm,
    cool,
    ratio: manifoldPressure / warm.atEnd.manifoldPressure,
    mass: airFlow / warm.atEnd.airFlow,
    power: drivePower / warm.atEnd.drivePower,
  };
}

const figures = (exponent: number, leak: number, { ratio, mass, power, warm, cool }: ReturnType<typeof backToBack>) =>
  `b = ${exponent}, leak ${leak} krpm: manifold pressures ${ratio.toFixed(4)} (measured ${MEASURED_RATIO}), ` +
  `${((warm.atEnd.manifoldPressure - ASSUMED_AMBIENT) / PSI).toFixed(2)} to ` +
  `${((cool.atEnd.manifoldPressure - ASSUMED_AMBIENT) / PSI).toFixed(2)} psi (measured 8.5 to 7.5), ` +
  `mass ${mass.toFixed(4)}, drive power ${power.toFixed(4)}`;

describe.each([0, 0.5, MACHINE.leak])('charge cooled from 63.9 to 51.7 degC on one pulley, leak %d krpm', (leak) => {
  it.each([0, 0.25, 0.4])('b = %d: gauge and drive power fall, mass hardly moves', (exponent) => {
    const result = backToBack(exponent, leak);
    console.info(figures(exponent, leak, result));
    const { warm, cool, ratio, mass, power } = result;
    expect(Math.abs(warm.peak - WARM)).toBeLessThan(0.01);
    expect(Math.abs(cool.peak - COOL)).toBeLessThan(0.01);
    expect(Math.abs(warm.atEnd.manifoldPressure - ASSUMED_AMBIENT - GAUGE)).toBeLessThan(100);
    expect(ratio).toBeLessThan(1);
    expect(Math.abs(mass - 1)).toBeLessThan(0.01);
    expect(power).toBeLessThan(1);
    // A leak gives back part of the fall, and so does the exponent. At the default 0.4, and at 0.25 with the
    // compressor's own leak, the gauge falls too little by more than the figures allow: printed above, not met.
    const isNear = exponent === 0 || (exponent === 0.25 && leak <= 0.5);
    if (isNear) expect(Math.abs(ratio - MEASURED_RATIO)).toBeLessThan(WITHIN);
    const plain = BY_HAND.find((each) => leak === 0 && each.exponent === exponent);
    if (plain === undefined) return;
    expect(Math.abs(ratio - plain.ratio)).toBeLessThan(6e-4);
    expect(Math.abs((cool.atEnd.manifoldPressure - ASSUMED_AMBIENT) / PSI - plain.gauge)).toBeLessThan(0.02);
    expect(Math.abs(mass - 1)).toBeLessThan(1e-5);
  });
});
