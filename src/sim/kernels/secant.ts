/**
 * Fixed point x = F(x) of a scalar by secant, one call a round, with the slope of F remembered from round to round
 * and from one search to the next. A slope outside its range counts as noise and falls back to the first one.
 */
export class Secant {
  private slope: number;
  private lastX = 0;
  private lastF = 0;
  private rounds = 0;
  private readonly lowest: number;
  private readonly highest: number;
  private readonly first: number;

  /**
   * @param lowest - slopes of F count as noise from here down
   * @param highest - and from here up, below 1
   * @param first - slope to begin with
   */
  constructor(lowest: number, highest: number, first: number) {
    this.lowest = lowest;
    this.highest = highest;
    this.first = first;
    this.slope = first;
  }

  /** Forgets the slope. */
  reset(): void {
    this.slope = this.first;
  }

  /** Begins a new search with the slope of the last one. */
  start(): void {
    this.rounds = 0;
  }

  /** How far F(x) is from the fixed point when F(x) - x is `gap`; the slope counts as at least the first one. */
  distance(gap: number): number {
    const slope = Math.max(Math.abs(this.slope), this.first);
    return (slope / (1 - this.slope)) * Math.abs(gap);
  }

  /** @returns the next x, after F(x) was found to be `f` */
  next(x: number, f: number): number {
    if (this.rounds > 0 && x !== this.lastX) {
      const slope = (f - this.lastF) / (x - this.lastX);
      this.slope = slope > this.lowest && slope < this.highest ? slope : this.first;
    }
    this.rounds++;
    this.lastX = x;
    this.lastF = f;
    return (f - this.slope * x) / (1 - this.slope);
  }
}
