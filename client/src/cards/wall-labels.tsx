/** A wall's labels: whether the show has them on its walls, how many stand here and which have no room, how high and large they are. */
import type { LimitName } from '@enfilade/practice/practice-profile';
import * as commands from '@enfilade/shared/commands';
import { practiceProfileOf, setLimit } from '@enfilade/shared/practice-limits';
import type { SurfaceId } from '@enfilade/shared/schema';
import { choose } from '../selection.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { act } from './acting.ts';
import { CaptionFold } from './caption-fold.tsx';
import { LengthField } from './length-field.tsx';
import { TypedField } from './typed-field.tsx';

/** ms: a wall's labels are read as a whole. */
const REST_MS = 250;
const LARGEST_POINTS = 200;

export function WallLabels({ surface }: { readonly surface: SurfaceId }) {
  const show = useShow();
  const { judgements, documents, me } = show;
  // biome-ignore format: one list
  useRestingRoots(REST_MS, 'objects', 'pieces', 'places', 'rooms', 'openings', 'fixtures', 'limits', 'settings', 'labelSides', 'memberOf', 'vignettes');
  const on = judgements.setting('labelsOnWalls') === true;
  const labels = judgements.labelBoxesOn(surface);
  const crowded = labels.filter(({ meets }) => meets.length > 0);
  // Labels are the show's own, not a proposal's; how it has them is the museum's, not its guest's.
  const edits = show.may('hang') && me.person.role !== 'guest artist' && show.layerId === null;
  const { limits } = practiceProfileOf(documents);
  const sets = me.person.role === 'lead' && show.may('rooms') && show.layerId === null;
  const set = (name: LimitName, value: number): string | null =>
    act(show, setLimit(name, { value, source: 'the museum’s own' }), 'set for every wall')
      ? null
      : 'cannot be set just now';
  return (
    <CaptionFold name="Labels" brief={on ? `${labels.length} here` : 'not on the walls'}>
      {edits ? (
        <p>
          <label>
            <input
              type="checkbox"
              checked={on}
              onChange={(event) =>
                act(
                  show,
                  commands.setSetting('labelsOnWalls', event.target.checked),
                  event.target.checked ? 'labels drawn on every wall and kept clear' : 'labels taken off the walls',
                )
              }
            />{' '}
            on every wall: drawn, and kept clear
          </label>
        </p>
      ) : null}
      {on && crowded.length > 0 ? (
        <p className="reading-counts caution-counts">
          <CautionMark />
          <button type="button" onClick={() => choose(crowded.flatMap(({ pieces }) => pieces))}>
            {crowded.length} without room<span className="spoken">: select their works</span>
          </button>
        </p>
      ) : null}
      <LengthField
        label="Centre above the floor"
        mm={limits.labelCentreMm.value}
        frozen={!sets}
        leastMm={limits.labelLowestMm.value}
        mostMm={limits.labelHighestMm.value}
        hint={limits.labelCentreMm.source}
        take={(mm) => set('labelCentreMm', mm)}
      />
      <TypedField
        label="Letters, points"
        text={String(limits.labelPoints.value)}
        frozen={!sets}
        hint={limits.labelPoints.source}
        take={(typed) => {
          const points = Number(typed.replace(',', '.'));
          return points >= 8 && points <= LARGEST_POINTS
            ? set('labelPoints', points)
            : `a size from 8 to ${LARGEST_POINTS} points`;
        }}
      />
      <p className="t1">
        Each is as large as its text needs, on the side its card says.
        {sets ? '' : ' The lead sets their height and letters.'}
      </p>
    </CaptionFold>
  );
}
