/** What would follow if the paint on trial were taken, and the ways to take it: as a fact, or as a proposal. */
import type { DeskWall } from '@enfilade/shared/colour-desk';
import { layerOfPaint, WORST_FIRST } from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { type Effects, effectsOf } from '@enfilade/shared/proposal-effects';
import type { ProposedMove } from '@enfilade/shared/proposal-moves';
import { layerOfProposal, propose, wordOf } from '@enfilade/shared/proposals';
import { surfaceName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { type FormEvent, useEffect, useId, useMemo, useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { ReadingMark, StateMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { effectLines } from '../talk/effect-sentences.ts';
import { go } from '../view-address.ts';
import { useDeskLight } from './desk-light.tsx';
import { held, letGo, type TrialPaint, useTrialOn } from './desk-trial.ts';
import { useRested } from './rested.ts';
import '../talk/propose-form.css';
import './trial-taken.css';

export function TrialTaken({ wall, version }: { readonly wall: DeskWall; readonly version: string }) {
  const show = useShow();
  const tried = useTrialOn(wall.surface);
  const holding = useStore(held).get(wall.surface);
  const [proposing, setProposing] = useState(false);
  const id = tried?.id ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another wall or paint is another proposal
  useEffect(() => setProposing(false), [wall.surface, holding]);
  if (tried === null) {
    return (
      <section className="desk-taken" aria-label="If the trial is taken">
        <p className="cap">
          Go along the deck to see every work on another paint. A press holds it; the hang stays as it is.
        </p>
      </section>
    );
  }
  const same = id === wall.paint.id;
  const isHeld = id !== null && holding === id;
  return (
    <section className="desk-taken" aria-label="If the trial is taken">
      {!isHeld || same ? (
        isHeld ? (
          <LetGo wall={wall} />
        ) : (
          <p className="t1">Press it in the deck to hold it here.</p>
        )
      ) : proposing ? (
        <ProposePaint wall={wall} paint={tried} leave={() => setProposing(false)} />
      ) : (
        <p className="desk-taken-commands">
          {show.may('hang') ? (
            <button type="button" className="act main" onClick={() => repaint(show, wall, tried)}>
              {show.layerId === null ? 'Repaint' : 'Repaint it here'}: {tried.name}
            </button>
          ) : null}
          {show.may('talk') && show.layerId === null ? (
            <button type="button" className="act" onClick={() => setProposing(true)}>
              Propose {tried.name}…
            </button>
          ) : null}
          <LetGo wall={wall} />
        </p>
      )}
      <h2>If {tried.name} is taken</h2>
      {same ? (
        <p className="t1">It is what the wall is painted now.</p>
      ) : (
        <Lines wall={wall} id={id} version={version} />
      )}
      <p className="t1">A screen is no proof: judge the drawdown on the wall, under its lamp.</p>
    </section>
  );
}

function LetGo({ wall }: { readonly wall: DeskWall }) {
  const drop = (): void => {
    letGo(wall.surface);
    say('The trial is let go.');
  };
  return (
    <button type="button" className="t1" onClick={drop}>
      let it go
    </button>
  );
}

function repaint(show: ShowSession, wall: DeskWall, paint: TrialPaint): void {
  const name = surfaceName(show.documents, wall.surface);
  const { changes } = commands.repaint(wall.surface, paint.id);
  if (act(show, { name: `paint the ${wall.wallName} ${paint.name}`, changes }, `${name} is painted ${paint.name}`)) {
    letGo(wall.surface);
  }
}

/** What changes its word, and what would be changed since it was signed. */
function Lines(props: { readonly wall: DeskWall; readonly id: string | null; readonly version: string }) {
  const { wall, version } = props;
  const { documents } = useShow();
  const { judgements, judgementsOf } = useDeskLight();
  const { unit } = usePreferences();
  const id = useRested(props.id);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the judgements say
  const lines = useMemo(() => {
    if (id === null) return null;
    const laid = documents.laidOver(layerOfPaint(wall.surface, id));
    const repainted = { about: { kind: 'wall', surface: wall.surface }, standing: 'open' } as ProposedMove;
    const then = judgementsOf(laid);
    const effects: Effects = effectsOf(judgements, then, [repainted]);
    then.where.close();
    laid.close();
    const readings = [...effects.readings].sort((a, b) => rank(a.to) - rank(b.to) || (a.pieceId < b.pieceId ? -1 : 1));
    return effectLines(
      { ...effects, readings },
      {
        nameOf: (pieceId) => judgements.nameOf(pieceId),
        titleOf: (pieceId) => judgements.objectOf(pieceId)?.title ?? 'a record that is gone',
        vignetteName: (key) => documents.get('vignettes', key)?.name ?? 'a vignette that is gone',
        length: (mm) => lengthText(mm, unit),
        gapMm: judgements.setting('gapMm'),
      },
    );
  }, [judgements, judgementsOf, documents, wall.surface, id, version, unit]);
  if (lines === null) return null;
  if (lines.length === 0) return <p className="t1">No work on this wall changes its word.</p>;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.about + line.rest}>
          {line.mark.kind === 'reading' ? <ReadingMark word={line.mark.word} /> : <StateMark state="changed since" />}
          <span className="t1">
            <i className="it">{line.about}</i>
            {line.rest}
          </span>
        </li>
      ))}
    </ul>
  );
}

function rank(word: (typeof WORST_FIRST)[number] | null): number {
  return word === null ? WORST_FIRST.length : WORST_FIRST.indexOf(word);
}

/** Begins a proposal with this repaint in it, in one act; whoever begins it then stands in it. */
function ProposePaint(props: { readonly wall: DeskWall; readonly paint: TrialPaint; readonly leave: () => void }) {
  const { wall, paint, leave } = props;
  const show = useShow();
  const id = useId();
  const [title, setTitle] = useState(`${paint.name} on the ${wall.wallName}`);
  const [reason, setReason] = useState('');
  const wrong = title.trim() === '';
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (wrong) return;
    const made = propose({ title: title.trim(), reason: reason.trim() }, wordOf(show.me.person, new Date()));
    const repainted = layerOfProposal(show.documents, made.id).changesFor(
      commands.repaint(wall.surface, paint.id).changes,
    );
    const whole = { name: made.name, changes: [...made.changes, ...repainted] };
    if (!act(show, whole, `Proposed: ${title.trim()}. The hang stays as it is.`)) return;
    letGo(wall.surface);
    go({ sheet: 'wall', surface: wall.surface }, { kind: 'proposal', id: made.id });
  };
  return (
    <form className="propose-form" onSubmit={submit}>
      <label htmlFor={`${id}-title`}>Title</label>
      <input
        id={`${id}-title`}
        value={title}
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: the form opens because the person asked to write in it
        autoFocus
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setTitle(event.target.value)}
      />
      {wrong ? (
        <p id={`${id}-wrong`} role="alert" className="b">
          It needs a title, so that others can speak of it.
        </p>
      ) : null}
      <label htmlFor={`${id}-reason`}>Reason, in your words</label>
      <textarea id={`${id}-reason`} rows={2} value={reason} onChange={(event) => setReason(event.target.value)} />
      <p className="desk-taken-commands">
        <button type="submit" className="act main">
          Propose {paint.name}
        </button>
        <button type="button" onClick={leave}>
          not now
        </button>
      </p>
    </form>
  );
}
