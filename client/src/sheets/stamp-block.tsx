/** What a paper says of itself at its head: which version, of when, by whom, and the characters that tell it. */
import { shortDigest } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import { dayText } from '../cards/day-text.ts';
import { momentText } from './vignette-words.ts';

/** 'Version 3, 12 May 2026, 14:02, Dov Castellane, stamp 4f1c09ab'; with the later one where it is superseded. */
export function VersionStamp({ version, by }: { readonly version: Version; readonly by?: Version | undefined }) {
  return (
    <p className="vl-stamp">
      <b className="b">Version {version.number}</b>
      <br />
      {momentText(new Date(version.at))}, {version.by}
      <br />
      stamp {shortDigest(version.digest)}
      {by === undefined ? null : (
        <>
          <br />
          <b className="vl-superseded">
            superseded by version {by.number} on {dayText(by.at)}
          </b>
        </>
      )}
    </p>
  );
}

/** 'differs from version 3 in 2 rows'. `rows` null: how far is not known yet. */
export function draftText(newest: Version, rows: number | null, tolerance: string): string {
  const from = `differs from version ${newest.number}`;
  if (rows === null) return from;
  if (rows === 0) return `${from} in nothing above ${tolerance}`;
  return `${from} in ${rows} ${rows === 1 ? 'row' : 'rows'}`;
}
