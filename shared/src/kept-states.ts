/** States of the hang kept whole: taken, laid over, and restored as an ordinary act. */
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import { ARRANGED_ROOTS, type ArrangedRoot, type HangState, layerOfState } from './hang-layer.ts';
import type { Change } from './root-snapshot.ts';
import type { Json, VignetteId } from './schema.ts';
import { canonicalVignetteOf } from './sign-off.ts';

/** Every arranged fact as it stands, raw keys and all. */
export function hangStateOf(documents: ShowDocuments): HangState {
  const state: Partial<Record<ArrangedRoot, Record<string, Json>>> = {};
  for (const root of ARRANGED_ROOTS) state[root] = Object.fromEntries(documents.facts(root));
  return state as HangState;
}

/** @returns the state, or null when the value is none. */
export function hangStateFrom(value: unknown): HangState | null {
  if (typeof value !== 'object' || value === null) return null;
  const parts = value as Record<string, unknown>;
  const isSaid = (root: ArrangedRoot) => root !== 'pinned' || parts[root] !== undefined;
  const whole = ARRANGED_ROOTS.filter(isSaid).every((root) => typeof parts[root] === 'object' && parts[root] !== null);
  return whole ? (value as HangState) : null;
}

/** Sets the whole hang to a kept state, as one act that can be undone. Of what the state says nothing, nothing changes. */
export function restoreState(documents: ShowDocuments, state: HangState, name: string): Act {
  const changes: Change[] = [];
  for (const root of ARRANGED_ROOTS) {
    const kept = state[root];
    if (kept === undefined) continue;
    for (const [key] of documents.facts(root)) if (!(key in kept)) changes.push({ root, key, value: undefined });
    for (const [key, value] of Object.entries(kept)) changes.push({ root, key, value });
  }
  return { name: `restore ${name}`, changes };
}

/**
 * Sets one vignette to what it was in a kept state: its words, its members, their places, and the paint of the walls
 * they hung on. Pieces that have joined it since leave it and stay where they are.
 */
export function restoreVignette(documents: ShowDocuments, state: HangState, id: VignetteId): Act {
  const kept = documents.laidOver(layerOfState(state));
  const before = canonicalVignetteOf(kept, id);
  kept.close();
  const words = Object.entries(state.vignettes).filter(([key]) => key === id || key.startsWith(`${id}/`));
  const changes: Change[] = [];
  for (const [key] of documents.facts('vignettes')) {
    const ours = key === id || key.startsWith(`${id}/`);
    if (ours && !(key in state.vignettes)) changes.push({ root: 'vignettes', key, value: undefined });
  }
  changes.push(...words.map(([key, value]): Change => ({ root: 'vignettes', key, value })));
  const members = new Set(Object.keys(before?.places ?? {}));
  for (const [pieceId, vignetteId] of documents.all('memberOf')) {
    if (vignetteId === id && !members.has(pieceId)) changes.push({ root: 'memberOf', key: pieceId, value: undefined });
  }
  for (const pieceId of members) {
    changes.push({ root: 'memberOf', key: pieceId, value: id });
    changes.push({ root: 'places', key: pieceId, value: state.places[pieceId] });
  }
  for (const surface of Object.keys(before?.paints ?? {})) {
    changes.push({ root: 'paints', key: surface, value: state.paints[surface] });
  }
  return { name: `restore ${before?.name ?? 'the vignette'}`, changes };
}
