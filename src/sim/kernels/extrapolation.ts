/**
 * Guesses the next values of a few scalars by the parabola through their last three values in time (the line
 * through two, the value of one). Holds the last three points that stand and one that is being tried.
 *
 * Shapes: every point has `count` numbers; nothing is allocated after the constructor.
 */
export class Extrapolation {
  private readonly times = [0, 0, 0];
  private readonly points: Float64Array[];
  private readonly triedPoints: [Float64Array, Float64Array];
  private readonly triedTimes: [number, number] = [0, 0];
  private known = 0;

  constructor(count: number) {
    this.points = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
    this.triedPoints = [new Float64Array(count), new Float64Array(count)];
  }

  /** Forgets all but one point. */
  restart(time: number, point: Float64Array): void {
    this.known = 0;
    this.push(time, point);
  }

  /** Notes the values at a stage that may yet be refused. */
  tryPoint(stage: 1 | 2, time: number, point: Float64Array): void {
    this.triedTimes[stage - 1] = time;
    this.triedPoints[stage - 1].set(point);
  }

  /** Both tried points stand. */
  accept(): void {
    this.push(this.triedTimes[0], this.triedPoints[0]);
    this.push(this.triedTimes[1], this.triedPoints[1]);
  }

  /** Writes the guess for `time` into `out`; stage 2 also uses the point tried for stage 1. */
  guess(stage: 1 | 2, time: number, out: Float64Array): void {
    const { times, points, known } = this;
    if (stage === 1) {
      extrapolate(known, times[0], points[0], times[1], points[1], times[2], points[2], time, out);
    } else {
      const t = this.triedTimes[0];
      const tried = this.triedPoints[0];
      extrapolate(Math.min(3, known + 1), times[1], points[1], times[2], points[2], t, tried, time, out);
    }
  }

  private push(time: number, point: Float64Array): void {
    const oldest = this.points[0];
    this.points[0] = this.points[1];
    this.points[1] = this.points[2];
    this.points[2] = oldest;
    this.times[0] = this.times[1];
    this.times[1] = this.times[2];
    this.times[2] = time;
    oldest.set(point);
    this.known = Math.min(3, this.known + 1);
  }
}

function extrapolate(
  known: number,
  ta: number,
  a: Float64Array,
  tb: number,
  b: Float64Array,
  tc: number,
  c: Float64Array,
  time: number,
  out: Float64Array,
): void {
  // Equal times (a step of no length) would divide by nothing: fall back to fewer points.
  const hasTwo = known > 1 && tc > tb;
  const hasThree = known > 2 && hasTwo && tb > ta;
  for (let k = 0; k < out.length; k++) {
    let value = c[k];
    if (hasTwo) {
      const slope = (c[k] - b[k]) / (tc - tb);
      value += slope * (time - tc);
      if (hasThree) {
        const slopeBefore = (b[k] - a[k]) / (tb - ta);
        value += ((slope - slopeBefore) / (tc - ta)) * (time - tc) * (time - tb);
      }
    }
    out[k] = value;
  }
}
