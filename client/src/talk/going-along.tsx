/** Going along with somebody: their page is mine until I am let go or go my own way. */
import { useEffect } from 'react';
import { Store, useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { useOthers, useShow } from '../sync/hooks.ts';
import type { Other } from '../sync/presence-room.ts';

/** Whose view mine goes along with; null: my own way. */
export const alongWith = new Store<string | null>(null);

export function letGo(): void {
  alongWith.set(null);
}

/** Goes along with somebody, unless they go along with me: two who follow each other go nowhere. */
export function goAlong(other: Other, me: string): void {
  if (other.presence.alongWith === me) {
    say(`${other.person.name} goes along with you`);
    return;
  }
  alongWith.set(other.person.id);
  say(`You go along with ${other.person.name}`);
}

/** Keeps my page on theirs. A page I go to by myself lets me go. */
export function useGoingAlong(): void {
  const { presence } = useShow();
  const who = useStore(alongWith);
  const leader = useOthers().find(({ person }) => person.id === who);
  const at = leader?.presence.at;

  useEffect(() => presence.say({ alongWith: who }), [presence, who]);
  useEffect(() => {
    if (who === null) return;
    if (at === undefined) {
      // They left, or are on their way back: a moment's loss is no farewell.
      const timer = setTimeout(() => {
        letGo();
        say('They are not here any more; you go your own way');
      }, 5000);
      return () => clearTimeout(timer);
    }
    if (location.hash !== `#${at}`) location.hash = at;
    const ownWay = (): void => {
      if (location.hash === `#${at}`) return;
      letGo();
      say('You go your own way');
    };
    addEventListener('hashchange', ownWay);
    return () => removeEventListener('hashchange', ownWay);
  }, [who, at]);
}

/** Said under the head to the one who goes along, and to the one who leads. */
export function AlongBand() {
  const { me } = useShow();
  const who = useStore(alongWith);
  const others = useOthers();
  const leader = others.find(({ person }) => person.id === who);
  const followers = others.filter(({ presence }) => presence.alongWith === me.person.id);
  return (
    <>
      {leader === undefined ? null : (
        <div className="band">
          <p>
            You go along with <b className="b">{leader.person.name}</b>: their view moves yours.
          </p>
          <button type="button" onClick={letGo}>
            let go
          </button>
        </div>
      )}
      {followers.length === 0 ? null : (
        <div className="band">
          <p>
            <b className="b">{followers.map(({ person }) => person.name).join(', ')}</b>{' '}
            {followers.length === 1 ? 'goes' : 'go'} along with you.
          </p>
        </div>
      )}
    </>
  );
}
