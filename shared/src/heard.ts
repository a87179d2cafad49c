/** What others change, fact by fact, as it arrives here. */
import type * as Y from 'yjs';
import { type ShowDocuments, sameJson } from './documents.ts';
import { type Json, ROOTS, type RootName } from './schema.ts';

/**
 * Calls back with each fact that somebody elsewhere has made another: not with what is written here, nor with a word that
 * did not prevail. It lasts as long as the documents do.
 */
export function onHeard(documents: ShowDocuments, tell: (root: RootName, key: string) => void): void {
  for (const root of Object.keys(ROOTS) as RootName[]) {
    const map = documents.doc(ROOTS[root].document)?.getMap<Json>(root);
    map?.observe((event: Y.YMapEvent<Json>, { local }: Y.Transaction) => {
      if (local) return;
      for (const [key, { oldValue }] of event.changes.keys) {
        if (!sameJson(oldValue as Json | undefined, event.target.get(key))) tell(root, key);
      }
    });
  }
}
