/** What is fixed to a room's walls and must be kept clear. */
import * as commands from '@enfilade/shared/commands';
import { type Fixture, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { shortSurfaceName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import type { WallSide } from '@enfilade/space/room';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { EditableList, type RowKind } from './editable-list.tsx';
import { type FixtureDraft, FixtureFields } from './fixture-fields.tsx';
import { fixtureTrouble } from './room-acts.ts';

interface PartProps {
  readonly roomId: RoomId;
  readonly faced: WallSide;
  readonly frozen: boolean;
}

export function FixturesPart({ roomId, faced, frozen }: PartProps) {
  const show = useShow();
  const { documents } = show;
  const { unit } = usePreferences();
  const rows = [...documents.all('fixtures')].filter(([, { surface }]) => surfaceParts(surface)?.roomId === roomId);
  const kind: RowKind<Fixture, FixtureDraft> = {
    heading: 'Fixtures to keep clear',
    summaryOf: (fixture) => (
      <>
        <span className="cap">{fixture.kind}</span>, {shortSurfaceName(documents, fixture.surface)}, at{' '}
        {lengthText(fixture.xMm, unit)} along, {lengthText(fixture.yMm, unit)} up
      </>
    ),
    fieldsOf: (fixture, set, still) => <FixtureFields roomId={roomId} fixture={fixture} frozen={still} set={set} />,
    correct: (id, fixture, fields) => {
      const trouble = fixtureTrouble(documents, { ...fixture, ...fields }, unit);
      if (trouble !== null) return trouble;
      return act(show, commands.correctFixture(id, fields), 'fixture corrected') ? null : 'cannot be set just now';
    },
    add: (draft) => {
      const { xMm, yMm, widthMm, heightMm, clearMm } = draft;
      if (draft.kind === '') return 'Say what it is.';
      if (xMm === null || yMm === null || widthMm === null || heightMm === null) {
        return 'Its centre, width and height are needed.';
      }
      const fixture: Fixture = { ...draft, xMm, yMm, widthMm, heightMm, clearMm: clearMm ?? 0 };
      const trouble = fixtureTrouble(documents, fixture, unit);
      if (trouble !== null) return `The ${fixture.kind} ${trouble}.`;
      return act(show, commands.addFixture(fixture), `${fixture.kind} added`) ? null : 'It cannot be added just now.';
    },
    takeAway: (id, fixture) => {
      act(show, commands.remove('fixtures', id, `a ${fixture.kind}`), `${fixture.kind} taken away`);
    },
    addWordsOf: () => 'Add it',
    begins: [
      {
        words: 'add a fixture',
        draft: () => ({
          kind: '',
          surface: `${roomId}:${faced}`,
          xMm: null,
          yMm: null,
          widthMm: null,
          heightMm: null,
          clearMm: 0,
        }),
      },
    ],
  };
  return <EditableList rows={rows} kind={kind} frozen={frozen} />;
}
