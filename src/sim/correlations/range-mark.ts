/** A quantity that was asked for outside the range its formula was published for. */
interface RangeBreach {
  readonly quantity: string;
  /** in the unit of the published range, which `quantity` names */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** distance to the nearer limit as a share of that limit: 0.2 is a fifth above the highest or below the lowest */
  readonly beyond: number;
}

/** Where a result stands against the published range of its formula: inside, or what lies beyond and how far. */
export type RangeMark = 'inside' | readonly RangeBreach[];

/** A value of a fitted formula with its mark. */
export interface Ranged {
  readonly value: number;
  readonly range: RangeMark;
}

/** quantity with its unit, value, lowest and highest published */
export type Limit = readonly [quantity: string, value: number, low: number, high: number];

/** The mark of one call, from the limits of its formula. A lowest limit of 0 is never broken by a quantity above 0. */
export function markOf(limits: readonly Limit[]): RangeMark {
  const breaches = limits
    .filter(([, value, low, high]) => !(value >= low && value <= high))
    .map(([quantity, value, low, high]) => {
      const beyond = value > high ? value / high - 1 : 1 - value / low;
      return { quantity, value, low, high, beyond };
    });
  return breaches.length === 0 ? 'inside' : breaches;
}

/** One mark for a result that several formulas went into; a quantity of the same limits is named once. */
export function joinedMark(marks: readonly RangeMark[]): RangeMark {
  const breaches = marks.flatMap((mark) => (mark === 'inside' ? [] : mark));
  const named = new Map(breaches.map((breach) => [`${breach.quantity} ${breach.low} ${breach.high}`, breach]));
  return named.size === 0 ? 'inside' : [...named.values()];
}
