/** Ways to arrange, along the foot: true small pictures, each with its terms; none is applied until it is taken. */
import { takeArrangement, takenDown } from '@enfilade/shared/arrange-acts';
import type { Arrangement, ArrangeTask } from '@enfilade/shared/arrange-task';
import { arrangeTask } from '@enfilade/shared/arrange-tasks';
import { KIND_WORDS } from '@enfilade/shared/arrangement-words';
import * as commands from '@enfilade/shared/commands';
import { declineArrangement, declinedOn, offerAgain } from '@enfilade/shared/declined-arrangements';
import { wordOf } from '@enfilade/shared/proposals';
import { capital, surfaceName } from '@enfilade/shared/surface-names';
import { useEffect, useId, useMemo, useState } from 'react';
import { choose, trial, useStore } from '../selection.ts';
import { type ArrangeAsked, closeFoot, openCandidates } from '../shell/foot.ts';
import { say } from '../shell/live-region.tsx';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import { useArranging } from '../talk/arranging.ts';
import { useArrangements } from '../workers/arrange-client.ts';
import { act } from './acting.ts';
import { faceIt } from './arrange-sight.ts';
import { CandidateCard } from './candidate-card.tsx';
import './candidate-drawer.css';

export function CandidateDrawer({ asked }: { readonly asked: ArrangeAsked }) {
  const show = useShow();
  const { judgements } = show;
  // Worked out once, when it is asked for: what changes meanwhile is told, and does not pull the ways away.
  const task = useMemo(() => arrangeTask(judgements, asked.wish), [judgements, asked.wish]);
  if ('why' in task) {
    return (
      <section className="candidates" aria-label="Ways to arrange them">
        <div className="candidates-about">
          <h2>Ways to arrange them</h2>
          <p className="t1 b" role="alert">
            {task.why} Nothing has moved.
          </p>
          <button type="button" onClick={closeFoot}>
            back to the unplaced
          </button>
        </div>
      </section>
    );
  }
  return <Candidates {...{ asked, task }} />;
}

