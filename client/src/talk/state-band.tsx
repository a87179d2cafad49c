/** Under the head while a kept state is looked at: what it is, what may be done with it, and the way back. */
import { useState } from 'react';
import { useStore } from '../selection.ts';
import { isStage } from '../shell/current-view.ts';
import { useRoots } from '../sync/hooks.ts';
import { THE_HANG, toAddress, type View } from '../view-address.ts';
import { besideHang, useInState } from './in-state.ts';
import { whenText } from './remark-words.ts';
import { bringBack, bringVignetteBack, stateName } from './state-acts.ts';
import './proposal-band.css';

export function StateBand({ view }: { readonly view: View }) {
  const inside = useInState();
  const beside = useStore(besideHang);
  useRoots('vignettes');
  const [trouble, setTrouble] = useState<string | null>(null);
  const [vignetteId, setVignetteId] = useState('');
  if (inside === null) return null;
  const { state, hang, shown } = inside;
  const vignettes = [...shown.documents.all('vignettes')].sort(([, a], [, b]) => (a.name < b.name ? -1 : 1));
  const may = hang.may('hang');
  return (
    <section className="band proposal-band" aria-label="The kept state you look at">
      <p>
        The hang as it was: <b className="b">{stateName(state)}</b>,{' '}
        {state.by === '' ? 'kept by itself' : `kept by ${state.by}`}, {whenText(state.at)}. Nothing can be changed here.
        {trouble === null ? null : (
          <b className="b" role="alert">
            {' '}
            {trouble}
          </b>
        )}
      </p>
      <span className="proposal-band-foot t1">
        {isStage(view) ? (
          <button
            type="button"
            className={beside ? 'cmd on' : 'cmd'}
            aria-pressed={beside}
            onClick={() => besideHang.set(!beside)}
          >
            the hang beside it
          </button>
        ) : null}
        {may ? (
          <>
            <button type="button" onClick={() => void bringBack(hang, state).then(setTrouble)}>
              bring all of it back
            </button>
            {vignettes.length === 0 ? null : (
              <label>
                bring back{' '}
                <select value={vignetteId} onChange={(event) => setVignetteId(event.target.value)}>
                  <option value="">one vignette…</option>
                  {vignettes.map(([id, { name }]) => (
                    <option key={id} value={id}>
                      {name}
                    </option>
                  ))}
                </select>
              </label>
            )}
            {vignetteId === '' ? null : (
              <button type="button" onClick={() => void bringVignetteBack(hang, state, vignetteId).then(setTrouble)}>
                bring it back
              </button>
            )}
          </>
        ) : null}
      </span>
      <a className="proposal-band-leave t1" href={toAddress(view, THE_HANG)}>
        back to the hang
      </a>
    </section>
  );
}
