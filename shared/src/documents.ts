/**
 * The show's Y.Docs as cached plain snapshots. Nothing above this file touches Yjs: it reads entities, subscribes to
 * one of them or to a root, and writes through `commands`.
 */
import * as Y from 'yjs';
import type { Signature, Version } from './protocol.ts';
import {
  type Fixture,
  type Json,
  type MuseumObject,
  type Opening,
  type Paint,
  type PieceFacts,
  type Place,
  type PrivateFacts,
  ROOTS,
  type Room,
  type RootName,
  type Vignette,
} from './schema.ts';
import { DOCUMENT_NAMES, type DocumentName } from './seats.ts';

export interface EntityTypes {
  rooms: Room;
  openings: Opening;
  fixtures: Fixture;
  objects: MuseumObject;
  pieces: PieceFacts;
  deck: Paint;
  places: Place;
  memberOf: string;
  paints: string;
  vignettes: Vignette;
  settings: Json;
  values: PrivateFacts;
  signatures: Signature;
  versions: Version;
}

/** One fact changed: `value` undefined takes the key away. */
export interface Change {
  readonly root: RootName;
  readonly key: string;
  readonly value: Json | undefined;
}

/** Told after a change which entities of the root it touched. */
type Listener = (ids: ReadonlySet<string>) => void;

/** One root's snapshot: entities by id, its version, and who listens. */
class RootSnapshot {
  readonly entities = new Map<string, unknown>();
  readonly listeners = new Set<Listener>();
  readonly entityListeners = new Map<string, Set<Listener>>();
  version = 0;
  readonly name: RootName;
  readonly map: Y.Map<Json>;

  constructor(name: RootName, map: Y.Map<Json>) {
    this.name = name;
    this.map = map;
    this.rebuildAll();
    map.observe((event) => this.take(event.keysChanged));
  }

  private rebuildAll(): void {
    const table = ROOTS[this.name].shape === 'table';
    const edits: [string, string, Json][] = [];
    for (const [key, value] of this.map.entries()) {
      const cut = table ? key.indexOf('/') : -1;
      if (cut < 0 && !isWellFormed(this.name, value)) continue;
      if (cut < 0) this.entities.set(key, value);
      else edits.push([key.slice(0, cut), key.slice(cut + 1), value]);
    }
    for (const [id, field, value] of edits) {
      // A copy is made on the first edit only; the base stays as the document holds it.
      const base = this.entities.get(id);
      const own = base === undefined || base === this.map.get(id) ? { ...(base as object) } : (base as object);
      (own as Record<string, Json>)[field] = value;
      this.entities.set(id, own);
    }
    for (const [id, entity] of this.entities) {
      if (isRemoved(entity)) this.entities.delete(id);
    }
  }

  private rebuild(id: string, fields: ReadonlySet<string>): void {
    const stored = this.map.get(id);
    const base = stored === undefined || isWellFormed(this.name, stored) ? stored : undefined;
    const before = this.entities.get(id) as Record<string, Json> | undefined;
    let entity: Record<string, Json> | undefined;
    if (before !== undefined && !fields.has('')) {
      // Only some fields were edited: take those, and keep the rest as it was.
      entity = { ...before };
      for (const field of fields) {
        const value = this.map.get(`${id}/${field}`) ?? (base as Record<string, Json> | undefined)?.[field];
        if (value === undefined) delete entity[field];
        else entity[field] = value;
      }
    } else {
      // The base changed, or the entity comes back: its edits are looked up among all keys.
      const edits: [string, Json][] = [];
      for (const [key, value] of this.map.entries()) {
        if (key.startsWith(`${id}/`)) edits.push([key.slice(id.length + 1), value]);
      }
      if (base !== undefined || edits.length > 0) {
        entity = { ...(base as Record<string, Json> | undefined), ...Object.fromEntries(edits) };
      }
    }
    if (entity === undefined || isRemoved(entity)) this.entities.delete(id);
    else this.entities.set(id, entity);
  }

  private take(keys: ReadonlySet<string>): void {
    const touched = new Map<string, Set<string>>();
    if (ROOTS[this.name].shape === 'atomic') {
      for (const key of keys) {
        const value = this.map.get(key);
        if (value === undefined || !isWellFormed(this.name, value)) this.entities.delete(key);
        else this.entities.set(key, value);
        touched.set(key, new Set());
      }
    } else {
      for (const key of keys) {
        const cut = key.indexOf('/');
        const id = cut < 0 ? key : key.slice(0, cut);
        const fields = touched.get(id) ?? new Set<string>();
        fields.add(cut < 0 ? '' : key.slice(cut + 1));
        touched.set(id, fields);
      }
      if (touched.size > 64 && [...touched.values()].some((fields) => fields.has(''))) {
        // A whole import: reading everything once is cheaper than searching the keys for each record.
        this.entities.clear();
        this.rebuildAll();
      } else {
        for (const [id, fields] of touched) this.rebuild(id, fields);
      }
    }
    this.version += 1;
    const ids = new Set(touched.keys());
    for (const id of ids) {
      for (const listener of this.entityListeners.get(id) ?? []) listener(ids);
    }
    for (const listener of this.listeners) listener(ids);
  }
}

/** A fact of the wrong shape, from a broken or hostile client, is as if it were not there: nobody's page breaks on it. */
function isWellFormed(root: RootName, value: unknown): boolean {
  if (root === 'settings') return true;
  if (root === 'memberOf' || root === 'paints') return typeof value === 'string';
  if (root !== 'places') return typeof value === 'object' && value !== null && !Array.isArray(value);
  if (!Array.isArray(value) || value.length !== 5) return false;
  return typeof value[0] === 'string' && value.slice(1).every((figure) => Number.isFinite(figure));
}

function isRemoved(entity: unknown): boolean {
  return typeof entity === 'object' && entity !== null && (entity as { removed?: boolean }).removed === true;
}

export class ShowDocuments {
  private readonly docs: ReadonlyMap<DocumentName, Y.Doc>;
  private readonly roots = new Map<RootName, RootSnapshot>();

  /** Without `docs`, fresh empty documents (a new show, a test). A seat without `private` leaves that one out. */
  constructor(docs?: ReadonlyMap<DocumentName, Y.Doc>) {
    this.docs = docs ?? new Map(DOCUMENT_NAMES.map((name) => [name, new Y.Doc()]));
    for (const name of Object.keys(ROOTS) as RootName[]) {
      const doc = this.docs.get(ROOTS[name].document);
      if (doc !== undefined) this.roots.set(name, new RootSnapshot(name, doc.getMap(name)));
    }
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
    return this.roots.get(root)?.map.get(key);
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
  write(changes: readonly Change[], origin: unknown): void {
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
    for (const [name, list] of byDocument) {
      const doc = this.docs.get(name) as Y.Doc;
      doc.transact(() => {
        for (const { root, key, value } of list) {
          const map = (this.roots.get(root) as RootSnapshot).map;
          if (sameJson(map.get(key), value)) continue;
          if (value === undefined) map.delete(key);
          else map.set(key, value);
        }
      }, origin);
    }
  }
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
