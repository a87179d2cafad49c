import { type Box, boxFormFactors, FACES, type Face, faceAreas } from '@enfilade/colour/box-form-factors';
import { lightOf } from '@enfilade/colour/lights';
import { lightOnFaces } from '@enfilade/colour/radiosity';
import { surfaceFromLab, surfaceOf } from '@enfilade/colour/seen';
import {
  BOUNCE_ASSUMPTIONS,
  type BounceFace,
  type BounceRoom,
  DIRECT_BY_SPOTS,
  wallBounceOf,
} from '@enfilade/colour/wall-bounce';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomOf } from './samples.ts';

const DYE_HOUSE: Box = { widthMm: 6000, depthMm: 6000, heightMm: 3600 };
const WHITE = surfaceFromLab({ L: 94, a: 0, b: 2 });
const GREY = surfaceOf({ name: 'grey', reflectance: { startNm: 380, stepNm: 10, values: Array(36).fill(0.5) } });
const OAK = surfaceFromLab({ L: 55, a: 8, b: 22 });
const RED = surfaceFromLab({ L: 42, a: 55, b: 35 });

function roomOf(box: Box, painted: Partial<Record<Face, Partial<BounceFace>>>): BounceRoom {
  const faces = FACES.map((face) => [
    face,
    { surface: face === 'floor' ? OAK : WHITE, direct: DIRECT_BY_SPOTS[face], ...painted[face] },
  ]);
  return { ...box, ...(Object.fromEntries(faces) as Record<Face, BounceFace>) };
}

const size = fc.double({ min: 1500, max: 20_000, noNaN: true });
const box = fc.record({ widthMm: size, depthMm: size, heightMm: size });

describe('form factors of a box', () => {
  test('reference: a cube’s faces: 0.19982 straight across, 0.20004 next to each other (Howell, C-11 and C-14)', () => {
    const [foot = []] = boxFormFactors({ widthMm: 1, depthMm: 1, heightMm: 1 });
    expect(foot[FACES.indexOf('head')]).toBeCloseTo(0.19982, 5);
    for (const face of ['left', 'right', 'floor', 'ceiling'] as const)
      expect(foot[FACES.indexOf(face)]).toBeCloseTo(0.20004, 5);
  });

  test('law: what a face sends out all arrives, and areas times factors are the same both ways', () => {
    fc.assert(
      fc.property(box, (sizes) => {
        const [factors, areas] = [boxFormFactors(sizes), faceAreas(sizes)];
        for (const [i, row] of factors.entries()) {
          expect(row.reduce((sum, factor) => sum + factor, 0)).toBeCloseTo(1, 9);
          for (const [j, factor] of row.entries()) {
            expect(factor).toBeGreaterThanOrEqual(0);
            expect(areas[i]! * factor).toBeCloseTo(areas[j]! * factors[j]![i]!, 0);
          }
        }
      }),
      { numRuns: 200, seed: 81 },
    );
    expect(() => boxFormFactors({ widthMm: 0, depthMm: 1, heightMm: 1 })).toThrow(RangeError);
  });

  test('reference: 200,000 seeded rays from the foot wall of the Dye House meet each face as often as the factors say', () => {
    const random = randomOf(82);
    const { widthMm: w, depthMm: d, heightMm: h } = DYE_HOUSE;
    const met: Record<Face, number> = { foot: 0, right: 0, head: 0, left: 0, floor: 0, ceiling: 0 };
    const rays = 200_000;
    for (let i = 0; i < rays; i++) {
      const [x, z] = [random() * w, random() * h];
      // Lambert's cosine: uniform in the disc, raised to the half sphere.
      const [radius, turn] = [Math.sqrt(random()), random() * 2 * Math.PI];
      const [dx, dz] = [radius * Math.cos(turn), radius * Math.sin(turn)];
      const dy = Math.sqrt(Math.max(1e-12, 1 - radius * radius));
      const steps: [number, Face][] = [
        [d / dy, 'head'],
        dx > 0 ? [(w - x) / dx, 'right'] : [-x / dx, 'left'],
        dz > 0 ? [(h - z) / dz, 'ceiling'] : [-z / dz, 'floor'],
      ];
      met[steps.reduce((first, step) => (step[0] < first[0] ? step : first))[1]]++;
    }
    const [foot = []] = boxFormFactors(DYE_HOUSE);
    for (const [j, face] of FACES.entries()) expect(Math.abs(met[face] / rays - foot[j]!)).toBeLessThan(0.004);
  });
});

