/**
 * The one place where engines meet the model: snapshot × engines → what is shown. Nothing here is stored; everything is
 * a function of the documents and of what the server derived from pictures, memoised by what it was computed from.
 */

import type { Box } from '@enfilade/arrangement/boxes';
import { gapsOf, type NeighbourGaps } from '@enfilade/arrangement/neighbour-gaps';
import { type FramedColours, framedColoursOf } from '@enfilade/colour/frames';
import type { LabD65 } from '@enfilade/colour/lab';
import { type Reading, readingOn } from '@enfilade/colour/reading';
import { type ReadingThresholds, thresholdsFrom } from '@enfilade/colour/reading-thresholds';
import {
  type Caution,
  type CautionFacts,
  type CautionWords,
  cautionsOf,
  METRIC_WORDS,
} from '@enfilade/practice/cautions';

import { type Hardware, hardwareFrom } from '@enfilade/practice/hardware';
import { limitOf } from '@enfilade/practice/practice-profile';
import { boxesToKeepClear } from '@enfilade/space/boxes-to-keep-clear';
import { openingsOn as openingBoxesOn } from '@enfilade/space/openings';
import { floorLevelAt } from '@enfilade/space/room';
import type { ShowDocuments } from './documents.ts';
import { type ChosenFrame, drawnFrameOf, frameFrom } from './frames.ts';
import { type HookPlan, hookPlanFor, wireCautions } from './hook-plan.ts';
import { dropFor } from './overhead.ts';
import { pictureKeyOf } from './picture-cuts.ts';
import { loanCautions, recordCautions } from './piece-cautions.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { anyIsOpen, type OpenFact, proposedVignettesOf } from './proposed-vignettes.ts';
import type { ImageFacts, Signature } from './protocol.ts';
import {
  DEFAULT_SETTINGS,
  LAYOUT_FLOOR,
  type MuseumObject,
  type Opening,
  objectOfPiece,
  openingOf,
  type Paint,
  type PieceId,
  type Place,
  pieceIdOf,
  pieceNumberOf,
  type Settings,
  type SurfaceId,
  type VignetteId,
} from './schema.ts';
import type { Role } from './seats.ts';
import {
  type CanonicalVignette,
  canonicalVignetteOf,
  changesBetween,
  digestOf,
  toCanonicalText,
  type VignetteChange,
} from './sign-off.ts';
import type { TrueSize } from './true-size.ts';
import { labelCautions, type TakenSpace, type WallLabel, wallLabelsOf } from './wall-labels.ts';
import { type Seen, Whereabouts } from './whereabouts.ts';

/** What the server derived from pictures, by hash. The client fills it from `images/facts`. */
export interface PictureFacts {
  get(sha256: string): ImageFacts | undefined;
}

export interface FixtureBox extends Box {
  readonly id: string;
  readonly kind: string;
  readonly surface: SurfaceId;
  readonly clearMm: number;
}

export interface OpeningBox extends Box {
  readonly id: string;
  readonly opening: Opening;
}

/** In the order of a vignette's life; proposed: nobody has signed, and an open proposal has moves about it. */
export const VIGNETTE_STATES = ['drafted', 'proposed', 'signed off in part', 'agreed', 'changed since'] as const;
export type VignetteState = (typeof VIGNETTE_STATES)[number];

export interface VignetteStanding {
  readonly state: VignetteState;
  readonly digest: string;
  readonly signatures: readonly (Signature & { readonly changes: readonly VignetteChange[] })[];
  /** Roles whose word is still needed. */
  readonly waitingFor: readonly Role[];
  /** What differs from the newest signature that no longer stands. */
  readonly changes: readonly VignetteChange[];
}

/** Walls and paints that a picture's readings are kept for. */
const READINGS_KEPT = 48;
const NO_PIECES: ReadonlySet<PieceId> = new Set();
/** What labels and their places follow from. */
// biome-ignore format: one list
const LABELLED = ['rooms', 'openings', 'fixtures', 'limits', 'objects', 'pieces', 'places', 'memberOf', 'vignettes', 'settings', 'labelSides'] as const;

