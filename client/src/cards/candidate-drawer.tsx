/** Ways to hang a halo, along the foot: true small pictures of the wall; none is applied until it is taken. */
import type { HaloCandidate, HaloReason } from '@enfilade/arrangement/halo-task';
import * as commands from '@enfilade/shared/commands';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { capital } from '@enfilade/shared/surface-names';
import { type LengthUnit, lengthText } from '@enfilade/space/lengths';
import { useEffect, useId, useMemo, useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose, trial, useStore } from '../selection.ts';
import { closeFoot } from '../shell/foot.ts';
import { say } from '../shell/live-region.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go, viewFrom } from '../view-address.ts';
import { useHaloWays } from '../workers/halo-client.ts';
import type { HaloTask } from '../workers/halo-task.ts';
import { act } from './acting.ts';
import { WallThumb } from './wall-thumb.tsx';
import './candidate-drawer.css';

/** Why a candidate is as it is, in words and the person's unit. */
function reasonText(reason: HaloReason, unit: LengthUnit): string {
  const length = (mm: number) => lengthText(mm, unit);
  switch (reason.kind) {
    case 'gaps':
      return `gaps ${length(reason.leastMm)} to ${length(reason.mostMm)}`;
    case 'outline':
      return `${length(reason.heightMm)} × ${length(reason.widthMm)} in all`;
    case 'largest void':
      return `largest empty round ${length(reason.mm)}`;
    case 'leans':
      return `leans to the ${reason.to}`;
    case 'above reach':
      return `${reason.count} above ${length(reason.reachMm)}, out of reach`;
    case 'no room':
      return `${reason.count} found no room and ${reason.count === 1 ? 'stays' : 'stay'} where ${reason.count === 1 ? 'it is' : 'they are'}`;
    case 'stopped':
      return 'stopped before it was done';
  }
}

function placesOf(task: HaloTask, candidate: HaloCandidate): Map<PieceId, Place> {
  const places = new Map<PieceId, Place>([[task.focal, task.focalPlace]]);
  for (const [index, pieceId] of task.pieceIds.entries()) {
    const at = candidate.places[index];
    if (at) places.set(pieceId, [task.wall, at.xMm, at.yMm, 0, 0]);
  }
  return places;
}

export function CandidateDrawer({ task }: { readonly task: HaloTask }) {
  const show = useShow();
  const { judgements, documents } = show;
  const id = useId();
  useRoots('paints', 'deck', 'places');
  const { unit } = usePreferences();
  const [round, setRound] = useState(1);
  const [shown, setShown] = useState<readonly HaloCandidate[]>([]);
  const state = useHaloWays(task, round, shown);
  const tried = useStore(trial);
  const focalName = judgements.nameOf(task.focal);
  const members = useMemo(() => [task.focal, ...task.pieceIds], [task]);
  const together = new Set(members.map((pieceId) => commands.vignetteOf(documents, pieceId)));
  const gathered = together.size === 1 && !together.has(null);
  const [gathering, setGathering] = useState(!gathered);
  const [name, setName] = useState(`Round ${focalName}`);

  useEffect(() => {
    if (state.kind === 'ready') say(`${state.candidates.length} ways to hang them round ${focalName}`);
  }, [state, focalName]);

  const tryOn = (candidate: HaloCandidate): void => {
    if (viewFrom(location.hash)?.sheet !== 'wall') go({ sheet: 'wall', surface: task.wall });
    trial.set({ name: candidate.name, places: placesOf(task, candidate) });
    say(`${capital(candidate.name)} is being tried; nobody else sees it yet`);
  };
  const take = (candidate: HaloCandidate): void => {
    const places = placesOf(task, candidate);
    const done = act(
      show,
      () => {
        const hung = commands.place(documents, places, `hang around ${focalName}`);
        if (!gathering || name.trim() === '') return hung;
        const group = commands.gather(documents, { name: name.trim(), intent: '', focal: task.focal }, members);
        return { name: hung.name, changes: [...hung.changes, ...group.changes] };
      },
      `${places.size} hung round ${focalName}`,
    );
    if (!done) return;
    closeFoot();
    choose(members);
  };

  return (
    <section className="candidates" aria-label="Ways to hang them">
      <div className="candidates-about">
        <h2>Ways to hang them</h2>
        <p className="t1">
          {task.pieceIds.length} round {focalName}. True scale, one wall. None is applied until it is taken; one undo
          takes it back.
        </p>
        {state.kind === 'working' ? (
          <p className="t1">
            <label htmlFor={`${id}-progress`}>Arranging</label>{' '}
            <progress id={`${id}-progress`} value={state.share} max={1} />
          </p>
        ) : null}
        {state.kind === 'failed' ? (
          <p className="t1 b" role="alert">
            No way was found: {state.what}. Nothing has moved.
          </p>
        ) : null}
        {state.kind === 'ready' && !gathered ? (
          <div className="candidates-gather t1">
            <label>
              <input type="checkbox" checked={gathering} onChange={(event) => setGathering(event.target.checked)} />{' '}
              gather them as a vignette
            </label>
            {gathering ? (
              <input aria-label="Name of the vignette" value={name} onChange={(event) => setName(event.target.value)} />
            ) : null}
          </div>
        ) : null}
        <p className="candidates-commands t1">
          {state.kind === 'ready' ? (
            <button
              type="button"
              onClick={() => {
                trial.set(null);
                setShown([...shown, ...state.candidates]);
                setRound(round + 1);
              }}
            >
              three others
            </button>
          ) : null}
          <button type="button" onClick={closeFoot}>
            {state.kind === 'working' ? 'stop' : 'back to the unplaced'}
          </button>
        </p>
      </div>
      {state.kind === 'ready' ? (
        <ul className="candidates-list">
          {state.candidates.map((candidate, index) => {
            const places = placesOf(task, candidate);
            const on = tried !== null && samePlaces(tried.places, places);
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: candidates are a fixed answer in a fixed order
              <li key={index} className={on ? 'candidate candidate-on' : 'candidate'}>
                <WallThumb surface={task.wall} places={places} widthPx={330} heightPx={160} />
                <h3>{capital(candidate.name)}</h3>
                <p className="t1">{candidate.reasons.map((reason) => reasonText(reason, unit)).join('; ')}</p>
                <p className="candidate-acts">
                  {on ? (
                    <>
                      <button type="button" className="act main" onClick={() => take(candidate)}>
                        Take it
                      </button>
                      <button type="button" className="act" onClick={() => trial.set(null)}>
                        Put back
                      </button>
                    </>
                  ) : (
                    <button type="button" className="act" onClick={() => tryOn(candidate)}>
                      Try on the wall
                    </button>
                  )}
                </p>
              </li>
            );
          })}
        </ul>
      ) : null}
    </section>
  );
}

function samePlaces(a: ReadonlyMap<PieceId, Place>, b: ReadonlyMap<PieceId, Place>): boolean {
  return a.size === b.size && [...a].every(([id, at]) => String(b.get(id)) === String(at));
}
