/** The hang the show starts from, as plain facts: places, paints by wall (deck.ts), four vignettes. */
import { halo } from '@enfilade/arrangement/halo';
import type { Place } from '@enfilade/shared/schema';
import { BLOCKS_HUNG, FLOODS, pieceNamed, recordNamed } from './checklist.ts';
import { between, diceFrom } from './drawing/ink.ts';

export interface DemoVignette {
  readonly id: string;
  readonly name: string;
  readonly intent: string;
  readonly focal: string;
  readonly members: readonly string[];
}

export interface DemoHang {
  readonly places: ReadonlyMap<string, Place>;
  readonly vignettes: readonly DemoVignette[];
}

/** Clockwise from above, so that the front of what stands against a left (north) wall looks into the room. */
const FRONT_TO_RIGHT = 27000;

const WEIR_RISING = 'hanging-1#1';
const VALLEY = 'oil-1#1';

type Put = (id: string, on: string, xMm: number, yMm: number, turn?: number) => string;

function wheelRoom(put: Put): void {
  put('hanging-4', 'wheel:head', 1250, 1650);
  put('tile-10', 'wheel:head', 2750, 1500);
  put('tile-1', 'wheel:head', 4200, 1500);
  put('tile-15', 'wheel:head', 5650, 1500);
  put('map-4', 'wheel:head', 6750, 1500);
  put('map-6', 'wheel:head', 7700, 1500);
  put('tile-3', 'wheel:left', 700, 1500);
  put('hanging-7', 'wheel:left', 4700, 1500);
  put('oil-3', 'wheel:right', 800, 1500);
  put('oil-6', 'wheel:right', 2100, 1500);
  for (const k of [8, 9, 10]) put(`mark-${k + 1}`, 'wheel:right', 3130, (FLOODS[k]?.[1] ?? 0) * 10);
  put('oil-9', 'wheel:right', 5780, 1500);
  put('oil-8', 'wheel:foot', 1400, 1500);
  put('tile-11', 'wheel:foot', 2650, 1500);
  put('hanging-8', 'wheel:foot', 6000, 1600);
  put('tile-7', 'wheel:foot', 7400, 1500);
  put('mangle-1', 'wheel:floor', 2000, 4300);
  put('vat-1', 'wheel:floor', 5500, 4700);
  put('vat-2', 'wheel:floor', 6900, 4500);
  put('vat-3', 'wheel:floor', 6250, 3350);
  put('trap-4', 'wheel:floor', 3400, 5500);
}

function countingRoom(put: Put): void {
  put('tile-6', 'counting:left', 700, 1500);
  put('dial-4', 'counting:left', 4150, 1600);
  put('dial-1', 'counting:left', 3370, 1880);
  put('dial-3', 'counting:left', 3390, 1330);
  put('dial-2', 'counting:left', 5010, 1300);
  put('dial-5', 'counting:left', 4930, 1860);
  for (let i = 0; i < 18; i++)
    put(`slide-${i + 1}`, 'counting:head', 480 + (i % 6) * 150, 1650 - Math.floor(i / 6) * 150);
  put('oil-4', 'counting:head', 2330, 1500);
  for (let i = 0; i < 9; i++) put(`level-${i + 1}`, 'counting:head', 3650, 1020 + i * 120);
  put('map-7', 'counting:head', 5100, 1500);
  put('tile-17', 'counting:right', 1200, 1500);
  put('oil-11', 'counting:right', 2700, 1500);
  put('tile-18', 'counting:right', 4200, 1500);
  put('hanging-5', 'counting:foot', 1400, 1600);
  put('tile-9', 'counting:foot', 2900, 1500);
  put('tile-8', 'counting:foot', 3900, 1500);
  put('book-3', 'counting:foot', 4700, 1400);
  put('book-4', 'counting:foot', 5330, 1400);
  put('book-5', 'counting:foot', 5870, 1400);
  put('tile-14', 'counting:foot', 6640, 1500);
  for (const [plinth, book, x] of [
    [3, 'book-1', 2400],
    [4, 'book-2', 4800],
  ] as const) {
    put(`plinth-1#${plinth}`, 'counting:floor', x, 3700);
    put(book, `carrier:plinth-1#${plinth}/0`, 250, 250);
  }
}

/** Flood maps with the marks at the heights the river reached, above a floor that lies 30 mm below the level plane. */
function highWater(put: Put): DemoVignette {
  const floorMm = -30;
  const members = [
    put('map-1', 'dye:right', 700, 1810),
    put('map-2', 'dye:right', 1720, 1760),
    put('map-3', 'dye:right', 2740, 1800),
  ];
  const lefts = [300, 700, 1120, 1500, 1900, 2320, 2720, 3060];
  for (const [i, left] of lefts.entries()) {
    members.push(put(`mark-${i + 1}`, 'dye:right', left + 140, (FLOODS[i]?.[1] ?? 0) * 10 + floorMm));
  }
  return {
    id: 'high-water',
    name: 'High water',
    intent:
      'The maps say where the river went; the marks, at their true heights above the floor, say how far up you it came.',
    focal: members[1] as string,
    members,
  };
}

