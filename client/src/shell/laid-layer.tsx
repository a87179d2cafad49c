/** What the address lays over the hang, as the show that every screen below works with. */

import { layerOfState } from '@enfilade/shared/hang-layer';
import { hangStateFrom } from '@enfilade/shared/kept-states';
import { layerOfProposal } from '@enfilade/shared/proposals';
import { type ReactNode, useLayoutEffect, useState } from 'react';
import { HangContext, ShowContext, useShow } from '../sync/hooks.ts';
import { LaidShow } from '../sync/laid-show.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { type Laid, laidFrom, useAddress } from '../view-address.ts';
import { say } from './live-region.tsx';

export function LaidLayer({ children }: { readonly children: ReactNode }) {
  const live = useShow();
  const laid = laidFrom(useAddress());
  const kind = laid.kind;
  const id = laid.kind === 'hang' ? '' : laid.id;
  const [shown, setShown] = useState<ShowSession>(live);

  useLayoutEffect(() => {
    live.presence.say({ layer: kind === 'proposal' ? id : null });
    if (kind === 'hang') {
      setShown(live);
      return;
    }
    let made: LaidShow | null = null;
    let left = false;
    const take = (show: LaidShow | null): void => {
      if (left || show === null) {
        show?.close();
        if (left) return;
        say(kind === 'state' ? 'That state could not be fetched.' : 'That proposal is not here any more.');
        leaveLayer();
        return;
      }
      made = show;
      setShown(show);
    };
    // A proposal that is here is shown at once, so that nothing done meanwhile lands in the hang.
    const ready = kind === 'proposal' ? proposedShow(live, id) : null;
    if (ready !== null) take(ready);
    else void laidShow(live, { kind, id }).then(take);
    return () => {
      left = true;
      // Whoever is drawn last still reads it; it is let go once the next one is shown.
      setTimeout(() => made?.close());
    };
  }, [live, kind, id]);

  return (
    <HangContext value={live}>
      <ShowContext value={shown}>{children}</ShowContext>
    </HangContext>
  );
}

/** @returns null where there is no such proposal, or it has not come yet. */
function proposedShow(live: ShowSession, id: string): LaidShow | null {
  if (live.documents.get('proposals', id) === undefined) return null;
  return new LaidShow(live, {
    id,
    layer: layerOfProposal(live.documents, id),
    writable: () => live.may('talk') && !live.documents.get('proposals', id)?.outcome,
  });
}

/** A page opened on a proposal may be asked for it before the document it is in has come (ms). */
const COMES_WITHIN_MS = 6000;

/** @returns null where there is no such proposal or state. */
async function laidShow(live: ShowSession, laid: Exclude<Laid, { kind: 'hang' }>): Promise<LaidShow | null> {
  const { id } = laid;
  const root = laid.kind === 'proposal' ? 'proposals' : 'states';
  await new Promise<void>((done) => {
    if (live.documents.get(root, id) !== undefined) {
      done();
      return;
    }
    const come = (): void => {
      leave();
      clearTimeout(timer);
      done();
    };
    const leave = live.documents.subscribe(root, come, id);
    const timer = setTimeout(come, COMES_WITHIN_MS);
  });
  if (laid.kind === 'proposal') return proposedShow(live, id);
  const kept = live.documents.get('states', id);
  if (kept === undefined) return null;
  const answer = await fetch(`${live.base}/states/${kept.digest}`).catch(() => null);
  const state = answer?.ok ? hangStateFrom(await answer.json()) : null;
  return state === null ? null : new LaidShow(live, { id, layer: layerOfState(state), writable: () => false });
}

/** The same page on the hang. */
function leaveLayer(): void {
  const [, , ...view] = location.hash.slice(1).split('/');
  location.replace(`#${view.join('/')}`);
}
