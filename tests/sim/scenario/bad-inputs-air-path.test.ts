import { describe, expect, it } from 'vitest';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import type { Edits } from '../../support/short-session.ts';
import { type BadInput, changed, judge, parsed } from './judge.ts';

const ON_A_TURBINE: Edits = {
  'compressor.kind': 'turbine-driven',
  'compressor.driveRatio': undefined,
  'compressor.targetManifoldPressure': 160,
  'compressor.highestSpeed': 44600,
  'bypass.recirculation': undefined,
};

describe('a displacement machine', () => {
  const BAD: readonly BadInput[] = [
    {
      // v = 1 at PR 1.86: isentropic 0.1940, diagram 2/7 x 0.86 = 0.2457, so 0.79 at best.
      what: 'with a quoted efficiency above what its built-in volume ratio can have',
      edits: { 'compressor.builtInVolumeRatio': 1, 'compressor.quotedEfficiency': 0.85 },
      path: 'compressor.quotedEfficiency',
      message: '0.85 is more than it can have',
    },
    {
      what: 'with a target typed as gauge pressure',
      edits: { 'compressor.targetManifoldPressure': 60 },
      path: 'compressor.targetManifoldPressure',
      message: 'A target manifold pressure of 60 kPa abs is not above the 99.5 kPa abs outside',
      fix: 159.5,
    },
    {
      what: 'without its swept volume',
      edits: { 'compressor.sweptVolume': undefined },
      path: 'compressor.sweptVolume',
      message: 'Swept volume is missing. Expected 0.1 to 10 L/rev: needed where the kind is "displacement".',
    },
    {
      what: 'without its drive ratio',
      edits: { 'compressor.driveRatio': undefined },
      path: 'compressor.driveRatio',
      message: 'Drive ratio is missing. Expected 0.1 to 20: needed where the kind is "displacement".',
    },
    {
      what: 'with a known boost',
      edits: { 'compressor.boostOutletPressure': 170 },
      path: 'compressor.boostOutletPressure',
      message: 'Outlet pressure of the known boost says nothing about a compressor of kind "displacement".',
    },
    {
      what: 'with the speed of a known boost',
      edits: { 'compressor.boostSpeed': 40000 },
      path: 'compressor.boostSpeed',
      message: 'Speed of the known boost says nothing about a compressor of kind "displacement".',
    },
    {
      what: 'with a quoted air flow',
      edits: { 'compressor.quotedFlow': 0.3 },
      path: 'compressor.quotedFlow',
      message: 'Air flow of the quoted efficiency says nothing about a compressor of kind "displacement".',
    },
    {
      what: 'with a stated recirculation',
      edits: { 'bypass.recirculation': 2 },
      path: 'bypass.recirculation',
      message:
        "A displacement compressor returns what its swept volume takes in beyond the engine's air; a recirculation of 2 cannot be given. Leave it out: the run works it out.",
    },
    {
      what: 'that compresses inside to less than it took in',
      edits: { 'compressor.builtInVolumeRatio': 0.8 },
      path: 'compressor.builtInVolumeRatio',
      message: 'Built-in volume ratio is 0.8; expected 1 to 3.',
    },
    {
      what: 'of another kind by a slip',
      edits: { 'compressor.kind': 'displacment' },
      path: 'compressor.kind',
      message: 'Did you mean "displacement"?',
      fix: 'displacement',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));

  it('may hold a target by its bypass', () => {
    const { scenario, issues } = parsed(changed('rolling-road-estate', { 'compressor.targetManifoldPressure': 165 }));
    expect(issues).toEqual([]);
    if (scenario === undefined) throw new Error('refused');
    expect(toConfig(scenario).compressor).toMatchObject({ kind: 'displacement', targetManifoldPressure: 165e3 });
  });
});