/** Moulds massed on four levels of the shelf unit and hung on the wall above it. */
function copperNoon(put: Put): DemoVignette {
  const dice = diceFrom(2026);
  const members = [put('shelf-1', 'dye:floor', 220, 4400, FRONT_TO_RIGHT)];
  const rows: readonly (readonly number[])[] = [
    [1, 2, 3, 4, 5],
    [6, 7, 8, 9, 10],
    [11, 12, 13, 14, 15],
    [16, 17, 18, 19],
  ];
  for (const [level, row] of rows.entries()) {
    const pitch = 2100 / row.length;
    for (const [i, k] of row.entries()) {
      members.push(
        put(`mould-${k}`, `carrier:shelf-1#1/${level}`, 50 + pitch * (i + 0.5) + between(dice, -45, 45), 200),
      );
    }
  }
  for (let i = 0; i < 8; i++) {
    const low = i % 2 === 0;
    const x = 3470 + Math.floor(i / 2) * 560 + (low ? 0 : 280);
    members.push(
      put(`mould-${21 + i}`, 'dye:left', x + between(dice, -40, 40), (low ? 2580 : 3010) + between(dice, -40, 60)),
    );
  }
  return {
    id: 'copper-noon',
    name: 'Copper noon',
    intent: 'A kitchen’s worth of copper, massed as it was kept, and a few let loose above it.',
    focal: 'mould-21#1',
    members,
  };
}

/** A hanging beside an oil view in the same greens. */
function twoWeathers(put: Put): DemoVignette {
  const members = [put('hanging-6', 'dye:foot', 3300, 1700), put('oil-10', 'dye:foot', 5050, 1500)];
  return {
    id: 'two-weathers',
    name: 'Two weathers',
    intent:
      'The same meadow, the same rain: one painted after it, one woven from it, a hundred and seventy years apart.',
    focal: members[0] as string,
    members,
  };
}

/** Forty-one blocks hung freely round the largest hanging. */
function sixtyImpressions(put: Put, places: ReadonlyMap<string, Place>): DemoVignette {
  put('hanging-1', 'dye:head', 2330, 1680);
  const hung = Array.from({ length: BLOCKS_HUNG }, (_, i) => pieceNamed('block-1', i + 1));
  const focal = places.get(WEIR_RISING);
  const found = halo({
    surface: { leftMm: 80, rightMm: 4480, bottomMm: 330, topMm: 3450 },
    focal: { xMm: focal?.[1] ?? 0, yMm: focal?.[2] ?? 0, ...sizeOf('hanging-1') },
    pieces: hung.map(({ widthMm, heightMm }) => ({ widthMm, heightMm })),
    // The socket at the left, with its margin.
    keepClear: [{ xMm: 520, yMm: 300, widthMm: 280, heightMm: 280 }],
    gapMm: 55,
    focalGapMm: 75,
    roominess: 1.2,
    looseness: 0.35,
    across: 1.1,
    seed: 22,
  });
  const members = [WEIR_RISING];
  for (const [i, at] of found.places.entries()) {
    if (at !== null) members.push(put(`block-1#${i + 1}`, 'dye:head', at.xMm, at.yMm));
  }
  return {
    id: 'sixty-impressions',
    name: 'Sixty impressions',
    intent: 'Pear-wood printing blocks hung freely round Weir, rising: small patterns answer one large one.',
    focal: WEIR_RISING,
    members,
  };
}

function sizeOf(id: string): { widthMm: number; heightMm: number } {
  const { widthMm, heightMm } = recordNamed(id);
  return { widthMm, heightMm };
}

/** The starting hang; the same every time. */
export function startingHang(): DemoHang {
  const places = new Map<string, Place>();
  const put: Put = (id, on, xMm, yMm, turn = 0) => {
    const pieceId = id.includes('#') ? id : `${id}#1`;
    recordNamed(pieceId.slice(0, pieceId.indexOf('#')));
    if (places.has(pieceId)) throw new RangeError(`'${pieceId}' is placed twice`);
    places.set(pieceId, [on, Math.round(xMm), Math.round(yMm), 0, turn]);
    return pieceId;
  };
  const impressions = sixtyImpressions(put, places);
  // In no vignette yet: the view that the deep green swallows, 23 cm from a thermostat that wants 30, over a bench.
  places.set(VALLEY, ['dye:head', 5130, 1500, 0, 0]);
  put('bench-1', 'dye:floor', 5220, 5790);
  put('trap-1', 'carrier:bench-1#1/0', 220, 190);
  put('oil-2', 'dye:right', 5370, 1500);
  put('tile-4', 'dye:left', 640, 1460);
  put('plinth-1#1', 'dye:floor', 2725, 3275);
  put('trap-2', 'carrier:plinth-1#1/0', 250, 250);
  put('plinth-1#2', 'dye:floor', 3525, 3550);
  put('trap-3', 'carrier:plinth-1#2/0', 250, 250);
  put('sluice-1', 'dye:floor', 4770, 3130);
  const vignettes = [impressions, highWater(put), copperNoon(put), twoWeathers(put)];
  wheelRoom(put);
  countingRoom(put);
  return { places, vignettes };
}
