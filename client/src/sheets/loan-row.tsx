/** One lent record: its status, what is due, what goes against its terms; its terms and what its loss breaks on a press. */
import { correctLoan, dueOf, hasFallen, isCountedOn, type LentRecord } from '@enfilade/shared/loans';
import { LOAN_STATUSES, type LoanStatus } from '@enfilade/shared/schema';
import { onName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { LoanFields } from '../cards/loan-fields.tsx';
import { usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { viewOfSurface } from '../talk/remark-words.ts';
import { go, THE_HANG } from '../view-address.ts';
import { LoanLoss } from './loan-loss.tsx';
import { daysBetween, shortDay, todayIso } from './waiting-days.ts';

export function LoanRow({ record }: { readonly record: LentRecord }) {
  const show = useShow();
  const { objectId, title, number, loan, placed } = record;
  const [open, setOpen] = useState<'terms' | 'loss' | null>(null);
  const frozen = !show.may('checklist');
  const fallen = hasFallen(loan.status);
  const toggle = (part: 'terms' | 'loss'): void => setOpen(open === part ? null : part);
  const lossShown = (fallen && placed.length > 0) || open === 'loss';
  return (
    <li className="loan-row" aria-label={title}>
      <span className="t1 loan-number">{number}</span>
      <div className="loan-what">
        <span className="loan-title">{title}</span>
        <Whereabouts record={record} />
        <Breaches record={record} />
      </div>
      <div className="loan-status">
        {frozen ? (
          <span className="b">{loan.status}</span>
        ) : (
          <select
            className="record-kind"
            aria-label={`Status of ${title}`}
            value={loan.status}
            onChange={(event) =>
              act(
                show,
                correctLoan(objectId, { status: event.target.value as LoanStatus }),
                `${title}: ${event.target.value}`,
              )
            }
          >
            {LOAN_STATUSES.map((status) => (
              <option key={status} value={status}>
                {status}
              </option>
            ))}
          </select>
        )}
        <Due record={record} />
      </div>
      <div className="loan-commands">
        <button
          type="button"
          aria-expanded={open === 'terms'}
          aria-label={`terms of ${title}`}
          onClick={() => toggle('terms')}
        >
          terms
        </button>
        {lossShown && open !== 'loss' ? null : (
          <button
            type="button"
            aria-expanded={open === 'loss'}
            aria-label={`if it falls away: ${title}`}
            onClick={() => toggle('loss')}
          >
            if it falls away
          </button>
        )}
      </div>
      {open === 'terms' ? (
        <div className="loan-terms">
          <LoanFields objectId={objectId} />
        </div>
      ) : null}
      {lossShown ? <LoanLoss record={record} /> : null}
    </li>
  );
}

function Whereabouts({ record: { placed, pieces } }: { readonly record: LentRecord }) {
  const { judgements } = useShow();
  const [first] = placed;
  const at = first === undefined ? null : judgements.where.placeOf(first);
  if (first === undefined || at === null) return <span className="t1">unplaced</span>;
  const surface = judgements.where.surfaceOf(first);
  const there = (): void => {
    go((surface === null ? null : viewOfSurface(surface)) ?? { sheet: 'layout' }, THE_HANG);
    choose([first]);
  };
  const more = pieces.length > 1 ? `, ${placed.length} of ${pieces.length} pieces placed` : '';
  return (
    <span className="t1">
      <button type="button" onClick={there}>
        {onName(judgements, at[0])}
      </button>
      {more}
    </span>
  );
}

function Breaches({ record: { placed } }: { readonly record: LentRecord }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const words = { length: (mm: number) => `${lengthText(mm, unit)} ${unit}`, weight: (kg: number) => `${kg} kg` };
  const told = new Map<string, number>();
  for (const pieceId of placed) {
    for (const { kind, what } of judgements.cautionsOf(pieceId, words)) {
      if (kind === 'loan terms' || kind === 'loan dates') told.set(what, (told.get(what) ?? 0) + 1);
    }
  }
  return [...told].map(([what, count]) => (
    <span key={what} className="loan-breach">
      <CautionMark />
      <span>
        {what}
        {count > 1 ? ` (${count} pieces)` : ''}
      </span>
    </span>
  ));
}

function Due({ record: { loan } }: { readonly record: LentRecord }) {
  const { judgements } = useShow();
  const due = dueOf(judgements, loan);
  if (due === null) return null;
  const today = todayIso();
  const late = due.day !== null && daysBetween(today, due.day) < 0;
  return (
    <span className="t1">
      {due.what}
      {due.day === null ? ', no day set' : ` by ${shortDay(due.day, today)}`}
      {late && !isCountedOn(loan.status) ? <b className="b"> overdue</b> : null}
    </span>
  );
}