export class Judgements {
  readonly documents: ShowDocuments;
  readonly where: Whereabouts;
  private readonly pictures: PictureFacts;
  private readonly colours = new WeakMap<ImageFacts, Map<string, FramedColours>>();
  private parting: { readonly given: unknown; readonly thresholds: ReadingThresholds } | null = null;
  /** Of colours, by wall; anew once the show parts the words otherwise. */
  private readings = new WeakMap<FramedColours, Map<string, Reading>>();
  private labels: { readonly key: string; readonly on: Map<SurfaceId, readonly WallLabel[]> } = {
    key: '',
    on: new Map(),
  };
  private readonly signedForms = new Map<string, CanonicalVignette>();
  private proposed: { key: string; facts: ReadonlyMap<VignetteId, readonly OpenFact[]> } | null = null;
  private readonly standings = new Map<VignetteId, { key: string; standing: VignetteStanding }>();

  constructor(documents: ShowDocuments, pictures: PictureFacts) {
    this.documents = documents;
    this.pictures = pictures;
    this.where = new Whereabouts(documents);
  }

  setting<K extends keyof Settings>(key: K): Settings[K] {
    return (this.documents.get('settings', key) as Settings[K] | undefined) ?? DEFAULT_SETTINGS[key];
  }

  objectOf(pieceId: PieceId): MuseumObject | undefined {
    return this.documents.get('objects', objectOfPiece(pieceId));
  }

  /** "Block 19 of Printing blocks", or the title alone for a single thing. */
  nameOf(pieceId: PieceId): string {
    const object = this.objectOf(pieceId);
    if (object === undefined) return 'a record that is gone';
    const title = object.title || object.number;
    return object.count > 1 ? `${title}, piece ${pieceNumberOf(pieceId)}` : title;
  }

  /** Every piece of a record. */
  piecesOf(objectId: string): PieceId[] {
    const count = this.documents.get('objects', objectId)?.count ?? 0;
    return Array.from({ length: count }, (_, index) => pieceIdOf(objectId, index + 1));
  }

  sizeOf(pieceId: PieceId): TrueSize | null {
    return this.where.sizeOf(pieceId);
  }

  pictureOf(pieceId: PieceId): ImageFacts | undefined {
    const key = this.pictureIdOf(pieceId);
    return key === null ? undefined : this.pictures.get(key);
  }

  /** SHA-256 of the photograph as it was sent. */
  photographOf(pieceId: PieceId): string | null {
    return this.documents.get('pieces', pieceId)?.picture || this.objectOf(pieceId)?.picture || null;
  }

  /** The picture's key, as its ground is cut by a person's word, even when its facts have not come yet. */
  pictureIdOf(pieceId: PieceId): string | null {
    const sha256 = this.photographOf(pieceId);
    return sha256 === null ? null : pictureKeyOf(sha256, this.documents.get('pictureCuts', sha256));
  }

  paintOf(surface: SurfaceId): (Paint & { readonly id: string }) | null {
    const id = this.documents.get('paints', surface);
    const paint = id === undefined ? undefined : this.documents.get('deck', id);
    return paint === undefined || id === undefined ? null : { ...paint, id };
  }

  /** The frame that is drawn round a piece's picture, within its size; null where its photograph shows it, or none. */
  drawnFrameOf(pieceId: PieceId): ChosenFrame | null {
    const frame = this.objectOf(pieceId)?.frame;
    const size = frame ? this.where.sizeOf(pieceId) : null;
    return size === null ? null : drawnFrameOf(frame, size);
  }

  /** What of a piece meets the wall: its picture's body, and its edge or its frame's; null without a picture. */
  coloursOf(pieceId: PieceId): FramedColours | null {
    return this.coloursIn(this.pictureOf(pieceId), pieceId);
  }

  private coloursIn(picture: ImageFacts | undefined, pieceId: PieceId): FramedColours | null {
    if (picture === undefined || picture.body.length === 0) return null;
    const frame = frameFrom(this.objectOf(pieceId)?.frame);
    const key = `${frame?.colour}`;
    const known = this.colours.get(picture) ?? new Map<string, FramedColours>();
    this.colours.set(picture, known);
    const colours = known.get(key) ?? framedColoursOf(picture, frame);
    known.set(key, colours);
    return colours;
  }

