/** Cloth for a thing that is upholstered anew: what is chosen, and what is to be ordered of it, its repeats counted in. */
import { clothOf } from '@enfilade/practice/cloth';
import type { Treatment } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { type RecordProps, useCorrect } from './correcting.ts';
import { LengthField } from './length-field.tsx';

type Cloth = NonNullable<Treatment['cloth']>;

/** 54 in, what the charts are made for. */
const BEGUN: Cloth = { plainMm: 1000, verticalRepeatMm: 0, horizontalRepeatMm: 0, widthMm: 1372 };
const MOST_MM = 100_000;
const NARROWEST_MM = 100;

const LENGTHS = [
  ['Plain cloth it takes', 'plainMm', 0],
  ['Repeat along the cloth', 'verticalRepeatMm', 0],
  ['Repeat across it', 'horizontalRepeatMm', 0],
  ['Width of the cloth', 'widthMm', NARROWEST_MM],
] as const;

export function ClothFields({ pieceId, object, frozen }: RecordProps) {
  const { unit } = usePreferences();
  const correct = useCorrect(pieceId);
  const { before = '', after = '', cloth } = object.treatment ?? {};
  const set = (next: Cloth | undefined): string | null =>
    correct({ treatment: { before, after, ...(next === undefined ? {} : { cloth: next }) } }, 'cloth for it');
  if (cloth === undefined) {
    return frozen ? null : (
      <p>
        <button type="button" onClick={() => set(BEGUN)}>
          cloth for it…
        </button>
      </p>
    );
  }
  return (
    <>
      {LENGTHS.map(([label, field, leastMm]) => (
        <LengthField
          key={field}
          label={label}
          mm={cloth[field]}
          frozen={frozen}
          leastMm={leastMm}
          mostMm={MOST_MM}
          take={(mm) => set({ ...cloth, [field]: mm })}
        />
      ))}
      <p>{orderText(cloth, (mm) => `${lengthText(mm, unit)} ${unit}`)}</p>
      {frozen ? null : (
        <p>
          <button type="button" onClick={() => set(undefined)}>
            no cloth
          </button>
        </p>
      )}
    </>
  );
}

/** What in the record is no length orders nothing. */
function orderText(cloth: Cloth, length: (mm: number) => string): string {
  const { plainMm, verticalRepeatMm, horizontalRepeatMm, widthMm } = cloth;
  const figures = [plainMm, verticalRepeatMm, horizontalRepeatMm];
  if (!figures.every((mm) => mm >= 0 && mm <= MOST_MM) || !(widthMm >= NARROWEST_MM && widthMm <= MOST_MM)) {
    return 'Its lengths can’t be read: type them again.';
  }
  const { orderMm, upliftShare, beyondTable } = clothOf({
    plainMm,
    verticalRepeatMm,
    horizontalRepeatMm,
    clothWidthMm: widthMm,
  });
  const more = upliftShare === 0 ? '' : `, ${Math.round(upliftShare * 100)} % more for its repeats and width`;
  const beyond = beyondTable ? ' Its repeats or width are beyond the charts: ask the upholsterer.' : '';
  return `To order: ${length(orderMm)}${more}, in one dye lot (upholsterers’ charts, as read).${beyond}`;
}
