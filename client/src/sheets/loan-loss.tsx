/** What breaks when a loan falls away, whom to tell, and what could stand in for it. */

import { lossOf, lostText, standInsOf } from '@enfilade/shared/loan-loss';
import type { LentRecord } from '@enfilade/shared/loans';
import { pieceIdOf } from '@enfilade/shared/schema';
import { sizeText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { StandInPicture } from './stand-in-picture.tsx';
import { shortDay, todayIso } from './waiting-days.ts';

export function LoanLoss({ record: { objectId, title } }: { readonly record: Pick<LentRecord, 'objectId' | 'title'> }) {
  const { judgements } = useShow();
  const today = todayIso();
  const loss = lossOf(judgements, objectId, today);
  const { places, carried, vignettes, proposals, days, tell } = loss;
  const breaks = [
    ...places.map(({ on, pieces }) => `${on} loses ${pieces === 1 ? 'it' : `${pieces} pieces`}`),
    ...vignettes.map(lostText),
    ...(carried.length === 0
      ? []
      : [`${carried.slice(0, 3).join(', ')}${carried.length > 3 ? ' and more' : ''} stand on it`]),
    ...proposals.map((name) => `the proposal ${name} moves it`),
  ];
  return (
    <section className="loan-loss" aria-label={`If ${title} falls away`}>
      <div>
        <h3 className="b">What breaks</h3>
        {breaks.length === 0 ? <p>Nothing: it is in no place, no vignette and no proposal.</p> : null}
        <ul>
          {breaks.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        {days.length === 0 ? null : (
          <p className="t1">
            Still to come: {days.map(({ what, day }) => `${what} ${shortDay(day, today)}`).join(', ')}.
          </p>
        )}
        <p className="t1">
          {tell.length === 0 ? 'Nobody has signed or asked about it.' : `To be told: ${tell.join(', ')}.`}
        </p>
      </div>
      <StandIns objectId={objectId} />
    </section>
  );
}

function StandIns({ objectId }: { readonly objectId: string }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const found = standInsOf(judgements, objectId);
  return (
    <div>
      <h3 className="b">What could stand in</h3>
      {found.length === 0 ? <p>Nothing on the checklist that has no place is of its type or near its size.</p> : null}
      <ol className="stand-ins">
        {found.map(({ id, reasons }) => {
          const object = judgements.documents.get('objects', id);
          const size = judgements.sizeOf(pieceIdOf(id, 1));
          if (object === undefined) return null;
          return (
            <li key={id}>
              <StandInPicture pieceId={pieceIdOf(id, 1)} />
              <span>
                <span className="serif">{object.title || object.number}</span>
                <span className="t1">
                  {object.number}
                  {size?.known ? `, ${sizeText(size.heightMm, size.widthMm, null, unit)}` : ''}
                </span>
                <span className="t1">{reasons.join('; ')}</span>
              </span>
            </li>
          );
        })}
      </ol>
      <p className="t1">By size first, then by the part it played, then by whether it can be had. You decide.</p>
    </div>
  );
}
