/** Above the ranked paints: what is asked for each work, how light the paint may be, and what it stands beside. */
import type { DeskWork } from '@enfilade/shared/colour-desk';
import { useId } from 'react';
import { useStore } from '../selection.ts';
import { forgetWishes, wishes, wishFor, wishForAll } from './wishes.ts';

export type Beside = 'any' | 'unlike' | 'near';

export interface Limits {
  /** L*, as typed. */
  readonly from: string;
  readonly to: string;
  readonly beside: Beside;
}

export const NO_LIMITS: Limits = { from: '0', to: '100', beside: 'any' };

interface FormProps {
  /** What hangs on the wall. */
  readonly here: readonly DeskWork[];
  readonly limits: Limits;
  readonly setLimits: (limits: Limits) => void;
  readonly leftOut: string | null;
}

export function WishForm({ here, limits, setLimits, leftOut }: FormProps) {
  const id = useId();
  const asked = [...useStore(wishes).values()];
  const wrong = lightnessFrom(limits) === null;
  return (
    <div className="wish-form t1">
      {asked.length === 0 ? (
        <p>
          Open a cell and press <i className="it">let it carry</i> or <i className="it">keep it quiet</i>; or
        </p>
      ) : (
        <ul aria-label="Asked of the paint">
          {asked.map(({ work, wish }) => (
            <li key={work.id}>
              {wish === 'let carry' ? 'let' : 'keep'} <i className="it">{work.title}</i>{' '}
              {wish === 'let carry' ? 'carry' : 'quiet'}{' '}
              <button
                type="button"
                aria-label={`drop what is asked for ${work.title}`}
                onClick={() => wishFor(work, wish)}
              >
                drop
              </button>
            </li>
          ))}
        </ul>
      )}
      {here.length === 0 ? null : (
        <button type="button" onClick={() => wishForAll(here, 'let carry')}>
          let all that hangs here carry
        </button>
      )}
      {asked.length === 0 ? null : (
        <button type="button" onClick={forgetWishes}>
          ask nothing
        </button>
      )}
      <span className="wish-limits">
        <label htmlFor={`${id}-from`}>L* from</label>
        <input
          id={`${id}-from`}
          inputMode="decimal"
          value={limits.from}
          aria-invalid={wrong}
          onChange={(event) => setLimits({ ...limits, from: event.target.value })}
        />
        <label htmlFor={`${id}-to`}>to</label>
        <input
          id={`${id}-to`}
          inputMode="decimal"
          value={limits.to}
          aria-invalid={wrong}
          onChange={(event) => setLimits({ ...limits, to: event.target.value })}
        />
      </span>
      <span>
        <label htmlFor={`${id}-beside`}>beside its next walls </label>
        <select
          id={`${id}-beside`}
          value={limits.beside}
          onChange={(event) => setLimits({ ...limits, beside: event.target.value as Beside })}
        >
          <option value="any">any paint</option>
          <option value="unlike">plainly another paint</option>
          <option value="near">a paint near theirs</option>
        </select>
      </span>
      {wrong ? (
        <p role="alert" className="b">
          L* lies between 0 and 100, the lower first.
        </p>
      ) : leftOut === null ? null : (
        <p>{leftOut}</p>
      )}
    </div>
  );
}

/** The range typed, or null where it is none. */
export function lightnessFrom({ from, to }: Limits): { readonly from: number; readonly to: number } | null {
  const read = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.')));
  const [low, high] = [read(from), read(to)];
  return low >= 0 && high <= 100 && low <= high ? { from: low, to: high } : null;
}
