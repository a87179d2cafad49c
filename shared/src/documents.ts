/**
 * The show's Y.Docs as cached plain snapshots. Nothing above this file touches Yjs: it reads entities, subscribes to
 * one of them or to a root, and writes through `commands`.
 */
import type { Limit } from '@enfilade/practice/practice-profile';
import * as Y from 'yjs';
import type { HangLayer } from './hang-layer.ts';
import type { LabelWord } from './label-words.ts';
import type { PictureCut } from './picture-cuts.ts';
import type { Acceptance, KeptState, SeatedPerson, Signature, Version } from './protocol.ts';
import { type Change, type Listener, type RawFacts, RootSnapshot } from './root-snapshot.ts';
import {
  type Finish,
  type Fixture,
  type Json,
  type Loan,
  type MuseumObject,
  type Opening,
  type Paint,
  type PieceFacts,
  type Place,
  type PlannedLight,
  type PrivateFacts,
  ROOTS,
  type Room,
  type RootName,
  type Sample,
  type Vignette,
} from './schema.ts';
import { DOCUMENT_NAMES, type DocumentName } from './seats.ts';
import type {
  CollectionWord,
  DeclinedSuggestion,
  DeclinedWord,
  Proposal,
  ProposedFact,
  Remark,
  SampleWord,
} from './talk.ts';
import { inWholeLetters } from './whole-letters.ts';

export interface EntityTypes {
  rooms: Room;
  openings: Opening;
  fixtures: Fixture;
  lights: PlannedLight;
  finishes: Finish;
  limits: Limit;
  objects: MuseumObject;
  loans: Loan;
  pieces: PieceFacts;
  deck: Paint;
  samples: Sample;
  pictureCuts: PictureCut;
  places: Place;
  memberOf: string;
  paints: string;
  vignettes: Vignette;
  settings: Json;
  pinned: boolean;
  labelSides: LabelWord;
  values: PrivateFacts;
  proposals: Proposal;
  proposed: ProposedFact;
  remarks: Remark;
  readMarks: string;
  sampleWords: SampleWord;
  declinedSuggestions: DeclinedSuggestion;
  collectionWords: CollectionWord;
  declined: DeclinedWord;
  signatures: Signature;
  versions: Version;
  states: KeptState;
  acceptances: Acceptance;
  people: SeatedPerson;
}

/** A fact written here: what it was and what it is. Absent: there is none. */
export interface Written {
  readonly root: RootName;
  readonly key: string;
  readonly from?: Json;
  readonly to?: Json;
}

export class ShowDocuments {
  private readonly docs: ReadonlyMap<DocumentName, Y.Doc>;
  private readonly roots = new Map<RootName, RootSnapshot>();
  private readonly writers = new Set<(written: readonly Written[]) => void>();
  /** Snapshots made for this layer, and not shared with what lies beneath. */
  private readonly own: RootSnapshot[] = [];

  /** What is laid over the hang here; null for the hang itself. */
  readonly layer: HangLayer | null;

  /** Without `docs`, fresh empty documents (a new show, a test). A seat without `private` leaves that one out. */
  constructor(docs?: ReadonlyMap<DocumentName, Y.Doc>, over?: { under: ShowDocuments; layer: HangLayer }) {
    this.docs = docs ?? new Map(DOCUMENT_NAMES.map((name) => [name, new Y.Doc()]));
    this.layer = over?.layer ?? null;
    for (const name of Object.keys(ROOTS) as RootName[]) {
      const under = over?.under.roots.get(name);
      if (over !== undefined) {
        if (under === undefined) continue;
        const laid = ROOTS[name].document === 'hang' ? over.layer.over(name, under.facts) : null;
        this.roots.set(name, laid === null ? under : new RootSnapshot(name, laid));
        if (laid !== null) this.own.push(this.roots.get(name) as RootSnapshot);
        continue;
      }
      const map = this.docs.get(ROOTS[name].document)?.getMap<Json>(name);
      if (map !== undefined) this.roots.set(name, new RootSnapshot(name, factsOf(map)));
    }
  }

  /**
   * The show with a layer laid over its hang (a proposal, a kept state): every reader and command works on it as on the
   * show itself. It follows both until `close()`.
   */
  laidOver(layer: HangLayer): ShowDocuments {
    return new ShowDocuments(this.docs, { under: this, layer });
  }

