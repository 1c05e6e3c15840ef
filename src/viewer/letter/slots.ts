import { isList, isObject, type JsonObject, type JsonValue, type QuestionSlot } from '../../sim/index.ts';

/** A quantity of the question that is a number of the file; which change is asked about is none. */
export type NumberSlot = Exclude<QuestionSlot, 'change'>;

/**
 * Places in the file of the question's quantities. Pulls, their length and the rest between them have one only where
 * one pull is repeated, with one rest after it.
 */
export function slotPaths(document: JsonObject): Partial<Record<NumberSlot, string>> {
  return { limit: 'limit.chargeTemperature', ...sessionPaths(document.cycle), day: 'ambient.temperature' };
}

function sessionPaths(cycle: JsonValue | undefined): Partial<Record<NumberSlot, string>> {
  const items = isList(cycle) ? cycle : [];
  const index = items.findIndex((item) => isObject(item) && 'repeat' in item);
  const phases = isObject(items[index]) ? items[index].phases : undefined;
  if (!isList(phases)) return {};
  const placesOf = (arePulls: boolean) =>
    phases.flatMap((phase, k) =>
      isObject(phase) && (phase.kind === 'pull') === arePulls ? [`cycle.${index}.phases.${k}.duration`] : [],
    );
  const [pulls, rests] = [placesOf(true), placesOf(false)];
  if (pulls.length !== 1) return {};
  return { pulls: `cycle.${index}.repeat`, length: pulls[0], ...(rests.length === 1 && { rest: rests[0] }) };
}
