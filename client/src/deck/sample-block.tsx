/** The samples of one paint, and the way to one more. */
import { samplesByPaint } from '@enfilade/shared/samples';
import type { PaintId } from '@enfilade/shared/schema';
import { useState } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import { SampleForm } from './sample-form.tsx';
import { SampleLine } from './sample-line.tsx';
import './samples.css';

export function SampleBlock({ paintId, name }: { readonly paintId: PaintId; readonly name: string }) {
  const show = useShow();
  useRoots('samples', 'sampleWords');
  const [asking, setAsking] = useState(false);
  const samples = samplesByPaint(show.documents).get(paintId) ?? [];
  return (
    <section className="samples-block" aria-label={`Samples of ${name}`}>
      <h2>Samples</h2>
      {samples.length === 0 ? (
        <p className="t1">None yet. A colour is judged on a drawdown or a board, on the wall, not on a screen.</p>
      ) : (
        <ul>
          {samples.map((standing) => (
            <SampleLine key={standing.id} standing={standing} name={name} />
          ))}
        </ul>
      )}
      {asking ? (
        <SampleForm paintId={paintId} name={name} done={() => setAsking(false)} />
      ) : show.may('checklist') ? (
        <button type="button" onClick={() => setAsking(true)}>
          send a drawdown or a board…<span className="spoken"> of {name}</span>
        </button>
      ) : null}
    </section>
  );
}
