/** Which part of the collection is on screen, as its address names it. */

export const COLLECTION_PARTS = ['browse', 'said', 'to-photograph', 'pull-list', 'brought-in'] as const;

export type CollectionView =
  | { readonly part: (typeof COLLECTION_PARTS)[number] }
  /** What looks like a thing, or answers it: of the collection by its number, of the checklist by its id. */
  | { readonly part: 'like' | 'echo'; readonly of: 'number' | 'object'; readonly id: string };

/** 'said', 'like/number/OM%201902.7'; empty for browsing. */
export function collectionAddress(view: CollectionView): string {
  if ('of' in view) return `${view.part}/${view.of}/${encodeURIComponent(view.id)}`;
  return view.part === 'browse' ? '' : view.part;
}

/** The part an address names; browsing where it names none. */
export function collectionViewFrom(address: string): CollectionView {
  const [part, of, ...rest] = address.split('/');
  const plain = COLLECTION_PARTS.find((name) => name === part);
  if (plain !== undefined) return { part: plain };
  const id = decoded(rest.join('/'));
  if ((part === 'like' || part === 'echo') && (of === 'number' || of === 'object') && id !== '') {
    return { part, of, id };
  }
  return { part: 'browse' };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
