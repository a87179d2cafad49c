/** The card of several things: hang them in a line, centre them, gather them, or hang them round one of them. */
import { line } from '@enfilade/arrangement/line';
import * as commands from '@enfilade/shared/commands';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { act } from './acting.ts';
import { centredMoveOf } from './gap-moves.ts';
import { HaloForm } from './halo-form.tsx';
import { boxOn, hangable, largestOf, leftToRight, wallFor } from './hang-targets.ts';
import { LengthField } from './length-field.tsx';
import { capital, surfaceName } from './surface-names.ts';
import { VignetteForm } from './vignette-form.tsx';
import './selection-card.css';

const NAMES_SHOWN = 8;

export function SelectionCard({ pieceIds, view }: { readonly pieceIds: readonly PieceId[]; readonly view: View }) {
  const show = useShow();
  const { judgements, documents } = show;
  useRoots('places', 'objects', 'memberOf', 'vignettes', 'settings');
  const [form, setForm] = useState<'gather' | 'halo' | null>(null);
  const frozen = !show.may('hang');
  const wall = wallFor(judgements, pieceIds, view);
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
          {vignette === undefined ? '' : `, of ${vignette.name}`}
        </p>
        <ul className="selection-names">
          {pieceIds.slice(0, NAMES_SHOWN).map((pieceId) => (
            <li key={pieceId}>
              <button type="button" onClick={() => choose([pieceId])}>
                {judgements.nameOf(pieceId)}
              </button>
            </li>
          ))}
          {pieceIds.length > NAMES_SHOWN ? <li>and {pieceIds.length - NAMES_SHOWN} more</li> : null}
        </ul>
      </header>
      {frozen ? null : (
        <>
          {wall === null ? (
            <p className="t1 q selection-hint">Face a wall to hang them on it.</p>
          ) : (
            <LineTools pieceIds={pieceIds} wall={wall} />
          )}
          <hr className="rule" />
          <p className="object-commands">
            <button type="button" aria-expanded={form === 'gather'} onClick={() => setForm('gather')}>
              gather into a vignette
            </button>
            {wall === null ? null : (
              <button type="button" aria-expanded={form === 'halo'} onClick={() => setForm('halo')}>
                hang around…
              </button>
            )}
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
          {form === 'halo' && wall !== null ? (
            <HaloForm pieceIds={hangable(judgements, pieceIds)} wall={wall} leave={() => setForm(null)} />
          ) : null}
        </>
      )}
    </article>
  );
}

function LineTools({ pieceIds, wall }: { readonly pieceIds: readonly PieceId[]; readonly wall: string }) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  const [gapMm, setGapMm] = useState(judgements.setting('gapMm'));
  const [wrong, setWrong] = useState<string | null>(null);
  const surface = judgements.where.wallOf(wall);
  if (surface === null) return null;
  const inLine = (): void => {
    const order = leftToRight(judgements, hangable(judgements, pieceIds), wall);
    const made = line({
      surfaceWidthMm: surface.lengthMm,
      centreLineMm: judgements.setting('centreLineMm'),
      widthsMm: order.map((pieceId) => judgements.sizeOf(pieceId)?.widthMm ?? 0),
      gapMm,
    });
    const issue = made.issues[0];
    setWrong(
      issue === undefined
        ? null
        : `Longer than the wall by ${lengthText(Number(issue.value), unit)}: take a smaller gap or fewer.`,
    );
    if (issue !== undefined) return;
    const places = new Map<PieceId, Place>(
      order.map((pieceId, index) => {
        const at = made.places[index] ?? { xMm: 0, yMm: 0 };
        const lift =
          judgements.where.placeOf(pieceId)?.[0] === wall ? (judgements.where.placeOf(pieceId)?.[3] ?? 0) : 0;
        return [pieceId, [wall, at.xMm, at.yMm, lift, 0]];
      }),
    );
    act(show, () => commands.place(documents, places, 'hang in a line'), `${order.length} hung in a line`);
  };
  const centred = (): void => {
    const here = pieceIds.flatMap((pieceId) => {
      const box = boxOn(judgements, pieceId, wall);
      return box === null ? [] : [{ pieceId, box }];
    });
    const dxMm = centredMoveOf(
      here.map(({ box }) => box),
      surface.lengthMm / 2,
    );
    const made = () => ({
      ...commands.move(
        documents,
        here.map(({ pieceId }) => pieceId),
        { dxMm, dyMm: 0 },
      ),
      name: 'centre the group on the wall',
    });
    act(show, made, 'the group is centred on the wall');
  };
  const anyHere = pieceIds.some((pieceId) => boxOn(judgements, pieceId, wall) !== null);
  return (
    <>
      <hr className="rule" />
      <p className="t1 q">{capital(surfaceName(documents, wall))}</p>
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
      <p className="object-commands">
        <button type="button" onClick={inLine}>
          hang in a line
        </button>
        {anyHere ? (
          <button type="button" onClick={centred}>
            centre the group on the wall
          </button>
        ) : null}
      </p>
      {wrong === null ? null : (
        <p className="t1 b" role="alert">
          {wrong}
        </p>
      )}
    </>
  );
}
