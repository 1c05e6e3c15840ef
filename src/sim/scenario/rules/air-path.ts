import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY, AIR_ISENTROPIC_EXPONENT } from '../../fluids/moist-air.ts';
import { figure, toSi } from '../../units.ts';
import type { Report } from '../issue.ts';
import { placedPhases } from '../phases.ts';
import type { Values } from '../shape.ts';

export function checkAirPath(values: Values, report: Report): void {
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

function checkDriveRatio(values: Values, report: Report): void {
  const { driveRatio } = values.compressor;
  if (!(driveRatio < 1)) return;
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
  const { quotedSpeed, quotedPressureRatio, quotedEfficiency, leak, sweptVolume, idlePower } = compressor;
  const volumetric = 1 - (leak * (quotedPressureRatio - 1)) / (quotedSpeed / 1000);
  if (volumetric <= 0) {
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
  const volumeFlow = (volumetric * toSi(sweptVolume, 'L/rev') * quotedSpeed) / 60;
  const rise = quotedPressureRatio ** ((AIR_ISENTROPIC_EXPONENT - 1) / AIR_ISENTROPIC_EXPONENT) - 1;
  const ideal = ((volumeFlow * inletPressure) / AIR_GAS_CONSTANT) * AIR_HEAT_CAPACITY * rise;
  const losses = (ideal / quotedEfficiency - ideal) / 1000;
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
