/** A paint of the deck as it was measured, and what its measurement comes to. User data of the wrong shape is left out. */
import type { Adaptation } from '@enfilade/colour/adaptation';
import type { LabD65 } from '@enfilade/colour/lab';
import { isInScreenGamut, type Lrv, type MeasuredPaint, paintColourOf, paintLrvOf } from '@enfilade/colour/paints';
import type { Spectrum } from '@enfilade/colour/spectrum';
import { type MeasuredLab, whitePointFrom, whitePointName } from '@enfilade/colour/white-points';
import type { Paint } from './schema.ts';

/** The transform used where none is named: CAT16, as CIE 248:2022 has it. */
export const HOUSE_ADAPTATION: Adaptation = 'CAT16';

/** The record of a measured paint, whole: what it has not is said too, so that it can stand in place of another's facts. */
export function paintFrom(measured: MeasuredPaint, by: Adaptation = HOUSE_ADAPTATION): Omit<Paint, 'order'> {
  const { lab } = paintColourOf(measured, by);
  const adapted = measured.lab !== undefined && whitePointName(measured.lab) !== 'D65/2°';
  return {
    name: measured.name,
    code: measured.code ?? '',
    lab,
    measuredLab: measured.lab ?? null,
    adaptedBy: adapted ? by : null,
    reflectance: measured.reflectance ?? null,
    lrv: measured.lrv ?? null,
    sheen: measured.sheen ?? '',
    measured: measured.measured ?? '',
    instrument: measured.instrument ?? '',
  };
}

/** The paint as measured: its L*a*b* always with a white point, D65/2° where the record says none. */
export function measuredPaintOf(paint: Paint): MeasuredPaint {
  const { code, sheen, measured, instrument, lrv } = paint;
  const reflectance = wellFormedSpectrum(paint.reflectance);
  const own = wellFormedLab(paint.measuredLab);
  const shown: MeasuredLab = { ...paint.lab, illuminant: 'D65', observer: '2°' };
  const lab = own ?? (reflectance === null ? shown : null);
  return {
    name: paint.name,
    ...(code ? { code } : {}),
    ...(lab === null ? {} : { lab }),
    ...(reflectance === null ? {} : { reflectance }),
    ...(typeof lrv === 'number' && lrv >= 0 && lrv <= 100 ? { lrv } : {}),
    ...(sheen ? { sheen } : {}),
    ...(measured ? { measured } : {}),
    ...(instrument ? { instrument } : {}),
  };
}

/** 'reflectance, 380 to 730 nm by 10, seen in D65/2°', 'L*a*b* under D50/2°, adapted to D65/2° by CAT16'. */
export function howMeasured(paint: Paint): string {
  const { reflectance, lab } = measuredPaintOf(paint);
  if (reflectance !== undefined) {
    const { startNm, stepNm, values } = reflectance;
    return `reflectance, ${startNm} to ${startNm + (values.length - 1) * stepNm} nm by ${stepNm}`;
  }
  const white = lab === undefined ? 'D65/2°' : whitePointName(lab);
  if (white === 'D65/2°') return 'L*a*b* under D65/2°';
  return `L*a*b* under ${white}, adapted to D65/2° by ${paint.adaptedBy ?? HOUSE_ADAPTATION}`;
}

const summed = new WeakMap<Spectrum, Lrv>();

/** The light reflectance value, stated, summed or from lightness; of a reflectance it is summed once. */
export function paintRecordLrvOf(paint: Paint): Lrv {
  const measured = measuredPaintOf(paint);
  const spectrum = measured.lrv === undefined ? measured.reflectance : undefined;
  if (spectrum === undefined) return paintLrvOf(measured);
  const lrv = summed.get(spectrum) ?? paintLrvOf(measured);
  summed.set(spectrum, lrv);
  return lrv;
}

/** The same as it is written beside a paint's name, a whole number. */
export function lrvText(paint: Paint): string {
  return String(Math.round(paintRecordLrvOf(paint).lrv));
}

/** What is said beside the patch of a colour that no sRGB screen shows; null for one it does. */
export function beyondScreenText(lab: LabD65): string | null {
  return isInScreenGamut(lab) ? null : 'beyond this screen: drawn as near as it can, in its lightness and hue';
}

/** The paint of the deck that a paint of a file is: of the same code where both have one, else of the same name. */
export function knownPaintOf(
  deck: ReadonlyMap<string, Paint>,
  { name, code }: Pick<MeasuredPaint, 'name' | 'code'>,
): string | null {
  const same = (a: string | undefined, b: string | undefined): boolean => plain(a) !== '' && plain(a) === plain(b);
  const all = [...deck].sort(([idA, a], [idB, b]) => (`${a.order} ${idA}` < `${b.order} ${idB}` ? -1 : 1));
  const byCode = all.find(([, paint]) => same(paint.code, code));
  const byName = all.find(([, paint]) => same(paint.name, name) && (plain(paint.code) === '' || plain(code) === ''));
  return (byCode ?? byName)?.[0] ?? null;
}

function plain(text: string | undefined): string {
  return (text ?? '').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

function wellFormedLab(lab: MeasuredLab | null | undefined): MeasuredLab | null {
  if (typeof lab !== 'object' || lab === null) return null;
  const { L, a, b, illuminant, observer } = lab;
  if (![L, a, b].every(Number.isFinite)) return null;
  const white = whitePointFrom(String(illuminant), String(observer));
  return white === null ? null : { L, a, b, ...white };
}

function wellFormedSpectrum(spectrum: Spectrum | null | undefined): Spectrum | null {
  if (typeof spectrum !== 'object' || spectrum === null) return null;
  const { startNm, stepNm, values } = spectrum;
  const sound = Number.isFinite(startNm) && stepNm > 0 && Array.isArray(values) && values.length >= 6;
  return sound && values.every((value) => value >= 0 && value <= 1) ? spectrum : null;
}
