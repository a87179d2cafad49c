/** What is fixed to a room's walls and must be kept clear. */
import * as commands from '@enfilade/shared/commands';
import { type Fixture, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import type { WallSide } from '@enfilade/space/room';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { shortSurfaceName } from '../cards/surface-names.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { type FixtureDraft, FixtureFields } from './fixture-fields.tsx';
import { fixtureTrouble } from './room-acts.ts';

interface FixturesPartProps {
  readonly roomId: RoomId;
  readonly faced: WallSide;
  readonly frozen: boolean;
}

export function FixturesPart({ roomId, faced, frozen }: FixturesPartProps) {
  const show = useShow();
  const { documents } = show;
  const { unit } = usePreferences();
  const [draft, setDraft] = useState<FixtureDraft | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const here = [...documents.all('fixtures')].filter(([, { surface }]) => surfaceParts(surface)?.roomId === roomId);
  const correct = (id: string, fixture: Fixture, fields: Partial<Fixture>): string | null => {
    const trouble = fixtureTrouble(documents, { ...fixture, ...fields }, unit);
    if (trouble !== null) return trouble;
    return act(show, commands.correctFixture(id, fields), 'fixture corrected') ? null : 'cannot be set just now';
  };
  const add = (): void => {
    if (draft === null) return;
    const { xMm, yMm, widthMm, heightMm, clearMm } = draft;
    if (draft.kind === '') {
      setWrong('Say what it is.');
      return;
    }
    if (xMm === null || yMm === null || widthMm === null || heightMm === null) {
      setWrong('Its centre, width and height are needed.');
      return;
    }
    const fixture: Fixture = {
      kind: draft.kind,
      surface: draft.surface,
      xMm,
      yMm,
      widthMm,
      heightMm,
      clearMm: clearMm ?? 0,
    };
    const trouble = fixtureTrouble(documents, fixture, unit);
    setWrong(trouble === null ? null : `The ${fixture.kind} ${trouble}.`);
    if (trouble === null && act(show, commands.addFixture(fixture), `${fixture.kind} added`)) setDraft(null);
  };
  return (
    <section className="card">
      <h2>Fixtures to keep clear</h2>
      {here.length === 0 ? <p className="cap">None yet.</p> : null}
      {here.map(([id, fixture]) => (
        <details key={id} className="measure-part">
          <summary>
            <span className="cap">{fixture.kind}</span>, {shortSurfaceName(documents, fixture.surface)}, at{' '}
            {lengthText(fixture.xMm, unit)} along, {lengthText(fixture.yMm, unit)} up
          </summary>
          <FixtureFields
            roomId={roomId}
            fixture={fixture}
            frozen={frozen}
            set={(fields) => correct(id, fixture, fields)}
          />
          {frozen ? null : (
            <button
              type="button"
              onClick={() =>
                act(show, commands.remove('fixtures', id, `a ${fixture.kind}`), `${fixture.kind} taken away`)
              }
            >
              take it away
            </button>
          )}
        </details>
      ))}
      {draft === null ? null : (
        <div className="measure-draft">
          <FixtureFields
            roomId={roomId}
            fixture={draft}
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
              Add it
            </button>
            <button type="button" onClick={() => setDraft(null)}>
              leave it
            </button>
          </p>
        </div>
      )}
      {frozen || draft !== null ? null : (
        <p className="measure-commands">
          <button
            type="button"
            onClick={() =>
              setDraft({
                kind: '',
                surface: `${roomId}:${faced}`,
                xMm: null,
                yMm: null,
                widthMm: null,
                heightMm: null,
                clearMm: 0,
              })
            }
          >
            add a fixture
          </button>
        </p>
      )}
    </section>
  );
}
