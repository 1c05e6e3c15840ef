import { afterEach, beforeEach, vi } from 'vitest';

/** What a command has printed in the test that runs, kept from the terminal. */
export interface Said {
  out: string;
  err: string;
}

/** Listens to the console and to both streams in every test of a file. */
export function listen(): Said {
  const said: Said = { out: '', err: '' };
  const line = (words: readonly unknown[]): string => `${words.join(' ')}\n`;
  beforeEach(() => {
    said.out = '';
    said.err = '';
    vi.spyOn(console, 'log').mockImplementation((...words) => {
      said.out += line(words);
    });
    vi.spyOn(console, 'error').mockImplementation((...words) => {
      said.err += line(words);
    });
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
      said.out += text;
      return true;
    });
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      said.err += text;
      return true;
    });
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });
  return said;
}
