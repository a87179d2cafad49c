import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toParameter } from '@enfilade/server/database';
import { expect, onTestFinished, test } from 'vitest';
import { bundleForNode } from '../launch/bundle-for-node.mjs';

/** Runs a script in a process of its own, from inside the project so that its packages are found. */
async function ended(entry: string, ...args: string[]): Promise<{ status: number | null; printed: string }> {
  const folder = mkdtempSync(join(import.meta.dirname, '..', '.database-'));
  const data = mkdtempSync(join(tmpdir(), 'enfilade-'));
  onTestFinished(() => {
    for (const path of [folder, data]) rmSync(path, { recursive: true, force: true });
  });
  const bundle = await bundleForNode(join(import.meta.dirname, entry), folder);
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, join(data, 'a.sqlite'), ...args], {
    encoding: 'utf8',
  });
  return { status, printed: stdout + stderr };
}

test('law: whatever a query holds, the process lives, and what is bound comes back as it was (seed 20261125)', async () => {
  const { status, printed } = await ended('database-child.ts', '20261125');
  expect(printed).toMatch(/lived through \d{3,}/);
  expect(status).toBe(0);
});

test('law: a column takes texts, finite numbers and bytes; anything else is the programmer’s error', () => {
  expect(toParameter(true)).toBe(1);
  expect(toParameter(undefined)).toBeNull();
  expect(toParameter(2 ** 40)).toBe(2n ** 40n);
  expect(toParameter(0.5)).toBe(0.5);
  expect(toParameter(Uint8Array.of(1, 2, 3, 4).subarray(1, 3))).toEqual(Uint8Array.of(2, 3));
  expect(toParameter('a\0b')).toBe('a\uFFFDb');
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 2n ** 64n, {}, [], () => 1, Symbol('s')]) {
    expect(() => toParameter(value)).toThrow(RangeError);
  }
});
