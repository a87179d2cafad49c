/** The deck along the foot, darkest first: moving along it tries each paint on the wall; a press paints the wall. */

import type { LabD65 } from '@enfilade/colour/lab';
import { isInScreenGamut } from '@enfilade/colour/paints';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import * as commands from '@enfilade/shared/commands';
import { paintRecordLrvOf } from '@enfilade/shared/paint-records';
import type { Paint, SurfaceId } from '@enfilade/shared/schema';
import { surfaceParts } from '@enfilade/shared/schema';
import { shortSurfaceName, surfaceName } from '@enfilade/shared/surface-names';
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import { SampleBlock } from '../deck/sample-block.tsx';
import { paintTrial, useStore } from '../selection.ts';
import { closeFoot } from '../shell/foot.ts';
import { ReadingMark } from '../shell/marks.tsx';
import { STRIP_SIDES } from '../shell/strip-plan.ts';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import { PaintRemarks, PaintRemarksCommand, usePaintRemarks } from '../talk/paint-remarks.tsx';
import { toAddress } from '../view-address.ts';
import { act } from './acting.ts';
import { PaintForm } from './paint-form.tsx';
import { READING_WORDS, readingsOn } from './reading-counts.tsx';
import './paint-drawer.css';

interface Chip {
  readonly id: string;
  readonly paint: Paint;
  readonly lrv: number;
}

export function PaintDrawer({ surface }: { readonly surface: SurfaceId }) {
  const show = useShow();
  const { documents, judgements } = show;
  useRoots('deck', 'paints', 'places', 'objects', 'rooms');
  usePictures();
  const tried = useStore(paintTrial);
  const [all, setAll] = useState(false);
  const [typing, setTyping] = useState(false);
  const [samples, setSamples] = useState(false);
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => () => paintTrial.set(null), []);

  const version = documents.version('deck');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the deck
  const chips = useMemo(
    () =>
      [...documents.all('deck')]
        .map(([id, paint]): Chip => ({ id, paint, lrv: paintRecordLrvOf(paint).lrv }))
        .sort((a, b) => a.lrv - b.lrv || (`${a.paint.order} ${a.id}` < `${b.paint.order} ${b.id}` ? -1 : 1)),
    [documents, version],
  );
  const now = judgements.paintOf(surface);
  const remarks = usePaintRemarks(now?.id ?? null);
  const room = surfaceParts(surface)?.roomId ?? '';
  const tryOn = (paint: { name: string; lab: LabD65 }): void =>
    paintTrial.set({ surface, name: paint.name, lab: paint.lab });
  const targets = all ? STRIP_SIDES.map((side) => `${room}:${side}`) : [surface];
  const repaint = (paintId: string, name: string): void => {
    const changes = targets.flatMap((target) => commands.repaint(target, paintId).changes);
    const where = all ? 'all four walls' : shortSurfaceName(documents, surface);
    paintTrial.set(null);
    act(show, { name: `paint ${where} ${name}`, changes }, `${where} painted ${name}`);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>): void => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const buttons = [...(list.current?.querySelectorAll('button') ?? [])];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    buttons[Math.min(buttons.length - 1, Math.max(0, at + step))]?.focus();
  };

  return (
    <section className="deck" aria-label={`Paint of ${surfaceName(documents, surface)}`}>
      <div className="deck-about">
        <h2>The deck</h2>
        <p className="t1">{chips.length} paints, darkest first</p>
        <Effect surface={surface} lab={tried?.lab ?? now?.lab ?? null} name={tried?.name ?? null} />
        <p className="deck-commands t1">
          <label>
            <input type="checkbox" checked={all} onChange={(event) => setAll(event.target.checked)} /> all four walls
          </label>
          <button type="button" aria-expanded={typing} onClick={() => setTyping(!typing)}>
            type L* a* b*
          </button>
          {now === null ? null : <PaintRemarksCommand name={now.name} remarks={remarks} />}
          {now === null ? null : (
            <button type="button" aria-expanded={samples} onClick={() => setSamples(!samples)}>
              {samples ? 'back to the chips' : `samples of ${now.name}`}
            </button>
          )}
          <a href={toAddress({ sheet: 'deck', paintId: now?.id ?? null })}>the whole deck</a>
          <button type="button" onClick={closeFoot}>
            fold away
          </button>
        </p>
      </div>
      {typing ? (
        <PaintForm
          tryOn={tryOn}
          take={(paint) => {
            const added = commands.addPaint(documents, paint);
            if (!act(show, added)) return;
            repaint(added.id, paint.name);
            setTyping(false);
          }}
          leave={() => {
            paintTrial.set(null);
            setTyping(false);
          }}
        />
      ) : remarks.open && now !== null ? (
        <PaintRemarks id={now.id} name={now.name} />
      ) : samples && now !== null ? (
        <div className="deck-samples">
          <SampleBlock paintId={now.id} name={now.name} />
        </div>
      ) : chips.length === 0 ? (
        <p className="cap deck-none">No paint in the deck yet. Type one as L* a* b*.</p>
      ) : (
        <ul ref={list} className="deck-chips" onKeyDown={onKeyDown} onPointerLeave={() => paintTrial.set(null)}>
          {chips.map(({ id, paint, lrv }) => (
            <li key={id}>
              <button
                type="button"
                className={`bare chip${tried?.name === paint.name ? ' chip-tried' : ''}`}
                aria-label={`${paint.name}, LRV ${Math.round(lrv)}${now?.id === id ? ', on the wall now' : ''}${isInScreenGamut(paint.lab) ? '' : ', beyond this screen'}`}
                aria-pressed={now?.id === id}
                onPointerEnter={() => tryOn(paint)}
                onFocus={() => tryOn(paint)}
                onBlur={() => paintTrial.set(null)}
                onClick={() => repaint(id, paint.name)}
              >
                <i style={{ background: hexFromLabD65(paint.lab) }} />
                <span className="chip-name">{paint.name}</span>
                <span className="chip-lrv">
                  <b className="b">{Math.round(lrv)}</b>
                  <span>{now?.id === id ? 'now' : tried?.name === paint.name ? 'trial' : ''}</span>
                </span>
                {isInScreenGamut(paint.lab) ? null : <span className="chip-beyond">beyond this screen</span>}
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** How many works would be lost, weak, hold or carry. */
function Effect({ surface, lab, name }: { surface: SurfaceId; lab: LabD65 | null; name: string | null }) {
  const { judgements } = useShow();
  if (lab === null) return null;
  const readings = readingsOn(judgements, surface, lab);
  return (
    <p className="deck-effect t1">
      <span>{name === null ? 'As it is' : `On ${name}`}:</span>
      {READING_WORDS.map((word) => (
        <span key={word} className="word">
          <ReadingMark word={word} sizePx={12} />
          {readings.get(word)?.length ?? 0} {word}
        </span>
      ))}
    </p>
  );
}
