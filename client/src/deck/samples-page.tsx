/** Samples to order and post, as a sheet to print and as CSV; below it those on their way. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { SAMPLE_STATES, samplesByPaint } from '@enfilade/shared/samples';
import { dayText } from '../cards/day-text.ts';
import { download, fileNameOf } from '../sheets/download.ts';
import { PapersNav } from '../sheets/papers-nav.tsx';
import '../sheets/paper.css';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { namesOf } from './deck-words.ts';
import { SampleMark } from './sample-mark.tsx';
import { KIND_WORDS, sampleRows, toSamplesCsv } from './samples-list.ts';
import './samples.css';

export function SamplesPage() {
  const { documents, judgements } = useShow();
  useRoots('deck', 'samples', 'sampleWords', 'paints', 'rooms', 'settings');
  const rows = sampleRows(documents);
  const under = [...samplesByPaint(documents)]
    .flatMap(([paintId, standings]) => standings.map((standing) => ({ paintId, ...standing })))
    .filter(({ state, paintId }) => state !== 'to post' && documents.get('deck', paintId) !== undefined)
    .sort(
      (a, b) =>
        SAMPLE_STATES.indexOf(a.state) - SAMPLE_STATES.indexOf(b.state) || (a.sample.sentOn < b.sample.sentOn ? -1 : 1),
    );
  const title = judgements.setting('title');
  const csv = (): void => download(`${fileNameOf(title)}-samples.csv`, `\uFEFF${toSamplesCsv(rows)}`, 'text/csv');
  return (
    <div className="papers">
      <PapersNav paper="samples">
        <button type="button" className="act main" onClick={() => print()}>
          Print
        </button>
        <button type="button" className="act" disabled={rows.length === 0} onClick={csv}>
          CSV
        </button>
        <a href={toAddress({ sheet: 'deck', paintId: null })}>to the deck</a>
      </PapersNav>
      <article className="samples-sheet">
        <p className="t1">
          {title}, {judgements.setting('museum')}; {dayText(new Date().toISOString())}
        </p>
        <h1>Samples to order and post</h1>
        {rows.length === 0 ? (
          <p className="cap">Nothing to post: each paint on a wall has its sample under way.</p>
        ) : (
          <table className="samples-table">
            <thead>
              <tr>
                <th scope="col">
                  <span className="spoken">Patch</span>
                </th>
                <th scope="col">Paint</th>
                <th scope="col">LRV</th>
                <th scope="col">Sample</th>
                <th scope="col">To</th>
                <th scope="col">For</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ paint, paintId, sampleId, lrv, kind, to, on }) => (
                <tr key={`${paintId} ${sampleId}`}>
                  <td className="samples-patch">
                    <i style={{ background: hexFromLabD65(paint.lab) }} />
                  </td>
                  <th scope="row">
                    <a href={toAddress({ sheet: 'deck', paintId })}>{paint.name}</a>
                    <span className="t1">{[paint.code, paint.sheen].filter(Boolean).join(', ')}</span>
                  </th>
                  <td>{lrv}</td>
                  <td>{KIND_WORDS[kind]}</td>
                  <td>{to || <span className="it">not asked for yet</span>}</td>
                  <td>{on || 'on no wall yet'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        {under.length === 0 ? null : (
          <>
            <h2>Sent</h2>
            <ul className="samples-under">
              {under.map(({ id, paintId, sample, state, seen, approved }) => (
                <li key={id}>
                  <SampleMark state={state} />
                  <span>
                    <a href={toAddress({ sheet: 'deck', paintId })}>{documents.get('deck', paintId)?.name}</a>,{' '}
                    {sample.kind} to {sample.to.name}
                    {sample.sentOn ? `, ${dayText(sample.sentOn)}` : ''}:{' '}
                    {state === 'approved'
                      ? `approved by ${namesOf(approved)}`
                      : state === 'seen'
                        ? `seen by ${namesOf(seen)}, not approved`
                        : 'not seen yet'}
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
        <p className="t1 samples-foot">
          Judge a sample upright on its wall, from two to three metres, beside the real frame: under the show’s lamps
          first, then by daylight. The patches on this sheet are no colour to choose by.
        </p>
      </article>
    </div>
  );
}

export default SamplesPage;
