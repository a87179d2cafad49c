import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fillWithDemo } from '@enfilade/server/demo/fill';
import { startServer } from '@enfilade/server/server';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import * as Y from 'yjs';

/** Three small pictures stand for all: what is under test is the way into the log. */
const tints = ['#7a4a2a', '#2a6a5a', '#e0b040'];
const draw = async ({ heightMm }: { readonly heightMm: number }) =>
  sharp({ create: { width: 24, height: 24, channels: 4, background: tints[Math.round(heightMm) % 3] ?? '#808080' } })
    .png()
    .toBuffer();

describe('filling a new show', () => {
  test('story: a first start holds the demo, a second start finds it, nothing is filled twice', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'enfilade-demo-'));
    const lines: string[] = [];
    let server = await startServer({ port: 0, dataDirectory: folder });
    try {
      expect(await fillWithDemo(server, { draw, progress: (line) => lines.push(line) })).toBe(true);
      expect(server.sessions.documents.all('objects').size).toBe(160);
      expect(lines.at(-1)).toMatch(/160 records/);
      expect(await fillWithDemo(server, { draw })).toBe(false);
      const before = Y.encodeStateAsUpdate(server.sessions.get('hang').doc);
      await server.close();
      server = await startServer({ port: 0, dataDirectory: folder });
      expect(await fillWithDemo(server, { draw })).toBe(false);
      expect(server.sessions.documents.all('rooms').size).toBe(3);
      expect(server.sessions.documents.all('places').size).toBe(165);
      expect(Buffer.compare(Y.encodeStateAsUpdate(server.sessions.get('hang').doc), before)).toBe(0);
      expect(server.images.facts()).toHaveLength(3);
    } finally {
      await server.close();
      await rm(folder, { recursive: true, force: true });
    }
  });

  test('story: a start that was stopped half-way is made whole by the next', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'enfilade-demo-'));
    const server = await startServer({ port: 0, dataDirectory: folder });
    try {
      let drawn = 0;
      const failing = async (pictured: { readonly heightMm: number }) => {
        drawn += 1;
        if (drawn > 30) throw new Error('the power went');
        return draw(pictured);
      };
      await expect(fillWithDemo(server, { draw: failing })).rejects.toThrow('the power went');
      expect(server.sessions.documents.all('rooms').size).toBe(0);
      expect(await fillWithDemo(server, { draw })).toBe(true);
      expect(server.sessions.documents.all('objects').size).toBe(160);
    } finally {
      await server.close();
      await rm(folder, { recursive: true, force: true });
    }
  });
});
