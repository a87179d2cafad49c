/** Rows with something to say: the source beside why it waits and what goes in. */
import { answeredRow, cellsOf } from '@enfilade/shared/checklist-answers';
import type { ChecklistRow, RowAnswer } from '@enfilade/shared/checklist-reading';
import { trueSizeOf } from '@enfilade/shared/true-size';
import { sizeText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { type Unit, usePreferences } from '../preferences.ts';
import { RowWays } from './row-ways.tsx';
import type { Bringing } from './use-bringing.ts';

const SHOWN = 40;

type RowsToLookAtProps = Pick<Bringing, 'waiting' | 'open' | 'answers' | 'answer' | 'alike' | 'answerAlike'>;

export function RowsToLookAt({ waiting: rows, open, answers, answer, alike, answerAlike }: RowsToLookAtProps) {
  const { unit } = usePreferences();
  const [shown, setShown] = useState(SHOWN);
  if (rows.length === 0) return null;
  return (
    <section className="bi-look">
      <h2>
        {countWord(rows.length)} to look at
        {open === rows.length ? '' : open === 0 ? ', all answered' : `, ${rows.length - open} answered`}
      </h2>
      <table className="bi-table">
        <thead>
          <tr>
            <th scope="col">row</th>
            <th scope="col">in the source</th>
            <th scope="col">why it waits</th>
            <th scope="col">as it will go in</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, shown).flatMap((row) =>
            cellsOf(row).map((waits, index) => {
              const [first] = waits;
              if (first === undefined) return null;
              const given = waits.map(({ key }) => answers.get(key)).find((one) => one !== undefined);
              return (
                <tr key={first.key} className={given === undefined ? undefined : 'bi-answered'}>
                  <td className="b">{index === 0 ? row.row : <span className="spoken">{row.row}</span>}</td>
                  <td>
                    <span className="t1 bi-second">
                      {first.issue.heading || 'The whole row'}, {row.object.number}
                    </span>
                    <br />
                    <span className="bi-source">{first.issue.value || '(blank)'}</span>
                    <br />
                    <span className="t1 bi-second">{first.place}</span>
                  </td>
                  <td className="cap">{waits.map(({ issue }) => issue.what).join(' ')}</td>
                  <td>
                    <span className="bi-goes">{goesIn(row, given, first.issue.kind, unit)}</span>
                    <RowWays waits={waits} given={given} answer={answer} />
                    {alike.count > 0 && waits.some(({ key }) => key === alike.key) ? (
                      <button type="button" className="cmd bi-alike" onClick={answerAlike}>
                        {alike.count === 1
                          ? 'the same for one more like it'
                          : `the same for ${alike.count} more like it`}
                      </button>
                    ) : null}
                  </td>
                </tr>
              );
            }),
          )}
        </tbody>
      </table>
      {rows.length > shown ? (
        <p className="bi-more">
          <button type="button" onClick={() => setShown(shown + 200)}>
            {Math.min(200, rows.length - shown)} more of {rows.length - shown}
          </button>
        </p>
      ) : null}
    </section>
  );
}

const WORDS = ['One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'];

/** 'Eight', '13': as a heading begins. */
function countWord(count: number): string {
  return WORDS[count - 1] ?? String(count);
}

function goesIn(row: ChecklistRow, given: RowAnswer | undefined, kind: string, unit: Unit): string {
  if (given?.leaveOut) return 'stays out: the other row stands';
  const object = answeredRow(row, given === undefined ? [] : [given])?.object ?? row.object;
  if (kind === 'number twice') return given === undefined ? 'as a second object, until you say' : 'as a second object';
  if (kind.startsWith('weight')) return object.weightKg == null ? 'not weighed' : `${object.weightKg} kg`;
  if (kind.startsWith('count')) return `counts ${object.count}`;
  if (kind.startsWith('source')) return object.source;
  if (kind === 'frame not understood') return object.frame == null ? 'in no frame' : `framed, ${object.frame.kind}`;
  if (kind === 'day not understood') return 'as not known when it was last shown';
  if (kind === 'number changed') return `as ${object.number}`;
  if (kind.startsWith('too ') || kind === 'cell at fault') return 'goes in as far as it can be told';
  return sizeWords(object, unit);
}

/** 'H 61 × W 81.4 cm, framed', or that it goes in unsized. */
export function sizeWords(object: ChecklistRow['object'], unit: Unit): string {
  const size = trueSizeOf(object);
  if (!size.known) return 'unsized, hatched';
  const text = `${sizeText(size.heightMm, size.widthMm, size.depthMm || null, unit)} ${unit}`;
  return size.certain ? text : `${text}, ${size.basis}, hatched`;
}
