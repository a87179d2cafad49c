/** The kept states, newest first, each with the way to look at it and to bring it back. */
import { useState } from 'react';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { whenText } from '../talk/remark-words.ts';
import { bringBack, stateName } from '../talk/state-acts.ts';
import { go } from '../view-address.ts';

export function KeptStates() {
  const show = useShow();
  useRoots('states');
  const [trouble, setTrouble] = useState<string | null>(null);
  const states = [...show.documents.all('states')].sort(([, a], [, b]) => (a.at < b.at ? 1 : -1));
  const room = roomsInOrder(show.documents)[0];
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
                <button
                  type="button"
                  onClick={() => void bringBack(show, state).then(setTrouble)}
                  aria-label={`Bring back ${stateName(state)}`}
                >
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
