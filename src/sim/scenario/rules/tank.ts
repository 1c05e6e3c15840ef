import { HEAT_OF_MELTING, ICE_DENSITY, MELTING_POINT } from '../../fluids/ice.ts';
import { figure, fromSi, toSi } from '../../units.ts';
import { LINE_PLACES } from '../config/loop.ts';
import { coolantOf } from '../coolant-of.ts';
import type { Fix, Report } from '../issue.ts';
import { lineAfter, type Values } from '../shape.ts';

/** What the tank's keys make of each other. */
export function checkTank(values: Values, report: Report): void {
  checkLayers(values, report);
  checkMissing(values, report);
  checkVessel(values, report);
}

function checkLayers({ reservoir }: Values, report: Report): void {
  if (!(reservoir.layers > 1 && reservoir.iceMass > 0)) return;
  report({
    severity: 'error',
    path: 'reservoir.layers',
    message: `A tank with ice is taken as stirred: ${figure(reservoir.iceMass)} kg of ice and ${figure(reservoir.layers)} layers do not go together.`,
    found: `${figure(reservoir.layers)} layers`,
    expected: '1 with ice',
    fix: { path: 'reservoir.layers', value: 1, label: 'One mixed tank' },
  });
}

/** L that must be left in the tank */
const LEAST_LEFT = 0.05;

function checkMissing({ reservoir }: Values, report: Report): void {
  const { coolantVolume, missingCoolant } = reservoir;
  if (!(missingCoolant > coolantVolume - LEAST_LEFT)) return;
  report({
    severity: 'error',
    path: 'reservoir.missingCoolant',
    message: `The tank holds ${figure(coolantVolume)} L: with ${figure(missingCoolant)} L missing the pump draws air. That is an air-locked core (core.airLockedShare) or no flow at all.`,
    found: `${figure(missingCoolant)} L`,
    expected: `below ${figure(coolantVolume - LEAST_LEFT)} L`,
  });
}

/** Coolant and ice have room in the tank. */
function checkVessel({ reservoir: { coolantVolume, iceMass, vesselVolume } }: Values, report: Report): void {
  const perLitre = ICE_DENSITY / 1000;
  const needed = coolantVolume + iceMass / perLitre;
  if (vesselVolume === undefined || !(needed > vesselVolume)) return;
  const coolant = `${figure(coolantVolume)} L of coolant`;
  const said =
    iceMass > 0
      ? `${coolant} and ${figure(iceMass)} kg of ice need ${figure(needed)} L (ice ${figure(perLitre)} kg/L)`
      : `${coolant} do not fit`;
  const fix = fixOfVessel(iceMass, Math.floor(10 * (vesselVolume - coolantVolume) * perLitre) / 10, vesselVolume);
  report({
    severity: 'error',
    path: 'reservoir.vesselVolume',
    message: `${said}: ${figure(needed - vesselVolume)} L more than the ${figure(vesselVolume)} L that the vessel holds.`,
    found: `${figure(vesselVolume)} L`,
    expected: `at least ${figure(needed)} L, or less in it`,
    ...(fix && { fix }),
  });
}

/** Less ice where there is some and room for a part of it; without ice, a vessel filled to the overflow. */
function fixOfVessel(iceMass: number, iceThatFits: number, vesselVolume: number): Fix | undefined {
  if (iceMass === 0)
    return { path: 'reservoir.coolantVolume', value: vesselVolume, label: `Fill in ${figure(vesselVolume)} L` };
  if (!(iceThatFits > 0)) return undefined;
  return { path: 'reservoir.iceMass', value: iceThatFits, label: `Load ${figure(iceThatFits)} kg of ice` };
}

/** degC; coolant that has stood with ice is no warmer: common practice, no published source */
const WARMEST_ON_ICE = 3;
/** degC, what is proposed: within 0 to WARMEST_ON_ICE */
const COLD_START = 2;

/** Ice meets cold coolant. Asks the values of a file without faults, its core filled in. */
export function checkWarmStart(values: Values, report: Report): void {
  const { reservoir, start, ambient } = values;
  const { iceMass, coolantVolume } = reservoir;
  const around = start.coolant ?? ambient.temperature;
  const warm = start.reservoir ?? around;
  if (!(iceMass > 0) || !(warm > WARMEST_ON_ICE)) return;
  const mix = coolantOf(values);
  if (mix === undefined) return;
  /** kg that so many litres at a temperature [degC] melt */
  const melts = (litres: number, temperature: number): number =>
    (toSi(litres, 'L') * mix.density * mix.heatCapacity * (toSi(temperature, 'degC') - MELTING_POINT)) /
    HEAT_OF_MELTING;
  const atMost = (melted: number): string => figure(Number(Math.min(iceMass, melted).toPrecision(2)));
  const outside = volumeOutsideTank(values);
  const inTank = melts(coolantVolume, warm);
  const inLoop = inTank + Math.max(0, melts(outside, around));
  const key = start.reservoir === undefined ? 'coolant' : 'reservoir';
  report({
    severity: 'warning',
    path: `start.${key}`,
    message: `${figure(coolantVolume)} L in the tank at ${figure(warm)} degC would melt ${atMost(inTank)} of the ${figure(iceMass)} kg of ice before anything happens, the ${figure(coolantVolume + outside)} L of the whole loop ${atMost(inLoop)} kg. Start at 0 to ${WARMEST_ON_ICE} degC?`,
    found: `${figure(warm)} degC`,
    expected: `0 to ${WARMEST_ON_ICE} degC with ice in the tank`,
    fix: { path: `start.${key}`, value: COLD_START, label: `Start at ${COLD_START} degC` },
  });
}

/** Coolant in cores with their turn headers, exchangers and lines [L]. */
function volumeOutsideTank({ core, exchanger, secondExchanger, lines }: Values): number {
  const segments = LINE_PLACES.flatMap((place) => lines[lineAfter(place)] ?? []);
  const inLines = segments
    .map(({ length, bore = lines.bore }) => (Math.PI / 4) * toSi(bore, 'mm') ** 2 * length)
    .reduce((sum, volume) => sum + volume, 0);
  const inExchangers = (exchanger?.coolantVolume ?? 0) + (secondExchanger?.coolantVolume ?? 0);
  const inTurn = core.passes === 2 ? core.turnVolume : 0;
  return core.count * (core.coolantVolume + inTurn) + inExchangers + fromSi(inLines, 'L');
}
