/** Somebody holds a print and types its stamp: whether it is the newest, or what has taken its place and how that differs. */
import type { RowDifference } from '@enfilade/shared/list-versions';
import { printFrom, type StampAnswer, VIGNETTE_LIST } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import { surfaceName } from '@enfilade/shared/surface-names';
import { type FormEvent, useState } from 'react';
import { dayText } from '../cards/day-text.ts';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { isList, useFrozenLists } from './frozen-lists.ts';
import { type ListNow, useDifferences } from './use-list.ts';

export function PrintStamp({ now }: { readonly now: ListNow }) {
  const { documents } = useShow();
  const [typed, setTyped] = useState('');
  const [asked, setAsked] = useState<string | null>(null);
  const answer = asked === null ? null : printFrom(documents.all('versions').values(), asked);
  const look = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(typed.trim() === '' ? null : typed);
  };
  return (
    <div className="versions-stamp">
      <form className="versions-form" aria-label="Stamp on a print" onSubmit={look}>
        <label>
          <span className="it">Stamp on a print</span>
          <input
            value={typed}
            size={12}
            maxLength={64}
            autoComplete="off"
            spellCheck={false}
            placeholder="number or stamp"
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        <button type="submit">look it up</button>
      </form>
      <div role="status">{answer === null ? null : <Answer answer={answer} now={now} />}</div>
    </div>
  );
}

function Answer({ answer, now }: { readonly answer: StampAnswer; readonly now: ListNow }) {
  switch (answer.kind) {
    case 'not a stamp':
      return <p>A stamp is a version’s number, or at least the first four of the characters beside it.</p>;
    case 'unknown':
      return <p>{answer.number === null ? 'No version has that stamp.' : `There is no version ${answer.number}.`}</p>;
    case 'several':
      return <p>Versions {answer.numbers.join(' and ')} begin so. Type more of it, or the number.</p>;
    case 'newest':
    case 'superseded': {
      const by = answer.kind === 'superseded' ? answer.by : null;
      return answer.version.what === VIGNETTE_LIST ? (
        <ListAnswer version={answer.version} by={by} now={now} />
      ) : (
        <WallAnswer version={answer.version} by={by} />
      );
    }
  }
}

/** 'Version 3, superseded by version 5 on 12 May 2026; differs in: …' */
function ListAnswer({ version, by, now }: { readonly version: Version; readonly by: Version | null; now: ListNow }) {
  const stands = by === null && version.digest === now.digest;
  const [before, after] = useFrozenLists(stands ? undefined : version.digest, by?.digest);
  const differences = useDifferences();
  const later = by === null ? now.list : after;
  const rows =
    isList(before) && isList(later) ? differences(before, later).filter(({ kind }) => kind !== 'same') : null;
  const compared = toAddress({ sheet: 'vignettes', version: version.number, against: by?.number ?? null });
  return (
    <>
      <p>
        {by === null ? (
          <>
            <b className="b">This is the newest:</b> version {version.number} of {dayText(version.at)}.{' '}
            {stands ? 'The list stands so.' : 'The list has been changed since, and not frozen again.'}
          </>
        ) : (
          <>
            <b className="b">
              Version {version.number}, superseded by version {by.number} on {dayText(by.at)}
            </b>
            {rows?.length === 0 ? '; no row differs.' : '; differs in:'}
          </>
        )}
      </p>
      {rows === null ? null : (
        <ul>
          {rows.map((row) => (
            <li key={row.id}>
              <span className="serif">{row.name}</span>: {toldOf(row)}
            </li>
          ))}
        </ul>
      )}
      {stands ? null : <a href={compared}>compare the two</a>}
    </>
  );
}

function toldOf({ kind, sentences }: RowDifference): string {
  if (kind === 'new') return 'not on this print';
  return kind === 'gone' ? 'gone since' : sentences.join('; ');
}

function WallAnswer({ version, by }: { readonly version: Version; readonly by: Version | null }) {
  const { documents } = useShow();
  const surface = version.what.replace(/^elevation /, '');
  return (
    <p>
      {by === null ? (
        <>
          <b className="b">This is the newest</b> sheet of{' '}
          <a href={toAddress({ sheet: 'paper', surface })}>{surfaceName(documents, surface)}</a>: version{' '}
          {version.number} of {dayText(version.at)}.
        </>
      ) : (
        <>
          <b className="b">
            Version {version.number}, superseded by version {by.number} on {dayText(by.at)}
          </b>
          : <a href={toAddress({ sheet: 'paper', surface })}>{surfaceName(documents, surface)}</a>.
        </>
      )}
    </p>
  );
}
