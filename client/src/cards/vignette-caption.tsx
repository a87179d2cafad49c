/** The caption of one vignette, like a museum label beside it: name, intent, counts, whose word it has. */

import { type ChangeWords, piecesIn } from '@enfilade/shared/change-sentences';
import * as commands from '@enfilade/shared/commands';
import type { VignetteStanding } from '@enfilade/shared/judgements';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { changeWordsOf } from '../sheets/vignette-words.ts';
import { StateMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { act } from './acting.ts';
import { dayText } from './day-text.ts';
import { overtakenIn, ToldSentences } from './overtaken.tsx';
import { SignOff } from './sign-off.tsx';
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
  const [editing, setEditing] = useState(false);
  const { id, vignette, members } = here;
  const standing = judgements.standingOf(id);
  if (standing === null) return null;
  const words = { ...changeWordsOf(judgements, unit), length: (mm: number) => lengthText(mm, unit) };
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
      <Words standing={standing} words={words} />
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
        {members.length > 0 ? <SignOff vignetteId={id} name={vignette.name} standing={standing} /> : null}
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
      <RemarksBlock about={{ kind: 'vignette', vignetteId: id }} what="this vignette" />
    </section>
  );
}

function Words({ standing, words }: { readonly standing: VignetteStanding; readonly words: ChangeWords }) {
  const unsigned = standing.state === 'proposed' ? 'proposed' : 'drafted';
  return (
    <ul className="caption-words">
      {standing.signatures.length === 0 ? (
        <li>
          <StateMark state={unsigned} sizePx={11} />
          <span>{unsigned === 'proposed' ? 'Proposed: an open proposal would change it' : 'Drafted'}</span>
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
      {overtakenIn(standing, words).map(({ names, sentences }) => (
        <li key={names} className="caption-changed">
          <StateMark state="changed since" sizePx={11} />
          <span>
            <b className="b">Changed since</b> {names} signed: <ToldSentences sentences={sentences} />
          </span>
        </li>
      ))}
    </ul>
  );
}
