/** Pictures that a manifest names by their addresses: fetched by the server, one after another, for the rows that have none. */
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import type { RecordPictures } from '@enfilade/shared/records-in';
import type { PictureStore } from '../sync/picture-store.ts';
import type { SendingState } from './sending.ts';

export interface NamedCount {
  readonly pictures: number;
  /** Where they would be fetched from, each once. */
  readonly hosts: readonly string[];
}

/** How many pictures the rows would have fetched: one a record, or one a piece of a set. */
export function namedIn(rows: readonly ChecklistRow[]): NamedCount {
  const wanted = rows.flatMap(wantedOf);
  const hosts = wanted.flatMap(({ address }) => (URL.canParse(address) ? [new URL(address).host] : []));
  return { pictures: wanted.length, hosts: [...new Set(hosts)] };
}

function wantedOf({ named, object: { count } }: ChecklistRow): ChecklistRow['named'] {
  return named.slice(0, Math.max(1, count));
}

export interface NamedFetched {
  readonly byLine: ReadonlyMap<number, RecordPictures>;
  readonly refused: readonly { readonly fileName: string; readonly what: string }[];
}

/** @throws the signal's AbortError when stopped. */
export async function fetchNamed(
  pictures: PictureStore,
  manifestId: string,
  rows: readonly ChecklistRow[],
  signal: AbortSignal,
  tell: (state: SendingState) => void,
): Promise<NamedFetched> {
  const byLine = new Map<number, RecordPictures>();
  const refused: { fileName: string; what: string }[] = [];
  const { pictures: of } = namedIn(rows);
  const began = Date.now();
  let done = 0;
  for (const row of rows) {
    const hashes: (string | null)[] = [];
    for (const n of wantedOf(row).keys()) {
      signal.throwIfAborted();
      const secondsLeft = done < 3 ? null : Math.round((((Date.now() - began) / done) * (of - done)) / 1000);
      const name = `picture ${n + 1} of ${row.object.number}`;
      tell({ done, of, now: name, secondsLeft });
      const answer = await pictures.fetchNamed(manifestId, row.line - 2, n, signal);
      hashes.push('sha256' in answer ? answer.sha256 : null);
      if (!('sha256' in answer)) refused.push({ fileName: name, what: answer.what });
      done += 1;
    }
    const [whole = null] = hashes;
    const pieces = hashes.flatMap((sha256, index) => (sha256 === null ? [] : [[index + 1, sha256] as const]));
    if (pieces.length > 0) {
      byLine.set(row.line, { whole, byPiece: new Map(row.object.count > 1 && pieces.length > 1 ? pieces : []) });
    }
  }
  return { byLine, refused };
}
