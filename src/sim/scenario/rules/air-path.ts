import { indicatedWork } from '../../correlations/indicated-work.ts';
import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY, AIR_ISENTROPIC_EXPONENT } from '../../fluids/moist-air.ts';
import { standardAtmosphere } from '../../fluids/standard-atmosphere.ts';
import { figure, fromSi, toSi } from '../../units.ts';
import { capitalised, type Report } from '../issue.ts';
import { AIR_PATH } from '../parameters/air-path.ts';
import { placedPhases } from '../phases.ts';
import { reportMissing } from '../read-value.ts';
import type { Values } from '../shape.ts';
import { stationPressure } from '../station-pressure.ts';

export function checkAirPath(values: Values, report: Report): void {
  checkAltitude(values, report);
  checkCompressor(values, report);
  checkBypass(values, report);
  checkDriveRatio(values, report);
  checkQuotedPoint(values, report);
  checkLimit(values, report);
  checkPercentage('ambient.relativeHumidity', values.ambient.relativeHumidity, report);
}

/** A share typed where per cent are asked for: 0.4 for 40. */
export function checkPercentage(path: string, percentage: number, report: Report): void {
  if (!(percentage > 0 && percentage < 1)) return;
  const meant = Number(figure(100 * percentage));
  report({
    severity: 'warning',
    path,
    message: `${figure(percentage)} % is next to nothing. Did you mean ${meant} %?`,
    found: `${figure(percentage)} %`,
    expected: 'per cent, not a share',
    fix: { path, value: meant, label: `Use ${meant} %` },
  });
}

/** A typed pressure goes before a typed altitude; weather moves it by some 3 %. */
function checkAltitude({ ambient: { altitude, pressure } }: Values, report: Report): void {
  if (pressure === undefined || !(altitude !== 0)) return;
  const there = Number.isNaN(altitude) ? Number.NaN : standardAtmosphere(altitude).pressure / 1e3;
  if (!(Math.abs(pressure / there - 1) > 0.05)) return;
  report({
    severity: 'warning',
    path: 'ambient.pressure',
    message: `The station pressure of ${figure(pressure)} kPa abs is used; the standard atmosphere has ${figure(there)} kPa abs at ${figure(altitude)} m. Corrected to sea level? Leave one of the two out.`,
    found: `${figure(pressure)} kPa abs`,
    expected: `about ${figure(there)} kPa abs`,
    fix: { path: 'ambient.pressure', value: Number(figure(there)), label: `Use ${figure(there)} kPa abs` },
  });
}

const NEEDED_BY_KIND = {
  displacement: ['driveRatio', 'sweptVolume'],
  centrifugal: ['driveRatio', 'boostOutletPressure', 'boostSpeed', 'quotedFlow'],
  'turbine-driven': ['targetManifoldPressure', 'highestSpeed', 'boostOutletPressure', 'boostSpeed', 'quotedFlow'],
} as const;

/** Keys that say nothing about a compressor of this kind. */
const UNUSED_BY_KIND = {
  displacement: ['boostOutletPressure', 'boostSpeed', 'quotedFlow'],
  centrifugal: ['sweptVolume', 'builtInVolumeRatio', 'targetManifoldPressure'],
  'turbine-driven': ['driveRatio', 'sweptVolume', 'builtInVolumeRatio'],
} as const;

