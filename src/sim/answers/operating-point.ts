import { GRAVITY } from '../fluids/standard-atmosphere.ts';
import { CoolantRing, type LoopSetting } from '../model/coolant-ring.ts';
import type { LoopElement } from '../model/loop-element.ts';
import { freeFlow } from '../model/loop-flow.ts';
import { ParallelWays } from '../model/parallel-ways.ts';
import { isPumped, type PhaseConfig, phasesOf } from '../scenario/config/cycle.ts';
import { type LinePlace, PART_WORDS, type PumpConfig } from '../scenario/config/loop.ts';
import type { Config } from '../scenario/config.ts';
import { type FlowStep, flowSteps } from './flow-steps.ts';
import { type MeasuredFlow, measuredIn } from './measured-flow.ts';

/** Points of each curve, from no flow to the free flow. */
const CURVE_POINTS = 61;

/** One resistance of the loop at the operating point. */
interface LoopLoss {
  /** "core", "line after the pump" */
  readonly name: string;
  /** the part, or where the line starts */
  readonly place: LinePlace;
  readonly isLine: boolean;
  /** Pa, and m3/s through it */
  readonly pressure: number;
  readonly flow: number;
}

export interface OperatingPoint {
  /** name of the phase that it is of, and the coolant's temperature [K] */
  readonly phase: string;
  readonly temperature: number;
  /** m3/s */
  readonly flow: number;
  /** flow of the first pump without any resistance at its rated voltage: the figure on its label [m3/s] */
  readonly rating: number;
  /** first pump */
  readonly voltageRatio: number;
  /** V at the battery, at the pump, and lost in its wires; absent where the voltage is given as a ratio */
  readonly wire?: { readonly supply: number; readonly atPump: number; readonly drop: number };
  /** Pa that pumps make and all else takes */
  readonly pressure: number;
  /** largest first */
  readonly losses: readonly LoopLoss[];
  /** Pa over m3/s: what the pumps make, and what the rest takes */
  readonly curves: {
    readonly flow: readonly number[];
    readonly pump: readonly number[];
    readonly loop: readonly number[];
  };
  /** flow if the pump's two figures were joined by a straight line, the low end [m3/s]; absent for other pumps */
  readonly straightLineFlow?: number;
  /** pressure at the pump inlet above the coolant's vapour pressure, and what the pump needs [Pa] */
  readonly suction: { readonly margin: number; readonly needed: number };
  /** share of the flow that goes the first way of each pair, in flow order */
  readonly shares: readonly number[];
  /** a pump beside a stronger one that does not get to deliver */
  readonly heldShut: readonly string[];
  readonly measured?: MeasuredFlow;
  /** what the next bore or pump buys, most first */
  readonly steps: readonly FlowStep[];
}

/**
 * Where pump and loop meet, and what takes the pressure.
 *
 * @param config - the car
 * @param temperature - of all coolant [K]; where left out, that at which its properties are taken
 * @returns the operating point of the first pull with a pump on, else of the first such phase; undefined where none is on
 */
export function operatingPoint(config: Config, temperature = config.coolant.propertiesAt): OperatingPoint | undefined {
  const phase = phaseOf(config);
  if (phase === undefined) return undefined;
  const ring = new CoolantRing(config);
  const flow = ring.flowAt(phase, temperature);
  const losses = lossesOf(ring.round, flow).sort((a, b) => b.pressure - a.pressure);
  const shares = ring.round.flatMap((element) => (element instanceof ParallelWays ? [element.share] : []));
  const pressure = pumpsOf(ring).reduce((sum, element) => sum + element.rise(flow), 0);
  const straight = withStraightPump(config);
  const measured = measuredIn(config);
  return {
    phase: phase.name,
    temperature,
    flow,
    rating: freeFlow(config.pump, 1),
    voltageRatio: phase.pumpVoltageRatio,
    ...wireOf(config.pump, phase),
    pressure,
    losses,
    curves: curvesOf(ring, flow, config, phase),
    ...(straight && { straightLineFlow: new CoolantRing(straight).flowAt(phase, temperature) }),
    suction: tightestSuction(config, ring, flow, temperature),
    shares,
    heldShut: heldShutOf(ring, phase),
    ...(measured && { measured }),
    steps: flowSteps(config, phase, temperature),
  };
}

function phaseOf({ cycle }: Config): PhaseConfig | undefined {
  const phases = phasesOf(cycle).filter(isPumped);
  return phases.find(({ kind }) => kind === 'pull') ?? phases[0];
}

