/** The kept state one looks at, and what is different in the hang since. */
import type { DeedChange } from '@enfilade/shared/deeds';
import { type ShowDocuments, sameJson } from '@enfilade/shared/documents';
import { ARRANGED_ROOTS } from '@enfilade/shared/hang-layer';
import type { KeptState } from '@enfilade/shared/protocol';
import { Store } from '../selection.ts';
import { useHang, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { laidFrom, useAddress } from '../view-address.ts';

/** Whether the hang stands beside the state. */
export const besideHang = new Store(false);

export interface InState {
  readonly id: string;
  readonly state: KeptState;
  readonly hang: ShowSession;
  readonly shown: ShowSession;
}

/** Null on the hang and in a proposal. */
export function useInState(): InState | null {
  const laid = laidFrom(useAddress());
  const hang = useHang();
  const shown = useShow();
  const state = laid.kind === 'state' ? hang.documents.get('states', laid.id) : undefined;
  if (laid.kind !== 'state' || state === undefined || shown.layerId !== laid.id) return null;
  return { id: laid.id, state, hang, shown };
}

/** Every arranged fact that the hang says otherwise than the state: from what it was then to what it is now. */
export function changesSince(then: ShowDocuments, now: ShowDocuments): DeedChange[] {
  const changes: DeedChange[] = [];
  for (const root of ARRANGED_ROOTS) {
    const before = new Map(then.facts(root));
    const after = new Map(now.facts(root));
    for (const key of new Set([...before.keys(), ...after.keys()])) {
      const [from, to] = [before.get(key), after.get(key)];
      if (sameJson(from, to)) continue;
      changes.push({ root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
    }
  }
  return changes;
}
