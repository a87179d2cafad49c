/** The card of several things: hang them in a line, centre them, gather them, or have them arranged. */
import * as commands from '@enfilade/shared/commands';
import type { PieceId } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';
import { useState } from 'react';
import { useStore } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { act } from './acting.ts';
import { AlignTools } from './align-tools.tsx';
import { arrangeAsked } from './arrange-asked.ts';
import { ArrangeForm } from './arrange-form.tsx';
import { largestOf, levelFor, roomFor, wallFor } from './hang-targets.ts';
import { LengthField } from './length-field.tsx';
import { LineTools } from './line-tools.tsx';
import { PinCommand } from './pin-command.tsx';
import { SelectionNames } from './selection-names.tsx';
import { VignetteForm } from './vignette-form.tsx';
import './selection-card.css';

export function SelectionCard({ pieceIds, view }: { readonly pieceIds: readonly PieceId[]; readonly view: View }) {
  const show = useShow();
  const { judgements, documents } = show;
  useRoots('places', 'objects', 'memberOf', 'vignettes', 'settings');
  const [gapMm, setGapMm] = useState(judgements.setting('gapMm'));
  const asked = useStore(arrangeAsked) === pieceIds.join();
  const [own, setForm] = useState<'gather' | 'arrange' | null>(null);
  const form = asked ? 'arrange' : own;
  const frozen = !show.may('hang');
  const wall = wallFor(judgements, pieceIds, view);
  const level = levelFor(judgements, pieceIds, view);
  const placed = pieceIds.filter((pieceId) => judgements.where.placeOf(pieceId) !== null).length;
  const inOne = new Set(pieceIds.map((pieceId) => documents.get('memberOf', pieceId)));
  const only = inOne.size === 1 ? [...inOne][0] : undefined;
  const vignette = only === undefined ? undefined : documents.get('vignettes', only);
  return (
    <article className="card selection-card" aria-label={`${pieceIds.length} selected`}>
      <header>
        <h2>{pieceIds.length} selected</h2>
        <p className="t1 q">
          {placed === pieceIds.length ? 'all placed' : placed === 0 ? 'none placed yet' : `${placed} placed`}
          {vignette === undefined ? '' : `, all in ${vignette.name}`}
        </p>
        <SelectionNames pieceIds={pieceIds} />
      </header>
      {frozen ? null : (
        <>
          <hr className="rule" />
          {level === null ? null : (
            <>
              <p className="t1 q">{surfaceName(documents, level)}</p>
              <LengthField
                label="Gap between them"
                mm={gapMm}
                first
                leastMm={0}
                take={(mm) => {
                  setGapMm(mm);
                  return null;
                }}
              />
            </>
          )}
          {wall === null ? null : <LineTools pieceIds={pieceIds} wall={wall} gapMm={gapMm} />}
          {level === null ? null : <AlignTools key={level} pieceIds={pieceIds} surface={level} gapMm={gapMm} />}
          {wall === null ? <p className="t1 q selection-hint">Face a wall to hang them on it.</p> : null}
          <hr className="rule" />
          <p className="object-commands">
            <button
              type="button"
              aria-expanded={form === 'gather'}
              onClick={() => {
                arrangeAsked.set(null);
                setForm('gather');
              }}
            >
              gather into a vignette
            </button>
            <button type="button" aria-expanded={form === 'arrange'} onClick={() => setForm('arrange')}>
              arrange…
            </button>
            <PinCommand pieceIds={pieceIds} />
            {placed === 0 ? null : (
              <button
                type="button"
                onClick={() => act(show, commands.unplace(documents, pieceIds), `${placed} put back to the unplaced`)}
              >
                put all back
              </button>
            )}
          </p>
          {form === 'gather' ? (
            <VignetteForm
              name=""
              intent=""
              focal={largestOf(pieceIds, (id) => judgements.sizeOf(id)?.heightMm ?? 0)}
              pieces={pieceIds}
              done="gather"
              take={(words) => {
                if (act(show, commands.gather(documents, words, pieceIds), `${words.name} gathered`)) setForm(null);
              }}
              leave={() => setForm(null)}
            />
          ) : null}
          {form === 'arrange' ? (
            <ArrangeForm
              {...{ pieceIds, wall }}
              roomId={roomFor(judgements, pieceIds, view)}
              leave={() => {
                arrangeAsked.set(null);
                setForm(null);
              }}
            />
          ) : null}
        </>
      )}
    </article>
  );
}
