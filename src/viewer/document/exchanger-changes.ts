import type { JsonObject } from '../../sim/index.ts';
import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import type { Car } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { partPutBehindCore, phasesIn } from './loop-changes.ts';

/** m/s: a fan before the car gives 3 to 8, common practice */
const FAN = 5;

/** Changes that put in the exchanger of the first demo car, a line like the one to it, and air at a usual fan's speed. */
export function exchangerPutIn(car: Car): Changes {
  const { document } = car;
  const { exchanger } = JSON.parse(DEMO_SCENARIOS[0].text);
  const lines = document.lines as JsonObject;
  const running = phasesIn(document).filter(([, { kind }]) => kind !== 'hot soak');
  return {
    ...partPutBehindCore(car, 'exchanger'),
    exchanger,
    'lines.afterExchanger': lines.afterCore,
    ...Object.fromEntries(running.map(([path]) => [`${path}.exchangerAirSpeed`, FAN])),
  };
}