function checkCompressor(values: Values, report: Report): void {
  const { compressor } = values;
  const { kind } = compressor;
  if (!(kind in NEEDED_BY_KIND)) return;
  for (const key of NEEDED_BY_KIND[kind]) {
    if (compressor[key] !== undefined) continue;
    reportMissing(
      { ...AIR_PATH.compressor[key], meaning: `needed where the kind is "${kind}"` },
      `compressor.${key}`,
      report,
    );
  }
  for (const key of UNUSED_BY_KIND[kind]) {
    if (compressor[key] === undefined) continue;
    const { label } = AIR_PATH.compressor[key];
    report({
      severity: 'error',
      path: `compressor.${key}`,
      message: `${capitalised(label)} says nothing about a compressor of kind "${kind}". Leave it out, or change the kind.`,
      found: figure(compressor[key]),
      expected: 'nothing',
    });
  }
  checkTarget(values, report);
  const { boostOutletPressure, boostInletPressure } = compressor;
  if (boostOutletPressure === undefined || !(boostOutletPressure <= boostInletPressure)) return;
  const absolute = Number(figure(boostOutletPressure + boostInletPressure));
  report({
    severity: 'error',
    path: 'compressor.boostOutletPressure',
    message: `The known boost of ${figure(boostOutletPressure)} kPa abs is not above its inlet at ${figure(boostInletPressure)} kPa abs: no head follows from it. Typed as gauge pressure? That would be ${figure(absolute)} kPa abs.`,
    found: `${figure(boostOutletPressure)} kPa abs`,
    expected: `above ${figure(boostInletPressure)} kPa abs, absolute`,
    fix: { path: 'compressor.boostOutletPressure', value: absolute, label: `Use ${figure(absolute)} kPa abs` },
  });
}

/** Below the air outside there is nothing for a compressor to hold. */
function checkTarget(values: Values, report: Report): void {
  const { targetManifoldPressure: target } = values.compressor;
  const station = fromSi(stationPressure(values), 'kPa abs');
  if (target === undefined || !(target <= station)) return;
  const absolute = Number(figure(target + station));
  report({
    severity: 'error',
    path: 'compressor.targetManifoldPressure',
    message: `A target manifold pressure of ${figure(target)} kPa abs is not above the ${figure(station)} kPa abs outside: a compressor has nothing to hold. Typed as gauge pressure? That would be ${figure(absolute)} kPa abs.`,
    found: `${figure(target)} kPa abs`,
    expected: `above ${figure(station)} kPa abs, absolute`,
    fix: { path: 'compressor.targetManifoldPressure', value: absolute, label: `Use ${figure(absolute)} kPa abs` },
  });
}

function checkBypass({ bypass, compressor }: Values, report: Report): void {
  const { route, shareAfterCore, recirculation } = bypass;
  if (route === 'part of each' && shareAfterCore === undefined) {
    const row = { ...AIR_PATH.bypass.shareAfterCore, meaning: 'needed where the route is "part of each"' };
    reportMissing(row, 'bypass.shareAfterCore', report);
  }
  if (route !== 'part of each' && shareAfterCore !== undefined && !Number.isNaN(shareAfterCore)) {
    report({
      severity: 'error',
      path: 'bypass.shareAfterCore',
      message: `A share after the core of ${figure(shareAfterCore)} and the route "${route}" say two things. Keep one of the two keys.`,
      found: figure(shareAfterCore),
      expected: 'nothing, or the route "part of each"',
      fix: { path: 'bypass.route', value: 'part of each', label: 'Use part of each' },
    });
  }
  if (compressor.kind === 'centrifugal' && recirculation === undefined) {
    const row = { ...AIR_PATH.bypass.recirculation, meaning: 'needed where the compressor is "centrifugal"' };
    reportMissing(row, 'bypass.recirculation', report);
  }
  if (compressor.kind !== 'displacement' || recirculation === undefined || Number.isNaN(recirculation)) return;
  report({
    severity: 'error',
    path: 'bypass.recirculation',
    message: `A displacement compressor returns what its swept volume takes in beyond the engine's air; a recirculation of ${figure(recirculation)} cannot be given. Leave it out: the run works it out.`,
    found: figure(recirculation),
    expected: 'nothing',
  });
}

function checkDriveRatio(values: Values, report: Report): void {
  const { driveRatio } = values.compressor;
  if (driveRatio === undefined || !(driveRatio < 1)) return;
  const speeds = placedPhases(values).flatMap(({ phase }) => phase.engineSpeed ?? []);
  const fastest = Math.max(0, ...speeds.filter(Number.isFinite));
  const meant = Number((1 / driveRatio).toPrecision(3));
  report({
    severity: 'warning',
    path: 'compressor.driveRatio',
    message: `At ${figure(fastest)} rpm of the engine the compressor turns ${figure(driveRatio * fastest)} rpm. Did you mean a ratio of ${meant}?`,
    found: figure(driveRatio),
    expected: 'usually above 1',
    fix: { path: 'compressor.driveRatio', value: meant, label: `Use ${meant}` },
  });
}

