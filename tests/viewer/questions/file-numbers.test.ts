import { describe, expect, it } from 'vitest';
import { applyChanges, applyVariant } from '../../../src/sim/index.ts';
import { fileNumbers } from '../../../src/viewer/questions/file-numbers.ts';
import { readCar } from '../../../src/viewer/state/cars.ts';
import { shippedDocument, shippedScenario } from '../../support/shipped.ts';
import { type Edits, shortDocument } from '../../support/short-session.ts';

function carWith(edits: Edits) {
  const { car, issues } = readCar('car', shortDocument(edits));
  if (car === undefined) throw new Error(issues[0].message);
  return car;
}
const numbersWith = (edits: Edits = {}) => fileNumbers(carWith(edits));
const pathsWith = (edits: Edits = {}) => numbersWith(edits).map(({ path }) => path);
const namesWith = (edits: Edits = {}) => numbersWith(edits).map(({ name }) => name);

describe('the numbers of a car', () => {
  it('have name, part and value as the inputs show them', () => {
    const numbers = numbersWith();
    const at = (path: string) => numbers.find((number) => number.path === path);
    expect(at('core.airDrop')).toMatchObject({ name: 'core pressure drop', part: 'Core', value: 9 });
    expect(at('compressor.leak')).toMatchObject({ name: 'leak, compressor', part: 'Compressor', value: 1.12 });
    expect(at('lines.afterCore.length')?.name).toBe('segment length, after the core');
    // Typed as "330 K".
    expect(at('engine.referenceTemperature')?.value).toBeCloseTo(56.85, 9);
  });

  it('are two where one runs through its phase, named by the phase', () => {
    const numbers = numbersWith().filter(({ path }) => path.startsWith('cycle.1.phases.0.engineSpeed'));
    expect(numbers.map(({ path, name, value }) => [path, name, value])).toEqual([
      ['cycle.1.phases.0.engineSpeed.0', 'engine speed, pull, start', 2500],
      ['cycle.1.phases.0.engineSpeed.1', 'engine speed, pull, end', 6600],
    ]);
    expect(numbersWith().find(({ path }) => path === 'cycle.0.engineSpeed')?.name).toBe('engine speed, idle');
  });

  it('are told apart where parts or phases are alike', () => {
    const curve = [
      { flow: 0, pressure: 28 },
      { flow: 26, pressure: 0 },
    ];
    expect(namesWith({ 'pump.curve': curve, 'pump.shutOffPressure': undefined, 'pump.freeFlow': undefined })).toContain(
      'flow of the pump curve, point 2',
    );
    const names = namesWith({ 'cycle.0.name': 'cruise' });
    expect(names).toContain('duration of the phase, cruise');
    expect(names).toContain('duration of the phase, cruise (2)');
    expect(new Set(names).size).toBe(names.length);
  });

  it('include defaults that the car uses', () => {
    expect(pathsWith({ 'intake.pickUp': undefined })).toContain('intake.pickUp');
    expect(pathsWith({ 'room.volume': 400, 'room.extraction': 3 })).toContain('room.heatPerAir');
    expect(pathsWith({ 'reservoir.iceMass': 5 })).toContain('reservoir.meltConductance');
    expect(pathsWith({ 'ambient.pressure': undefined })).toContain('ambient.altitude');
  });

  it('leave out what is no number of the car, is whole, is not there or says nothing', () => {
    const paths = pathsWith();
    for (const path of [
      'limit.chargeTemperature',
      'numerics.tolerance',
      'core.passes',
      'cycle.1.repeat',
      'room.volume',
      'room.heatPerAir',
      'core.turnVolume',
      'ambient.altitude',
      'reservoir.meltConductance',
      'intake.drop',
      'intake.dropAtFlow',
      'pump.measuredFlowVoltage',
      // Of a centrifugal machine; this car's displaces.
      'compressor.boostInletTemperature',
    ]) {
      expect(paths, path).not.toContain(path);
    }
  });

  it('leave out what follows from a test point, where the file takes no other', () => {
    const test = { airFlow: 0.3, coolantFlow: 18, effectiveness: 0.7 };
    const byTest = pathsWith({
      'core.test': test,
      'core.airConductance': undefined,
      'core.airConductanceAtFlow': undefined,
      'core.coolantConductance': undefined,
      'core.coolantConductanceAtFlow': undefined,
    });
    expect(byTest).not.toContain('core.airConductance');
    expect(byTest).toContain('core.test.effectiveness');
    expect(byTest).toContain('exchanger.airConductance');
  });

  it('leave out curves of a core that brings its own by its measures', () => {
    const variant = applyVariant(shippedScenario('rolling-road-estate'), 'core by its measures, 120 mm deep').scenario;
    const { car } = readCar('measures', variant?.document ?? {});
    const paths = car && fileNumbers(car).map(({ path }) => path);
    expect(paths).not.toContain('core.airConductanceExponent');
    expect(paths).toContain('core.airConductance');
    expect(paths).toContain('coreGeometry.depth');
  });

  it.each(['rolling-road-estate', 'ridge-roadster', 'quarter-mile-saloon', 'session-coupe', 'motorway-wagon'])(
    'may each be typed as they are: %s',
    (file) => {
      const { car } = readCar(file, shippedDocument(file));
      if (car === undefined) throw new Error('no car');
      for (const { path, value } of fileNumbers(car)) {
        const { scenario } = applyChanges(car.scenario, 'as it is', { [path]: value });
        expect(scenario, path).toBeDefined();
      }
    },
  );
});
