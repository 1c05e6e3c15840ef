import { describe, expect, it } from 'vitest';
import type { LoopItem } from '../../../src/sim/scenario/config/loop.ts';
import { columnBehind, countAt, exchangerColumns, footOrder } from '../../../src/viewer/scene/foot.ts';

const usual: LoopItem[] = ['pump', 'core', 'exchanger', 'reservoir'];
const beside: LoopItem[] = ['pump', 'secondPump', 'core', [['exchanger'], ['secondExchanger']], 'reservoir'];

describe('the boxes at the foot of the picture', () => {
  it('stand in flow order from the core, whatever that is', () => {
    expect(footOrder({ loop: usual })).toEqual(['exchanger', 'tank', 'pump']);
    expect(footOrder({ loop: ['exchanger', 'pump', 'core', 'reservoir'] })).toEqual(['tank', 'exchanger', 'pump']);
    expect(footOrder({ loop: ['core', 'pump', 'exchanger', 'reservoir'] })).toEqual(['pump', 'exchanger', 'tank']);
    expect(footOrder({ loop: ['pump', 'core', 'heatSink', 'reservoir'] })).toEqual(['tank', 'pump']);
  });

  it('hold two of a kind at the place of the first', () => {
    expect(footOrder({ loop: beside })).toEqual(['exchanger', 'tank', 'pump']);
    expect(footOrder({ loop: ['pump', 'core', 'secondPump', 'reservoir'] })).toEqual(['tank', 'pump']);
    expect(countAt({ loop: beside }, 'pump')).toBe(2);
    expect(countAt({ loop: beside }, 'tank')).toBe(1);
    expect(footOrder({ loop: ['pump', 'core', 'secondExchanger', 'reservoir'] })).toEqual([
      'exchanger',
      'tank',
      'pump',
    ]);
  });

  it('know what leaves them: of a row the last, of two ways each', () => {
    const row: LoopItem[] = ['pump', 'core', 'exchanger', 'secondExchanger', 'reservoir'];
    expect(exchangerColumns({ loop: usual })).toEqual(['coolantOutOfExchanger']);
    expect(exchangerColumns({ loop: row })).toEqual(['coolantOutOfSecondExchanger']);
    expect(exchangerColumns({ loop: beside })).toEqual(['coolantOutOfExchanger', 'coolantOutOfSecondExchanger']);
  });

  it('colour the pipe behind them by what is recorded there, and not at all where two ways have mixed', () => {
    const behind = (loop: LoopItem[]) => {
      const order = footOrder({ loop });
      return order.slice(0, -1).map((_, k) => columnBehind({ loop }, order, k));
    };
    expect(behind(usual)).toEqual(['coolantOutOfExchanger', 'reservoirTemperature']);
    expect(behind(beside)).toEqual([undefined, 'reservoirTemperature']);
    expect(behind(['core', 'pump', 'exchanger', 'reservoir'])).toEqual(['coolantOutOfCore', 'coolantOutOfExchanger']);
  });
});
