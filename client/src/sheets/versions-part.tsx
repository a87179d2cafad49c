/** The frozen versions of the list, to be looked at and compared; and what a print in somebody's hand is worth. */
import type { Version } from '@enfilade/shared/protocol';
import { type FormEvent, useState } from 'react';
import { dayText } from '../cards/day-text.ts';
import { go, toAddress } from '../view-address.ts';
import { PrintStamp } from './print-stamp.tsx';
import type { ListNow } from './use-list.ts';
import { momentText } from './vignette-words.ts';

interface VersionsPartProps {
  readonly now: ListNow;
  /** What is on screen, as in the address. */
  readonly version?: number | undefined;
  readonly against?: number | null | undefined;
}

/** So many stand in the row; the others are in the choice. */
const SHOWN = 4;

export function VersionsPart({ now, version, against }: VersionsPartProps) {
  const { versions } = now;
  const [newest] = versions;
  // Sheets of walls have stamps too.
  if (newest === undefined) {
    return now.highest === 0 ? null : (
      <section className="versions" aria-label="Frozen versions">
        <PrintStamp now={now} />
      </section>
    );
  }
  const alone = against === undefined ? version : undefined;
  return (
    <section className="versions" aria-label="Frozen versions">
      <div className="versions-known">
        <h2 className="it">Frozen</h2>
        <ul>
          {versions.slice(0, SHOWN).map((one) => (
            <li key={one.number}>
              <a
                href={toAddress({ sheet: 'vignettes', version: one.number })}
                aria-current={alone === one.number ? 'page' : undefined}
              >
                Version {one.number}
              </a>
              , {momentText(new Date(one.at))}, {one.by}
            </li>
          ))}
          {versions.length > SHOWN ? <li>and {versions.length - SHOWN} earlier</li> : null}
        </ul>
      </div>
      <CompareForm
        key={`${version} ${against}`}
        versions={versions}
        first={version ?? newest.number}
        second={against ?? null}
      />
      <PrintStamp now={now} />
    </section>
  );
}

interface CompareFormProps {
  readonly versions: readonly Version[];
  readonly first: number;
  readonly second: number | null;
}

/** Whichever of the two is chosen first, the earlier stands before the later. */
function CompareForm({ versions, first, second }: CompareFormProps) {
  const [before, setBefore] = useState(first);
  const [after, setAfter] = useState(second);
  const compare = (event: FormEvent): void => {
    event.preventDefault();
    const [earlier, later] = after !== null && after < before ? [after, before] : [before, after];
    go({ sheet: 'vignettes', version: earlier, against: later });
  };
  return (
    <form className="versions-form" aria-label="Compare" onSubmit={compare}>
      <label>
        <span className="it">Compare</span>
        <select value={before} onChange={(event) => setBefore(Number(event.target.value))}>
          {versions.map(({ number, at }) => (
            <option key={number} value={number}>
              Version {number}, {dayText(at)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span className="it">with</span>
        <select
          value={after ?? 'now'}
          onChange={(event) => setAfter(event.target.value === 'now' ? null : Number(event.target.value))}
        >
          <option value="now">the list as it stands</option>
          {versions.map(({ number, at }) => (
            <option key={number} value={number}>
              Version {number}, {dayText(at)}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">compare</button>
    </form>
  );
}
