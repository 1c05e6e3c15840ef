import { listed } from '../scenario/issue.ts';
import type { Sentence } from '../sentence.ts';
import { figure } from '../units.ts';
import type { UpgradeWay } from './upgrade-order.ts';
import {
  MOST_UPGRADES_ORDERED,
  NO_EFFECT,
  type Upgrade,
  type UpgradeStep,
  type UpgradeStudy,
} from './upgrade-steps.ts';
import { countedPulls, type Wording, written } from './wording.ts';

/** Two upgrades of the list that change the same key of the file differently. */
interface Clash {
  readonly earlier: number;
  readonly later: number;
  readonly path: string;
}

/** What a study of upgrades tells, one sentence a fact, by the part of the answer that it belongs to. */
export interface UpgradeWords {
  /** what to buy and in which order, for a reader who reads no more; empty where orders were not asked for */
  readonly lead: readonly string[];
  readonly base: readonly string[];
  readonly alone: readonly string[];
  readonly inOrder: readonly string[];
  /** empty where orders were not asked for */
  readonly best: readonly string[];
  readonly ways: readonly string[];
}

/**
 * The study of upgrades in words, for letters and for the command line.
 *
 * @param clashes - pairs of the list that change the same key: the later counts, and that is said
 */
export function explainUpgrades(
  study: UpgradeStudy,
  upgrades: readonly Upgrade[],
  clashes: readonly Clash[],
  wording: Wording,
): UpgradeWords {
  const { fitted, alone, inOrder, best } = study;
  const nameOf = (upgrade: number): string => upgrades[upgrade].name;
  const told = (steps: readonly UpgradeStep[]) =>
    steps.flatMap((step) => stepWords(step, nameOf(step.upgrade), wording));
  const isTooLong = best === undefined && alone.length > MOST_UPGRADES_ORDERED;
  return {
    lead: leadWords(study, upgrades),
    base: [
      ...baseWords(study, wording),
      ...(fitted.length === 0 ? [] : [fittedWords(fitted, upgrades)]),
      ...clashes
        .filter(({ earlier, later }) => !fitted.includes(earlier) && !fitted.includes(later))
        .map((clash) => clashWords(clash, nameOf)),
    ],
    alone: [...told(alone), ...thresholdWords([...alone, ...inOrder], wording)],
    inOrder: told(inOrder),
    best: isTooLong
      ? [tooLong(alone.length)]
      : best === undefined
        ? []
        : orderWords(inOrder, best.order, upgrades, wording),
    ways: best === undefined ? [] : wayWords(study, upgrades),
  };
}

/** The cheapest way to all pulls, or to the most there are, and the best order. */
function leadWords({ base, alone, inOrder, best }: UpgradeStudy, upgrades: readonly Upgrade[]): string[] {
  if (best === undefined) return [];
  const all = Math.max(...[base, ...[...alone, ...inOrder].map(({ car }) => car)].map((car) => car?.pullsRun ?? 0));
  const order = best.order !== undefined && best.order.length > 1 ? [orderSentence(best.order, upgrades)] : [];
  return [...cheapestWords(best.ways, all, upgrades), ...order];
}

function cheapestWords(ways: readonly UpgradeWay[] | undefined, all: number, upgrades: readonly Upgrade[]): string[] {
  const way = ways?.at(-1);
  if (way === undefined || all === 0) return [];
  const { pulls: most, upgrades: chosen } = way;
  if (most === 0) return ['None of the upgrades, nor all of them together, keeps a pull under the limit.'];
  const allPulls = all === 1 ? 'the one pull' : `all ${countedPulls(all)}`;
  if (most === all && chosen.length === 0) return [`The car as it is makes ${allPulls}.`];
  const bought = `${priceWords(way)}: ${namesOf(chosen, upgrades)}.`;
  if (most === all) return [`Cheapest way to ${allPulls}, ${bought}`];
  const has = chosen.length === 0 ? 'as the car makes as it is.' : `cheapest ${bought}`;
  return [`No set of the upgrades makes ${allPulls}; the most is ${most}, ${has}`];
}

const namesOf = (chosen: readonly number[], upgrades: readonly Upgrade[]): string =>
  chosen.map((upgrade) => upgrades[upgrade].name).join('; ');

