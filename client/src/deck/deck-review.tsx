/** A colour file looked through before anything is written: each line beside what was understood of it. */
import * as commands from '@enfilade/shared/commands';
import { useId, useMemo, useState } from 'react';
import { act } from '../cards/acting.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { optionsOf, paintsFromText } from './paint-file-reading.ts';
import { lacksWhite, paintsIn, placeOf, reviewOf, type Way } from './review-rows.ts';
import { ReviewTable } from './review-table.tsx';
import { WHITES, whiteFromName } from './typed-lab.ts';
import { elementFrom } from './xml-tree.ts';

export function DeckReview({
  file,
  text,
  leave,
}: {
  readonly file: string;
  readonly text: string;
  readonly leave: () => void;
}) {
  const show = useShow();
  const { documents } = show;
  const version = useRoots('deck');
  const id = useId();
  const [assumed, setAssumed] = useState('');
  const [ways, setWays] = useState<ReadonlyMap<string, Way>>(new Map());
  const asIs = useMemo(() => paintsFromText(text, optionsOf(file, null), elementFrom), [file, text]);
  const read = useMemo(
    () => (assumed === '' ? asIs : paintsFromText(text, optionsOf(file, whiteFromName(assumed)), elementFrom)),
    [asIs, assumed, file, text],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the deck
  const review = useMemo(() => reviewOf(read, file, documents.all('deck')), [read, file, documents, version]);
  const going = paintsIn(review.rows, ways);
  const count = (n: number): string => `${n} ${n === 1 ? 'paint' : 'paints'}`;
  const take = (): void => {
    if (act(show, commands.addPaints(documents, going), `${count(going.length)} brought in; one undo takes them back`))
      leave();
  };
  return (
    <div className="deck-page">
      <header className="deck-page-head">
        <h1>{file}</h1>
        <p className="cap">
          Read as {read.kind}: {count(review.rows.length)} understood
          {review.leftOut.length === 0
            ? ''
            : `, ${review.leftOut.length} ${review.leftOut.length === 1 ? 'thing' : 'things'} left out`}
          . Nothing is written until you bring them in.
        </p>
        <nav aria-label="What becomes of the file">
          <button
            type="button"
            className="act main"
            disabled={going.length === 0 || !show.may('checklist')}
            onClick={take}
          >
            Bring in {count(going.length)}
          </button>
          <button type="button" className="act" onClick={leave}>
            leave it
          </button>
        </nav>
      </header>
      {lacksWhite(asIs) ? (
        <p className="deck-review-white">
          <label htmlFor={`${id}-white`}>
            The file does not say under which illuminant and for which observer its L*a*b* was measured. It was
          </label>{' '}
          <select id={`${id}-white`} value={assumed} onChange={(event) => setAssumed(event.target.value)}>
            <option value="">not known: leave it out</option>
            {WHITES.map((white) => (
              <option key={white}>{white}</option>
            ))}
          </select>
        </p>
      ) : null}
      {review.leftOut.length === 0 ? null : (
        <section className="deck-review-out" aria-label="Left out">
          <h2>Left out</h2>
          <ul>
            {review.leftOut.map((issue) => {
              const { place, field } = placeOf(issue, file);
              return (
                <li key={`${issue.where} ${issue.what}`}>
                  <b className="b">{[place, field].filter(Boolean).join(', ') || file}</b> {issue.what}
                  {issue.value === '' ? null : <span className="deck-review-source"> {issue.value}</span>}
                </li>
              );
            })}
          </ul>
        </section>
      )}
      {review.rows.length === 0 ? null : (
        <ReviewTable
          rows={review.rows}
          file={file}
          ways={ways}
          choose={(where, way) => setWays(new Map(ways).set(where, way))}
        />
      )}
    </div>
  );
}
