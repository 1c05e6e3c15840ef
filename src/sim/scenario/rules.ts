import type { Report } from './issue.ts';
import { checkAirPath } from './rules/air-path.ts';
import { checkCoolantLoop } from './rules/coolant-loop.ts';
import { checkSession } from './rules/session.ts';
import type { Values } from './shape.ts';

/** Reports what no single key can show: values that contradict each other or make no sense together. */
export function checkTogether(values: Values, report: Report): void {
  checkAirPath(values, report);
  checkCoolantLoop(values, report);
  checkSession(values, report);
}
