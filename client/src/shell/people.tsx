/** Who is here, with their rings, and where each of them is looking. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import { useStore } from '../selection.ts';
import { useOthers, useRoots, useSaving, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { alongWith, goAlong, letGo } from '../talk/going-along.tsx';
import { pointing, setPointing } from '../talk/pointing.ts';
import { toAddress, type View, viewFrom } from '../view-address.ts';
import { isStage, roomOfView, viewName } from './current-view.ts';
import { Ring } from './ring.tsx';

/** 'on this wall', 'in the Counting Room', 'at the layout floor': where someone is, as seen from my view. */
function whereText(documents: ShowDocuments, theirs: View | null, mine: View): string {
  if (theirs === null) return '';
  if (toAddress(theirs) === toAddress(mine)) {
    return { wall: 'on this wall', room: 'in this room', layout: 'on this floor' }[theirs.sheet as string] ?? 'here';
  }
  const room = roomOfView(theirs);
  const name = room === null ? undefined : documents.get('rooms', room)?.name;
  if (name !== undefined) return room === roomOfView(mine) ? 'in this room' : `in the ${name.replace(/^the /i, '')}`;
  return theirs.sheet === 'layout' ? 'on the layout floor' : `at ${viewName(documents, theirs).toLowerCase()}`;
}

/** Whoever works in a proposal is told to be in it before where they look; from in there, whoever is not is on the hang. */
function layerText({ documents, layerId }: ShowSession, theirs: string | null, where: string): string {
  if (theirs !== null && theirs === layerId) return where === '' ? 'in this proposal' : `in this proposal, ${where}`;
  const title = theirs === null ? undefined : documents.get('proposals', theirs)?.title;
  return title === undefined ? where : `in the proposal ${title}`;
}

export function People({ view }: { readonly view: View }) {
  const show = useShow();
  const others = useOthers();
  const saving = useSaving();
  useRoots('rooms');
  const { person } = show.me;
  const who = useStore(alongWith);
  const alone = saving.kind === 'no connection' || saving.kind === 'closed';
  return (
    <ul className="people" aria-label="Here now">
      <li>
        <Ring name={person.name} pattern={show.presence.ringOf(person.id)} radiusPx={9.5} />
        <span className="people-name">{person.name}</span> <i className="it people-where">you</i>{' '}
        {isStage(view) && others.length > 0 && !alone ? <PointCommand /> : null}
      </li>
      {others.map((there) => {
        const { clientId, person: other, ring, presence } = there;
        const along = who === other.id;
        const where = alone
          ? 'out of reach'
          : layerText(show, presence.layer ?? null, whereText(show.documents, viewFrom(presence.at ?? ''), view));
        return (
          <li key={clientId}>
            <Ring name={other.name} pattern={ring} radiusPx={9.5} blank={alone} />
            <span className="people-name">{other.name}</span>{' '}
            <i className="it people-where" title={where}>
              {where}
            </i>{' '}
            {alone || other.id === person.id ? null : (
              <button
                type="button"
                className="people-along"
                aria-pressed={along}
                onClick={() => (along ? letGo() : goAlong(there, person.id))}
              >
                {along ? 'let go' : 'go along'}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** Lets everybody who looks at this surface see where I point. */
function PointCommand() {
  const on = useStore(pointing);
  return (
    <button
      type="button"
      className="people-along"
      aria-pressed={on}
      onClick={(event) => {
        setPointing(!on);
        // Pressed by keys, the arrows go on from the stage.
        if (!on && event.detail === 0) document.querySelector<HTMLElement>('#main .stage')?.focus();
      }}
    >
      {on ? 'point no more' : 'point'}
    </button>
  );
}
