/** Which vignettes open proposals have moves about: their words, their members' places, who belongs to them. */
import { type ShowDocuments, sameJson } from './documents.ts';
import type { ArrangedRoot } from './hang-layer.ts';
import { proposedKeyParts } from './proposals.ts';
import type { Json, VignetteId } from './schema.ts';

/** One fact an open proposal would have otherwise. `to` undefined: taken away. */
export interface OpenFact {
  readonly root: ArrangedRoot;
  readonly key: string;
  readonly to: Json | undefined;
}

/** By vignette; a piece that a proposal takes from one vignette to another is about both. Paints are about walls. */
export function proposedVignettesOf(documents: ShowDocuments): ReadonlyMap<VignetteId, readonly OpenFact[]> {
  const touched = new Map<VignetteId, OpenFact[]>();
  for (const [path, { to, from, left }] of documents.all('proposed')) {
    const parts = left === true ? null : proposedKeyParts(path);
    const proposal = parts === null ? undefined : documents.get('proposals', parts.id);
    if (parts === null || proposal === undefined || proposal.outcome) continue;
    const { root, key } = parts;
    const about =
      root === 'vignettes'
        ? [key.split('/')[0]]
        : root === 'memberOf'
          ? [to, from, documents.get('memberOf', key)]
          : root === 'places'
            ? [documents.get('memberOf', key)]
            : [];
    for (const id of new Set(about)) {
      if (typeof id !== 'string') continue;
      const facts = touched.get(id) ?? [];
      facts.push({ root, key, to });
      touched.set(id, facts);
    }
  }
  return touched;
}

/**
 * Whether any of the facts is still to be taken: the hang says something else. Within a layer every fact stands already,
 * because the layer is what would have it so; there it is proposed all the same.
 */
export function anyIsOpen(documents: ShowDocuments, facts: readonly OpenFact[]): boolean {
  if (documents.layer !== null) return facts.length > 0;
  return facts.some(({ root, key, to }) => !sameJson(documents.stored(root, key), to));
}