describe('a centrifugal machine on a pulley', () => {
  const BAD: readonly BadInput[] = [
    ...(
      [
        ['driveRatio', 'Drive ratio is missing. Expected 0.1 to 20'],
        ['boostOutletPressure', 'Outlet pressure of the known boost is missing. Expected 60 to 500 kPa abs'],
        ['boostSpeed', 'Speed of the known boost is missing. Expected 1000 to 400000 rpm'],
        ['quotedFlow', 'Air flow of the quoted efficiency is missing. Expected 0.005 to 3 kg/s'],
      ] as const
    ).map(([key, said]) => ({
      what: `without its ${key}`,
      edits: { [`compressor.${key}`]: undefined },
      path: `compressor.${key}`,
      message: `${said}: needed where the kind is "centrifugal".`,
    })),
    {
      what: 'without a recirculation',
      edits: { 'bypass.recirculation': undefined },
      path: 'bypass.recirculation',
      message:
        'Recirculated over engine air is missing. Expected 0 to 20: needed where the compressor is "centrifugal".',
    },
    ...(
      [
        ['sweptVolume', 1.3, 'Swept volume'],
        ['builtInVolumeRatio', 1.2, 'Built-in volume ratio'],
        ['targetManifoldPressure', 160, 'Target manifold pressure'],
      ] as const
    ).map(([key, value, label]) => ({
      what: `with a ${key}`,
      edits: { [`compressor.${key}`]: value },
      path: `compressor.${key}`,
      message: `${label} says nothing about a compressor of kind "centrifugal". Leave it out, or change the kind.`,
    })),
    {
      what: 'whose boost is below its inlet',
      edits: { 'compressor.boostOutletPressure': 73 },
      path: 'compressor.boostOutletPressure',
      message:
        'The known boost of 73 kPa abs is not above its inlet at 100.5 kPa abs: no head follows from it. Typed as gauge pressure? That would be 173.5 kPa abs.',
      fix: 173.5,
    },
    {
      what: 'whose boost is its inlet',
      edits: { 'compressor.boostOutletPressure': 100.5 },
      path: 'compressor.boostOutletPressure',
      message: 'The known boost of 100.5 kPa abs is not above its inlet',
      fix: 201,
    },
    {
      // 0.35 kg/s x 1.006 kJ/(kg K) x 310.15 K x (1.72637^(2/7) - 1) (1/0.72 - 1) = 7.17 kW
      what: 'that churns more than its efficiency leaves',
      edits: { 'compressor.idlePower': 9 },
      path: 'compressor.idlePower',
      message: 'At the quoted point the idle power is 9.045 kW, but an efficiency of 0.72 there leaves only 7.1',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('session-coupe', bad));
});

describe('a machine on a turbine', () => {
  const BAD: readonly BadInput[] = [
    {
      what: 'without a target',
      edits: { ...ON_A_TURBINE, 'compressor.targetManifoldPressure': undefined },
      path: 'compressor.targetManifoldPressure',
      message:
        'Target manifold pressure is missing. Expected 50 to 500 kPa abs: needed where the kind is "turbine-driven".',
    },
    {
      what: 'without its highest speed',
      edits: { ...ON_A_TURBINE, 'compressor.highestSpeed': undefined },
      path: 'compressor.highestSpeed',
      message:
        'Highest compressor speed is missing. Expected 1000 to 400000 rpm: needed where the kind is "turbine-driven".',
    },
    {
      what: 'on a pulley too',
      edits: { ...ON_A_TURBINE, 'compressor.driveRatio': 6.5 },
      path: 'compressor.driveRatio',
      message: 'Drive ratio says nothing about a compressor of kind "turbine-driven".',
    },
    {
      what: 'with a swept volume',
      edits: { ...ON_A_TURBINE, 'compressor.sweptVolume': 1.3 },
      path: 'compressor.sweptVolume',
      message: 'Swept volume says nothing about a compressor of kind "turbine-driven".',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('session-coupe', bad));

  it('with all it needs has no issue', () => {
    expect(parsed(changed('session-coupe', ON_A_TURBINE)).issues).toEqual([]);
  });
});

describe('bypass, room and place', () => {
  const BAD: readonly BadInput[] = [
    {
      what: 'a share after the core on another route',
      edits: { 'bypass.route': 'after core', 'bypass.shareAfterCore': 0.7 },
      path: 'bypass.shareAfterCore',
      message: 'A share after the core of 0.7 and the route "after core" say two things. Keep one of the two keys.',
      fix: 'part of each',
    },
    {
      what: 'a share after the core without a route',
      edits: { 'bypass.route': undefined, 'bypass.shareAfterCore': 0.7 },
      path: 'bypass.shareAfterCore',
      message: 'A share after the core of 0.7 and the route "before core" say two things.',
      fix: 'part of each',
    },
    {
      what: 'part of each, but how much',
      edits: { 'bypass.route': 'part of each' },
      path: 'bypass.shareAfterCore',
      message: 'Share taken after the core is missing. Expected 0 to 1: needed where the route is "part of each".',
    },
    {
      what: 'a share in per cent',
      edits: { 'bypass.route': 'part of each', 'bypass.shareAfterCore': 70 },
      severity: 'warning',
      path: 'bypass.shareAfterCore',
      message: 'Share taken after the core 70 read as 70 %: using 0.7.',
      fix: 0.7,
    },
    {
      what: 'a leak of the bypass path in per cent',
      edits: { 'bypass.leak': 30 },
      severity: 'warning',
      path: 'bypass.leak',
      message: 'Leak of the bypass path 30 read as 30 %: using 0.3.',
      fix: 0.3,
    },
    {
      what: 'a route by a slip',
      edits: { 'bypass.route': 'after-core' },
      path: 'bypass.route',
      message: 'Did you mean "after core"?',
      fix: 'after core',
    },
    {
      what: 'a room without extraction',
      edits: { 'room.volume': 400 },
      path: 'room.extraction',
      message: 'Extraction of the room is missing. Expected 0 to 200 m3/s: needed where a room has a volume.',
    },
    {
      what: 'an extraction without a room',
      edits: { 'room.extraction': 3 },
      path: 'room.volume',
      message: 'Volume of the room is missing. Expected 20 to 100000 m3: needed where a room has an extraction.',
    },
    {
      // ISO 2533 at 1500 m: 84.56 kPa
      what: 'an altitude against the pressure',
      edits: { 'ambient.altitude': 1500 },
      severity: 'warning',
      path: 'ambient.pressure',
      message:
        'The station pressure of 99.5 kPa abs is used; the standard atmosphere has 84.56 kPa abs at 1500 m. Corrected to sea level? Leave one of the two out.',
      fix: 84.56,
    },
    {
      what: 'a barometer corrected to sea level',
      edits: { 'ambient.altitude': 1500, 'ambient.pressure': '1013 hPa' },
      severity: 'warning',
      path: 'ambient.pressure',
      message: 'The station pressure of 101.3 kPa abs is used; the standard atmosphere has 84.56 kPa abs at 1500 m.',
      fix: 84.56,
    },
    {
      what: 'part load above the pressure at the top of a climb',
      edits: { 'cycle.0.stationPressure': [99, 80], 'cycle.0.manifoldPressure': 90 },
      path: 'cycle.0.manifoldPressure',
      message:
        'Manifold pressure 90 kPa abs is above the station pressure 80 kPa: with the bypass open there is no boost.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));

  it('an altitude typed in feet is read so, with a warning', () => {
    const { scenario, issues } = parsed(
      changed('rolling-road-estate', { 'ambient.pressure': undefined, 'ambient.altitude': 9000 }),
    );
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ severity: 'warning', path: 'ambient.altitude' });
    expect(issues[0].message).toContain('9000 ft');
    // ISO 2533 at 2743.2 m, between 2500 m (74691.7 Pa) and 3000 m (70121.1 Pa)
    const pressure = scenario && toConfig(scenario).ambient.pressure;
    expect(pressure).toBeGreaterThan(70121);
    expect(pressure).toBeLessThan(74692);
  });

  it('an altitude below the deepest land', () => {
    const { scenario, issues } = parsed(
      changed('rolling-road-estate', { 'ambient.pressure': undefined, 'ambient.altitude': -2000 }),
    );
    expect(scenario).toBeUndefined();
    expect(issues[0]).toMatchObject({ severity: 'error', path: 'ambient.altitude' });
    expect(issues[0].message).toContain('Altitude is -2000 m; expected -500 to 6000 m.');
  });

  it('a share is nothing to say twice where the route is part of each', () => {
    const edits = { 'bypass.route': 'part of each', 'bypass.shareAfterCore': 0.7 };
    expect(parsed(changed('rolling-road-estate', edits)).issues).toEqual([]);
  });
});

// ISO 2533:1975, by geometric altitude: 84559.666 Pa at 1500 m, 70121.144 Pa at 3000 m.
describe('altitude', () => {
  const configAt = (edits: Edits) => {
    const { scenario } = parsed(changed('rolling-road-estate', edits));
    if (scenario === undefined) throw new Error('refused');
    return toConfig(scenario);
  };
  it.each([
    [0, 101325],
    [1500, 84559.666],
    [3000, 70121.144],
  ])('%d m: the pressure of the standard atmosphere, in every phase', (altitude, pressure) => {
    const { ambient, cycle } = configAt({ 'ambient.pressure': undefined, 'ambient.altitude': altitude });
    expect(Math.abs(ambient.pressure / pressure - 1)).toBeLessThan(1e-7);
    for (const phase of [...cycle.before, ...cycle.block, ...cycle.after]) {
      expect(phase.outsidePressure).toEqual({ from: ambient.pressure, to: ambient.pressure });
    }
  });

  it('a typed pressure goes first, and one typed in a phase before that', () => {
    const { ambient, cycle } = configAt({ 'ambient.altitude': 1500, 'cycle.0.stationPressure': [99, 95] });
    expect(ambient.pressure).toBe(99500);
    expect(cycle.before[0].outsidePressure).toEqual({ from: 99000, to: 95000 });
    expect(cycle.block[0].outsidePressure).toEqual({ from: 99500, to: 99500 });
  });

  it('typed beside a pressure that fits it is no issue', () => {
    const edits = { 'ambient.pressure': 85, 'ambient.altitude': 1500, 'compressor.quotedInletPressure': 85 };
    expect(parsed(changed('rolling-road-estate', edits)).issues).toEqual([]);
  });
});