  /** Where this show parts lost from weak from holds from carries; what cannot be taken of its own is as by default. */
  readingThresholds(): ReadingThresholds {
    const given = this.setting('readingThresholds');
    if (this.parting?.given !== given) {
      const record = typeof given === 'object' && given !== null ? (given as Readonly<Record<string, unknown>>) : {};
      this.parting = { given, thresholds: thresholdsFrom(record).thresholds };
      this.readings = new WeakMap();
    }
    return this.parting.thresholds;
  }

  /** How a piece reads on the wall it is on, or on a paint being tried; null without picture, wall or paint. */
  readingOf(pieceId: PieceId, trial?: LabD65): Reading | null {
    return this.readingIn(this.coloursOf(pieceId), pieceId, trial);
  }

  /** How it would read had nobody said anything of its photograph's ground. */
  readingAsFound(pieceId: PieceId, trial?: LabD65): Reading | null {
    const sha256 = this.photographOf(pieceId);
    const picture = sha256 === null ? undefined : this.pictures.get(sha256);
    return this.readingIn(this.coloursIn(picture, pieceId), pieceId, trial);
  }

  private readingIn(colours: FramedColours | null, pieceId: PieceId, trial: LabD65 | undefined): Reading | null {
    const surface = this.where.placeOf(pieceId)?.[0];
    const wall = trial ?? (surface === undefined ? undefined : this.paintOf(surface)?.lab);
    if (colours === null || wall === undefined) return null;
    const thresholds = this.readingThresholds();
    const key = `${wall.L} ${wall.a} ${wall.b}`;
    const known = this.readings.get(colours) ?? new Map<string, Reading>();
    this.readings.set(colours, known);
    const reading = known.get(key) ?? readingOn(colours, wall, thresholds);
    known.set(key, reading);
    // A hand goes along a whole deck: what was read first is read anew if it is asked for again.
    if (known.size > READINGS_KEPT)
      for (const first of [...known.keys()].slice(0, READINGS_KEPT / 2)) known.delete(first);
    return reading;
  }

  /** Openings of a wall by centre and size; a doorway reaches down to a fallen floor. */
  openingsOn(surface: SurfaceId): OpeningBox[] {
    const openings = this.documents.all('openings');
    const listed = [...openings].map(([id, opening]) => ({ id, ...opening }));
    const room = this.where.roomOf(surface);
    return openingBoxesOn(surface, listed, room ?? undefined).flatMap((box) => {
      const opening = openings.get(box.id);
      return opening === undefined ? [] : [{ ...box, opening }];
    });
  }

  fixturesOn(surface: SurfaceId): FixtureBox[] {
    const boxes: FixtureBox[] = [];
    for (const [id, fixture] of this.documents.all('fixtures')) {
      if (fixture.surface === surface) boxes.push({ id, ...fixture });
    }
    return boxes;
  }

  /**
   * What nothing may hang over: openings, fixtures with their margins, and labels that have room where the show has them
   * on its walls. `moving`: pieces whose labels go with them.
   */
  keepClearOn(surface: SurfaceId, moving: ReadonlySet<PieceId> = NO_PIECES): Box[] {
    const fixed = this.takenOn(surface);
    if (this.setting('labelsOnWalls') !== true) return fixed;
    return [...fixed, ...wallLabelsOf(this, surface, fixed, moving).filter(({ meets }) => meets.length === 0)];
  }

  private takenOn(surface: SurfaceId): TakenSpace[] {
    const fixtures = boxesToKeepClear(surface, this.fixturesOn(surface));
    return [
      ...this.openingsOn(surface).map((box) => ({ ...box, name: box.opening.name || `the ${box.opening.kind}` })),
      ...fixtures.map((box) => ({ ...box, name: `the ${box.kind}` })),
    ];
  }

