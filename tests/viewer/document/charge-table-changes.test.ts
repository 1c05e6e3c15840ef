import { describe, expect, it } from 'vitest';
import { rowAdded, tableStarted } from '../../../src/viewer/document/charge-table-changes.ts';
import { itemsAt } from '../../../src/viewer/document/lists.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Session } from '../../../src/viewer/state/session.ts';

function opened() {
  const session = new Session();
  session.open(DEMO_SCENARIOS[0].text);
  const document = () => session.inHand.value?.document ?? {};
  return { session, document };
}

describe('the table of spark and torque', () => {
  it('starts without a claim, at the limit and 20 K above', () => {
    const { session } = opened();
    expect(session.inHand.value?.scenario.values.chargeTable).toBeUndefined();
    expect(session.change(tableStarted(58), 'table')).toEqual([]);
    expect(session.inHand.value?.scenario.values.chargeTable).toEqual([
      { chargeTemperature: 58, spark: 0, torque: 0 },
      { chargeTemperature: 78, spark: 0, torque: 0 },
    ]);
    session.undo();
    expect(session.after.value).toBeUndefined();
  });

  it.each([
    // Halfway between (40, 0, 0) and (80, -2, -1); behind the last, on with its values.
    [0, { chargeTemperature: 60, spark: -1, torque: -0.5 }, 1],
    [1, { chargeTemperature: 100, spark: -2, torque: -1 }, 2],
  ])('takes a row more behind row %i', (index, row, at) => {
    const { session, document } = opened();
    const table = [
      { chargeTemperature: 40, spark: 0, torque: 0 },
      { chargeTemperature: 80, spark: -2, torque: -1 },
    ];
    session.change({ chargeTable: table }, 'table');
    expect(session.change(rowAdded(document(), table, index), 'add')).toEqual([]);
    expect(session.inHand.value?.scenario.values.chargeTable?.[at]).toEqual(row);
    expect(itemsAt(document(), 'chargeTable')).toHaveLength(3);
  });
});
