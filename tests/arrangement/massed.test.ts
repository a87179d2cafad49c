import type { MassCandidate, MassTask } from '@enfilade/arrangement/mass-task';
import { MASS_WAYS, massed } from '@enfilade/arrangement/massed';
import { massedLevels } from '@enfilade/arrangement/massed-levels';
import { seeded } from '@enfilade/arrangement/seeded';
import { seenShares } from '@enfilade/arrangement/seen-from-front';
import { describe, expect, test } from 'vitest';

/** A level and 3–40 things of unequal sizes, some raised, some under a shelf above. */
function levelOf(seed: number): MassTask {
  const random = seeded(seed * 31 + 7);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random());
  return {
    widthMm: between(500, 2600),
    depthMm: between(180, 1000),
    things: Array.from({ length: between(3, 40) }, () => ({
      widthMm: between(30, 220),
      depthMm: between(30, 200),
      heightMm: 30 + between(0, 400) * random(),
    })),
    gapMm: between(0, 40),
    edgeMm: between(0, 50),
    ...(random() < 0.5 ? { riserMm: between(50, 400) } : {}),
    ...(random() < 0.3 ? { clearHeightMm: between(250, 600) } : {}),
  };
}

/** Broken rules, by millimetre columns and brute force: it shares no code with the engine. */
function brokenMass(task: MassTask, { places }: Pick<MassCandidate, 'places'>): string[] {
  const broken: string[] = [];
  const at = places.flatMap((place, i) => (place ? [{ ...place, ...task.things[i]!, i }] : []));
  for (const one of at) {
    if (![one.xMm, one.yMm, one.liftMm].every(Number.isInteger)) broken.push(`${one.i} is not on whole mm`);
    if (one.xMm - one.widthMm / 2 < task.edgeMm || one.xMm + one.widthMm / 2 > task.widthMm - task.edgeMm)
      broken.push(`${one.i} over the side`);
    if (one.yMm - one.depthMm / 2 < task.edgeMm || one.yMm + one.depthMm / 2 > task.depthMm - task.edgeMm)
      broken.push(`${one.i} over the front or back`);
    if (one.liftMm > (task.riserMm ?? 0)) broken.push(`${one.i} raised too high`);
    if (one.liftMm + one.heightMm > (task.clearHeightMm ?? Infinity)) broken.push(`${one.i} touches above`);
    for (const other of at) {
      if (other.i >= one.i) continue;
      const across = Math.abs(one.xMm - other.xMm) - (one.widthMm + other.widthMm) / 2;
      const deep = Math.abs(one.yMm - other.yMm) - (one.depthMm + other.depthMm) / 2;
      if (Math.max(across, deep) < task.gapMm) broken.push(`${one.i} too near ${other.i}`);
    }
    let seen = 0;
    const columns = 80;
    for (let c = 0; c < columns; c++) {
      const x = one.xMm - one.widthMm / 2 + ((c + 0.5) * one.widthMm) / columns;
      const over = at.filter(
        (o) => o.yMm - o.depthMm / 2 < one.yMm - one.depthMm / 2 && Math.abs(x - o.xMm) < o.widthMm / 2,
      );
      for (let r = 0; r < 20; r++) {
        const y = one.liftMm + ((r + 0.5) * one.heightMm) / 20;
        if (!over.some((o) => y > o.liftMm && y < o.liftMm + o.heightMm)) seen++;
      }
    }
    // The raster may err by a row and two columns.
    if (seen / (20 * columns) < 1 / 3 - 0.09) broken.push(`${one.i} is hidden`);
  }
  return broken;
}

/** Few where every change is checked, many in `npm run soak`. */
const LEVELS = Number(process.env.LAW_WALLS ?? 30);

