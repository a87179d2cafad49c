import { labFromXyz } from '@enfilade/colour/cielab';
import { deltaE2000 } from '@enfilade/colour/differences';
import { lightOf } from '@enfilade/colour/lights';
import { isInScreenGamut, paintColourOf } from '@enfilade/colour/paints';
import { reflectanceOnGrid } from '@enfilade/colour/spectrum';
import { whiteOf, xyzOf } from '@enfilade/colour/tristimulus';
import { DECK } from '@enfilade/server/demo/deck';
import { inventedReflectance } from '@enfilade/server/demo/reflectances';
import { measuredPaintOf } from '@enfilade/shared/paint-records';
import type { Paint } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';

const paints = Object.entries(DECK).map(([id, paint]) => ({ id, ...paint, order: id }) as Paint & { id: string });
const spectral = paints.filter(({ reflectance }) => reflectance);

describe('the demo deck', () => {
  test('law: 60 paints or more, 20 of them by reflectance, each with its own name and code', () => {
    expect(paints.length).toBeGreaterThanOrEqual(60);
    expect(spectral.length).toBeGreaterThanOrEqual(20);
    expect(new Set(paints.map(({ name }) => name)).size).toBe(paints.length);
    expect(new Set(paints.map(({ code }) => code)).size).toBe(paints.length);
  });

  test('law: what was measured comes to the colour shown, within 0.5', () => {
    for (const paint of paints) {
      const { lab } = paintColourOf(measuredPaintOf(paint));
      expect([paint.id, deltaE2000(lab, paint.lab) < 0.5]).toEqual([paint.id, true]);
    }
  });

  test('law: reflectances are 380 to 730 nm by 10, between 0.005 and 0.98, and smooth as a reader finds them', () => {
    for (const { id, reflectance } of spectral) {
      const { startNm, stepNm, values } = reflectance!;
      expect([id, startNm, stepNm, values.length]).toEqual([id, 380, 10, 36]);
      expect([id, Math.min(...values) > 0.005, Math.max(...values) < 0.98]).toEqual([id, true, true]);
      const bends = values.slice(2).map((value, i) => Math.abs(value - 2 * values[i + 1]! + values[i]!));
      expect([id, Math.max(...bends) < 0.06]).toEqual([id, true]);
    }
  });

  test('law: built again it is the same; what no such pigment can be is refused', () => {
    const { lab, reflectance } = DECK.saffron!;
    expect(inventedReflectance(lab, 'yellow')).toEqual(reflectance);
    expect(() => inventedReflectance({ L: 50, a: 120, b: -120 }, 'red')).toThrow(RangeError);
  });

  test('story: some are beyond the screen, and some were read under D50 and adapted by a named transform', () => {
    const beyond = paints.filter(({ lab }) => !isInScreenGamut(lab));
    expect(beyond.length).toBeGreaterThanOrEqual(3);
    expect(beyond.length).toBeLessThan(15);
    const adapted = paints.filter(({ measuredLab }) => measuredLab?.illuminant === 'D50');
    expect(adapted.length).toBeGreaterThanOrEqual(5);
    for (const { adaptedBy } of adapted) expect(adaptedBy).toBe('CAT16');
  });

  test('story: lead pipe and pewter are one grey by day and two under tungsten', () => {
    const under = (id: string, light: 'D65' | 'A') => {
      const lamp = lightOf(light);
      const reflectance = reflectanceOnGrid(DECK[id]!.reflectance!);
      const [L, a, b] = labFromXyz(xyzOf(reflectance, lamp, '2°'), whiteOf(lamp, '2°'));
      return { L, a, b };
    };
    expect(deltaE2000(under('lead-pipe', 'D65'), under('pewter', 'D65'))).toBeLessThan(0.5);
    expect(deltaE2000(under('lead-pipe', 'A'), under('pewter', 'A'))).toBeGreaterThan(2);
  });
});
