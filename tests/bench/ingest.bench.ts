/**
 * Bringing photographs in: all that is made of one (upright, its ground left out, three sizes, colours, outline) against
 * what sharp alone takes to decode it and to write the same three sizes. CPU time; both go over the same files in turn.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CHECKLIST } from '@enfilade/server/demo/checklist';
import { pngOf } from '@enfilade/server/demo/files';
import { ingest } from '@enfilade/server/picture-ingest';
import { ATLAS_CELL_PX } from '@enfilade/shared/protocol';
import sharp from 'sharp';

export const name = 'ingest';

/** Different works, as often as makes the sum steady; 3,000 pictures are these many times over. */
const WORKS = 24;
const ROUNDS = 3;
const WARMING = 12;
/** A photograph as a museum's camera or a telephone of today gives it: 12 megapixels. */
const CAMERA = { width: 4000, height: 3000 };

async function photographs(folder: string): Promise<string[]> {
  const files: string[] = [];
  for (const [index, record] of CHECKLIST.filter((_, n) => n % 6 === 0)
    .slice(0, WORKS)
    .entries()) {
    const file = join(folder, `${index}.jpg`);
    const work = await sharp(await pngOf(record))
      .resize(CAMERA.width * 0.7, CAMERA.height * 0.7, { fit: 'inside' })
      .toBuffer();
    await sharp({ create: { ...CAMERA, channels: 3, background: { r: 196, g: 197, b: 196 } } })
      .composite([{ input: work }])
      .jpeg({ quality: 90 })
      .toFile(file);
    files.push(file);
  }
  return files;
}

async function bySharpAlone(file: string): Promise<void> {
  const { data, info } = await sharp(file)
    .autoOrient()
    .resize(1024, 1024, { fit: 'inside', withoutEnlargement: true })
    .toColourspace('srgb')
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const raw = { raw: { width: info.width, height: info.height, channels: info.channels } };
  const webp = { quality: 84, alphaQuality: 90, effort: 3 } as const;
  await sharp(data, raw).webp(webp).toBuffer();
  await sharp(data, raw).resize(256, 256, { fit: 'inside' }).webp(webp).toBuffer();
  await sharp(data, raw).resize(ATLAS_CELL_PX, ATLAS_CELL_PX, { fit: 'contain' }).raw().toBuffer();
}

/**
 * CPU milliseconds a picture, as in the midst of many: the engine throws compiled code away that rested through the
 * other's turn, and would be timed compiling it again, once in 24 pictures and not once in 3,000.
 */
async function cpuOf(files: readonly string[], take: (file: string) => Promise<unknown>): Promise<number> {
  for (const file of files.slice(0, WARMING)) await take(file);
  const before = process.cpuUsage();
  for (const file of files) await take(file);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / files.length;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

export async function run(): Promise<
  { row: string; ours: number; peer: number; ratio: number; unit: string; gate?: string }[]
> {
  const folder = mkdtempSync(join(tmpdir(), 'enfilade-ingest-'));
  try {
    const files = await photographs(folder);
    const [ours, peer, again]: [number[], number[], number[]] = [[], [], []];
    for (let round = 0; round < ROUNDS; round++) {
      peer.push(await cpuOf(files, bySharpAlone));
      ours.push(await cpuOf(files, (file) => ingest(file, file, 100e6)));
      again.push(await cpuOf(files, bySharpAlone));
    }
    const row = (text: string, mine: number, theirs: number, gate?: string) => ({
      row: text,
      ours: mine,
      peer: theirs,
      ratio: theirs / mine,
      unit: 'ms CPU',
      ...(gate === undefined ? {} : { gate }),
    });
    return [
      row('a photograph of 12 megapixels, of the demo’s works; sharp alone', median(ours), median(peer), '≥ 0.77'),
      row('  null: sharp alone against itself', median(again), median(peer)),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