  /** Stops following what lies beneath. Only what `laidOver` made needs it. */
  close(): void {
    for (const snapshot of this.own) snapshot.close();
  }

  doc(name: DocumentName): Y.Doc | undefined {
    return this.docs.get(name);
  }

  /** The entity, edits laid over its base; undefined when unknown, removed, or in a document this seat has not. */
  get<R extends RootName>(root: R, id: string): EntityTypes[R] | undefined {
    return this.roots.get(root)?.entities.get(id) as EntityTypes[R] | undefined;
  }

  /** The live map of a root: read it, never keep it across a change. `version(root)` tells when it changed. */
  all<R extends RootName>(root: R): ReadonlyMap<string, EntityTypes[R]> {
    return (this.roots.get(root)?.entities ?? EMPTY) as ReadonlyMap<string, EntityTypes[R]>;
  }

  version(root: RootName): number {
    return this.roots.get(root)?.version ?? 0;
  }

  /** The stored value under a raw key (`id` or `id/field`), as undo and clashes compare it. */
  stored(root: RootName, key: string): Json | undefined {
    return this.roots.get(root)?.facts.get(key);
  }

  /** Every stored fact of a root under its raw key. */
  facts(root: RootName): Iterable<[string, Json]> {
    return this.roots.get(root)?.facts.entries() ?? [];
  }

  /** Calls back after each change of the root, or of one of its entities. Returns the way out. */
  subscribe(root: RootName, listener: Listener, id?: string): () => void {
    const snapshot = this.roots.get(root);
    if (snapshot === undefined) return () => {};
    if (id === undefined) {
      snapshot.listeners.add(listener);
      return () => snapshot.listeners.delete(listener);
    }
    const listeners = snapshot.entityListeners.get(id) ?? new Set();
    listeners.add(listener);
    snapshot.entityListeners.set(id, listeners);
    return () => {
      listeners.delete(listener);
      if (listeners.size === 0) snapshot.entityListeners.delete(id);
    };
  }

  /**
   * Writes all changes, one transaction a document, and only keys whose value differs.
   * @throws RangeError when a change belongs to a document this seat does not hold.
   */
  write(asked: readonly Change[], origin: unknown): void {
    const changes = this.layer === null ? asked : this.layer.changesFor(asked);
    const byDocument = new Map<DocumentName, Change[]>();
    for (const change of changes) {
      const name = ROOTS[change.root].document;
      const list = byDocument.get(name);
      if (list === undefined) byDocument.set(name, [change]);
      else list.push(change);
    }
    for (const name of byDocument.keys()) {
      if (!this.docs.has(name)) throw new RangeError(`this seat does not hold the document '${name}'`);
    }
    const written: Written[] = [];
    for (const [name, list] of byDocument) {
      const doc = this.docs.get(name) as Y.Doc;
      doc.transact(() => {
        for (const { root, key, value: given } of list) {
          // Else this page would hold another text than everybody it is sent to.
          const value = inWholeLetters(given);
          const map = doc.getMap<Json>(root);
          const from = map.get(key);
          if (sameJson(from, value)) continue;
          written.push({
            root,
            key,
            ...(from === undefined ? {} : { from }),
            ...(value === undefined ? {} : { to: value }),
          });
          if (value === undefined) map.delete(key);
          else map.set(key, value);
        }
      }, origin);
    }
    if (written.length > 0) for (const tell of this.writers) tell(written);
  }

  /** Calls back with each write made here (not with what comes from elsewhere), once it is made. Returns the way out. */
  onWrite(tell: (written: readonly Written[]) => void): () => void {
    this.writers.add(tell);
    return () => this.writers.delete(tell);
  }
}

/** A Y.Map as raw facts. */
function factsOf(map: Y.Map<Json>): RawFacts {
  return {
    get: (key) => map.get(key),
    entries: () => map.entries(),
    observe(tell) {
      const observer = (event: Y.YMapEvent<Json>): void => tell(event.keysChanged as Set<string>);
      map.observe(observer);
      return () => map.unobserve(observer);
    },
  };
}

const EMPTY: ReadonlyMap<string, never> = new Map<string, never>();

/** Equality of two stored values, by their parts. */
export function sameJson(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keysA = Object.keys(a);
  if (Array.isArray(a) !== Array.isArray(b) || keysA.length !== Object.keys(b).length) return false;
  return keysA.every((key) => sameJson((a as Record<string, Json>)[key], (b as Record<string, Json>)[key]));
}
