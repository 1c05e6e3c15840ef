import { CentrifugalCompressor, type Config, phasesOf } from '../../sim/index.ts';

/** What follows from the one boost that a compressor with a head is known by. SI, speeds in rpm. */
export interface Head {
  /** isentropic rise of the air at the typed speed [K] */
  readonly head: number;
  readonly speed: number;
  /** of air as it is at the intake before anything has warmed [K] */
  readonly inletTemperature: number;
  readonly pressureRatio: number;
  /** where the engine drives it: at the highest engine speed of the pulls */
  readonly atTop?: { readonly speed: number; readonly pressureRatio: number };
}

/** The head of a car's compressor; undefined for one that displaces. */
export function headOf({ compressor, ambient, intake, cycle }: Config): Head | undefined {
  if (compressor.kind === 'displacement') return undefined;
  const machine = new CentrifugalCompressor(compressor);
  const { speed } = compressor.typedBoost;
  const inletTemperature = ambient.temperature + intake.pickUp;
  const ratioAt = (rpm: number): number => {
    machine.setSpeed(rpm);
    return machine.pressureRatioAt(inletTemperature);
  };
  const known: Head = { head: machine.head, speed, inletTemperature, pressureRatio: ratioAt(speed) };
  if (compressor.kind === 'turbine-driven') return known;
  const pulls = phasesOf(cycle).filter(({ kind }) => kind === 'pull');
  const top = compressor.driveRatio * Math.max(0, ...pulls.map(({ engineSpeed }) => engineSpeed.to));
  return top > 0 ? { ...known, atTop: { speed: top, pressureRatio: ratioAt(top) } } : known;
}
