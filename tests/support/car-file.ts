import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { type Edits, shortDocument } from './short-session.ts';

const FOLDER = mkdtempSync(join(tmpdir(), 'soakbench-cars-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));
let written = 0;

/** Path of a new file with this scenario; it is gone after the tests of the file that asked for it. */
export function carFile(document: unknown): string {
  const path = join(FOLDER, `car-${written++}.json`);
  writeFileSync(path, JSON.stringify(document));
  return path;
}

/** The same with the short session and some values of it changed. */
export const shortFile = (edits: Edits = {}): string => carFile(shortDocument(edits));
