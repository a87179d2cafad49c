import { deltaE2000 } from '@enfilade/colour/differences';
import * as commands from '@enfilade/shared/commands';
import {
  beyondScreenText,
  howMeasured,
  knownPaintOf,
  measuredPaintOf,
  paintFrom,
  paintRecordLrvOf,
} from '@enfilade/shared/paint-records';
import type { Paint } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const flat = (share: number) => ({ startNm: 380, stepNm: 10, values: Array.from({ length: 36 }, () => share) });

describe('paints as measured', () => {
  test('reference: L*a*b* of a non-selective surface under D50 stays what it is under D65 (CIE 15: a* = b* = 0)', () => {
    const grey = paintFrom({ name: 'grey', lab: { L: 62, a: 0, b: 0, illuminant: 'D50', observer: '2°' } });
    expect(deltaE2000(grey.lab, { L: 62, a: 0, b: 0 })).toBeLessThan(1e-3);
    expect(grey).toMatchObject({ adaptedBy: 'CAT16', measuredLab: { L: 62, illuminant: 'D50' }, reflectance: null });
  });

  test('reference: a flat reflectance of 0.1842 is L* 50 and LRV 18.4 (CIE 15, BS 8493)', () => {
    const paint = paintFrom({ name: 'flat', reflectance: flat(0.1842) });
    expect(paint.lab.L).toBeCloseTo(50, 1);
    expect(paintRecordLrvOf({ ...paint, order: 'a0' })).toMatchObject({ basis: 'reflectance' });
    expect(paintRecordLrvOf({ ...paint, order: 'a0' }).lrv).toBeCloseTo(18.42, 2);
  });

  test('law: an older paint, with nothing but its colour, was measured under D65 for the 2° observer', () => {
    const old: Paint = { name: 'Weld', lab: { L: 80, a: -2, b: 60 }, order: 'a0' };
    expect(measuredPaintOf(old)).toEqual({
      name: 'Weld',
      lab: { L: 80, a: -2, b: 60, illuminant: 'D65', observer: '2°' },
    });
    expect(howMeasured(old)).toBe('L*a*b* under D65/2°');
    expect(paintFrom(measuredPaintOf(old)).lab).toEqual(old.lab);
  });

  test('law: how it was measured names the white point and the transform, or the wavelengths', () => {
    const d50 = paintFrom({ name: 'a', lab: { L: 50, a: 20, b: 30, illuminant: 'D50', observer: '2°' } });
    expect(howMeasured({ ...d50, order: 'a0' })).toBe('L*a*b* under D50/2°, adapted to D65/2° by CAT16');
    const spectral = paintFrom({ name: 'b', reflectance: flat(0.5) });
    expect(howMeasured({ ...spectral, order: 'a0' })).toBe('reflectance, 380 to 730 nm by 10');
  });

  test('law: facts of the wrong shape, from a broken client, are as if they were not there', () => {
    const broken = {
      name: 'x',
      lab: { L: 40, a: 1, b: 2 },
      order: 'a0',
      measuredLab: 'D50',
      reflectance: { values: 7 },
    };
    expect(measuredPaintOf(broken as never).lab).toMatchObject({ L: 40, illuminant: 'D65' });
    const over = { ...broken, measuredLab: null, reflectance: flat(1.2), lrv: 700 };
    expect(measuredPaintOf(over as never)).not.toHaveProperty('reflectance');
    expect(measuredPaintOf(over as never)).not.toHaveProperty('lrv');
  });

  test('reference: sRGB red is within the screen, a stronger red of its lightness beyond it (IEC 61966-2-1)', () => {
    expect(beyondScreenText({ L: 53.2, a: 79, b: 66 })).toBeNull();
    expect(beyondScreenText({ L: 53.23, a: 100, b: 84 })).toMatch(/^beyond this screen/);
  });

  test('story: a deck comes in with one undo; a paint that is known is corrected, all of its colour facts together', () => {
    const { documents, history } = sampleShow();
    const spectral = paintFrom({ name: 'Weld', reflectance: flat(0.4) });
    history.perform(commands.addPaints(documents, [{ id: 'weld', paint: spectral }]));
    expect(documents.get('deck', 'weld')?.reflectance).not.toBeNull();
    const come = commands.addPaints(documents, [
      {
        id: 'weld',
        paint: paintFrom({ name: 'Weld', lab: { L: 81, a: -3, b: 61, illuminant: 'D50', observer: '2°' } }),
      },
      { paint: paintFrom({ name: 'Bone', lab: { L: 86, a: 1, b: 14, illuminant: 'D65', observer: '2°' } }) },
      { paint: paintFrom({ name: 'Silt', lab: { L: 58, a: 2, b: 12, illuminant: 'D65', observer: '2°' } }) },
    ]);
    history.perform(come);
    expect(documents.get('deck', 'weld')).toMatchObject({ reflectance: null, measuredLab: { illuminant: 'D50' } });
    const [bone, silt] = come.ids.slice(1).map((id) => documents.get('deck', id)?.order ?? '');
    expect([documents.get('deck', 'weld')?.order ?? '', bone, silt]).toEqual(
      [documents.get('deck', 'weld')?.order ?? '', bone, silt].sort(),
    );
    history.undo();
    expect(documents.all('deck').size).toBe(2);
    expect(documents.get('deck', 'weld')).toMatchObject({ reflectance: { startNm: 380 } });
  });

  test('law: a paint is known by its code, or by its name where one of the two has no code', () => {
    const lab = { L: 50, a: 0, b: 0 };
    const deck = new Map<string, Paint>([
      ['one', { name: 'Weld', code: 'TP 101', lab, order: 'a1' }],
      ['two', { name: 'Silt', lab, order: 'a0' }],
    ]);
    expect(knownPaintOf(deck, { name: 'anything', code: 'tp101' })).toBe('one');
    expect(knownPaintOf(deck, { name: 'weld' })).toBe('one');
    expect(knownPaintOf(deck, { name: 'Weld', code: 'TP 999' })).toBeNull();
    expect(knownPaintOf(deck, { name: 'SILT', code: 'TP 999' })).toBe('two');
    expect(knownPaintOf(deck, { name: '', code: '' })).toBeNull();
  });
});