describe('light in a diffuse room', () => {
  test('reference: a room all of one reflectance ρ, evenly lit, has E / (1 − ρ) on every face (the sphere’s formula)', () => {
    for (const rho of [0, 0.2, 0.5, 0.9]) {
      const on = lightOnFaces(
        boxFormFactors(DYE_HOUSE),
        FACES.map(() => [rho]),
        FACES.map(() => 1),
      );
      for (const face of on) expect(face[0]).toBeCloseTo(1 / (1 - rho), 6);
    }
  });

  test('law: what lamps give is what the faces take in, for any box, paints and lamps', () => {
    const share = fc.double({ min: 0, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(
        box,
        fc.array(share, { minLength: 6, maxLength: 6 }),
        fc.array(share, { minLength: 6, maxLength: 6 }),
        (sizes, rho, direct) => {
          const areas = faceAreas(sizes);
          const on = lightOnFaces(
            boxFormFactors(sizes),
            rho.map((value) => [value]),
            direct,
          );
          const given = areas.reduce((sum, area, i) => sum + area * direct[i]!, 0);
          const taken = areas.reduce((sum, area, i) => sum + area * on[i]![0]! * (1 - rho[i]!), 0);
          expect(Math.abs(taken - given)).toBeLessThanOrEqual(1e-6 * Math.max(1, given));
        },
      ),
      { numRuns: 200, seed: 83 },
    );
  });
});

describe('wall bounce', () => {
  const on = (room: BounceRoom, face: Face, lamp: Parameters<typeof lightOf>[0] = 'LED-B2') =>
    wallBounceOf(room, lightOf(lamp)).find((each) => each.face === face)!;

  test('law: grey rooms throw no tint, under any lamp', () => {
    const grey = roomOf(DYE_HOUSE, Object.fromEntries(FACES.map((face) => [face, { surface: GREY }])));
    for (const lamp of ['D65', 'LED-B1', 'F11'] as const) {
      for (const bounce of wallBounceOf(grey, lightOf(lamp))) {
        expect(bounce.deltaE).toBeLessThan(1e-6);
        expect(bounce).toMatchObject({ from: [], words: 'stays white' });
        expect(bounce.share).toBeGreaterThan(0.2);
      }
    }
  });

  test('story: one red wall: mounts on its neighbours redden, its own less, and the red wall is named', () => {
    const room = roomOf(DYE_HOUSE, { left: { surface: RED } });
    const head = on(room, 'head');
    expect(head.mount.a).toBeGreaterThan(1);
    expect(head.from).toEqual(['left']);
    expect(head.words).toMatch(/red, most of it from the left wall$/);
    expect(on(room, 'left').deltaE).toBeLessThan(head.deltaE);
    const facing = on(roomOf(DYE_HOUSE, { left: { surface: RED }, right: { surface: RED } }), 'head');
    expect(facing.words).toMatch(/most of it from the right wall and the left wall$/);
    const allRed = Object.fromEntries(FACES.slice(0, 4).map((face) => [face, { surface: RED }]));
    expect(on(roomOf(DYE_HOUSE, allRed), 'head').words).toBe('turns clearly towards red, from all round');
  });

  test('law: more walls painted, or a narrower room, throw more; a doorway in the painted wall takes some away', () => {
    const one = on(roomOf(DYE_HOUSE, { left: { surface: RED } }), 'head').deltaE;
    const two = on(roomOf(DYE_HOUSE, { left: { surface: RED }, right: { surface: RED } }), 'head').deltaE;
    expect(two).toBeGreaterThan(one);
    const narrow = on(
      roomOf({ ...DYE_HOUSE, widthMm: 2400 }, { left: { surface: RED }, right: { surface: RED } }),
      'head',
    ).deltaE;
    expect(narrow).toBeGreaterThan(two);
    const open = on(roomOf(DYE_HOUSE, { left: { surface: RED, parts: [{ areaMm2: 6_000_000 }] } }), 'head').deltaE;
    expect(open).toBeLessThan(one);
    const panelled = on(
      roomOf(DYE_HOUSE, { left: { surface: RED, parts: [{ areaMm2: 6000 * 3600, surface: WHITE }] } }),
      'head',
    ).deltaE;
    expect(panelled).toBeCloseTo(on(roomOf(DYE_HOUSE, {}), 'head').deltaE, 9);
  });

  test('law: parts larger than their face are a programmer’s error; a colour no surface has is taken duller, not refused', () => {
    expect(() => wallBounceOf(roomOf(DYE_HOUSE, { head: { parts: [{ areaMm2: 1e9 }] } }), lightOf('D65'))).toThrow(
      RangeError,
    );
    const glow = surfaceFromLab({ L: 80, a: 110, b: 80 });
    expect(glow.basis).toBe('colour');
    expect(on(roomOf(DYE_HOUSE, { left: { surface: glow } }), 'head').mount.a).toBeGreaterThan(1);
  });

  test('law: what is taken for granted is said', () => {
    expect(BOUNCE_ASSUMPTIONS.every((sentence) => sentence.endsWith('.'))).toBe(true);
  });
});
