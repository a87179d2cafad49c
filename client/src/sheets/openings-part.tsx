/** Doorways and windows of a room. */
import * as commands from '@enfilade/shared/commands';
import { type Opening, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { sizeText } from '@enfilade/space/lengths';
import type { WallSide } from '@enfilade/space/room';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { EditableList, type RowKind } from './editable-list.tsx';
import { OpeningFields } from './opening-fields.tsx';
import { openingTrouble, wallTextOf } from './room-acts.ts';

interface PartProps {
  readonly roomId: RoomId;
  readonly faced: WallSide;
  readonly frozen: boolean;
}

export function OpeningsPart({ roomId, faced, frozen }: PartProps) {
  const show = useShow();
  const { documents } = show;
  const { unit } = usePreferences();
  const rows = [...documents.all('openings')].filter(([, { sides }]) =>
    sides.some(({ surface }) => surfaceParts(surface)?.roomId === roomId),
  );
  const sides = [{ surface: `${roomId}:${faced}`, xMm: 0 }];
  const kind: RowKind<Opening, Opening> = {
    heading: 'Doorways and windows',
    summaryOf: (opening) => (
      <>
        <span className="cap">{opening.name || opening.kind}</span>,{' '}
        {sizeText(opening.heightMm, opening.widthMm, null, unit)},{' '}
        {opening.sides.map(({ surface }) => wallTextOf(documents, surface)).join(' and ')}
      </>
    ),
    fieldsOf: (opening, set, still) => <OpeningFields roomId={roomId} opening={opening} frozen={still} set={set} />,
    correct: (id, opening, fields) => {
      const trouble = openingTrouble(documents, id, { ...opening, ...fields }, unit);
      if (trouble !== null) return trouble;
      return act(show, commands.correctOpening(id, fields), 'opening corrected') ? null : 'cannot be set just now';
    },
    add: (draft) => {
      const trouble = openingTrouble(documents, 'new', draft, unit);
      if (trouble !== null) return `The ${draft.kind} ${trouble}.`;
      return act(show, commands.addOpening(draft), `${draft.kind} added`) ? null : 'It cannot be added just now.';
    },
    takeAway: (id, opening) => {
      act(show, commands.remove('openings', id, `a ${opening.kind}`), `${opening.kind} taken away`);
    },
    addWordsOf: (draft) => `Add the ${draft.kind}`,
    begins: [
      {
        words: 'add a doorway',
        draft: () => ({ kind: 'doorway', name: 'doorway', widthMm: 1200, heightMm: 2200, sillMm: 0, sides }),
      },
      {
        words: 'add a window',
        draft: () => ({ kind: 'window', name: 'window', widthMm: 1400, heightMm: 1400, sillMm: 900, sides }),
      },
    ],
  };
  return <EditableList rows={rows} kind={kind} frozen={frozen} />;
}