/** "for 150.3 and 2.5 h" */
const priceWords = ({ money, hours }: UpgradeWay): string =>
  `for ${moneyText(money)}${hours === undefined ? '' : ` and ${figure(hours)} h`}`;

function baseWords({ base, limit }: UpgradeStudy, wording: Wording): string[] {
  const { count, pullsRun, deciding, stoppedBecause } = base;
  const stopped = stoppedBecause === undefined ? [] : [stoppedWords('As it is', stoppedBecause, wording)];
  if (deciding === undefined) return ['As it is, no pull of the car comes to its end.', ...stopped];
  const under = `${count} of ${countedPulls(pullsRun)} ${count === 1 || pullsRun === 1 ? 'stays' : 'stay'} at or under ${wording.temperature(limit)}`;
  return [`As it is, ${under}; pull ${deciding.pull} decides, at ${wording.temperature(deciding.peak)}.`, ...stopped];
}

const fittedWords = (fitted: readonly number[], upgrades: readonly Upgrade[]): string =>
  `Already fitted to this car, and so not weighed: ${namesOf(fitted, upgrades)}. What they buy shows on a car without them.`;

const stoppedWords = (name: string, reason: Sentence, wording: Wording): string =>
  `${name}: the run stops early, and only the pulls until then are counted: ${written(reason, wording)}.`;

const clashWords = ({ earlier, later, path }: Clash, nameOf: (upgrade: number) => string): string =>
  `"${nameOf(earlier)}" and "${nameOf(later)}" both change ${path}: where both are fitted, "${nameOf(later)}" counts, being later in the file, and both are paid.`;

/** What one step does, against the car without it. */
function stepWords({ car, change }: UpgradeStep, name: string, wording: Wording): string[] {
  if (car === undefined) return [`${name}: not possible; the file refuses this car.`];
  const stopped = car.stoppedBecause === undefined ? [] : [stoppedWords(name, car.stoppedBecause, wording)];
  return [effectWords(car, change, name, wording), ...stopped];
}

function effectWords(
  { count, deciding }: NonNullable<UpgradeStep['car']>,
  change: UpgradeStep['change'],
  name: string,
  wording: Wording,
): string {
  if (change === undefined) return `${name}: nothing to hold it against; the file refuses the car without it.`;
  const { effect, peak } = change;
  const says = effect === 'worse' ? `${name} makes it worse` : name;
  if (change.count !== 0) return `${says}: ${countedPulls(count)} under the limit instead of ${count - change.count}.`;
  if (peak === undefined || deciding === undefined) return `${name}: no whole pull to judge it by.`;
  if (effect === 'no effect') {
    return `${name}: no effect; still ${countedPulls(count)}, and the deciding peak moves by less than ${wording.difference(NO_EFFECT)}.`;
  }
  const moves = `${peak < 0 ? 'falls' : 'rises'} by ${wording.difference(Math.abs(peak))}`;
  return `${says}: still ${countedPulls(count)}, and the deciding peak ${moves} to ${wording.temperature(deciding.peak)}.`;
}

/** Why so little counts as nothing, where it did. */
function thresholdWords(steps: readonly UpgradeStep[], wording: Wording): string[] {
  if (!steps.some(({ change }) => change?.effect === 'no effect')) return [];
  return [
    `Less than ${wording.difference(NO_EFFECT)} at the same count is called no effect: at the usual tolerance of a step each of the two runs may itself be off by a fifth of it.`,
  ];
}

const tooLong = (count: number): string =>
  `Best order and cheapest way are worked out for up to ${MOST_UPGRADES_ORDERED} upgrades; there are ${count} to weigh.`;

function orderWords(
  inOrder: readonly UpgradeStep[],
  order: readonly UpgradeStep[] | undefined,
  upgrades: readonly Upgrade[],
  wording: Wording,
): string[] {
  if (order === undefined)
    return ['No order can be fitted step by step: each passes through a car that the file refuses.'];
  if (order.length === 1) return [];
  return [
    orderSentence(order, upgrades),
    ...againstFile(inOrder, order, wording),
    'Best is most pulls soonest, then coolest, then cheapest first.',
  ];
}

function orderSentence(order: readonly UpgradeStep[], upgrades: readonly Upgrade[]): string {
  const places = order.map(({ upgrade }) => upgrade);
  return `Best order: ${namesOf(places, upgrades)}.`;
}

