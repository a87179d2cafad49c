/**
 * A network that fails as networks do, between replicas that fail as machines do; everything from one seed. Letters are
 * delayed, reordered, repeated and lost; links break and come back as y-protocols has it (each side says what it knows,
 * the other sends what is lacking); a replica ends and returns with what it had on its disk, and under new client ids.
 */
import { ShowDocuments } from '@enfilade/shared/documents';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import * as Y from 'yjs';
import { seeded } from '../shared/replicas.ts';

export interface NetworkWish {
  readonly count: number;
  readonly seed: number;
  /** star: the first replica is the server and passes on what it takes. mesh: each tells every other. */
  readonly shape: 'star' | 'mesh';
}

interface Link {
  readonly ends: readonly [number, number];
  up: boolean;
  /** Rises whenever the link breaks: what was on its way then never comes. */
  session: number;
}

interface Letter {
  readonly link: Link;
  readonly session: number;
  readonly from: number;
  readonly to: number;
  readonly name: DocumentName;
  readonly kind: 'what I know' | 'update';
  readonly bytes: Uint8Array;
}

interface Replica {
  docs: ReadonlyMap<DocumentName, Y.Doc>;
  documents: ShowDocuments;
  /** As on its disk. */
  durable: ReadonlyMap<DocumentName, Uint8Array>;
}

/** Came over this network, from that replica. */
class Heard {
  readonly from: number;
  constructor(from: number) {
    this.from = from;
  }
}

export class FakeNetwork {
  readonly count: number;
  private readonly shape: 'star' | 'mesh';
  private readonly random: () => number;
  private readonly replicas: Replica[] = [];
  private readonly links: Link[] = [];
  private letters: Letter[] = [];
  private nextClient = 1;
  /** How often each thing has happened. */
  readonly happened = { delivered: 0, repeated: 0, lost: 0, broken: 0, parted: 0, joined: 0, crashed: 0 };

  constructor({ count, seed, shape }: NetworkWish) {
    this.count = count;
    this.shape = shape;
    this.random = seeded(seed);
    for (let n = 0; n < count; n++) this.replicas.push(this.begun(n, new Map()));
    for (let a = 0; a < count; a++) {
      for (let b = a + 1; b < count; b++) {
        if (shape === 'mesh' || a === 0) this.links.push({ ends: [a, b], up: true, session: 0 });
      }
    }
  }

  documents(n: number): ShowDocuments {
    return this.replica(n).documents;
  }

  doc(n: number, name: DocumentName): Y.Doc {
    return this.replica(n).docs.get(name) as Y.Doc;
  }

  /** Whether a transaction came from another replica. */
  isHeard(origin: unknown): boolean {
    return origin instanceof Heard;
  }

  /** One letter at random comes, sometimes twice, sometimes never: then its link has broken, though nobody knows yet. */
  deliverOne(loss = 0): void {
    if (this.letters.length === 0) return;
    const [letter] = this.letters.splice(Math.floor(this.random() * this.letters.length), 1);
    if (letter === undefined || !letter.link.up || letter.session !== letter.link.session) return;
    if (this.random() < loss) {
      this.happened.lost += 1;
      return;
    }
    this.take(letter);
    this.happened.delivered += 1;
    if (this.random() < 0.1) {
      this.take(letter);
      this.happened.repeated += 1;
    }
  }

  /** A link breaks: all that was on its way is lost. */
  breakOne(): void {
    const link = this.links[Math.floor(this.random() * this.links.length)];
    if (link !== undefined) this.cut(link);
    this.happened.broken += 1;
  }

  /** Two sides that hear nothing of each other. */
  part(): void {
    const side = Array.from({ length: this.count }, () => this.random() < 0.5);
    for (const link of this.links) if (side[link.ends[0]] !== side[link.ends[1]]) this.cut(link);
    this.happened.parted += 1;
  }

  /** One replica goes where there is no network. */
  private isolate(n: number): void {
    for (const link of this.links) if (link.ends.includes(n)) this.cut(link);
  }

  /** A broken link comes back, and each end says what it knows. */
  joinOne(): void {
    const down = this.links.filter(({ up }) => !up);
    const link = down[Math.floor(this.random() * down.length)];
    if (link !== undefined) this.mend(link);
    this.happened.joined += 1;
  }

  /** What a replica has now is on its disk. */
  save(n: number): void {
    const replica = this.replica(n);
    replica.durable = new Map([...replica.docs].map(([name, doc]) => [name, Y.encodeStateAsUpdate(doc)]));
  }

  /** A replica ends and returns with what was on its disk; its links come back by and by. */
  crash(n: number): void {
    this.isolate(n);
    const replica = this.replica(n);
    for (const doc of replica.docs.values()) doc.destroy();
    this.replicas[n] = this.begun(n, replica.durable);
    this.happened.crashed += 1;
  }

  /** Every link breaks once more and comes back, and all that is said arrives. */
  heal(): void {
    for (const link of this.links) this.cut(link);
    for (const link of this.links) this.mend(link);
    while (this.letters.length > 0) this.deliverOne();
  }

  private replica(n: number): Replica {
    return this.replicas[n] as Replica;
  }

  private begun(n: number, durable: ReadonlyMap<DocumentName, Uint8Array>): Replica {
    const docs = new Map<DocumentName, Y.Doc>();
    const client = this.nextClient++;
    for (const name of DOCUMENT_NAMES) {
      const doc = new Y.Doc();
      // By lot among the living ones' order: who wins when two write at once must not follow from the replica's number.
      doc.clientID = Math.floor(this.random() * 1000) * 10_000 + client;
      const bytes = durable.get(name);
      if (bytes !== undefined) Y.applyUpdate(doc, bytes, new Heard(n));
      doc.on('update', (update: Uint8Array, origin: unknown) => {
        const heardFrom = origin instanceof Heard ? origin.from : null;
        if (heardFrom === null || (this.shape === 'star' && n === 0)) this.tell(n, name, update, heardFrom);
      });
      docs.set(name, doc);
    }
    return { docs, documents: new ShowDocuments(docs), durable };
  }

  private tell(from: number, name: DocumentName, bytes: Uint8Array, except: number | null): void {
    for (const link of this.links) {
      const to = link.ends[0] === from ? link.ends[1] : link.ends[0];
      if (!link.up || !link.ends.includes(from) || to === except) continue;
      this.letters.push({ link, session: link.session, from, to, name, kind: 'update', bytes });
    }
  }

  private cut(link: Link): void {
    link.up = false;
    link.session += 1;
    this.letters = this.letters.filter((letter) => letter.link !== link);
  }

  private mend(link: Link): void {
    if (link.up) return;
    link.up = true;
    for (const [from, to] of [link.ends, [...link.ends].reverse() as [number, number]]) {
      for (const name of DOCUMENT_NAMES) {
        const bytes = Y.encodeStateVector(this.doc(from, name));
        this.letters.push({ link, session: link.session, from, to, name, kind: 'what I know', bytes });
      }
    }
  }

  private take({ link, session, from, to, name, kind, bytes }: Letter): void {
    const doc = this.doc(to, name);
    if (kind === 'update') {
      Y.applyUpdate(doc, bytes, new Heard(from));
      return;
    }
    const lacking = Y.encodeStateAsUpdate(doc, bytes);
    this.letters.push({ link, session, from: to, to: from, name, kind: 'update', bytes: lacking });
  }
}
