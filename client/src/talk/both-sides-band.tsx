/** After a return: what was changed here and elsewhere meanwhile, both told, each settled by a press. */

import type { Change } from '@enfilade/shared/root-snapshot';
import type { Place } from '@enfilade/shared/schema';
import { onName } from '@enfilade/shared/surface-names';
import { act } from '../cards/acting.ts';
import type { BothSides } from '../offline/clashes.ts';
import { lengthText, usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { go, THE_HANG } from '../view-address.ts';
import { pinSentence } from './move-sentences.ts';
import { viewOfSurface, whenText } from './remark-words.ts';
import './both-sides-band.css';
import { useCallback, useSyncExternalStore } from 'react';

export function BothSidesBand() {
  const show = useShow();
  useRestingRoots(200, 'places', 'objects', 'vignettes', 'deck', 'rooms');
  const both = useSyncExternalStore(
    useCallback((tell) => show.subscribe(tell), [show]),
    () => show.bothSides,
  );
  if (both.length === 0) return null;
  return (
    <section className="band both-sides" aria-label="Changed on both sides">
      <p>
        <b className="b">You are back.</b>{' '}
        {both.length === 1 ? 'One thing was changed' : `${both.length} things were changed`} by you and by somebody else
        meanwhile. Which holds?
      </p>
      <ul>
        {both.map((one) => (
          <Side key={`${one.root}|${one.key}`} one={one} show={show} />
        ))}
      </ul>
    </section>
  );
}

function Side({ one, show }: { readonly one: BothSides; readonly show: ShowSession }) {
  const { unit } = usePreferences();
  const words = (value: BothSides['mine']): string =>
    wordOnFact(show, one, value, (mm) => `${lengthText(mm, unit)} ${unit}`);
  const first = one.name.split(' ')[0];
  const { other } = one;
  const hold = (whose: 'mine' | 'theirs', name: string): void => {
    if (act(show, { name, changes: [settling(one, whose)] }, name)) show.settle(one);
  };
  const look = (): void => {
    const on =
      one.root === 'places'
        ? ((one.theirs ?? one.mine) as Place | undefined)?.[0]
        : one.root === 'paints'
          ? one.key
          : null;
    const surface = one.root === 'places' ? (show.judgements.where.surfaceOf(one.key) ?? on) : on;
    const view = surface ? viewOfSurface(surface) : null;
    if (view !== null) go(view, THE_HANG);
    if (one.root === 'places') setTimeout(() => choose([one.key]));
  };
  return (
    <li>
      <span>
        <span className="it">{nameOfFact(show, one)}</span>: yours {words(one.mine)}; {first} ({whenText(one.at)}){' '}
        {other === undefined ? (
          words(one.theirs)
        ) : (
          <>
            <span className="it">{show.judgements.nameOf(other.key)}</span> {words(other.to)}: each would stand on the
            other
          </>
        )}
      </span>
      <span className="both-commands">
        <button type="button" onClick={look}>
          look
        </button>
        <button type="button" disabled={!show.may('hang')} onClick={() => hold('mine', 'settle a clash: mine holds')}>
          mine holds
        </button>
        <button
          type="button"
          disabled={!show.may('hang')}
          onClick={() => hold('theirs', `settle a clash: ${first}’s holds`)}
        >
          {first}’s holds
        </button>
      </span>
    </li>
  );
}

/** The one fact that settles it: in a ring, the other's piece goes back to where it was. */
function settling(one: BothSides, whose: 'mine' | 'theirs'): Change {
  if (one.other === undefined) return { root: one.root, key: one.key, value: whose === 'mine' ? one.mine : one.theirs };
  return whose === 'mine'
    ? { root: one.root, key: one.other.key, value: one.other.from }
    : { root: one.root, key: one.key, value: one.from };
}

function nameOfFact({ judgements }: ShowSession, { root, key }: BothSides): string {
  if (root === 'places' || root === 'memberOf' || root === 'pinned') return judgements.nameOf(key);
  if (root === 'paints') return onName(judgements, key);
  return judgements.documents.get('vignettes', key.split('/')[0] as string)?.name ?? 'a vignette';
}

function wordOnFact(
  { judgements }: ShowSession,
  { root, key }: BothSides,
  value: BothSides['mine'],
  length: (mm: number) => string,
): string {
  if (root === 'places') {
    if (value === undefined) return 'with the unplaced';
    const [on, x, y] = value as unknown as Place;
    return `${onName(judgements, on)}, ${length(x)} across, ${length(y)} ${on.endsWith(':floor') || on === 'layout' ? 'back' : 'up'}`;
  }
  if (root === 'pinned') return pinSentence(value);
  if (value === undefined)
    return root === 'paints' ? 'no paint' : root === 'memberOf' ? 'in no vignette' : 'taken away';
  if (root === 'paints') return judgements.documents.get('deck', String(value))?.name ?? 'a paint that is gone';
  if (root === 'memberOf')
    return `in ${judgements.documents.get('vignettes', String(value))?.name ?? 'a vignette that is gone'}`;
  return typeof value === 'string' && key.includes('/') ? `‘${value}’` : 'as reworded';
}
