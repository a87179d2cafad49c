/** Whether the guest artist moves the hang, or proposes only. */
import { setSetting } from '@enfilade/shared/commands';
import { useId } from 'react';
import { useEntity, useShow } from '../sync/hooks.ts';

export function ArtistSetting() {
  const show = useShow();
  const id = useId();
  const proposesOnly = useEntity('settings', 'artistProposesOnly') === true;
  return (
    <section className="card seats-card" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>The guest artist</h2>
      <label className="seats-check">
        <input
          type="checkbox"
          checked={proposesOnly}
          disabled={!show.may('hang')}
          onChange={(event) => show.perform(setSetting('artistProposesOnly', event.target.checked))}
        />
        <span>proposes only: the hang is moved by others</span>
      </label>
      <p className="t1">It holds at once, on pages that are open.</p>
    </section>
  );
}
