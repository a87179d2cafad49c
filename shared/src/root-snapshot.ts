/** One root of a document as plain entities, rebuilt one by one as its raw facts change. */
import { LABEL_WORDS } from './label-words.ts';
import { PICTURE_CUTS } from './picture-cuts.ts';
import { type Json, ROOTS, type RootName } from './schema.ts';

/** One fact changed: `value` undefined takes the key away. */
export interface Change {
  readonly root: RootName;
  readonly key: string;
  readonly value: Json | undefined;
}

/** Where a root's raw facts are read: a Y.Map, or a layer laid over one. */
export interface RawFacts {
  get(key: string): Json | undefined;
  entries(): Iterable<[string, Json]>;
  /** Calls back with the raw keys of each change. Returns the way out. */
  observe(tell: (keys: ReadonlySet<string>) => void): () => void;
}

/** Told after a change which entities of the root it touched. */
export type Listener = (ids: ReadonlySet<string>) => void;

/**
 * What is said of a piece, of a record's loan or of a wall, or kept private of a record, stands by itself. Elsewhere edits without a base are what is left
 * of something that was made, corrected by another, and taken back: it is gone, and comes back whole with its base.
 */
const STANDS_ON_EDITS: ReadonlySet<RootName> = new Set(['pieces', 'loans', 'finishes', 'values']);

/** One root's snapshot: entities by id, its version, and who listens. */
export class RootSnapshot {
  readonly entities = new Map<string, unknown>();
  readonly listeners = new Set<Listener>();
  readonly entityListeners = new Map<string, Set<Listener>>();
  version = 0;
  readonly name: RootName;
  readonly facts: RawFacts;
  /** Stops listening to the facts. */
  readonly close: () => void;

  constructor(name: RootName, facts: RawFacts) {
    this.name = name;
    this.facts = facts;
    this.rebuildAll();
    this.close = facts.observe((keys) => this.take(keys));
  }

  private rebuildAll(): void {
    const table = ROOTS[this.name].shape === 'table';
    const edits: [string, string, Json][] = [];
    for (const [key, value] of this.facts.entries()) {
      const cut = table ? key.indexOf('/') : -1;
      if (cut < 0 && !isWellFormed(this.name, value)) continue;
      if (cut < 0) this.entities.set(key, value);
      else edits.push([key.slice(0, cut), key.slice(cut + 1), value]);
    }
    for (const [id, field, value] of edits) {
      // A copy is made on the first edit only; the base stays as the document holds it.
      const base = this.entities.get(id);
      if (base === undefined && !STANDS_ON_EDITS.has(this.name)) continue;
      const own = base === undefined || base === this.facts.get(id) ? { ...(base as object) } : (base as object);
      (own as Record<string, Json>)[field] = value;
      this.entities.set(id, own);
    }
    for (const [id, entity] of this.entities) {
      if (isRemoved(entity)) this.entities.delete(id);
    }
  }

  private rebuild(id: string, fields: ReadonlySet<string>): void {
    const stored = this.facts.get(id);
    const base = stored === undefined || isWellFormed(this.name, stored) ? stored : undefined;
    const before = this.entities.get(id) as Record<string, Json> | undefined;
    let entity: Record<string, Json> | undefined;
    if (before !== undefined && !fields.has('')) {
      // Only some fields were edited: take those, and keep the rest as it was.
      entity = { ...before };
      for (const field of fields) {
        const edit = this.facts.get(`${id}/${field}`);
        // An edit of null is a word of its own: it must not fall back to the base.
        const value = edit === undefined ? (base as Record<string, Json> | undefined)?.[field] : edit;
        if (value === undefined) delete entity[field];
        else entity[field] = value;
      }
      if (base === undefined && Object.keys(entity).length === 0) entity = undefined;
    } else {
      // The base changed, or the entity comes back: its edits are looked up among all keys.
      const edits: [string, Json][] = [];
      for (const [key, value] of this.facts.entries()) {
        if (key.startsWith(`${id}/`)) edits.push([key.slice(id.length + 1), value]);
      }
      if (base !== undefined || (edits.length > 0 && STANDS_ON_EDITS.has(this.name))) {
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
        const value = this.facts.get(key);
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
  if (root === 'memberOf' || root === 'paints' || root === 'readMarks') return typeof value === 'string';
  if (root === 'pictureCuts') return (PICTURE_CUTS as readonly unknown[]).includes(value);
  if (root === 'pinned') return typeof value === 'boolean';
  if (root === 'labelSides') return (LABEL_WORDS as readonly unknown[]).includes(value);
  if (root !== 'places') return typeof value === 'object' && value !== null && !Array.isArray(value);
  if (!Array.isArray(value) || value.length !== 5) return false;
  return typeof value[0] === 'string' && value.slice(1).every((figure) => Number.isFinite(figure));
}

function isRemoved(entity: unknown): boolean {
  return typeof entity === 'object' && entity !== null && (entity as { removed?: boolean }).removed === true;
}
