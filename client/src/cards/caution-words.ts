/** How cautions word their figures for this reader. */
import type { CautionWords } from '@enfilade/practice/caution';
import { lengthText } from '@enfilade/space/lengths';
import type { Unit } from '../preferences.ts';

export function cautionWordsIn(unit: Unit): CautionWords {
  return {
    length: (mm) => `${lengthText(mm, unit)} ${unit}`,
    weight: (kg) => `${Number(kg.toFixed(1))} kg`,
  };
}
