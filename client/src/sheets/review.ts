/**
 * What is being brought in, kept beside the session and not in a page: going elsewhere in the show and coming back finds
 * it as it was. While there is any of it the browser asks before the window closes.
 */
import { MAX_ROWS } from '@enfilade/records/checklist-rows';
import type { RowAnswer } from '@enfilade/shared/checklist-reading';
import type { BundleAnswer } from '@enfilade/shared/protocol';
import type { PictureStore } from '../sync/picture-store.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { ChecklistReader, type ReadingState } from '../workers/checklist-reader.ts';
import type { SourceAnswer, WindowAnswer } from '../workers/checklist-task.ts';
import type { Collected } from '../workers/send-to-collection.ts';
import { unpackZip } from '../workers/zip-unpacker.ts';
import type { HandChoice } from './picture-choices.ts';
import { pictureFaultOf } from './picture-soundness.ts';
import type { SendingState } from './sending.ts';

export interface PictureFile {
  readonly id: string;
  readonly file: File;
  /** What is wrong with it; null where nothing is seen to be. */
  readonly fault: string | null;
}

export interface Refused {
  readonly fileName: string;
  readonly what: string;
}

export interface Done {
  readonly name: string;
  readonly records: number;
  readonly added: number;
  readonly updated: number;
  readonly pictures: number;
  readonly beyond: number;
  readonly refused: readonly Refused[];
  /** Sentences on what was taken in part. */
  readonly told: readonly string[];
}

/** Where a file goes: to the show, or to what the museum has. */
export type Into = 'checklist' | 'collection';

export interface ReviewState {
  readonly into: Into;
  readonly reading: ReadingState;
  /** How far rows are read again under a mended heading. */
  readonly mending: { readonly what: string; readonly share: number | null } | null;
  /** Rows of a long file beyond those of the reading, where they were looked at last. */
  readonly window: WindowAnswer | null;
  /** The numbers that pictures’ names answer to in the collection, by picture; null: not asked yet, or not answered. */
  readonly numbers: ReadonlyMap<string, string> | null;
  readonly matching: boolean;
  /** A person's word on the number a picture shows; null: none of those found. */
  readonly numberByHand: ReadonlyMap<string, string | null>;
  /** What has gone into the collection, and is going. */
  readonly collected: Collected | null;
  /** Pictures that did not go into the collection. */
  readonly refusedPictures: readonly Refused[];
  /** A row's cells as the source has them, where a person asked for them. */
  readonly source: SourceAnswer | null;
  /** A zip that is being unpacked. */
  readonly unpacking: { readonly fileName: string; readonly what: string; readonly share: number | null } | null;
  readonly pictures: readonly PictureFile[];
  /** What of the chosen files stays out, and why. */
  readonly ignored: readonly string[];
  readonly answers: ReadonlyMap<string, RowAnswer>;
  readonly byHand: ReadonlyMap<string, HandChoice>;
  readonly sending: SendingState | null;
  readonly done: Done | null;
  /** Whether the pictures that a manifest names are fetched with it. */
  readonly fetchNamed: boolean;
  /** The address of a manifest that is being fetched. */
  readonly fetching: string | null;
  /** A whole show that was chosen. */
  readonly bundle: BundleState | null;
}

export type BundleState =
  | { readonly kind: 'chosen' | 'sending'; readonly file: File }
  | { readonly kind: 'failed'; readonly file: File; readonly what: string }
  | { readonly kind: 'in'; readonly answer: BundleAnswer };

const EMPTY: ReviewState = {
  into: 'checklist',
  mending: null,
  window: null,
  numbers: null,
  matching: false,
  numberByHand: new Map(),
  collected: null,
  refusedPictures: [],
  reading: { kind: 'none' },
  source: null,
  unpacking: null,
  pictures: [],
  ignored: [],
  answers: new Map(),
  byHand: new Map(),
  sending: null,
  done: null,
  fetchNamed: false,
  fetching: null,
  bundle: null,
};

const PICTURE = /\.(jpe?g|png|webp|tiff?|gif|bmp|hei[cf]|avif)$/i;
const CHECKLIST = /\.(csv|tsv|txt|xlsx|xlsm|xls|ods|xml|lido|json|jsonld)$/i;
const ZIP = /\.zip$/i;
/** As Take out names a whole show. */
const BUNDLE = /\.show(?: ?\(\d+\))?\.zip$/i;