/** What the best order gains on that of the file; nothing to say where the file's own passes through a refused car. */
function againstFile(inOrder: readonly UpgradeStep[], order: readonly UpgradeStep[], wording: Wording): string[] {
  if (order.every(({ upgrade }, k) => upgrade === inOrder[k].upgrade)) return ['It is the order of the file.'];
  if (inOrder.some(({ car }) => car === undefined)) return [];
  const countsOf = (steps: readonly UpgradeStep[]) => steps.map(({ car }) => car?.count ?? 0);
  const sumOf = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
  const [own, best] = [countsOf(inOrder), countsOf(order)];
  if (sumOf(own) !== sumOf(best)) {
    const [here, there] = [best, own].map((counts) => listed(counts.map(String)));
    return [`Step by step it makes ${here} pulls, the order of the file ${there}.`];
  }
  const peaksOf = (steps: readonly UpgradeStep[]) =>
    steps.reduce((sum, { car }) => sum + (car?.deciding?.peak ?? Number.NaN), 0) / steps.length;
  const lower = peaksOf(inOrder) - peaksOf(order);
  const isCooler = lower >= NO_EFFECT;
  return [
    `The order of the file makes as many pulls on the way${
      isCooler
        ? `; here the steps' deciding peaks are ${wording.difference(lower)} lower on average.`
        : `, and is as good within ${wording.difference(NO_EFFECT)}.`
    }`,
  ];
}

function wayWords({ base: { pullsRun }, fitted, best }: UpgradeStudy, upgrades: readonly Upgrade[]): string[] {
  const ways = best?.ways;
  if (ways === undefined) return ['The cheapest way to a number of pulls cannot be told: no upgrade has a price.'];
  const unpriced = upgrades.flatMap(({ name, price }, upgrade) =>
    price === undefined && !fitted.includes(upgrade) ? [`"${name}"`] : [],
  );
  const lines = ways.map((way, k) => {
    const least = k === 0 ? 0 : ways[k - 1].pulls + 1;
    const range = least === way.pulls ? countedPulls(way.pulls) : `${least} to ${countedPulls(way.pulls)}`;
    const isAsItIs = way.upgrades.length === 0;
    return `${range}: ${isAsItIs ? 'the car as it is' : `${namesOf(way.upgrades, upgrades)}, ${priceWords(way)}`}.`;
  });
  return [
    ...lines,
    ...(unpriced.length === 0 ? [] : [`Without a price, and so in no way: ${listed(unpriced)}.`]),
    ...(ways.some(({ pulls: count }) => count === pullsRun)
      ? [`More than ${countedPulls(pullsRun)} are not run in this cycle.`]
      : []),
  ];
}

/** The file's own money, to the hundredth where it has hundredths. */
export const moneyText = (money: number): string => String(Number(money.toFixed(2)));

/** What each step would buy, by itself and one after the other, and at what price: the part of a letter. */
export function explainSteps(
  study: UpgradeStudy,
  upgrades: readonly Upgrade[],
  clashes: readonly Clash[],
  wording: Wording,
): string[] {
  const { fitted } = study;
  const { alone, inOrder } = explainUpgrades(study, upgrades, clashes, wording);
  return [
    ...(fitted.length === 0 ? [] : [`Already fitted: ${namesOf(fitted, upgrades)}.`]),
    ...(alone.length === 0 ? [] : ['Each by itself:', ...alone]),
    ...(inOrder.length === 0 ? [] : ['One after the other:', ...inOrder]),
    ...explainPrices(upgrades.filter((_, upgrade) => !fitted.includes(upgrade))),
  ];
}

/** The shop's own price and hours of each step, where the file gives them. */
function explainPrices(upgrades: readonly Upgrade[]): string[] {
  const told = upgrades.flatMap(({ name, price, hours }) => {
    const said = [
      ...(price === undefined ? [] : [moneyText(price)]),
      ...(hours === undefined ? [] : [`${hours} ${hours === 1 ? 'hour' : 'hours'}`]),
    ];
    return said.length === 0 ? [] : [`${name} ${said.join(' and ')}`];
  });
  return told.length === 0 ? [] : [`The shop's prices, and hours to fit: ${told.join('; ')}.`];
}
