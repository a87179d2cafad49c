import { hardwareFrom } from '@enfilade/practice/hardware';
import { BLOCK_COUNT, BLOCKS_HUNG, CHECKLIST, pieceNamed, recordNamed } from '@enfilade/server/demo/checklist';
import { DECK, WALL_PAINTS } from '@enfilade/server/demo/deck';
import { toChecklistCsv } from '@enfilade/server/demo/files';
import { startingHang } from '@enfilade/server/demo/hang';
import { furtherPlaces, furtherRecords, LARGE_COUNT } from '@enfilade/server/demo/large';
import { FIXTURES, OPENINGS, ROOMS } from '@enfilade/server/demo/rooms';
import { carrierOf, type Place } from '@enfilade/shared/schema';
import { boxesToKeepClear, tooNearOf } from '@enfilade/space/boxes-to-keep-clear';
import { openingIssuesOf, openingsOn } from '@enfilade/space/openings';
import { roomIssuesOf, WALL_SIDES, wallLengthOf } from '@enfilade/space/room';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';

const hang = startingHang();
const pieceAt = (pieceId: string) => {
  const [id, n] = pieceId.split('#') as [string, string];
  return pieceNamed(id, Number(n));
};
const roomOf = (id: string) => ROOMS[id as keyof typeof ROOMS];
const walls = Object.keys(ROOMS).flatMap((room) => WALL_SIDES.map((side) => [room, side] as const));
const boxesOn = (surface: string) =>
  [...hang.places]
    .filter(([, [on]]) => on === surface)
    .map(([pieceId, [, xMm, yMm]]) => ({ pieceId, xMm, yMm, ...sizeOf(pieceId) }));
const sizeOf = (pieceId: string) => {
  const { widthMm, heightMm } = pieceAt(pieceId);
  return { widthMm, heightMm };
};
type Box = { xMm: number; yMm: number; widthMm: number; heightMm: number };
const overlap = (a: Box, b: Box) =>
  Math.abs(a.xMm - b.xMm) < (a.widthMm + b.widthMm) / 2 && Math.abs(a.yMm - b.yMm) < (a.heightMm + b.heightMm) / 2;

describe('the checklist of the scenario', () => {
  test('reference: counts of each kind (the scenario)', () => {
    const count = (type: string) => CHECKLIST.filter((record) => record.type === type).length;
    expect(CHECKLIST).toHaveLength(160);
    expect(recordNamed('block-1').count).toBe(BLOCK_COUNT);
    expect(recordNamed('plinth-1').count).toBe(4);
    expect(
      ['mould', 'level', 'lantern slide', 'pattern book', 'map', 'painting', 'flood mark', 'trap', 'clock dial'].map(
        count,
      ),
    ).toEqual([32, 12, 24, 8, 9, 11, 14, 6, 7]);
    expect(['mangle', 'shelf unit', 'bench', 'sluice gear', 'hanging', 'tile panel'].map(count)).toEqual([
      1, 1, 1, 1, 9, 18,
    ]);
    expect(count('vat')).toBeGreaterThan(1);
    const lenders = new Set(CHECKLIST.filter(({ source }) => source === 'loan').map(({ lender }) => lender));
    expect([...lenders].filter((lender) => lender.startsWith('Private'))).toHaveLength(3);
    expect(lenders.size).toBe(6);
    expect(Math.max(...CHECKLIST.filter(({ type }) => type === 'hanging').map(({ widthMm }) => widthMm))).toBe(3100);
  });

  test('law: numbers and ids are unique, sizes are above nothing', () => {
    expect(new Set(CHECKLIST.map(({ number }) => number)).size).toBe(CHECKLIST.length);
    expect(new Set(CHECKLIST.map(({ id }) => id)).size).toBe(CHECKLIST.length);
    for (const record of CHECKLIST)
      for (const piece of [record, ...(record.pieces ?? [])]) {
        expect(Math.min(piece.heightMm, piece.widthMm)).toBeGreaterThan(0);
      }
  });

  test('law: hardware as written is understood wherever something is written', () => {
    for (const { id, hardwareText } of CHECKLIST) {
      if (hardwareText !== '') expect({ id, ...hardwareFrom(hardwareText) }).toHaveProperty('kind');
    }
  });

  test('law: value, storage and contact stand in the private part and nowhere else', () => {
    for (const record of CHECKLIST) {
      const { private: kept, ...open } = record;
      const text = JSON.stringify(open);
      for (const secret of [kept.value, kept.storage, kept.contact]) {
        if (secret !== undefined && secret !== '') expect(text).not.toContain(secret);
      }
      expect(text).not.toMatch(/EUR|Store [A-D], bay/);
    }
    expect(JSON.stringify([...hang.places, hang.vignettes, ROOMS, DECK])).not.toMatch(/EUR|Store [A-D], bay/);
  });

  test('story: the CSV sent by the museum reads back row for row, with its cells over several lines', () => {
    const csv = toChecklistCsv();
    expect(csv.codePointAt(0)).toBe(0xfeff);
    const rows = Papa.parse<string[]>(csv.slice(1).trimEnd(), { delimiter: ';' }).data;
    expect(rows).toHaveLength(161);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([17]));
    expect(rows.filter((row) => row.some((cell) => cell.includes('\n'))).length).toBeGreaterThan(0);
    expect(rows[0]).toContain('Value');
  });
});

