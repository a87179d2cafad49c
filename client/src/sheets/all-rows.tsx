/** Every row as it will go in; only what is in sight is drawn, so that 100,000 are as quick as 50. */
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import { dateWordsOf } from '@enfilade/shared/making-words';
import { useEffect, useState } from 'react';
import { usePreferences } from '../preferences.ts';
import type { WindowAnswer } from '../workers/checklist-task.ts';
import { sizeWords } from './rows-to-look-at.tsx';
import { SourceCells } from './source-cells.tsx';
import type { Bringing } from './use-bringing.ts';

const ROW_PX = 44;
const SEEN_PX = 440;
const AROUND = 150;
const REST_MS = 60;

/** Whether rows told beyond the first reach over what is in sight. */
function isWithin({ from, rows }: WindowAnswer, first: number, last: number, count: number): boolean {
  return from <= first && Math.min(last, count) <= from + rows.length;
}

interface AllRowsProps {
  /** Of a long file the first of them. */
  readonly rows: readonly ChecklistRow[];
  /** How many there are, where they are more than `rows`. */
  readonly count?: number;
  /** Sizes as written, for what keeps them so. */
  readonly written?: boolean;
  readonly bringing: Bringing;
}

export function AllRows({ rows: firstRows, count = firstRows.length, written = false, bringing }: AllRowsProps) {
  const { source, lookAtSource, window: further, lookFrom } = bringing;
  const { unit } = usePreferences();
  const [top, setTop] = useState(0);
  const first = Math.max(0, Math.floor(top / ROW_PX) - 4);
  const last = Math.min(count, first + Math.ceil(SEEN_PX / ROW_PX) + 8);
  const here = last <= firstRows.length || (further !== null && isWithin(further, first, last, count));
  const [from, rows] = last <= firstRows.length || further === null ? [0, firstRows] : [further.from, further.rows];
  const shown = here ? rows.slice(first - from, last - from) : [];
  useEffect(() => {
    if (here) return;
    // A breath, so that what is scrolled past is not asked for.
    const timer = setTimeout(() => lookFrom(Math.max(0, first - AROUND)), REST_MS);
    return () => clearTimeout(timer);
  }, [here, first, lookFrom]);
  const owners = firstRows.some(({ private: facts }) => Object.keys(facts).length > 0);
  if (count === 0) return null;
  return (
    <section className="bi-all">
      <h2>All {count.toLocaleString('en-GB')}</h2>
      <p className="t1">Press a row’s number to see its cells as the source has them.</p>
      <section
        className="bi-window"
        style={{ maxHeight: SEEN_PX }}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
        tabIndex={0}
        aria-label="All rows as they will go in"
        onScroll={(event) => setTop(event.currentTarget.scrollTop)}
      >
        <table className="bi-table bi-every" aria-rowcount={count + 1}>
          <thead>
            <tr>
              <th scope="col">row</th>
              <th scope="col">object</th>
              <th scope="col">maker, date, material</th>
              <th scope="col">size</th>
              <th scope="col">from</th>
              {owners ? <th scope="col">private</th> : null}
            </tr>
          </thead>
          <tbody>
            {first > 0 ? <tr style={{ height: first * ROW_PX }} /> : null}
            {shown.map((row, index) => (
              <tr key={row.line} aria-rowindex={first + index + 2}>
                <td className="b">
                  <button
                    type="button"
                    className="bi-where"
                    aria-label={`${row.row}, ${row.object.number} in the source`}
                    aria-pressed={source?.line === row.line}
                    onClick={() => lookAtSource(source?.line === row.line ? null : row.line)}
                  >
                    {row.row}
                  </button>
                </td>
                <td>
                  <Cut>
                    <span className="serif">{row.object.title || 'no title'}</span>
                    {row.object.count > 1 ? `, counts ${row.object.count}` : ''}
                  </Cut>
                  <Cut>{row.object.number}</Cut>
                </td>
                <td>
                  <Cut>{[row.object.maker, datedText(row.object.dateText ?? '')].filter(Boolean).join(', ')}</Cut>
                  <Cut>{row.object.medium ?? ''}</Cut>
                </td>
                <td>
                  <Cut>{written ? row.object.dimensionsText : sizeWords(row.object, unit)}</Cut>
                </td>
                <td>
                  <Cut>{row.object.lender || row.object.source}</Cut>
                </td>
                {owners ? (
                  <td>
                    <Cut>{[row.private.value, row.private.price].filter(Boolean).join(', ')}</Cut>
                    <Cut>{[row.private.storage, row.private.contact].filter(Boolean).join(', ')}</Cut>
                  </td>
                ) : null}
              </tr>
            ))}
            {first + shown.length < count ? <tr style={{ height: (count - first - shown.length) * ROW_PX }} /> : null}
          </tbody>
        </table>
      </section>
      <SourceCells
        row={[...firstRows, ...(further?.rows ?? [])].find(({ line }) => line === source?.line)}
        source={source}
        close={() => lookAtSource(null)}
      />
    </section>
  );
}

/** 'c. 1880 (1875 to 1885)': the text, and what is read in it. */
function datedText(text: string): string {
  const span = dateWordsOf(text)?.span ?? '';
  return span === '' || span === text ? text : `${text} (${span})`;
}

function Cut({ children }: { readonly children: React.ReactNode }) {
  return <span className="bi-cut">{children}</span>;
}