function Candidates({ asked, task }: { readonly asked: ArrangeAsked; readonly task: ArrangeTask }) {
  const show = useShow();
  const { judgements, documents } = show;
  const id = useId();
  const version = useRoots('paints', 'deck', 'places', 'declined', 'pinned') + usePictures();
  const [round, setRound] = useState(asked.round);
  const [shown, setShown] = useState<readonly string[]>(asked.shown);
  const declined = declinedOn(documents, task.ground);
  const { arranging, stop } = useArrangements(task, round, [...shown, ...declined]);
  const tried = useStore(trial);
  const offered = arranging.found.filter(({ digest }) => !declined.has(digest));
  const on = offered.find((way) => tried !== null && tried.name === way.digest)?.digest ?? null;
  const [together, setTogether] = useState(asked.together);
  const others = useArranging(together ? { wish: asked.wish, round, shown, tried: on } : null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents say
  const ground = useMemo(() => arrangeTask(judgements, asked.wish), [judgements, asked.wish, version]);
  const changed = 'ground' in ground && ground.ground !== task.ground;
  const members = useMemo(() => [...new Set(task.wish.pieceIds)], [task]);
  const inOne = new Set(members.map((pieceId) => commands.vignetteOf(documents, pieceId)));
  const gathered = inOne.size === 1 && !inOne.has(null);
  const [gathering, setGathering] = useState(false);
  const focal = task.kind === 'halo' ? task.focal : (task.wish.focal ?? null);
  const [name, setName] = useState(focal === null ? '' : `Round ${judgements.nameOf(focal)}`);
  const done = arranging.state === 'done' || arranging.state === 'stopped';

  useEffect(() => {
    if (arranging.state === 'done') say(`${arranging.found.length} ways to arrange them`);
  }, [arranging.state, arranging.found.length]);

  const tryOn = (way: Arrangement): void => {
    faceIt(judgements, task);
    trial.set({ name: way.digest, places: new Map(way.places), away: new Set(takenDown(judgements, task, way)) });
    say(`${capital(way.name)} is being tried; ${together ? 'the others see which' : 'nobody else sees it yet'}`);
  };
  const take = (way: Arrangement): void => {
    const done = act(
      show,
      () => {
        const hung = takeArrangement(judgements, task, way);
        if (!gathering || name.trim() === '') return hung;
        const group = commands.gather(documents, { name: name.trim(), intent: '', focal }, members);
        return { name: hung.name, changes: [...hung.changes, ...group.changes] };
      },
      `${way.places.length} arranged: ${way.name}`,
    );
    if (!done) return;
    closeFoot();
    choose(members);
  };
  const decline = (way: Arrangement): void => {
    if (on === way.digest) trial.set(null);
    act(
      show,
      declineArrangement(task.ground, way, wordOf(show.me.person, new Date())),
      `${capital(way.name)} declined: it stays away until the pool or the surface changes`,
    );
  };

  return (
    <section className="candidates" aria-label="Ways to arrange them">
      <div className="candidates-about">
        <h2>{capital(KIND_WORDS[task.wish.kind])}</h2>
        <p className="t1">
          {members.filter((pieceId) => pieceId !== focal).length}
          {focal === null ? '' : ` round ${judgements.nameOf(focal)}`}, {surfaceName(documents, task.wish.surface)}.
          True scale. None is applied until it is taken; one undo takes it back.
        </p>
        {changed ? (
          <p className="t1 b" role="status">
            The pool or the surface has changed since.{' '}
            <button type="button" onClick={() => openCandidates({ ...asked.wish })}>
              arrange anew
            </button>
          </p>
        ) : null}
        {arranging.state === 'working' ? (
          <p className="t1">
            <label htmlFor={`${id}-progress`}>Arranging</label>{' '}
            <progress id={`${id}-progress`} value={arranging.share} max={1} />{' '}
            <button type="button" onClick={stop}>
              stop
            </button>
          </p>
        ) : null}
        {arranging.state === 'failed' ? (
          <p className="t1 b" role="alert">
            No way was found: {arranging.what}. Nothing has moved.
          </p>
        ) : null}
        {done && offered.length === 0 ? (
          <p className="t1 b" role="status">
            {arranging.state === 'stopped'
              ? 'Stopped before a way was found. Nothing has moved.'
              : `${shown.length + declined.size === 0 ? 'No way is found' : 'No other way is found'}: the room there is does not hold them with these settings, or what they make is not what it is called.`}
          </p>
        ) : null}
        <div className="candidates-gather t1">
          <label>
            <input type="checkbox" checked={together} onChange={(event) => setTogether(event.target.checked)} /> the
            others see these ways
          </label>
          {done && !gathered ? (
            <label>
              <input type="checkbox" checked={gathering} onChange={(event) => setGathering(event.target.checked)} />{' '}
              gather them as a vignette
            </label>
          ) : null}
          {gathering ? (
            <input aria-label="Name of the vignette" value={name} onChange={(event) => setName(event.target.value)} />
          ) : null}
        </div>
        {declined.size === 0 || !show.may('talk') ? null : (
          <p className="t1">
            {declined.size} declined {declined.size === 1 ? 'stays' : 'stay'} away.{' '}
            <button
              type="button"
              onClick={() => act(show, offerAgain(documents, task.ground), 'declined ways are offered again')}
            >
              offer again
            </button>
          </p>
        )}
        <p className="candidates-commands t1">
          {done && arranging.found.length > 0 ? (
            <button
              type="button"
              onClick={() => {
                trial.set(null);
                setShown([...shown, ...arranging.found.map(({ digest }) => digest)]);
                setRound(round + 1);
              }}
            >
              three others
            </button>
          ) : null}
          <button type="button" onClick={closeFoot}>
            back to the unplaced
          </button>
        </p>
      </div>
      <ul className="candidates-list">
        {offered.map((way) => (
          <CandidateCard
            key={way.digest}
            {...{ task, way, version }}
            on={on === way.digest}
            lookers={others.filter(({ presence }) => presence.arranging?.tried === way.digest)}
            tryOn={() => tryOn(way)}
            putBack={() => trial.set(null)}
            take={show.may('hang') ? () => take(way) : null}
            decline={show.may('talk') ? () => decline(way) : null}
          />
        ))}
      </ul>
    </section>
  );
}
