/** The kept states, newest first, each with the way to look at it and to bring it back. */
import { hangStateFrom, restoreState } from '@enfilade/shared/kept-states';
import type { KeptState } from '@enfilade/shared/protocol';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { dayText } from '../cards/day-text.ts';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { whenText } from '../talk/remark-words.ts';
import { go } from '../view-address.ts';

export function stateName({ kind, name, at }: KeptState): string {
  if (kind === 'day') return `As ${dayText(at)} found it`;
  return kind === 'signed off' ? `${name}, signed off` : name;
}

export function KeptStates() {
  const show = useShow();
  useRoots('states');
  const [trouble, setTrouble] = useState<string | null>(null);
  const states = [...show.documents.all('states')].sort(([, a], [, b]) => (a.at < b.at ? 1 : -1));
  const room = roomsInOrder(show.documents)[0];
  const restore = async (state: KeptState): Promise<void> => {
    const answer = await fetch(`${show.base}/states/${state.digest}`).catch(() => null);
    const kept = answer?.ok ? hangStateFrom(await answer.json()) : null;
    setTrouble(kept === null ? 'That state could not be fetched. Nothing was changed.' : null);
    if (kept === null) return;
    const name = stateName(state);
    act(show, () => restoreState(show.documents, kept, name), `The hang is as in ${name}; undo takes it back`);
  };
  if (states.length === 0) return <p className="cap">None yet.</p>;
  return (
    <>
      {trouble === null ? null : (
        <p className="t1 b" role="alert">
          {trouble}
        </p>
      )}
      <ul className="history-states">
        {states.map(([id, state]) => (
          <li key={id}>
            <span className="serif">{stateName(state)}</span>
            <span className="t1">
              {state.by === '' ? 'kept by itself' : state.by}, {whenText(state.at)}
            </span>
            <span className="history-commands t1">
              {room === undefined ? null : (
                <button
                  type="button"
                  onClick={() => go({ sheet: 'room', roomId: room }, { kind: 'state', id })}
                  aria-label={`Look at ${stateName(state)}`}
                >
                  look at it
                </button>
              )}
              {show.may('hang') ? (
                <button type="button" onClick={() => void restore(state)} aria-label={`Bring back ${stateName(state)}`}>
                  bring it back
                </button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
