import { closeSync, ftruncateSync, openSync, readSync, writeSync } from 'node:fs';
import type { SweepLine, SweepPlan } from '../sim/index.ts';

const CHUNK = 1 << 16;
const NEWLINE = 0x0a;

/** A file of lines, only ever added to, with the cases that it already holds. */
export interface SweepFile {
  readonly done: ReadonlySet<number>;
  /** In the hands of the system when this returns: a kill of the program loses nothing. */
  add(line: string): void;
  close(): void;
}

/** The file holds something else than lines of this sweep. */
export class SweepFileError extends Error {}

/**
 * Opens the file of a sweep, or makes it. A last line without its end was torn by a kill and is cut off.
 *
 * @param path - of the file
 * @param plan - the sweep that its lines must belong to
 * @param car - mark of the car that they must be of
 * @throws {SweepFileError} where a line is none of this sweep; the system's own where the file cannot be used
 */
export function openSweepFile(path: string, plan: SweepPlan, car: string): SweepFile {
  const file = openSync(path, 'a+');
  const done = new Set<number>();
  const torn = readLines(file, (text, number) => {
    const found = lineOf(text);
    if (found === undefined) throw new SweepFileError(`line ${number} is no line of a sweep.`);
    const isKnown = found.car === car && found.case < plan.count;
    if (!isKnown || JSON.stringify(found.changes) !== JSON.stringify(plan.changesOf(found.case))) {
      throw new SweepFileError(`line ${number} is of another car or another sweep. Name another file.`);
    }
    done.add(found.case);
  });
  if (torn.length > 0) ftruncateSync(file, torn.start);
  return {
    done,
    add: (line) => {
      writeSync(file, `${line}\n`);
    },
    close: () => closeSync(file),
  };
}

function lineOf(text: string): Pick<SweepLine, 'case' | 'car' | 'changes'> | undefined {
  try {
    const line = JSON.parse(text);
    return Number.isInteger(line?.case) && line.case >= 0 ? line : undefined;
  } catch {
    return undefined;
  }
}

/** Hands over each whole line, numbered from 1; returns what stands behind the last end of a line, in bytes. */
function readLines(file: number, take: (text: string, number: number) => void): { start: number; length: number } {
  const chunk = Buffer.alloc(CHUNK);
  let rest = Buffer.alloc(0);
  let place = 0;
  let number = 0;
  for (let size = readSync(file, chunk, 0, CHUNK, place); size > 0; size = readSync(file, chunk, 0, CHUNK, place)) {
    place += size;
    rest = Buffer.concat([rest, chunk.subarray(0, size)]);
    for (let end = rest.indexOf(NEWLINE); end >= 0; end = rest.indexOf(NEWLINE)) {
      number++;
      take(rest.toString('utf8', 0, end), number);
      rest = rest.subarray(end + 1);
    }
  }
  return { start: place - rest.length, length: rest.length };
}
