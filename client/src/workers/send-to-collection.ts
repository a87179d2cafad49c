/** Sends rows to the collection part by part; what does not arrive is tried again, what is refused is told, and it can be gone on with. */

import {
  COLLECTION_ROWS_AT_ONCE,
  type CollectionImport,
  type CollectionRowIn,
  type CollectionTaken,
} from '@enfilade/shared/collection-in';
import type { StaysOut } from '@enfilade/shared/collection-reading';
import type { Refusal } from '@enfilade/shared/protocol';

export interface RowToSend {
  readonly row: CollectionRowIn;
  /** Where it stands in the source. */
  readonly place: string;
}

export interface Collected {
  /** The bringing-in on the server; null before it is begun. */
  readonly id: string | null;
  readonly done: number;
  readonly of: number;
  readonly added: number;
  readonly updated: number;
  readonly same: number;
  readonly refused: readonly StaysOut[];
  readonly refusedInAll: number;
  readonly secondsLeft: number | null;
  /** `no`: it is going on. `broken`: `what` says why. */
  readonly ended: 'no' | 'all' | 'stopped' | 'broken';
  readonly what: string;
}

export const NOTHING_COLLECTED: Collected = {
  id: null,
  done: 0,
  of: 0,
  added: 0,
  updated: 0,
  same: 0,
  refused: [],
  refusedInAll: 0,
  secondsLeft: null,
  ended: 'no',
  what: '',
};

/** Waits before a part is sent again, ms. */
const AGAIN_MS = [500, 2000, 5000, 10_000] as const;
const REFUSED_AT_MOST = 500;
const UNREACHED = 'The server did not answer. What is in stays in; the rest can be gone on with.';

interface Sending {
  /** The seat's path. */
  readonly base: string;
  readonly fileName: string;
  /** What was sent of these rows before. */
  readonly before: Collected;
  readonly stopped: () => boolean;
  readonly tell: (state: Collected) => void;
}

/** Answers how far it came, whatever went wrong. */
export async function sendToCollection(rows: readonly RowToSend[], sending: Sending): Promise<Collected> {
  const { base, fileName, before, stopped, tell } = sending;
  let state: Collected = { ...before, of: rows.length, ended: 'no', what: '' };
  const began = performance.now();
  const from = state.done;
  const post = <T>(path: string, body: unknown) => posted<T>(`${base}/collection/${path}`, body, stopped);
  tell(state);
  if (state.id === null) {
    const begun = await post<CollectionImport>('imports', { file: fileName.slice(0, 300), rows: rows.length });
    if ('what' in begun) return { ...state, ended: 'broken', what: begun.what };
    state = { ...state, id: begun.id };
  }
  while (state.done < rows.length) {
    if (stopped()) return { ...state, ended: 'stopped' };
    const part = rows.slice(state.done, state.done + COLLECTION_ROWS_AT_ONCE);
    const taken = await post<CollectionTaken>(`imports/${state.id}`, { rows: part.map(({ row }) => row) });
    if ('what' in taken) return { ...state, ended: stopped() ? 'stopped' : 'broken', what: taken.what };
    const refused = taken.refused.map(({ row, what }) => ({
      place: part[row]?.place ?? '',
      value: part[row]?.row.number ?? '',
      what,
    }));
    const done = state.done + part.length;
    const each = (performance.now() - began) / (done - from);
    state = {
      ...state,
      done,
      added: state.added + taken.added,
      updated: state.updated + taken.updated,
      same: state.same + taken.same,
      refused: [...state.refused, ...refused].slice(0, REFUSED_AT_MOST),
      refusedInAll: state.refusedInAll + refused.length,
      secondsLeft: Math.round((each * (rows.length - done)) / 1000),
    };
    tell(state);
  }
  return { ...state, ended: 'all' };
}

/** The answer, or why there is none. A part that was written though its answer was lost changes nothing when it comes again. */
async function posted<T>(address: string, body: unknown, stopped: () => boolean): Promise<T | Refusal> {
  const text = JSON.stringify(body);
  for (const wait of [...AGAIN_MS, null]) {
    try {
      const headers = { 'content-type': 'application/json' };
      const answer = await fetch(address, { method: 'POST', body: text, headers });
      // Busy, or unable to write just now.
      if (wait === null || ![429, 502, 503, 504].includes(answer.status)) return (await answer.json()) as T | Refusal;
    } catch {
      if (wait === null) break;
    }
    if (stopped()) break;
    await new Promise((later) => setTimeout(later, wait));
  }
  return { what: UNREACHED, where: 'server' };
}
