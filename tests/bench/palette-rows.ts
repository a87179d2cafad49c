import { deltaE2000 } from '@enfilade/colour/differences';
import type { Pixels } from '@enfilade/colour/histogram';
import type { LabD65 } from '@enfilade/colour/lab';
import { paletteOf } from '@enfilade/colour/palette';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import { recordNamed } from '@enfilade/server/demo/checklist';
import { pictureOf } from '@enfilade/server/demo/drawing/picture';
import quantize from 'quantize';
import sharp from 'sharp';

// One of each kind and a second of the richest; PICTURES=a.jpg:b.png names others, to see that these are not favoured.
const NAMED = ['oil-1', 'oil-4', 'map-1', 'hanging-1', 'hanging-4', 'tile-1', 'slide-1', 'mould-1', 'book-1', 'dial-1'];
const ROUNDS = 25;

async function pixelsOf(named: string): Promise<Pixels> {
  const drawn = named.includes('.')
    ? sharp(named).resize(256, 256, { fit: 'inside' })
    : sharp(Buffer.from(pictureOf(recordNamed(named), 0, 256).svg));
  const { data, info } = await drawn.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { data: new Uint8ClampedArray(data), width: info.width, height: info.height };
}

function triplesOf({ data }: Pixels): [number, number, number][] {
  const triples: [number, number, number][] = [];
  for (let at = 0; at < data.length; at += 4) {
    if (data[at + 3]! >= 128) triples.push([data[at]!, data[at + 1]!, data[at + 2]!]);
  }
  return triples;
}

function errorOf(triples: readonly [number, number, number][], palette: readonly LabD65[]): number {
  let sum = 0;
  for (const [r, g, b] of triples) {
    const pixel = labD65FromSrgb(r, g, b);
    sum += Math.min(...palette.map((colour) => deltaE2000(pixel, colour)));
  }
  return sum / triples.length;
}

function msOf(job: () => void): number {
  const before = process.cpuUsage();
  job();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Six colours of ten demo pictures at 256 px, beside quantize (MMCQ) on the same pixels. */
export async function paletteRows() {
  const named = process.env.PICTURES?.split(':') ?? NAMED;
  const pictures = await Promise.all(named.map(pixelsOf));
  // Made beforehand: the peer takes its pixels so, and is not charged for it.
  const triples = pictures.map(triplesOf);
  const theirs = triples.map((pixels) =>
    quantize(pixels, 6)
      .palette()
      .map(([r, g, b]) => labD65FromSrgb(r, g, b)),
  );
  const ours = pictures.map((picture) => paletteOf(picture).map(({ lab }) => lab));
  const errors = pictures.map((_, i) => ({
    ours: errorOf(triples[i]!, ours[i]!),
    peer: errorOf(triples[i]!, theirs[i]!),
  }));
  const times: { ours: number[]; peer: number[]; again: number[] } = { ours: [], peer: [], again: [] };
  for (let round = 0; round <= ROUNDS; round++) {
    const ms = {
      ours: msOf(() => pictures.map((picture) => paletteOf(picture))),
      peer: msOf(() => triples.map((pixels) => quantize(pixels, 6).palette())),
      again: msOf(() => triples.map((pixels) => quantize(pixels, 6).palette())),
    };
    // The first rounds warm up.
    if (round > 1) for (const way of ['ours', 'peer', 'again'] as const) times[way].push(ms[way] / pictures.length);
  }
  const median = (values: number[]) => values.sort((p, q) => p - q)[values.length >> 1]!;
  const [oursMs, peerMs, againMs] = [median(times.ours), median(times.peer), median(times.again)];
  const [oursError, peerError] = [mean(errors.map((e) => e.ours)), mean(errors.map((e) => e.peer))];
  return [
    ...errors.map((e, i) => ({
      row: `palette of ${named[i]!.replace(/.*\//, '')}: mean ΔE00 to its pixels`,
      ours: e.ours,
      peer: e.peer,
      ratio: e.ours / e.peer,
      unit: 'ΔE00',
    })),
    {
      row: 'palettes: mean of the ten',
      ours: oursError,
      peer: peerError,
      ratio: oursError / peerError,
      unit: 'ΔE00',
      gate: '≤ 0.75',
    },
    { row: 'palettes: CPU a picture', ours: oursMs, peer: peerMs, ratio: oursMs / peerMs, unit: 'ms', gate: '≤ 1' },
    {
      row: 'palettes: null test, the peer against itself, CPU',
      ours: againMs,
      peer: peerMs,
      ratio: againMs / peerMs,
      unit: 'ms',
      gate: '1',
    },
  ];
}
