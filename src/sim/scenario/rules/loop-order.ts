import { LOOP_PARTS, type LoopItem, type LoopPart, PART_WORDS } from '../config/loop.ts';
import type { Report } from '../issue.ts';
import { loopOf, partsOf } from '../loop.ts';
import { GROUPS, lineAfter, type Values } from '../shape.ts';

/** The ring of parts: each there and once, the way closed, and a line said after each. */
export function checkLoopOrder(values: Values, report: Report): void {
  const loop = loopOf(values);
  const parts = partsOf(loop);
  const isThere = (part: LoopPart): boolean => values[part] !== undefined;

  const fail = (path: string, message: string, found: string, expected: string): void =>
    report({ severity: 'error', path, message, found, expected });

  for (const part of LOOP_PARTS) {
    const count = parts.filter((each) => each === part).length;
    const title = GROUPS[part].title;
    if (count > 1) fail('loop', `The ${title} stands ${count} times in the loop.`, `${count} times`, 'once');
    if (count > 0 && !isThere(part)) {
      fail('loop', `The loop names the ${title}, but the group ${part} is missing.`, `no ${part}`, `the group ${part}`);
    }
    if (count === 0 && isThere(part)) {
      const message = `The loop does not say where the ${title} stands: the coolant would never reach it.`;
      fail('loop', message, `no ${part}`, `a loop with "${part}" in it`);
    }
    checkLine(values, part, count > 0, report);
  }
  checkWays(values, loop, report);
  for (const part of ['core', 'reservoir'] as const) {
    if (!parts.includes(part) || loop.includes(part)) continue;
    const message = `The ${GROUPS[part].title} stands in one of two ways beside each other; all coolant must come through it.`;
    fail('loop', message, `${part} in a way`, `${part} by itself`);
  }
}

function checkLine({ lines }: Values, part: LoopPart, isInLoop: boolean, report: Report): void {
  const key = lineAfter(part);
  const path = `lines.${key}`;
  const isLine = lines[key] !== undefined;
  if (isLine === isInLoop) return;
  const title = GROUPS[part].title;
  const message = isLine
    ? `There is no ${title} in the loop for this line to leave.`
    : `Segments of ${key} are missing: no way on from the ${title}. [] bolts it to the next part.`;
  const [found, expected] = isLine ? ['a line', 'no such line'] : ['nothing', 'a line, or []'];
  report({ severity: 'error', path, message, found, expected });
}

function checkWays({ lines }: Values, loop: readonly LoopItem[], report: Report): void {
  const pairs = loop.filter((item) => typeof item !== 'string').length;
  if (pairs > 2) {
    const message = `The loop divides ${pairs} times; up to two pairs of ways are computed.`;
    report({ severity: 'error', path: 'loop', message, found: `${pairs} pairs`, expected: 'two at most' });
  }
  (['ways', 'secondWays'] as const).forEach((place, k) => {
    const key = lineAfter(place);
    if (lines[key] === undefined || pairs > k) return;
    const message = `There are no ${PART_WORDS[place]} in the loop for this line to leave.`;
    report({ severity: 'error', path: `lines.${key}`, message, found: 'a line', expected: 'no such line' });
  });
}