export class Review {
  state: ReviewState = EMPTY;
  readonly reader: ChecklistReader;
  /** SHA-256 of what has been sent, so that nothing is sent twice. */
  readonly hashes = new Map<File, string>();
  stop: AbortController | null = null;
  stopUnpacking: AbortController | null = null;
  stopFetching: AbortController | null = null;
  /** The manifest that is being read: its file, and its id once the server holds it. */
  manifest: { readonly file: File; readonly id: string | null } | null = null;
  private readonly listeners = new Set<() => void>();
  private asking = false;
  /** A person has said where it goes. */
  private intoSaid = false;

  /** `museum`: its own name. */
  constructor(museum: () => string) {
    this.reader = new ChecklistReader(
      {
        reading: (reading) => this.takeReading(reading),
        mending: (mending) => this.put({ mending }),
        source: (source) => this.put({ source }),
        window: (window) => this.put({ window }),
        matched: (numbers) => this.put({ numbers, matching: false }),
        collected: (collected) => this.put({ collected }),
      },
      museum,
    );
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly snapshot = (): ReviewState => this.state;

  put(change: Partial<ReviewState>): void {
    this.state = { ...this.state, ...change };
    const { pictures, reading, unpacking } = this.state;
    this.keepAsking(pictures.length > 0 || reading.kind !== 'none' || unpacking !== null);
    for (const listener of this.listeners) listener();
  }

  readonly lookFrom = (from: number): void => this.reader.window(from);

  say(into: Into): void {
    this.intoSaid = true;
    this.put({ into });
  }

  /** As whoever comes here from the head expects it; where something is being brought in, it stays where it goes. */
  sayNothing(): void {
    const { reading, pictures, collected, done } = this.state;
    if (reading.kind !== 'none' || pictures.length > 0 || collected !== null || done !== null) return;
    this.intoSaid = false;
    this.put({ into: EMPTY.into });
  }

  private takeReading(reading: ReadingState): void {
    // What no checklist holds was meant for the collection, until a person says otherwise.
    const long = reading.kind === 'read' && reading.collection.count > MAX_ROWS;
    const { collected } = this.state;
    const broken = reading.kind === 'failed' && collected?.ended === 'no';
    this.put({
      ...{ reading, source: null, window: null, numbers: null },
      ...(long && !this.intoSaid ? { into: 'collection' } : {}),
      ...(broken ? { collected: { ...collected, ended: 'broken', what: reading.what } } : {}),
    });
  }

  async take(chosen: readonly File[]): Promise<void> {
    const bundle = chosen.find(({ name }) => BUNDLE.test(name));
    if (bundle !== undefined) {
      this.put({ bundle: { kind: 'chosen', file: bundle }, done: null });
      return;
    }
    const zips = chosen.filter(({ name }) => ZIP.test(name));
    this.takePlain(chosen.filter((file) => !zips.includes(file)));
    for (const zip of zips) await this.takeZip(zip);
  }

  /** A manifest by its address, fetched by the server and then read as a file is. */
  async takeAddress(pictures: PictureStore, address: string): Promise<void> {
    const control = new AbortController();
    this.stopFetching = control;
    this.put({ fetching: address, done: null, ignored: [] });
    const answer = await pictures.manifest({ address }, control.signal).catch(() => null);
    this.put({ fetching: null });
    if (answer === null || !('id' in answer)) {
      const what = control.signal.aborted ? 'Stopped; nothing was fetched.' : 'The server did not answer.';
      this.put({ ignored: [`${address}: ${answer === null ? what : answer.what}`] });
      return;
    }
    const file = new File([answer.text], address, { type: 'application/json' });
    this.manifest = { file, id: answer.id };
    this.put({ answers: new Map(), fetchNamed: true });
    this.reader.read(file);
  }

  async takeBundle(pictures: PictureStore): Promise<void> {
    const { bundle } = this.state;
    if (bundle === null || bundle.kind === 'in') return;
    const { file } = bundle;
    const control = new AbortController();
    this.stop = control;
    this.put({ bundle: { kind: 'sending', file } });
    const answer = await pictures.takeBundle(file, control.signal).catch(() => null);
    const what = control.signal.aborted ? 'Stopped.' : 'It did not arrive. Nothing was changed.';
    if (answer !== null && 'records' in answer) this.put({ bundle: { kind: 'in', answer } });
    else this.put({ bundle: { kind: 'failed', file, what: answer?.what ?? what } });
  }

  /** The id under which the server holds the manifest that is read; null where it is none. */
  async manifestId(pictures: PictureStore, signal: AbortSignal): Promise<string | null> {
    if (this.manifest === null || this.manifest.id !== null) return this.manifest?.id ?? null;
    const { file } = this.manifest;
    const answer = await pictures.manifest(file, signal);
    if (!('id' in answer)) return null;
    this.manifest = { file, id: answer.id };
    return answer.id;
  }

  begin(): void {
    this.stop?.abort();
    this.stopFetching?.abort();
    this.manifest = null;
    this.stopUnpacking?.abort();
    this.hashes.clear();
    this.reader.forget();
    this.put({ ...EMPTY, into: this.intoSaid ? this.state.into : EMPTY.into });
  }

  /** What lies in a zip is taken as if it had been chosen; what stays in it is told. */
  private async takeZip(zip: File): Promise<void> {
    const control = new AbortController();
    this.stopUnpacking = control;
    const fileName = zip.name;
    this.put({ unpacking: { fileName, what: 'opening', share: null } });
    const { files, left, broken } = await unpackZip(zip, control.signal, (what, share) =>
      this.put({ unpacking: { fileName, what, share } }),
    );
    this.put({ unpacking: null });
    this.takePlain(files);
    const told = [
      ...(broken === null ? [] : [`${fileName}: ${broken}`]),
      ...left.map(({ name, what }) => `${fileName}: “${name}” ${what}`),
      ...(files.length === 0 && left.length === 0 && broken === null ? [`${fileName} holds no picture.`] : []),
    ];
    this.put({ ignored: [...this.state.ignored, ...told] });
  }

  private takePlain(chosen: readonly File[]): void {
    const pictures = chosen.filter(({ name, type }) => PICTURE.test(name) || type.startsWith('image/'));
    const checklists = chosen.filter((file) => CHECKLIST.test(file.name) && !pictures.includes(file));
    const rest = chosen.filter((file) => !pictures.includes(file) && !checklists.includes(file));
    const checklist = checklists.at(-1);
    this.put({
      ...{ done: null, collected: null },
      ignored: [
        ...rest.map(({ name }) => `${name} is neither a checklist nor a picture that is known here; it stays out.`),
        ...checklists.slice(0, -1).map(({ name }) => `${name} stays out: one checklist at a time.`),
      ],
      ...(checklist === undefined ? {} : { answers: new Map() }),
    });
    if (checklist !== undefined) {
      this.manifest = { file: checklist, id: null };
      this.put({ fetchNamed: false });
      this.reader.read(checklist);
    }
    void this.takePictures(pictures);
  }

  private async takePictures(pictures: readonly File[]): Promise<void> {
    const known = new Set(this.state.pictures.map(({ id }) => id));
    const fresh: File[] = [];
    for (const file of pictures) {
      if (known.has(idOf(file))) continue;
      known.add(idOf(file));
      fresh.push(file);
    }
    this.put({
      pictures: [...this.state.pictures, ...fresh.map((file) => ({ id: idOf(file), file, fault: null }))],
      ...(fresh.length === 0 ? {} : { numbers: null }),
    });
    const faults = new Map<string, string>();
    for (const file of fresh) {
      const fault = await pictureFaultOf(file).catch(() => 'cannot be read from where it lies.');
      if (fault !== null) faults.set(idOf(file), fault);
    }
    if (faults.size === 0) return;
    this.put({ pictures: this.state.pictures.map((one) => ({ ...one, fault: faults.get(one.id) ?? one.fault })) });
  }

  private keepAsking(ask: boolean): void {
    if (ask === this.asking) return;
    this.asking = ask;
    if (ask) addEventListener('beforeunload', askFirst);
    else removeEventListener('beforeunload', askFirst);
  }
}

function askFirst(event: Event): void {
  event.preventDefault();
}

/** A file dropped again is the same file; one that was mended meanwhile is another. */
function idOf({ name, size, lastModified }: File): string {
  return `${name} ${size} ${lastModified}`;
}

const reviews = new WeakMap<ShowSession, Review>();

export function reviewOf(show: ShowSession): Review {
  const known = reviews.get(show);
  if (known !== undefined) return known;
  const made = new Review(() => String(show.judgements.setting('museum') ?? ''));
  reviews.set(show, made);
  return made;
}