/**
 * The quoted efficiency holds all losses that end in the air, the idle power among them; something must be left for the
 * compression itself. Laws as in the model of the compressor.
 */
function checkQuotedPoint({ compressor }: Values, report: Report): void {
  const { quotedSpeed, quotedPressureRatio, quotedEfficiency, leak, idlePower } = compressor;
  const isDisplacement = compressor.kind === 'displacement';
  const volumetric = 1 - (leak * (quotedPressureRatio - 1)) / (quotedSpeed / 1000);
  if (isDisplacement && volumetric <= 0) {
    report({
      severity: 'error',
      path: 'compressor.leak',
      message: `At the quoted ${figure(quotedSpeed)} rpm and pressure ratio ${figure(quotedPressureRatio)} a leak of ${figure(leak)} lets all air back: nothing is delivered. Lower the leak or check the quoted point.`,
      found: figure(leak),
      expected: `below ${figure(quotedSpeed / 1000 / (quotedPressureRatio - 1))}`,
    });
    return;
  }
  const inletPressure = toSi(compressor.quotedInletPressure, 'kPa abs');
  const inletTemperature = toSi(compressor.quotedInletTemperature, 'degC');
  const volumeFlow = (volumetric * toSi(compressor.sweptVolume ?? Number.NaN, 'L/rev') * quotedSpeed) / 60;
  const swept = (volumeFlow * inletPressure) / (AIR_GAS_CONSTANT * inletTemperature);
  const flow = isDisplacement ? swept : (compressor.quotedFlow ?? Number.NaN);
  const rise = quotedPressureRatio ** ((AIR_ISENTROPIC_EXPONENT - 1) / AIR_ISENTROPIC_EXPONENT) - 1;
  const ideal = flow * AIR_HEAT_CAPACITY * inletTemperature * rise;
  const { builtInVolumeRatio } = compressor;
  const least =
    isDisplacement && builtInVolumeRatio !== undefined && builtInVolumeRatio >= 1 && quotedPressureRatio > 0
      ? (ideal / rise) * indicatedWork(builtInVolumeRatio, quotedPressureRatio, AIR_ISENTROPIC_EXPONENT)
      : ideal;
  const losses = (ideal / quotedEfficiency - least) / 1000;
  if (least > ideal && losses <= 0) {
    report({
      severity: 'error',
      path: 'compressor.quotedEfficiency',
      message: `A compressor with a built-in volume ratio of ${figure(builtInVolumeRatio ?? 1)} needs ${figure(least / 1000)} kW at the quoted point without any loss, an efficiency of ${figure(ideal / least)}; ${figure(quotedEfficiency)} is more than it can have.`,
      found: figure(quotedEfficiency),
      expected: `below ${figure(ideal / least)}`,
    });
    return;
  }
  const share = (quotedSpeed / compressor.idlePowerSpeed) ** compressor.idlePowerExponent * (inletPressure / 1e5);
  if (!(idlePower * share > losses)) return;
  report({
    severity: 'error',
    path: 'compressor.idlePower',
    message: `At the quoted point the idle power is ${figure(idlePower * share)} kW, but an efficiency of ${figure(quotedEfficiency)} there leaves only ${figure(losses)} kW for all losses. Lower the idle power or the efficiency.`,
    found: `${figure(idlePower)} kW`,
    expected: `at most ${figure(losses / share)} kW`,
  });
}

function checkLimit({ ambient, limit }: Values, report: Report): void {
  if (!(limit.chargeTemperature < ambient.temperature)) return;
  const [outside, most] = [figure(ambient.temperature), figure(limit.chargeTemperature)];
  report({
    severity: 'warning',
    path: 'limit.chargeTemperature',
    message: `Outside air at ${outside} degC is above the limit of ${most} degC: no passive system can meet it, only ice or a chiller.`,
    found: `${most} degC`,
    expected: `above ${outside} degC`,
  });
}