  /** Labels of what hangs on a wall, with the wall space they take and what they meet; the same list while nothing of it changes. */
  labelBoxesOn(surface: SurfaceId): readonly WallLabel[] {
    const key = LABELLED.map((root) => this.documents.version(root)).join();
    if (this.labels.key !== key) this.labels = { key, on: new Map() };
    const known = this.labels.on.get(surface);
    if (known !== undefined) return known;
    const labels = wallLabelsOf(this, surface, this.takenOn(surface), NO_PIECES);
    this.labels.on.set(surface, labels);
    return labels;
  }

  elevationOf(surface: SurfaceId): Seen[] {
    return this.where.elevationOf(surface);
  }

  /** Whether a person has pinned it: it stays when others are arranged or make room. */
  isPinned(pieceId: PieceId): boolean {
    return this.documents.get('pinned', pieceId) === true;
  }

  /** Gaps from a box on a wall to its nearest neighbours, edges and fixtures; `others` index into the seen list. */
  gapsAround(surface: SurfaceId, box: Box, others: readonly Box[]): NeighbourGaps | null {
    const wall = this.where.wallOf(surface);
    if (wall === null) return null;
    return gapsOf(box, others, {
      leftMm: 0,
      rightMm: wall.lengthMm,
      bottomMm: wall.floorAt(box.xMm),
      topMm: wall.heightMm,
    });
  }

  /** Hook positions of a piece on a wall; null when it hangs on none. */
  hooksOf(pieceId: PieceId): HookPlan | null {
    const object = this.objectOf(pieceId);
    return hookPlanFor(
      this,
      pieceId,
      object === undefined ? null : this.hardwareOf(object),
      this.borneWeightOf(pieceId),
    );
  }

  /** Weight of one piece, kg: a record's weight is that of all it counts, and each piece is taken at an equal share. */
  weightOf(pieceId: PieceId): number | null {
    const object = this.objectOf(pieceId);
    if (object?.weightKg === undefined || object.weightKg === null) return null;
    return object.weightKg / Math.max(1, object.count);
  }

  /** What a piece and all that stands on it weigh, kg; null while one of them is not weighed. */
  borneWeightOf(pieceId: PieceId): number | null {
    let sum = 0;
    for (const id of [pieceId, ...this.where.loadOf(pieceId)]) {
      const kg = this.weightOf(id);
      if (kg === null) return null;
      sum += kg;
    }
    return sum;
  }

  hardwareOf(object: MuseumObject): Hardware | null {
    if (object.hardware) return object.hardware as Hardware;
    if (!object.hardwareText) return null;
    const read = hardwareFrom(object.hardwareText);
    return 'what' in read ? null : read;
  }

  /** What is to be minded about a piece where it is, with figures in the reader's words (cm and kg without). */
  cautionsOf(pieceId: PieceId, words?: CautionWords): readonly Caution[] {
    const at = this.where.placeOf(pieceId);
    const object = this.objectOf(pieceId);
    const size = this.where.sizeOf(pieceId);
    if (object === undefined || size === null) return [];
    const wall = at === null ? null : this.where.wallOf(at[0]);
    const facts = {
      onWall: wall !== null,
      // What lies on the layout floor neither stands nor hangs yet.
      placed: at !== null && at[0] !== LAYOUT_FLOOR,
      widthMm: size.widthMm,
      heightMm: size.heightMm,
      depthMm: size.depthMm,
      centreXmm: at?.[1] ?? 0,
      centreMm: at?.[2] ?? 0,
      turnDegrees: (at?.[4] ?? 0) / 100,
      floorMm: wall === null || at === null ? 0 : wall.floorAt(at[1]),
      liftMm: at?.[3] ?? 0,
      sizeKnown: size.known,
      sizeCertain: size.certain,
      weightKg: this.weightOf(pieceId),
      borneKg: this.borneWeightOf(pieceId),
      hardware: this.hardwareOf(object),
      fixtures: at === null ? [] : this.fixturesOn(at[0]),
      ...this.overheadOrInside(pieceId, at, size),
    };
    const asked = words ?? METRIC_WORDS;
    return [
      ...cautionsOf(facts, asked, practiceProfileOf(this.documents)),
      ...wireCautions(this, pieceId, this.borneWeightOf(pieceId)),
      ...(wall === null || this.setting('labelsOnWalls') !== true
        ? []
        : labelCautions(this, pieceId, wall, this.labelBoxesOn(at?.[0] ?? ''), asked)),
      ...recordCautions(this, pieceId),
      ...loanCautions(this, pieceId, asked),
    ];
  }

