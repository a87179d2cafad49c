/** The caption of one vignette, like a museum label beside it: name, intent, counts, whose word it has. */

import { changeText, piecesIn } from '@enfilade/shared/change-sentences';
import * as commands from '@enfilade/shared/commands';
import type { VignetteStanding } from '@enfilade/shared/judgements';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { maySignOff } from '@enfilade/shared/seats';
import { onName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { StateMark } from '../shell/marks.tsx';
import { useSaving, useShow } from '../sync/hooks.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { act } from './acting.ts';
import { dayText } from './day-text.ts';
import { VignetteForm } from './vignette-form.tsx';
import type { VignetteHere } from './vignettes-on.ts';
import './vignette-caption.css';

/** '41 of 60 printing blocks, one hanging': members by record, with how many of them are placed. */
function countsText(here: VignetteHere, titleOf: (id: string) => string, placed: (id: PieceId) => boolean): string {
  const byObject = new Map<string, PieceId[]>();
  for (const pieceId of here.members) {
    const list = byObject.get(objectOfPiece(pieceId)) ?? [];
    list.push(pieceId);
    byObject.set(objectOfPiece(pieceId), list);
  }
  const several = [...byObject].filter(([, pieces]) => pieces.length > 1);
  const single = [...byObject].filter(([, pieces]) => pieces.length === 1);
  const parts = several.map(([id, pieces]) => {
    const up = pieces.filter(placed).length;
    return `${up === pieces.length ? up : `${up} of ${pieces.length}`} of ${titleOf(id)}`;
  });
  if (single.length > 0) parts.push(single.length === 1 ? 'one work' : `${single.length} works`);
  return parts.join(', ');
}

export function VignetteCaption({ here, alone }: { readonly here: VignetteHere; readonly alone: boolean }) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  const saving = useSaving();
  const [editing, setEditing] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const { id, vignette, members } = here;
  const standing = judgements.standingOf(id);
  if (standing === null) return null;
  const changed = changeText(standing.changes, {
    nameOf: (pieceId) => judgements.nameOf(pieceId),
    surfaceName: (on) => onName(judgements, on),
    length: (mm) => lengthText(mm, unit),
    onOf: (pieceId) => documents.get('places', pieceId)?.[0] ?? null,
  });
  const mine = standing.signatures.find(({ personId }) => personId === show.me.person.id);
  const signed = mine !== undefined && mine.changes.length === 0;
  const signOff = async (): Promise<void> => {
    setTrouble(null);
    const answer = await show.send('sign-off', { vignetteId: id, digest: standing.digest });
    if (answer.ok) say(`${vignette.name} signed off by ${show.me.person.name}`);
    else {
      setTrouble(answer.what);
      say(answer.what);
    }
  };
  const Heading = alone ? 'h1' : 'h2';
  return (
    <section className="vignette-caption" aria-label={vignette.name}>
      <Heading>{vignette.name}</Heading>
      {vignette.intent === '' ? null : <p className="cap">{vignette.intent}</p>}
      {vignette.focal === null ? null : <p className="t1">Round {judgements.nameOf(vignette.focal)}</p>}
      <p className="t1">
        {countsText(
          here,
          (objectId) => documents.get('objects', objectId)?.title ?? '',
          (pieceId) => judgements.where.placeOf(pieceId) !== null,
        )}
      </p>
      <Words standing={standing} changed={changed} />
      {editing ? (
        <VignetteForm
          name={vignette.name}
          intent={vignette.intent}
          focal={vignette.focal}
          pieces={members}
          done="set"
          take={(fields) => {
            const name = `describe ${fields.name}`;
            if (act(show, { ...commands.describe(id, fields), name }, `${fields.name} described`)) setEditing(false);
          }}
          leave={() => setEditing(false)}
        />
      ) : null}
      <p className="caption-commands">
        {standing.changes.length > 0 && piecesIn(standing.changes).length > 0 ? (
          <button type="button" onClick={() => choose(piecesIn(standing.changes))}>
            show it
          </button>
        ) : null}
        {show.layerId === null && maySignOff(show.me.person.role) && !signed && members.length > 0 ? (
          <button type="button" disabled={saving.kind !== 'saved'} onClick={() => void signOff()}>
            sign off as it stands
          </button>
        ) : null}
        <button type="button" onClick={() => choose(members)}>
          select all
        </button>
        {show.may('hang') ? (
          <>
            <button type="button" aria-expanded={editing} onClick={() => setEditing(!editing)}>
              {editing ? 'leave as it was' : 'reword'}
            </button>
            <button
              type="button"
              onClick={() =>
                act(show, commands.ungroup(documents, id), `${vignette.name} ungrouped; its pieces stay where they are`)
              }
            >
              ungroup
            </button>
          </>
        ) : null}
      </p>
      {trouble === null ? null : (
        <p className="t1 b" role="alert">
          Not signed: {trouble}
        </p>
      )}
      <RemarksBlock about={{ kind: 'vignette', vignetteId: id }} what={vignette.name} />
    </section>
  );
}

function Words({ standing, changed }: { readonly standing: VignetteStanding; readonly changed: string }) {
  const overtaken = standing.signatures.filter(({ changes }) => changes.length > 0);
  return (
    <ul className="caption-words">
      {standing.signatures.length === 0 ? (
        <li>
          <StateMark state="drafted" sizePx={11} />
          <span>Drafted</span>
        </li>
      ) : null}
      {standing.signatures.map((signature) => (
        <li key={signature.personId}>
          <StateMark state={signature.changes.length === 0 ? 'agreed' : 'changed since'} sizePx={11} />
          <span>
            {signature.name}, {dayText(signature.at)}
          </span>
        </li>
      ))}
      {standing.waitingFor.map((role) => (
        <li key={role}>
          <StateMark state="drafted" sizePx={11} />
          <span>the {role}’s word waited for</span>
        </li>
      ))}
      {overtaken.length === 0 ? null : (
        <li className="caption-changed">
          <StateMark state="changed since" sizePx={11} />
          <span>
            <b className="b">Changed since</b>{' '}
            {overtaken.length === 1 ? `${overtaken[0]?.name} signed` : `${overtaken.length} signed`}: {changed}
          </span>
        </li>
      )}
    </ul>
  );
}
