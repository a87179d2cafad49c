/** The deck: every paint as it was measured, where it is on the walls, how far its samples have come; files in and out. */
import { toCgats } from '@enfilade/colour/cgats-out';
import { toDeckCsv } from '@enfilade/colour/deck-csv';
import { isInScreenGamut } from '@enfilade/colour/paints';
import * as commands from '@enfilade/shared/commands';
import { measuredPaintOf } from '@enfilade/shared/paint-records';
import type { PaintId } from '@enfilade/shared/schema';
import { useEffect, useState } from 'react';
import { act } from '../cards/acting.ts';
import { download, fileNameOf } from '../sheets/download.ts';
import { useShow } from '../sync/hooks.ts';
import { go, toAddress } from '../view-address.ts';
import { DECK_ORDERS, type DeckOrder, inOrder, matching } from './deck-order.ts';
import { DeckReview } from './deck-review.tsx';
import { type DeckEntry, DeckRow } from './deck-row.tsx';
import { PaintFacts } from './paint-facts.tsx';
import { MAX_BYTES, textOfFile } from './paint-file-reading.ts';
import { useDeckEntries } from './use-deck-entries.ts';
import './deck-page.css';

/** Drawn at once; a maker's whole deck is shown by pressing on. */
const AT_ONCE = 200;

export function DeckPage({ paintId }: { readonly paintId: PaintId | null }) {
  const show = useShow();
  const entries = useDeckEntries();
  const [order, setOrder] = useState<DeckOrder>('darkest first');
  const [find, setFind] = useState('');
  const [adding, setAdding] = useState(false);
  const [most, setMost] = useState(AT_ONCE);
  const [file, setFile] = useState<{ name: string; text: string } | null>(null);
  const [wrong, setWrong] = useState('');
  const listed = inOrder(entries, order).filter(({ paint }) => matching(paint, find));
  useEffect(() => {
    const row = paintId === null ? null : document.getElementById(`paint-${paintId}`);
    // What is open as far as it goes, and its name in any case.
    row?.nextElementSibling?.scrollIntoView({ block: 'nearest' });
    row?.scrollIntoView({ block: 'nearest' });
  }, [paintId]);
  const take = async (chosen: File | undefined): Promise<void> => {
    setWrong('');
    if (chosen === undefined) return;
    if (chosen.size > MAX_BYTES)
      return setWrong(`${chosen.name} is larger than any deck: ${MAX_BYTES >> 20} MB are read. Nothing is changed.`);
    try {
      setFile({ name: chosen.name, text: await textOfFile(chosen) });
    } catch {
      setWrong(`${chosen.name} could not be read by this browser. Nothing is changed.`);
    }
  };
  if (file !== null) return <DeckReview file={file.name} text={file.text} leave={() => setFile(null)} />;
  const may = show.may('checklist');
  return (
    <div className="deck-page">
      <header className="deck-page-head">
        <h1>The deck</h1>
        <p className="cap">{headText(entries)}</p>
        <nav aria-label="What can be done with the deck">
          {may ? (
            <>
              <button type="button" aria-expanded={adding} onClick={() => setAdding(!adding)}>
                type a paint…
              </button>
              <FileWay take={take} />
            </>
          ) : null}
          <FilesOut entries={entries} />
          <a href={toAddress({ sheet: 'samples' })}>samples to post</a>
        </nav>
      </header>
      {wrong === '' ? null : (
        <p role="alert" className="b">
          {wrong}
        </p>
      )}
      {adding ? (
        <PaintFacts
          paint={null}
          leave={() => setAdding(false)}
          take={(facts) => {
            const added = commands.addPaint(show.documents, facts);
            if (!act(show, added, `${facts.name} is in the deck`)) return;
            setAdding(false);
            go({ sheet: 'deck', paintId: added.id });
          }}
        />
      ) : null}
      <div className="deck-page-find">
        <label>
          Find <input type="search" value={find} onChange={(event) => setFind(event.target.value)} />
        </label>
        {DECK_ORDERS.map((name) => (
          <button
            key={name}
            type="button"
            className={name === order ? 'cmd on' : 'cmd'}
            aria-pressed={name === order}
            onClick={() => setOrder(name)}
          >
            {name}
          </button>
        ))}
      </div>
      {listed.length === 0 ? (
        <p className="cap">
          {entries.length === 0
            ? 'No paint in the deck yet. Type one, or bring in a file of a deck.'
            : 'No paint is called that.'}
        </p>
      ) : (
        <table className="deck-table">
          <thead>
            <tr>
              <th scope="col">
                <span className="spoken">Patch</span>
              </th>
              <th scope="col">Paint</th>
              <th scope="col">LRV</th>
              <th scope="col">Measured</th>
              <th scope="col">On walls</th>
              <th scope="col">Samples</th>
            </tr>
          </thead>
          <tbody>
            {listed.slice(0, most).map((entry) => (
              <DeckRow
                key={entry.id}
                entry={entry}
                open={entry.id === paintId}
                toggle={() => go({ sheet: 'deck', paintId: entry.id === paintId ? null : entry.id })}
              />
            ))}
          </tbody>
        </table>
      )}
      {listed.length <= most ? null : (
        <button type="button" onClick={() => setMost(most + AT_ONCE)}>
          show {Math.min(AT_ONCE, listed.length - most)} more of {listed.length}
        </button>
      )}
    </div>
  );
}

function headText(entries: readonly DeckEntry[]): string {
  const spectral = entries.filter(({ paint }) => paint.reflectance).length;
  const beyond = entries.filter(({ paint }) => !isInScreenGamut(paint.lab)).length;
  const onWalls = entries.filter(({ surfaces }) => surfaces.length > 0);
  const approved = onWalls.filter(({ samples }) => samples[0]?.state === 'approved').length;
  const parts = [
    `${entries.length} ${entries.length === 1 ? 'paint' : 'paints'}`,
    spectral === 0 ? '' : `${spectral} by reflectance`,
    beyond === 0 ? '' : `${beyond} beyond this screen`,
  ].filter((part) => part !== '');
  const walls =
    onWalls.length === 0 ? 'None is on a wall.' : `${onWalls.length} on walls, ${approved} with an approved sample.`;
  return `${parts.join(', ')}. ${walls}`;
}

function FileWay({ take }: { readonly take: (file: File | undefined) => Promise<void> }) {
  return (
    <label className="deck-file">
      <input
        type="file"
        accept=".csv,.tsv,.txt,.cgats,.it8,.cxf,.xml,text/csv,text/plain,application/xml"
        onChange={(event) => {
          void take(event.target.files?.[0]);
          // The same file may be chosen again after it was mended.
          event.target.value = '';
        }}
      />
      <span>bring in a deck: CSV, CGATS.17, CxF3</span>
    </label>
  );
}

function FilesOut({ entries }: { readonly entries: readonly DeckEntry[] }) {
  const { judgements } = useShow();
  if (entries.length === 0) return null;
  const name = `${fileNameOf(judgements.setting('title'))}-deck`;
  const paints = () => inOrder(entries, 'as in the deck').map(({ paint }) => measuredPaintOf(paint));
  const csv = (): void => download(`${name}.csv`, `\uFEFF${toDeckCsv(paints())}`, 'text/csv');
  const cgats = (): void =>
    download(`${name}.txt`, toCgats(paints(), judgements.setting('museum') || 'museum'), 'text/plain');
  return (
    <>
      <button type="button" onClick={csv}>
        the deck as CSV
      </button>
      <button type="button" onClick={cgats}>
        as CGATS.17
      </button>
    </>
  );
}

export default DeckPage;