  /** What cautions need to know of a thing that hangs from a ceiling or is in an opening. */
  private overheadOrInside(
    pieceId: PieceId,
    at: Place | null,
    size: TrueSize,
  ): Pick<CautionFacts, 'overheadClearMm' | 'opening'> {
    if (at === null) return {};
    const room = this.where.roomOf(at[0]);
    if (at[0].endsWith(':ceiling') && room !== null) {
      return { overheadClearMm: dropFor(room, at[3], size.heightMm) - floorLevelAt(room, at[1], at[2]) };
    }
    const id = openingOf(at[0]);
    const opening = id === null ? undefined : this.documents.get('openings', id);
    if (opening === undefined) return {};
    const headroomMm = limitOf(practiceProfileOf(this.documents), 'clearHeadMm');
    const taken = [...this.where.directlyOn(at[0])].flatMap((other) => {
      const place = other === pieceId ? at : this.where.placeOf(other);
      const its = this.where.sizeOf(other);
      if (place === null || its === null || opening.sillMm + place[2] - its.heightMm / 2 >= headroomMm) return [];
      return [{ fromMm: place[1] - its.widthMm / 2, toMm: place[1] + its.widthMm / 2 }];
    });
    return { opening: { kind: opening.kind, widthMm: opening.widthMm, taken } };
  }

  /** Where a vignette stands: whose word it has, and what changed since. */
  standingOf(id: VignetteId): VignetteStanding | null {
    const form = canonicalVignetteOf(this.documents, id);
    if (form === null) return null;
    const text = toCanonicalText(form);
    const tolerance = this.setting('toleranceMm');
    const signers = this.setting('signers');
    const proposed = anyIsOpen(this.documents, this.proposedVignettes().get(id) ?? []);
    const key = `${text}|${this.documents.version('signatures')}|${tolerance}|${signers.join()}|${proposed}`;
    const known = this.standings.get(id);
    if (known?.key === key) return known.standing;
    const signatures: VignetteStanding['signatures'][number][] = [];
    for (const signature of this.documents.all('signatures').values()) {
      if (signature.vignetteId !== id) continue;
      signatures.push({ ...signature, changes: changesBetween(this.signedForm(signature), form, tolerance) });
    }
    signatures.sort((a, b) => (a.at === b.at ? (a.personId < b.personId ? -1 : 1) : a.at < b.at ? -1 : 1));
    const standing = signatures.filter(({ changes }) => changes.length === 0);
    const waitingFor = signers.filter((role) => !standing.some((signature) => signature.role === role));
    const overtaken = signatures.filter(({ changes }) => changes.length > 0);
    const state: VignetteState =
      signatures.length === 0
        ? proposed
          ? 'proposed'
          : 'drafted'
        : overtaken.length > 0
          ? 'changed since'
          : waitingFor.length === 0
            ? 'agreed'
            : 'signed off in part';
    const result: VignetteStanding = {
      state,
      digest: digestOf(text),
      signatures,
      waitingFor,
      changes: overtaken.at(-1)?.changes ?? [],
    };
    this.standings.set(id, { key, standing: result });
    return result;
  }

  /** What open proposals would change, by vignette; looked up anew only when proposals or memberships change. */
  proposedVignettes(): ReadonlyMap<VignetteId, readonly OpenFact[]> {
    const key = (['proposals', 'proposed', 'memberOf'] as const).map((root) => this.documents.version(root)).join();
    if (this.proposed?.key !== key) this.proposed = { key, facts: proposedVignettesOf(this.documents) };
    return this.proposed.facts;
  }

  private signedForm(signature: Signature): CanonicalVignette {
    const known = this.signedForms.get(signature.digest);
    const form = known ?? (JSON.parse(signature.canonical) as CanonicalVignette);
    this.signedForms.set(signature.digest, form);
    return form;
  }
}
