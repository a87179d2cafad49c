/** Sets of like things, looked for among the things of the show: with reasons, and what fell and why. */
import { declinedSuggestions, offerSuggestions, suggestionKey } from '@enfilade/shared/suggestions';
import { useEffect } from 'react';
import { act } from '../cards/acting.ts';
import { say } from '../shell/live-region.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { FoundSets } from '../workers/likeness-task.ts';
import { FoundSet } from './found-set.tsx';
import { LeftOut } from './left-out.tsx';
import { LookForm } from './look-form.tsx';
import { DealtAgain, Tried } from './nothing-found.tsx';
import { wordsOfKind, wordsOfSet } from './set-words.ts';
import { type Looking, useLikenesses } from './use-likenesses.ts';
import { type LikenessWish, wishText } from './wish.ts';
import './likenesses.css';

/** What is looked for when nobody has asked yet: one look finds more than all, and shape is what is seen first on a wall. */
const FIRST: LikenessWish = { looks: ['shape'], among: 'checklist' };

export function LikenessesPage({ wish }: { readonly wish: LikenessWish | undefined }) {
  const show = useShow();
  useRoots('proposals');
  const looked = wish ?? FIRST;
  const looking = useLikenesses(looked, true);
  const proposal = show.layerId === null ? undefined : show.documents.get('proposals', show.layerId);
  return (
    <div className="likenesses">
      <div className="likenesses-wish">
        <h1>Likenesses</h1>
        <p className="cap">Sets of like things, with what speaks for them. Nothing is gathered unless you gather it.</p>
        {proposal === undefined ? null : (
          <p className="cap">
            In the proposal <b className="b">{proposal.title}</b>: what you gather here is proposed.
          </p>
        )}
        <LookForm key={wishText(looked)} wish={looked} again={looking.again} />
        <p className="t1">By fewer looks at once more is found: the round, the red, the small.</p>
      </div>
      <div className="likenesses-found" aria-live="polite">
        <Found looking={looking} wish={looked} />
      </div>
    </div>
  );
}

function Found({ looking, wish }: { readonly looking: Looking; readonly wish: LikenessWish }) {
  const { search, pool, again, stop } = looking;
  const done = search.kind === 'ready' ? search.found.likenesses.words : null;
  useEffect(() => {
    if (done !== null) say(done);
  }, [done]);
  switch (search.kind) {
    case 'idle':
      return null;
    case 'working':
      return (
        <p className="likenesses-progress">
          <label>
            Looking among {pool.ids.length} <progress value={search.share} max={1} />
          </label>
          <button type="button" onClick={stop}>
            stop
          </button>
        </p>
      );
    case 'stopped':
      return <p className="cap">Stopped. Nothing was kept of it.</p>;
    case 'failed':
      return (
        <p className="b" role="alert">
          Nothing could be looked for: {search.what}. Nothing has changed.
        </p>
      );
    case 'ready':
      return (
        <>
          {search.key === pool.key ? null : (
            <p className="cap">
              The things have changed since this was looked for.{' '}
              <button type="button" onClick={again}>
                look again
              </button>
            </p>
          )}
          <Sets found={search.found} wish={wish} />
        </>
      );
  }
}

function Sets({ found, wish }: { readonly found: FoundSets; readonly wish: LikenessWish }) {
  const show = useShow();
  useRoots('declinedSuggestions', 'objects');
  const { likenesses, kinds, ms } = found;
  const declined = declinedSuggestions(show.documents);
  const isDeclined = ({ members }: { members: readonly string[] }) => declined.has(suggestionKey('set', members));
  const sets = likenesses.sets.filter((set) => !isDeclined(set));
  const types = kinds.filter((kind) => !isDeclined(kind));
  const away = [...likenesses.sets, ...kinds].filter(isDeclined).map(({ members }) => suggestionKey('set', members));
  const inSets = likenesses.sets.reduce((sum, { members }) => sum + members.length, 0);
  const n = likenesses.leftOut.length + inSets;
  return (
    <>
      <h2>{likenesses.sets.length === 0 ? 'Nothing found' : `Found, ${likenesses.sets.length}`}</h2>
      <p className="cap">
        {likenesses.words} By {wish.looks.join(', ')}; {n} compared in {(ms / 1000).toFixed(1)} s.
      </p>
      {sets.map((set) => (
        <FoundSet key={set.members.join()} set={wordsOfSet(set)} />
      ))}
      {away.length === 0 ? null : (
        <p className="t1">
          {away.length} declined: {[...new Set(away.map((key) => declined.get(key)?.name ?? ''))].join(', ')}.{' '}
          {show.may('talk') ? (
            <button type="button" onClick={() => act(show, offerSuggestions(away), 'offered again')}>
              offer again
            </button>
          ) : null}
        </p>
      )}
      <Tried fallen={likenesses.fallen} open={likenesses.sets.length === 0} />
      <DealtAgain key={`${wishText(wish)} ${ms}`} wish={wish} n={n} />
      {types.length === 0 ? null : (
        <section aria-label="Types">
          <h2 className="likenesses-part">Of one type</h2>
          <p className="cap">What the checklist calls the same: a set to hang, and no discovery of ours.</p>
          {types.map((kind) => (
            <FoundSet key={kind.members.join()} set={wordsOfKind(kind)} />
          ))}
        </section>
      )}
      <LeftOut leftOut={likenesses.leftOut} />
    </>
  );
}
