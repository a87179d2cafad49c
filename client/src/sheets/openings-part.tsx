/** Doorways and windows of a room: each can be opened, corrected, taken away; one more can be typed in. */
import * as commands from '@enfilade/shared/commands';
import { type Opening, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { sizeText } from '@enfilade/space/lengths';
import type { WallSide } from '@enfilade/space/room';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { OpeningFields } from './opening-fields.tsx';
import { openingTrouble, wallTextOf } from './room-acts.ts';

interface OpeningsPartProps {
  readonly roomId: RoomId;
  readonly faced: WallSide;
  readonly frozen: boolean;
}

export function OpeningsPart({ roomId, faced, frozen }: OpeningsPartProps) {
  const show = useShow();
  const { documents } = show;
  const { unit } = usePreferences();
  const [draft, setDraft] = useState<Opening | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const here = [...documents.all('openings')].filter(([, { sides }]) =>
    sides.some(({ surface }) => surfaceParts(surface)?.roomId === roomId),
  );
  const correct = (id: string, opening: Opening, fields: Partial<Opening>): string | null => {
    const trouble = openingTrouble(documents, id, { ...opening, ...fields }, unit);
    if (trouble !== null) return trouble;
    return act(show, commands.correctOpening(id, fields), 'opening corrected') ? null : 'cannot be set just now';
  };
  const begin = (kind: Opening['kind']): void =>
    setDraft({
      kind,
      name: kind,
      widthMm: kind === 'doorway' ? 1200 : 1400,
      heightMm: kind === 'doorway' ? 2200 : 1400,
      sillMm: kind === 'doorway' ? 0 : 900,
      sides: [{ surface: `${roomId}:${faced}`, xMm: 0 }],
    });
  const add = (): void => {
    if (draft === null) return;
    const trouble = openingTrouble(documents, 'new', draft, unit);
    setWrong(trouble === null ? null : `The ${draft.kind} ${trouble}.`);
    if (trouble === null && act(show, commands.addOpening(draft), `${draft.kind} added`)) setDraft(null);
  };
  return (
    <section className="card">
      <h2>Doorways and windows</h2>
      {here.length === 0 ? <p className="cap">None yet.</p> : null}
      {here.map(([id, opening]) => (
        <details key={id} className="measure-part">
          <summary>
            <span className="cap">{opening.name || opening.kind}</span>,{' '}
            {sizeText(opening.heightMm, opening.widthMm, null, unit)},{' '}
            {opening.sides.map(({ surface }) => wallTextOf(documents, surface)).join(' and ')}
          </summary>
          <OpeningFields
            roomId={roomId}
            opening={opening}
            frozen={frozen}
            set={(fields) => correct(id, opening, fields)}
          />
          {frozen ? null : (
            <button
              type="button"
              onClick={() =>
                act(show, commands.remove('openings', id, `a ${opening.kind}`), `${opening.kind} taken away`)
              }
            >
              take it away
            </button>
          )}
        </details>
      ))}
      {draft === null ? null : (
        <div className="measure-draft">
          <OpeningFields
            roomId={roomId}
            opening={draft}
            frozen={false}
            set={(fields) => {
              setDraft((now) => (now === null ? null : { ...now, ...fields }));
              setWrong(null);
              return null;
            }}
          />
          {wrong === null ? null : (
            <p className="b t1" role="alert">
              {wrong}
            </p>
          )}
          <p className="measure-commands">
            <button type="button" className="act main" onClick={add}>
              Add the {draft.kind}
            </button>
            <button type="button" onClick={() => setDraft(null)}>
              leave it
            </button>
          </p>
        </div>
      )}
      {frozen || draft !== null ? null : (
        <p className="measure-commands">
          <button type="button" onClick={() => begin('doorway')}>
            add a doorway
          </button>
          <button type="button" onClick={() => begin('window')}>
            add a window
          </button>
        </p>
      )}
    </section>
  );
}
