/** What was tried and does not stand, with the figures it fell by; and the same search where nothing is to be found. */
import type { Fallen, Likenesses } from '@enfilade/grouping/likeness';
import { useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import { figure } from './set-words.ts';
import { ThingPicture, thingName } from './thing-picture.tsx';
import { useLikenesses } from './use-likenesses.ts';
import type { LikenessWish } from './wish.ts';

/** What a set has to reach in subsampling (packages/grouping). */
const STABLE = 0.6;

function whyText({ why, stability, tightness, chance }: Fallen): string {
  if (stability < STABLE)
    return `fell apart: ${figure(stability)} of it came back when a fifth was left away, ${figure(STABLE)} is asked`;
  if (tightness <= chance)
    return tightness <= 0
      ? `no closer to each other than others of the same types are; chance reached ${figure(chance)} closer`
      : `no closer than chance: ${figure(tightness)} closer than others of the same types, chance reached ${figure(chance)}`;
  return why;
}

export function Tried({ fallen, open: first }: { readonly fallen: readonly Fallen[]; readonly open: boolean }) {
  const show = useShow();
  const [open, setOpen] = useState(first);
  if (fallen.length === 0) return null;
  // The same group may be come by in several ways.
  const groups = new Map(fallen.map((group) => [[...group.members].sort().join(), group]));
  const largest = [...groups.values()].sort((a, b) => b.members.length - a.members.length).slice(0, 12);
  return (
    <section className="tried" aria-label="Tried, and left">
      <h2>
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          Tried, and left: {groups.size}
        </button>
      </h2>
      {open ? (
        <ul>
          {largest.map((group) => (
            <li key={`${group.found} ${group.members.join()}`}>
              <span className="tried-pictures">
                {group.members.slice(0, 6).map((id) => (
                  <ThingPicture key={id} id={id} boxPx={30} />
                ))}
              </span>
              <span className="t1">
                {group.members.length}, among them {thingName(show, group.members[0] ?? '')}: {whyText(group)}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

/** The same things with their traits dealt out again: whatever is found there is found by chance. */
export function DealtAgain({ wish, n }: { readonly wish: LikenessWish; readonly n: number }) {
  const [asked, setAsked] = useState(false);
  const { search } = useLikenesses(wish, asked, true);
  if (!asked) {
    return (
      <p className="t1 dealt">
        <button type="button" onClick={() => setAsked(true)}>
          try it where nothing is to be found
        </button>{' '}
        The same {n}, each trait dealt out again among them.
      </p>
    );
  }
  if (search.kind === 'working') return <p className="t1 dealt">Dealt out again; looking…</p>;
  if (search.kind !== 'ready') return null;
  return <p className="cap dealt">{dealtText(search.found.likenesses)}</p>;
}

function dealtText({ sets, fallen }: Likenesses): string {
  const tried = `${fallen.length + sets.length} groups were tried`;
  if (sets.length === 0) return `With every trait dealt out again nothing was found, as it should be: ${tried}.`;
  return `With every trait dealt out again ${sets.length} ${sets.length === 1 ? 'set was' : 'sets were'} found, by chance alone: ${tried}. Take what is found above with as much doubt.`;
}