describe('the rooms', () => {
  test('law: rooms and openings can be drawn, doorways share one axis', () => {
    for (const room of Object.values(ROOMS)) expect(roomIssuesOf(room)).toEqual([]);
    const openings = Object.entries(OPENINGS).map(([id, opening]) => ({ id, ...opening }));
    expect(openingIssuesOf(openings, (id) => roomOf(id))).toEqual([]);
    const axes = openings
      .filter(({ kind }) => kind === 'doorway')
      .flatMap(({ widthMm, sides }) =>
        sides.map(({ surface, xMm }) => {
          const [room, side] = surface.split(':') as [string, string];
          return side === 'left' ? xMm + widthMm / 2 : (roomOf(room)?.depthMm ?? 0) - xMm - widthMm / 2;
        }),
      );
    expect(new Set(axes)).toEqual(new Set([1950]));
    expect(openings.filter(({ kind }) => kind === 'window')).toHaveLength(2);
  });

  test('law: every wall has a paint of the deck', () => {
    for (const [room, side] of walls) expect(DECK).toHaveProperty(WALL_PAINTS.get(`${room}:${side}`) ?? 'none');
  });
});

describe('the starting hang', () => {
  test.each(walls)('law: nothing overlaps on %s %s, all is inside it and clear of openings', (room, side) => {
    const surface = `${room}:${side}`;
    const shape = roomOf(room)!;
    const boxes = boxesOn(surface);
    const openings = openingsOn(
      surface,
      Object.entries(OPENINGS).map(([id, opening]) => ({ id, ...opening })),
      shape,
    );
    for (const [i, box] of boxes.entries()) {
      for (const other of [...boxes.slice(i + 1), ...openings])
        expect([box, other, overlap(box, other)].at(-1)).toBe(false);
      expect(box.xMm - box.widthMm / 2).toBeGreaterThanOrEqual(0);
      expect(box.xMm + box.widthMm / 2).toBeLessThanOrEqual(wallLengthOf(shape, side));
      expect(box.yMm - box.heightMm / 2).toBeGreaterThanOrEqual(0);
      expect(box.yMm + box.heightMm / 2).toBeLessThanOrEqual(shape.heightMm);
    }
    expect(boxes.length).toBeGreaterThan(0);
  });

  test('story: the one thing too near a fixture is the view by the thermostat, 23 cm where 30 are wanted', () => {
    const fixtures = Object.entries(FIXTURES).map(([id, fixture]) => ({ id, ...fixture }));
    const near = walls.flatMap(([room, side]) =>
      boxesOn(`${room}:${side}`).flatMap((box) =>
        tooNearOf(`${room}:${side}`, box, fixtures).map(({ kind, gapMm, clearMm }) => [
          box.pieceId,
          kind,
          gapMm,
          clearMm,
        ]),
      ),
    );
    expect(near).toEqual([['oil-1#1', 'thermostat', 230, 300]]);
    expect(boxesToKeepClear('dye:head', fixtures)).toHaveLength(3);
  });

  test('law: what stands on a carrier stands within its top or under the board above, apart from its neighbours', () => {
    const byBoard = new Map<string, Box[]>();
    for (const [pieceId, [on, xMm, yMm]] of hang.places) {
      const carrier = carrierOf(on);
      if (carrier === null) continue;
      expect(hang.places.has(carrier.pieceId)).toBe(true);
      const under = pieceAt(carrier.pieceId);
      const levels = recordNamed(carrier.pieceId.split('#')[0]!).levelsMm ?? [];
      const piece = pieceAt(pieceId);
      expect(carrier.level).toBeLessThan(levels.length);
      expect(xMm - piece.widthMm / 2).toBeGreaterThanOrEqual(0);
      expect(xMm + piece.widthMm / 2).toBeLessThanOrEqual(under.widthMm);
      expect(yMm - piece.depthMm / 2).toBeGreaterThanOrEqual(0);
      expect(yMm + piece.depthMm / 2).toBeLessThanOrEqual(under.depthMm);
      if (carrier.level > 0) expect(piece.heightMm).toBeLessThan(levels[carrier.level - 1]! - levels[carrier.level]!);
      const box = { xMm, yMm, widthMm: piece.widthMm, heightMm: piece.depthMm };
      for (const other of byBoard.get(on) ?? []) expect(overlap(box, other)).toBe(false);
      byBoard.set(on, [...(byBoard.get(on) ?? []), box]);
    }
    expect(byBoard.size).toBe(9);
  });

  test('law: what stands on a floor stands inside its room, apart from the rest', () => {
    for (const room of Object.keys(ROOMS)) {
      const shape = roomOf(room)!;
      const standing = [...hang.places]
        .filter(([, [on]]) => on === `${room}:floor`)
        .map(([pieceId, [, xMm, yMm, , turn]]) => {
          const { widthMm, depthMm } = pieceAt(pieceId);
          const across = turn % 18000 === 0;
          return { pieceId, xMm, yMm, widthMm: across ? widthMm : depthMm, heightMm: across ? depthMm : widthMm };
        });
      for (const [i, box] of standing.entries()) {
        for (const other of standing.slice(i + 1)) expect(overlap(box, other)).toBe(false);
        expect(box.xMm - box.widthMm / 2).toBeGreaterThanOrEqual(0);
        expect(box.xMm + box.widthMm / 2).toBeLessThanOrEqual(shape.widthMm);
        expect(box.yMm - box.heightMm / 2).toBeGreaterThanOrEqual(0);
        expect(box.yMm + box.heightMm / 2).toBeLessThanOrEqual(shape.depthMm);
      }
    }
  });

  test('story: forty-one blocks round the largest hanging; about 38 records wait', () => {
    const placed = new Set([...hang.places.keys()].map((pieceId) => pieceId.split('#')[0]));
    expect([...hang.places.keys()].filter((pieceId) => pieceId.startsWith('block-1#'))).toHaveLength(BLOCKS_HUNG);
    expect(CHECKLIST.filter(({ id }) => !placed.has(id))).toHaveLength(38);
    expect(hang.vignettes.map(({ name }) => name)).toEqual([
      'Sixty impressions',
      'High water',
      'Copper noon',
      'Two weathers',
    ]);
    for (const { focal, members } of hang.vignettes) {
      expect(members).toContain(focal);
      for (const pieceId of members) expect(hang.places.has(pieceId)).toBe(true);
    }
    const members = hang.vignettes.flatMap(({ members }) => members);
    expect(new Set(members).size).toBe(members.length);
  });

  test('reference: the marks of High water stand at the heights their records tell, above a floor 30 mm down', () => {
    const marks = [...hang.places].filter(([id, [on]]) => id.startsWith('mark-') && on === 'dye:right');
    expect(marks).toHaveLength(8);
    for (const [pieceId, [, , yMm]] of marks) {
      const told = /stood (\d+) cm/.exec(recordNamed(pieceId.split('#')[0]!).notes)?.[1];
      expect(yMm + 30).toBe(Number(told) * 10);
    }
  });

  test('law: the same show every time', () => {
    expect([...startingHang().places]).toEqual([...hang.places]);
  });
});

describe('the large show', () => {
  test('law: three thousand records with numbers of their own; what lies on the layout floor does not overlap', () => {
    const further = furtherRecords();
    expect(further.length + CHECKLIST.length).toBe(LARGE_COUNT);
    expect(new Set([...further, ...CHECKLIST].map(({ number }) => number)).size).toBe(LARGE_COUNT);
    expect(furtherRecords()).toEqual(further);
    const places: [string, Place][] = [...furtherPlaces(further)];
    const sizes = new Map(further.map((record) => [`${record.id}#1`, record]));
    const boxes = places.map(([pieceId, [, xMm, yMm]]) => ({
      xMm,
      yMm,
      widthMm: sizes.get(pieceId)!.widthMm,
      heightMm: sizes.get(pieceId)!.heightMm,
    }));
    let clashes = 0;
    for (const [i, box] of boxes.entries())
      for (const other of boxes.slice(i + 1, i + 400)) if (overlap(box, other)) clashes++;
    expect(clashes).toBe(0);
    for (const { private: kept, ...open } of further) expect(JSON.stringify(open)).not.toContain(kept.storage);
  });
});
