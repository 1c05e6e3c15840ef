import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect } from 'vitest';
import { atRest } from './acts.ts';
import { it } from './fixture.ts';

const ASSETS = new URL('../../dist/viewer/assets/', import.meta.url);
const scripts = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
const packed = (name: string): number => gzipSync(readFileSync(new URL(name, ASSETS))).length;

describe('the built page', () => {
  it('loads under 400 kB of gzipped script at first, worker and picture included', async ({ newPage }) => {
    const page = await newPage();
    const fetched = new Set<string>();
    page.on('request', (request) => {
      const name = request.url().split('/').at(-1) ?? '';
      if (scripts.includes(name)) fetched.add(name);
    });
    await page.goto('/');
    await atRest(page);
    // Nothing more is asked for by itself.
    await page.waitForTimeout(1000);
    const names = [...fetched];
    for (const part of ['sim.worker', 'index', 'solid-painter'])
      expect(
        names.some((name) => name.startsWith(part)),
        part,
      ).toBe(true);
    expect(names.some((name) => name.startsWith('letter-page'))).toBe(false);
    expect(names.reduce((sum, name) => sum + packed(name), 0)).toBeLessThan(400_000);
  });

  it('has no inline script or style, and the simulator on the page makes no functions from strings', () => {
    const html = readFileSync(new URL('../../dist/viewer/index.html', import.meta.url), 'utf8');
    expect(html).toContain("script-src 'self'");
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son[a-z]+=/);
    for (const name of scripts) {
      expect(readFileSync(new URL(name, ASSETS), 'utf8'), name).not.toMatch(/new Function\(|\beval\(/);
    }
  });
});
