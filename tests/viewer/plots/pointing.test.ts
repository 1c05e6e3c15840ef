import { beforeEach, describe, expect, it } from 'vitest';
import { followPointer } from '../../../src/viewer/plots/pointing.ts';
import type { Stretch } from '../../../src/viewer/plots/view.ts';

/** A plot from 100 to 500 px that shows 60 to 100 s: a tenth of a second a pixel. */
class FakePlot extends EventTarget {
  setPointerCapture(): void {}

  send(type: string, clientX: number, more: object = {}): void {
    this.dispatchEvent(
      Object.assign(new Event(type), { clientX, pointerType: 'mouse', pointerId: 1, button: 0 }, more),
    );
  }
}

let plot: FakePlot;
let heard: string[];
let stretch: Stretch;
let stop: () => void;
const rounded = ({ from, to }: Stretch) => `${from.toFixed(1)}..${to.toFixed(1)}`;

beforeEach(() => {
  plot = new FakePlot();
  heard = [];
  stretch = { from: 60, to: 100 };
  stop = followPointer(plot as unknown as HTMLElement, {
    stretch: () => stretch,
    sides: () => ({ left: 100, right: 500 }),
    onHover: (time) => heard.push(time === undefined ? 'gone' : `over ${time.toFixed(1)}`),
    onPin: (time) => heard.push(`pin ${time.toFixed(1)}`),
    onMark: (marked) => marked !== undefined && heard.push(`mark ${rounded(marked)}`),
    onZoom: (zoomed) => {
      stretch = zoomed;
      heard.push(`zoom ${rounded(zoomed)}`);
    },
    onReset: () => heard.push('reset'),
  });
});

describe('pointing at a plot', () => {
  it('previews under the mouse and stops when it leaves', () => {
    plot.send('pointermove', 300);
    plot.send('pointermove', 900);
    plot.send('pointerleave', 900);
    expect(heard).toEqual(['over 80.0', 'over 100.0', 'gone']);
  });

  it('pins with a click that hardly moves', () => {
    plot.send('pointerdown', 200);
    plot.send('pointerup', 202);
    expect(heard).toEqual(['pin 70.2']);
  });

  it('zooms to what a drag marks, in either direction', () => {
    plot.send('pointerdown', 300);
    plot.send('pointermove', 200);
    plot.send('pointerup', 200);
    expect(heard).toEqual(['over 70.0', 'mark 70.0..80.0', 'zoom 70.0..80.0']);
  });

  it('leaves other buttons alone and resets with a double click', () => {
    plot.send('pointerdown', 200, { button: 2 });
    plot.send('pointerup', 300, { button: 2 });
    plot.send('dblclick', 200);
    expect(heard).toEqual(['reset']);
  });

  it('moves with a finger and pins where it lets go', () => {
    plot.send('pointerdown', 200, { pointerType: 'touch' });
    plot.send('pointermove', 250, { pointerType: 'touch' });
    plot.send('pointerup', 250, { pointerType: 'touch' });
    expect(heard).toEqual(['over 70.0', 'over 75.0', 'pin 75.0', 'gone']);
  });

  it('pins nothing when the page takes the finger to scroll', () => {
    plot.send('pointerdown', 200, { pointerType: 'touch' });
    plot.send('pointercancel', 200, { pointerType: 'touch' });
    expect(heard).toEqual(['over 70.0', 'gone']);
  });

  it('stretches between two fingers, the times under them staying there', () => {
    const one = { pointerType: 'touch', pointerId: 1 };
    const two = { pointerType: 'touch', pointerId: 2 };
    plot.send('pointerdown', 200, one);
    plot.send('pointerdown', 300, two);
    // 70 s and 80 s are held; drawn from 100 to 200 px apart, a pixel is half as long.
    plot.send('pointermove', 400, two);
    plot.send('pointerup', 400, two);
    plot.send('pointerup', 200, one);
    expect(heard).toEqual(['over 70.0', 'gone', 'zoom 65.0..85.0', 'gone', 'gone']);
  });

  it('listens no more once it is stopped', () => {
    stop();
    heard = [];
    plot.send('pointermove', 300);
    expect(heard).toEqual([]);
  });
});
