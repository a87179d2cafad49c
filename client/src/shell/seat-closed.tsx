/** In the place of the whole show when the seat was taken back or its role changed: nothing of the show is shown. */
import { useShow } from '../sync/hooks.ts';
import type { Saving } from '../sync/show-session.ts';

export function SeatClosed({ saving }: { readonly saving: Extract<Saving, { kind: 'closed' }> }) {
  const { me } = useShow();
  const { strong, reason, unsent, discard } = saving;
  return (
    <main className="not-admitted">
      <h1>{strong}</h1>
      <p role="alert">{reason} What this page held of the show has been thrown away.</p>
      {unsent.length === 0 ? null : <p>Not saved, and not kept: {unsent.join('; ')}.</p>}
      {discard === 'anew' ? (
        <p>
          <button type="button" className="act main" onClick={() => location.reload()}>
            Open the show anew
          </button>
        </p>
      ) : null}
      <p className="t1">{me.person.name}</p>
    </main>
  );
}
