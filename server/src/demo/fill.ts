/** Puts the demo show into a server's empty documents, through its log like everybody's writes. */

import { type Json, ROOTS } from '@enfilade/shared/schema';
import type { DocumentName } from '@enfilade/shared/seats';
import * as Y from 'yjs';
import type { Collection } from '../collection.ts';
import type { Images } from '../images.ts';
import type { Sessions } from '../sessions.ts';
import { dayFacts } from './days.ts';
import type { DemoOptions } from './show.ts';

/** Last, as it says that everything before it is in the log. */
const LAST: DocumentName = 'rooms';

/**
 * Fills a show that has no rooms yet; answers whether it did. Stopped half-way, the next call begins again and the
 * same bytes lead to the same show.
 * Rejects when a picture cannot be kept or the log cannot be written.
 */
export async function fillWithDemo(
  {
    images,
    sessions,
    collection,
  }: { readonly images: Images; readonly sessions: Sessions; readonly collection?: Collection },
  options: Omit<DemoOptions, 'takePicture' | 'takeCollection'> & { readonly now?: Date } = {},
): Promise<boolean> {
  if (sessions.documents.all('rooms').size > 0) return false;
  // Drawing a show is much to load, and wanted once.
  const { buildDemoShow, toUpdates } = await import('./show.ts');
  const show = await buildDemoShow({
    ...options,
    takePicture: async (bytes, name) => (await images.add(bytes, name)).sha256,
    ...(collection === undefined ? {} : { takeCollection: (records) => collection.fill(records) }),
  });
  const updates = toUpdates(show).sort((a, b) => Number(a.document === LAST) - Number(b.document === LAST));
  // Days are the server's own writes: begun again on another day they must not meet other facts under one client id.
  const days = dayFacts(options.now ?? new Date());
  for (const { document, bytes } of updates.filter(({ document }) => document !== LAST)) {
    await sessions.get(document).act((doc) => Y.applyUpdate(doc, bytes));
    const own = days.filter(({ root }) => ROOTS[root].document === document);
    // An act of its own: within the one above Yjs would take the server's own writes for a stranger's under its id.
    await sessions.get(document).act((doc) => {
      for (const { root, key, value } of own) doc.getMap<Json>(root).set(key, value as Json);
    });
  }
  for (const { document, bytes } of updates.filter(({ document }) => document === LAST)) {
    await sessions.get(document).act((doc) => Y.applyUpdate(doc, bytes));
  }
  return true;
}
