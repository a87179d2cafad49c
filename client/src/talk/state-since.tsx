/** Beside a kept state: what is different in the hang since, wall by wall, in sentences. */
import { useMemo } from 'react';
import { lengthText, usePreferences } from '../preferences.ts';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { go } from '../view-address.ts';
import { deedSentence } from './deed-sentences.ts';
import { changesSince, type InState } from './in-state.ts';
import { viewOfSurface } from './remark-words.ts';
import { stepsOf } from './since-steps.ts';
import './state-since.css';

const SIDES = ['left', 'head', 'right', 'foot', 'floor', 'ceiling'] as const;

export function StateSince({ inside }: { readonly inside: InState }) {
  const { hang, shown, id } = inside;
  const { unit } = usePreferences();
  const version = useRestingRoots(
    250,
    'places',
    'memberOf',
    'paints',
    'vignettes',
    'pinned',
    'objects',
    'rooms',
    'deck',
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: version and id stand for what the two hold
  const steps = useMemo(() => {
    const net = changesSince(shown.documents, hang.documents).map((change) => ({
      ...change,
      at: '',
      personId: '',
      name: '',
    }));
    const surfaces = [
      'layout',
      ...roomsInOrder(hang.documents).flatMap((room) => SIDES.map((side) => `${room}:${side}`)),
    ];
    return stepsOf(net, hang.judgements, surfaces);
  }, [shown, hang, id, version]);
  const words = { judgements: hang.judgements, length: (mm: number) => `${lengthText(mm, unit)} ${unit}` };
  return (
    <section className="card state-since" aria-label="Different in the hang since">
      <h2>Since then</h2>
      {steps.length === 0 ? <p className="cap">The hang is as it was then.</p> : null}
      <ul>
        {steps.map((step) => {
          const view = step.surface === null ? null : viewOfSurface(step.surface);
          return (
            <li key={step.id}>
              <span>{deedSentence({ changes: step.changes, more: 0 }, words)}</span>
              {view === null ? null : (
                <button type="button" onClick={() => go(view)}>
                  show it
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