describe('a massed table', () => {
  test(`law: on ${LEVELS} random levels nothing is hidden, too near, over the edge or too high`, () => {
    let stood = 0;
    let all = 0;
    for (let seed = 1; seed <= LEVELS; seed++) {
      const task = levelOf(seed);
      for (const candidate of massed(task)) {
        expect(brokenMass(task, candidate), `${candidate.name} on level ${seed}`).toEqual([]);
        all += task.things.length;
        stood += task.things.length - candidate.unplaced.length;
      }
    }
    expect(stood / all).toBeGreaterThan(0.5);
  }, 600_000);

  test('law: the checker itself sees each kind of breach', () => {
    const task = { ...levelOf(4), clearHeightMm: 700, riserMm: 100, gapMm: 20, edgeMm: 20 };
    const { places } = massed(task)[0]!;
    const first = places.findIndex((at) => at !== null);
    const second = places.findIndex((at, i) => at !== null && i > first);
    const moved = (over: object) =>
      brokenMass(task, { places: places.map((at, i) => (i === first ? { ...at!, ...over } : at)) }).join();
    expect(moved({ xMm: 0 })).toContain('over the side');
    expect(moved({ yMm: 0 })).toContain('over the front');
    expect(moved({ liftMm: 690 })).toMatch(/raised too high.*touches above/);
    expect(moved({ xMm: places[second]!.xMm, yMm: places[second]!.yMm })).toContain('too near');
    const hidden = { ...task, things: [100, 300].map((heightMm) => ({ widthMm: 100, depthMm: 100, heightMm })) };
    const behind = [500, 100].map((yMm) => ({ xMm: 300, yMm, liftMm: 0 }));
    expect(brokenMass({ ...hidden, widthMm: 900, depthMm: 900 }, { places: behind })).toEqual(['0 is hidden']);
  });

  test('story: thirty like jugs stand on risers, ten to a row, none hidden; without risers most stay behind', () => {
    const things = Array.from({ length: 30 }, () => ({ widthMm: 130, depthMm: 130, heightMm: 240 }));
    const task = { widthMm: 2000, depthMm: 800, things, gapMm: 20, edgeMm: 30 };
    const [raised] = massed({ ...task, riserMm: 400 });
    expect(raised!.unplaced).toEqual([]);
    expect(raised!.measures.leastSeen).toBeGreaterThanOrEqual(1 / 3);
    expect(raised!.reasons).toContainEqual(expect.objectContaining({ kind: 'risers' }));
    expect(massed(task)[0]!.unplaced.length).toBeGreaterThan(5);
  });

  test('law: the ways differ in what is seen: the slope leans, the peak is tallest near the middle', () => {
    const random = seeded(3);
    const things = Array.from({ length: 14 }, () => ({ widthMm: 110, depthMm: 110, heightMm: 80 + 300 * random() }));
    const [rows, peak, slope] = massed({ widthMm: 1900, depthMm: 700, things, gapMm: 25, edgeMm: 40 });
    expect([rows, peak, slope].map((one) => one!.name)).toEqual([
      'rows, tall at the back',
      'peak',
      'slope with one apart',
    ]);
    const tallest = things.map(({ heightMm }) => heightMm).indexOf(Math.max(...things.map(({ heightMm }) => heightMm)));
    expect(Math.abs(peak!.places[tallest]!.xMm - 950)).toBeLessThan(150);
    expect(Math.abs(slope!.measures.balanceX)).toBeGreaterThan(Math.abs(peak!.measures.balanceX) + 0.1);
    expect(rows!.measures.outline.widthMm).toBeGreaterThan(peak!.measures.outline.widthMm);
  });

  test('reference: practice section 3 (common practice): glass stands 20 mm from glass or more, things to the square metre', () => {
    const things = Array.from({ length: 8 }, () => ({ widthMm: 80, depthMm: 80, heightMm: 200 }));
    const [rows] = massed({ widthMm: 1000, depthMm: 500, things, gapMm: 20, edgeMm: 30 });
    expect(rows!.measures.perSquareMetre).toBe((8 - rows!.unplaced.length) / 0.5);
    expect(rows!.measures.meanGapMm).toBeGreaterThanOrEqual(20);
  });

  test('law: a bad level is the programmer’s error and named', () => {
    expect(() => massed({ ...levelOf(1), gapMm: -1 })).toThrow(/gapMm is -1/);
    expect(() => massed({ ...levelOf(1), things: [{ widthMm: 1, depthMm: 0, heightMm: 1 }] })).toThrow(/depthMm is 0/);
    expect(massed({ ...levelOf(1), things: [] }).map(({ places }) => places)).toEqual([[]]);
  });
});

describe('seen from the front', () => {
  test('reference: halves and quarters, by hand (no source)', () => {
    const at = (leftMm: number, rightMm: number, frontMm: number, topMm: number, bottomMm = 0) => {
      return { leftMm, rightMm, frontMm, bottomMm, topMm };
    };
    expect(seenShares([at(0, 100, 500, 200), at(0, 100, 100, 100)])).toEqual([0.5, 1]);
    expect(seenShares([at(0, 100, 500, 200), at(50, 150, 100, 100)])).toEqual([0.75, 1]);
    expect(seenShares([at(0, 100, 500, 200), at(0, 100, 300, 100), at(0, 50, 100, 150)])[0]).toBe(1 - 0.5 - 0.125);
    expect(seenShares([at(0, 100, 500, 200), at(0, 100, 100, 200, 100), at(0, 100, 200, 150, 50)])[0]).toBe(0.25);
  });
});

describe('on several levels of one carrier', () => {
  test('law: each thing stands once at most, no level breaks a rule, and none is too high for its level', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { things } = levelOf(seed);
      const levels = [1, 2, 3].map((k) => {
        const { things: _, ...level } = levelOf(seed * 3 + k);
        return level;
      });
      const massed = massedLevels('peak', levels, things);
      const stood = massed.flatMap((level) => level.things);
      expect(new Set(stood).size, `seed ${seed}`).toBe(stood.length);
      for (const [k, level] of massed.entries()) {
        const task: MassTask = { ...levels[k]!, things: level.things.map((i) => things[i]!) };
        expect(brokenMass(task, level.candidate), `seed ${seed}, level ${k}`).toEqual([]);
        expect(level.candidate.places.every((at) => at !== null)).toBe(true);
      }
    }
  });

  test('story: twenty-seven moulds on five shelves all stand, about as many on each, whatever odd depth they have', () => {
    const things = Array.from({ length: 27 }, (_, i) => {
      const acrossMm = 171 + ((i * 37) % 120);
      return { widthMm: acrossMm, depthMm: acrossMm, heightMm: 160 + ((i * 53) % 110) };
    });
    const shelf = { widthMm: 2200, depthMm: 400, gapMm: 20, edgeMm: 25, clearHeightMm: 430 };
    for (const name of MASS_WAYS) {
      const counts = massedLevels(name, [shelf, shelf, shelf, shelf, shelf], things).map(
        (level) => level.things.length,
      );
      expect(counts.reduce((sum, n) => sum + n, 0)).toBe(27);
      expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(3);
    }
  });
});
