import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const ASSETS = new URL('../../dist/viewer/assets/', import.meta.url);
const scripts = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
const packed = (name: string): number => gzipSync(readFileSync(new URL(name, ASSETS))).length;

describe('the built page', () => {
  it('is under 400 kB of gzipped script, worker and all that loads later included', () => {
    expect(scripts.some((name) => name.startsWith('sim.worker'))).toBe(true);
    expect(scripts.reduce((sum, name) => sum + packed(name), 0)).toBeLessThan(400_000);
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
