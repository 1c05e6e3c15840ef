/** Work gives way to messages after this long [ms], so that a cancel is heard. */
const SLICE = 30;

/** Works in slices and lets messages in between them. */
export class Slicer {
  readonly cancelled = new Set<number>();
  private readonly channel = new MessageChannel();
  private readonly waiting: (() => void)[] = [];
  private sliceEnd = 0;

  constructor() {
    this.channel.port1.onmessage = () => this.waiting.shift()?.();
  }

  /** Steps until there are no more; false where the run was cancelled. Several may be at work, in turns. */
  async work(run: number, step: () => boolean, between?: () => void): Promise<boolean> {
    while (!this.cancelled.has(run) && step()) {
      if (performance.now() < this.sliceEnd) continue;
      between?.();
      await this.nextMacrotask();
      this.sliceEnd = performance.now() + SLICE;
    }
    return !this.cancelled.has(run);
  }

  /** Messages are only heard between macrotasks; a resolved promise alone would not let one in. */
  private nextMacrotask(): Promise<void> {
    return new Promise((resolve) => {
      this.waiting.push(resolve);
      this.channel.port2.postMessage(undefined);
    });
  }
}
