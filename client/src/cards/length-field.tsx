/** A length on a card, in the person's unit. */
import { lengthFrom, lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { TypedField } from './typed-field.tsx';

/** One press of an arrow: a centimetre, or half an inch. */
const STEP_MM = { cm: 10, in: 12.7 } as const;

export interface LengthFieldProps {
  readonly label: string;
  readonly mm: number | null;
  /** Takes the typed length; answers what is wrong with it, or null. */
  readonly take: (mm: number) => string | null;
  /** Takes that there is none any more; without it an empty field is refused. */
  readonly clear?: () => string | null;
  /** What is said where there is none. */
  readonly absent?: string;
  readonly frozen?: boolean;
  readonly hint?: string;
  readonly first?: boolean;
  readonly stepper?: boolean;
  /** Least and most that can be, where that is known. */
  readonly leastMm?: number;
  readonly mostMm?: number;
}

export function LengthField(props: LengthFieldProps) {
  const { label, mm, take, clear, absent, frozen, hint, first, stepper, leastMm, mostMm } = props;
  const { unit } = usePreferences();
  const within = (typed: number): string | null => {
    if (leastMm !== undefined && typed < leastMm) return `at least ${lengthText(leastMm, unit)}`;
    if (mostMm !== undefined && typed > mostMm) return `at most ${lengthText(mostMm, unit)}`;
    return take(typed);
  };
  return (
    <TypedField
      label={label}
      text={mm === null ? null : lengthText(mm, unit)}
      unit={unit === 'cm' ? 'centimetres' : 'inches'}
      take={(text) => {
        if (text === '' && clear !== undefined) return clear();
        const read = lengthFrom(text, unit);
        return read.mm === undefined ? `'${text}' ${read.issue.what}` : within(read.mm);
      }}
      step={(by) => {
        if (mm !== null) within(mm + by * STEP_MM[unit]);
      }}
      {...(absent === undefined ? {} : { absent })}
      {...(frozen === undefined ? {} : { frozen })}
      {...(hint === undefined ? {} : { hint })}
      {...(first === undefined ? {} : { first })}
      {...(stepper === undefined ? {} : { stepper })}
    />
  );
}