function lossesOf(elements: readonly LoopElement[], flow: number): LoopLoss[] {
  return elements.flatMap((element) => {
    if (element instanceof ParallelWays) {
      const { first, second, share } = element;
      return [...lossesOf(first, share * flow), ...lossesOf(second, (1 - share) * flow)];
    }
    const { place, isLine } = element;
    const pressure = -element.rise(flow);
    if (place === 'pump' || place === 'secondPump' ? !isLine && pressure <= 0 : pressure === 0) return [];
    const word = PART_WORDS[place];
    return [{ name: isLine ? `line after the ${word}` : word, place, isLine, pressure, flow }];
  });
}

const isPump = ({ place, isLine }: LoopElement): boolean => !isLine && (place === 'pump' || place === 'secondPump');

/** Elements of the ring that make pressure: pumps, and pairs of ways with one in them. */
function pumpsOf({ round }: CoolantRing): LoopElement[] {
  return round.filter((element) =>
    element instanceof ParallelWays ? [...element.first, ...element.second].some(isPump) : isPump(element),
  );
}

function curvesOf(ring: CoolantRing, flow: number, config: Config, setting: LoopSetting): OperatingPoint['curves'] {
  const pumps = pumpsOf(ring);
  const most =
    freeFlow(config.pump, setting.pumpVoltageRatio) +
    (config.secondPump ? freeFlow(config.secondPump, setting.secondPumpVoltageRatio) : 0);
  const flows = Array.from({ length: CURVE_POINTS }, (_, k) => (k / (CURVE_POINTS - 1)) * most);
  const sum = (elements: readonly LoopElement[], at: number): number =>
    elements.reduce((total, element) => total + element.rise(at), 0);
  const others = ring.round.filter((element) => !pumps.includes(element));
  const pump = flows.map((at) => sum(pumps, at));
  const loop = flows.map((at) => -sum(others, at));
  // Pairs of ways keep the share of the flow asked last.
  sum(ring.round, flow);
  return { flow: flows, pump, loop };
}

function wireOf({ wiring }: PumpConfig, phase: PhaseConfig): Pick<OperatingPoint, 'wire'> {
  if (wiring === undefined || phase.supplyVoltage === undefined) return {};
  const atPump = phase.pumpVoltageRatio * wiring.ratedVoltage;
  return { wire: { supply: phase.supplyVoltage, atPump, drop: phase.supplyVoltage - atPump } };
}

/** The same car with the parabola through its pump's two figures made a straight line. */
function withStraightPump(config: Config): Config | undefined {
  const { curve } = config.pump;
  if (curve.kind !== 'parabola' || config.secondPump !== undefined) return undefined;
  const points = { kind: 'points', flow: [0, curve.freeFlow], pressure: [curve.shutOffPressure, 0] } as const;
  return { ...config, pump: { ...config.pump, curve: points } };
}

/**
 * Pressure at the inlet of a pump above the vapour pressure of the coolant, and what that pump needs: outside and level
 * above it, less what lies between tank and pump. The cap's pressure is not counted: a loop that has just warmed has
 * none. Of several pumps before the first two ways beside each other, the one with the least to spare; where the first
 * stands in such a way, at the place where they part.
 */
function tightestSuction(
  config: Config,
  ring: CoolantRing,
  flow: number,
  temperature: number,
): OperatingPoint['suction'] {
  const level = ring.density * GRAVITY * config.reservoir.heightAbovePump;
  let margin = ring.outsidePressure + level - ring.coolant.vapourPressure(temperature);
  const pumps: OperatingPoint['suction'][] = [];
  for (const element of ring.round) {
    if (element instanceof ParallelWays) break;
    if (isPump(element))
      pumps.push({ margin, needed: (config[element.place as 'pump' | 'secondPump'] ?? config.pump).suctionNeeded });
    margin += element.rise(flow);
  }
  if (pumps.length === 0) return { margin, needed: config.pump.suctionNeeded };
  return pumps.reduce((tightest, pump) =>
    pump.margin - pump.needed < tightest.margin - tightest.needed ? pump : tightest,
  );
}

function heldShutOf({ round }: CoolantRing, phase: PhaseConfig): string[] {
  return round.flatMap((element) => {
    if (!(element instanceof ParallelWays) || (element.share > 0 && element.share < 1)) return [];
    const shut = element.share === 0 ? element.first : element.second;
    return shut
      .filter((each) => isPump(each) && phase[`${each.place as 'pump' | 'secondPump'}VoltageRatio`] > 0)
      .map(({ place }) => PART_WORDS[place]);
  });
}
