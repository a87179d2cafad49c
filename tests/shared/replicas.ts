/** A fake network between replicas: updates are delayed, reordered and repeated, then all arrive; seeded. */
import { ShowDocuments } from '@enfilade/shared/documents';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import * as Y from 'yjs';

/** Deterministic numbers in [0, 1): mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface Letter {
  readonly to: number;
  readonly name: DocumentName;
  readonly update: Uint8Array;
}

export class FakeNetwork {
  readonly replicas: readonly ShowDocuments[];
  private readonly random: () => number;
  private letters: Letter[] = [];

  constructor(count: number, seed: number) {
    this.random = seeded(seed);
    this.replicas = Array.from({ length: count }, (_, from) => {
      const docs = new Map<DocumentName, Y.Doc>();
      for (const name of DOCUMENT_NAMES) {
        const doc = new Y.Doc();
        doc.clientID = from + 1;
        doc.on('update', (update: Uint8Array, origin: unknown) => {
          if (origin === 'network') return;
          for (let to = 0; to < count; to++) if (to !== from) this.letters.push({ to, name, update });
        });
        docs.set(name, doc);
      }
      return new ShowDocuments(docs);
    });
  }

  /** Delivers one letter at random, sometimes twice. */
  deliverOne(): void {
    if (this.letters.length === 0) return;
    const [letter] = this.letters.splice(Math.floor(this.random() * this.letters.length), 1);
    if (letter === undefined) return;
    const doc = this.replicas[letter.to]?.doc(letter.name) as Y.Doc;
    Y.applyUpdate(doc, letter.update, 'network');
    if (this.random() < 0.2) Y.applyUpdate(doc, letter.update, 'network');
  }

  deliverAll(): void {
    while (this.letters.length > 0) this.deliverOne();
  }
}

/** Every root of every document as plain data, for comparing replicas. */
export function everythingIn(documents: ShowDocuments): unknown {
  return DOCUMENT_NAMES.map((name) => {
    const doc = documents.doc(name) as Y.Doc;
    return [...doc.share.keys()].sort().map((root) => [root, doc.getMap(root).toJSON()]);
  });
}
