/** A quantity over time: a constant, or the corners of straight lines; two corners at one time are a jump. */
export type Profile = number | readonly (readonly [time: number, value: number])[];

/** Follows a profile through segments inside which it has no corner, from the segment's own side of a jump. */
export class Follower {
  private readonly profile: Profile;
  private first: readonly [number, number] = [0, 0];
  private slope = 0;

  constructor(profile: Profile) {
    this.profile = profile;
  }

  enter(start: number, end: number): void {
    if (typeof this.profile === 'number') {
      this.first = [0, this.profile];
      return;
    }
    const middle = 0.5 * (start + end);
    const next = this.profile.findIndex(([time]) => time > middle);
    if (next === -1) {
      this.first = this.profile[this.profile.length - 1];
      this.slope = 0;
    } else if (next === 0) {
      this.first = this.profile[0];
      this.slope = 0;
    } else {
      this.first = this.profile[next - 1];
      const [time, value] = this.profile[next];
      this.slope = (value - this.first[1]) / (time - this.first[0]);
    }
  }

  at(time: number): number {
    return this.first[1] + this.slope * (time - this.first[0]);
  }
}

/** Times at which any of the profiles has a corner between 0 and `end`, both included, ascending. */
export function cornersOf(profiles: readonly Profile[], end: number): number[] {
  const times = new Set([0, end]);
  for (const profile of profiles) {
    if (typeof profile === 'number') continue;
    for (const [time] of profile) if (time > 0 && time < end) times.add(time);
  }
  return [...times].sort((a, b) => a - b);
}
