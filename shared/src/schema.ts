/**
 * The facts a show is made of. Stored: records, pictures, rooms, places, paints, memberships, signatures. Never
 * stored: how a work reads, gaps, hook heights, cautions: those are derived in judgements.ts.
 *
 * Every document is flat: a root is one Y.Map, one key one fact.
 *   atomic root      key → value                       (two people first touching one id lose nothing)
 *   table root       id → base value, `id/field` → a person's later word for that field
 * Places are integer millimetres and centidegrees.
 */
import type { Adaptation } from '@enfilade/colour/adaptation';
import { FRAME_FINISHES } from '@enfilade/colour/frames';
import type { ReadingThresholds } from '@enfilade/colour/reading-thresholds';
import type { Spectrum } from '@enfilade/colour/spectrum';
import type { MeasuredLab } from '@enfilade/colour/white-points';
import type { HeadFaces } from '@enfilade/space/room';
import type { Lamp } from './lamps.ts';
import type { DocumentName, Role } from './seats.ts';

/** Rises with every change that older bytes need migrating for; only the server migrates, before it serves. */
export const SCHEMA_VERSION = 1;

export type ObjectId = string;
/** One physical unit of a record: `objectId#n`, n from 1, never reused. */
export type PieceId = string;
export type RoomId = string;
/** `${roomId}:foot|right|head|left|floor|ceiling`, or `layout`. */
export type SurfaceId = string;
export type OpeningId = string;
export type FixtureId = string;
export type VignetteId = string;
export type PaintId = string;
export type SampleId = string;

export const LAYOUT_FLOOR: SurfaceId = 'layout';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export interface Room {
  readonly name: string;
  readonly order: number;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
  /** Which way the head wall looks on the compass; the other walls follow clockwise. */
  readonly headFaces: HeadFaces;
  /** Floor level at foot left, foot right, head right, head left, above the reference plane (mm, may be negative). */
  readonly cornersMm: readonly [number, number, number, number];
  /** Height of the laser line above the reference plane. */
  readonly laserMm: number;
  readonly removed?: boolean;
}

export interface OpeningSide {
  readonly surface: SurfaceId;
  /** Left edge from the wall's left corner as faced. */
  readonly xMm: number;
}

export interface Opening {
  readonly kind: 'doorway' | 'window';
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sillMm: number;
  /** One side, or two where two rooms share it. */
  readonly sides: readonly OpeningSide[];
  readonly removed?: boolean;
}

export interface Fixture {
  readonly kind: string;
  readonly surface: SurfaceId;
  /** Centre. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** To be kept clear on every side, measured from its edge. */
  readonly clearMm: number;
  readonly removed?: boolean;
}

export type Source = 'collection' | 'loan' | 'artist' | 'bought';

/** Outer size as a person measured or answered it; stands before whatever the record's text says. */
export interface MeasuredSize {
  readonly heightMm: number;
  readonly widthMm: number;
  readonly depthMm: number | null;
  readonly estimated: boolean;
  /** Who measured or estimated it, by name, and on which day (ISO date). Absent: not known. */
  readonly by?: string;
  readonly on?: string;
  /** With its frame or without. Absent: not said. */
  readonly as?: 'framed' | 'unframed';
}

/** What will be done to a thing for the show: how it is before, how it is to be after. */
export interface Treatment {
  readonly before: string;
  readonly after: string;
  /** Cloth for it: what a plain cloth of 54 in would take, and what the cloth chosen is like (mm). */
  readonly cloth?: {
    readonly plainMm: number;
    readonly verticalRepeatMm: number;
    readonly horizontalRepeatMm: number;
    readonly widthMm: number;
  };
}

export interface HardwareFact {
  readonly kind: string;
  readonly hooks: number;
  /** Top edge to bearing point, under tension. Absent: not known. */
  readonly dropMm?: number;
  /** Between the outer hooks. Absent: not known. */
  readonly spacingMm?: number;
  /** Of a wire: how far apart its rings are, how long it is between them, how far they are below the top. */
  readonly wire?: { readonly ringsApartMm: number; readonly wireMm: number; readonly ringsBelowTopMm: number } | null;
}

/** `from the picture`: the photograph shows it. */
export const FRAME_KINDS = ['none', 'from the picture', ...FRAME_FINISHES] as const;
export type FrameKind = (typeof FRAME_KINDS)[number];

/** What a work is framed in, and how wide the moulding is as faced; 0 where that is not known. */
export interface FrameFact {
  readonly kind: FrameKind;
  readonly widthMm: number;
}

export const GLAZINGS = ['none', 'glass', 'acrylic'] as const;
export type Glazing = (typeof GLAZINGS)[number];

/** A record of the checklist. On screen a work or an object; texts are kept as written. */
export interface MuseumObject {
  readonly number: string;
  readonly title: string;
  readonly maker?: string;
  readonly dateText?: string;
  readonly medium?: string;
  readonly type?: string;
  readonly dimensionsText?: string;
  readonly framedText?: string;
  readonly measured?: MeasuredSize | null;
  readonly weightKg?: number | null;
  readonly count: number;
  /** Empty: held by the museum. */
  readonly lender: string;
  readonly creditLine?: string;
  readonly source: Source;
  readonly hardwareText?: string;
  readonly hardware?: HardwareFact | null;
  /** SHA-256 of its picture. */
  readonly picture?: string | null;
  /** ISO date of the photograph; empty or absent where it is not known. */
  readonly photographedOn?: string;
  /** Its number stands until the museum gives it one. */
  readonly provisional?: boolean;
  readonly treatment?: Treatment | null;
  readonly frame?: FrameFact | null;
  /** What is before it; absent or null: not known. */
  readonly glazing?: Glazing | null;
  /** Heights above its own foot of the levels things can stand on; the top first. Makes it a carrier. */
  readonly levelsMm?: readonly number[] | null;
  readonly notes?: string;
  readonly removed?: boolean;
}

/** What is true of one piece and not of its whole record. Table root, keyed by piece. */
export interface PieceFacts {
  readonly picture?: string | null;
  readonly measured?: MeasuredSize | null;
  readonly removed?: boolean;
}

/** A paint as measured. With neither `measuredLab` nor `reflectance`, `lab` is what was measured. */
export interface Paint {
  readonly name: string;
  /** The maker's code, as free text. */
  readonly code?: string;
  /** CIELAB, D65/2°: what is shown. It comes of what was measured (paint-records.ts) and is written together with it. */
  readonly lab: { readonly L: number; readonly a: number; readonly b: number };
  /** L*a*b* as the reader gave it, with its own illuminant and observer. */
  readonly measuredLab?: MeasuredLab | null;
  /** The transform that brought `measuredLab` to D65/2°; none where it stood there already. */
  readonly adaptedBy?: Adaptation | null;
  /** Share of light returned, 0..1, at even wavelengths. Stands before `measuredLab`. */
  readonly reflectance?: Spectrum | null;
  /** Light reflectance value 0..100, as the maker states it. */
  readonly lrv?: number | null;
  readonly sheen?: string;
  /** When and with what it was read, as the reader's file says. */
  readonly measured?: string;
  readonly instrument?: string;
  /** Place in the deck. */
  readonly order: string;
  readonly removed?: boolean;
}

export type SampleKind = 'drawdown' | 'sample board';

/** A physical sample of a paint: a thin film on card, or a board brushed out. What people say of it is in `talk`. */
export interface Sample {
  readonly paintId: PaintId;
  readonly kind: SampleKind;
  /** Whom it is for; the id is empty for somebody without a seat. */
  readonly to: { readonly personId: string; readonly name: string };
  /** ISO date it was sent; empty while it is still to be ordered and posted. */
  readonly sentOn: string;
  readonly removed?: boolean;
}

/** From a wish to its return, in order; then how a loan falls away. */
export const LOAN_STATUSES = [
  'wish',
  'requested',
  'approved',
  'agreement signed',
  'in transit',
  'received',
  'installed',
  'returned',
  'declined',
  'cancelled',
] as const;
export type LoanStatus = (typeof LOAN_STATUSES)[number];

/**
 * What is agreed with the lender of a record; lender and credit line are the record's own, value and contact are private.
 * Days are ISO dates, empty where not set. Absent or null: the lender asks for nothing of the kind, as far as is known.
 */
export interface Loan {
  readonly status?: LoanStatus;
  /** The lender's own number of the loan. */
  readonly reference?: string;
  /** It leaves the lender, and is back there: transit counted in. */
  readonly from?: string;
  readonly to?: string;
  /** It is in the museum from, until. */
  readonly arrives?: string;
  readonly leaves?: string;
  readonly mostLux?: number | null;
  readonly humidity?: string;
  readonly temperature?: string;
  readonly asksGlazing?: boolean;
  readonly asksCase?: boolean;
  /** Its foot is at least, its top at most, so high above the floor (mm). */
  readonly lowestFootMm?: number | null;
  readonly highestTopMm?: number | null;
  /** Each move is asked of the lender first; the place they agreed to, once they did. */
  readonly asksConsent?: boolean;
  readonly agreedPlaces?: { readonly [pieceId: PieceId]: Place } | null;
  /** Whatever else the agreement says. */
  readonly terms?: string;
  readonly removed?: boolean;
}

/** Paper or cloth on a wall. */
export interface Covering {
  readonly name: string;
  readonly widthMm: number;
  /** 0: none. */
  readonly repeatMm: number;
  /** Length of a roll; 0 where it comes off a bolt, cut to any length. */
  readonly rollMm: number;
  readonly halfDrop?: boolean;
}

/** What is done to a wall. */
export interface Finish {
  /** ISO date of its last coat; empty while it is not on. */
  readonly lastCoat?: string;
  readonly covering?: Covering | null;
  readonly removed?: boolean;
}

/** The light on a surface, or on one piece of it that is lit by itself. */
export interface PlannedLight {
  /** Planned; absent: as where it is, or as in the show. */
  readonly lux?: number;
  /** As a meter read it there, who read it, on which day (ISO date): goes before what is planned. */
  readonly read?: { readonly lux: number; readonly by: string; readonly on: string };
}

/**
 * Where one piece is: [on, x, y, lift, turn].
 * on: a surface, `opening:<id>`, or `carrier:<pieceId>/<level>` (level 0 = top). x, y: mm to the piece's centre, in the
 * frame of what it is on. lift: stand-off, or drop from a ceiling (mm). turn: centidegrees clockwise as faced.
 */
export type Place = readonly [on: string, xMm: number, yMm: number, liftMm: number, turnCentidegrees: number];

export interface Vignette {
  readonly name: string;
  readonly intent: string;
  readonly focal: PieceId | null;
  /** fractional-indexing key. */
  readonly order: string;
  readonly removed?: boolean;
}

export interface Settings {
  readonly title: string;
  readonly museum: string;
  readonly centreLineMm: number;
  readonly gapMm: number;
  /** Below this a move is not told as a change since sign-off. */
  readonly toleranceMm: number;
  /** Roles whose word a vignette needs. */
  readonly signers: readonly Role[];
  /** The guest artist changes the hang through proposals alone. */
  readonly artistProposesOnly: boolean;
  /** ISO dates; empty where not set. By when the vignettes are agreed, when the hang begins, when the show opens. */
  readonly agreeBy: string;
  readonly hangBegins: string;
  readonly opens: string;
  /** The last day it is open. */
  readonly closes: string;
  /** Hours of light on an open day, cleaning counted in; open days a week. */
  readonly hoursPerDay: number;
  readonly daysPerWeek: number;
  /** Light planned wherever no other is (lux); 0: none is planned yet. */
  readonly plannedLux: number;
  /** Whose limits are gone by (practice-profile.ts); each can be edited in `limits`. */
  readonly jurisdiction: string;
  /** The works' labels are drawn on its walls, and take wall space there. */
  readonly labelsOnWalls: boolean;
  /** The lamp the gallery is lit by. */
  readonly galleryLamp: Lamp;
  /** Where the show parts the words for how works read otherwise than by default; one fact, since they hang together. */
  readonly readingThresholds: Partial<ReadingThresholds>;
}

export const DEFAULT_SETTINGS: Settings = {
  title: 'Untitled show',
  museum: '',
  centreLineMm: 1500,
  gapMm: 450,
  toleranceMm: 25,
  signers: ['lead', 'curator', 'guest artist'],
  artistProposesOnly: false,
  agreeBy: '',
  hangBegins: '',
  opens: '',
  closes: '',
  hoursPerDay: 8,
  daysPerWeek: 6,
  plannedLux: 0,
  jurisdiction: 'United States',
  labelsOnWalls: false,
  galleryLamp: 'gallery 3000 K',
  readingThresholds: {},
};

/** Every root of every document, and how its keys are read. */
export const ROOTS = {
  rooms: { document: 'rooms', shape: 'table' },
  openings: { document: 'rooms', shape: 'table' },
  fixtures: { document: 'rooms', shape: 'table' },
  /** Surface or piece → the light planned on it, and read there. */
  lights: { document: 'rooms', shape: 'atomic' },
  /** Surface → what is done to it. */
  finishes: { document: 'rooms', shape: 'table' },
  /** Name of a limit → what it is here, and on what ground. */
  limits: { document: 'rooms', shape: 'atomic' },
  objects: { document: 'checklist', shape: 'table' },
  /** `objectId` → what is agreed with its lender. */
  loans: { document: 'checklist', shape: 'table' },
  pieces: { document: 'checklist', shape: 'table' },
  deck: { document: 'checklist', shape: 'table' },
  samples: { document: 'checklist', shape: 'table' },
  /** SHA-256 of a picture → what a person says of its ground (picture-cuts.ts). */
  pictureCuts: { document: 'checklist', shape: 'atomic' },
  places: { document: 'hang', shape: 'atomic' },
  memberOf: { document: 'hang', shape: 'atomic' },
  paints: { document: 'hang', shape: 'atomic' },
  vignettes: { document: 'hang', shape: 'table' },
  settings: { document: 'hang', shape: 'atomic' },
  /** `pieceId` → true: it stays where it is when others are arranged or make room. */
  pinned: { document: 'hang', shape: 'atomic' },
  /** `pieceId` → on which side its label stands, or that it has none (wall-labels.ts); nothing said: where it has room. */
  labelSides: { document: 'hang', shape: 'atomic' },
  proposals: { document: 'talk', shape: 'table' },
  /** `proposalId|root|key` → that fact of the hang as the proposal has it. */
  proposed: { document: 'talk', shape: 'atomic' },
  remarks: { document: 'talk', shape: 'table' },
  /** `personId/remarkId` → ISO time up to which that person has read the remark and its answers. */
  readMarks: { document: 'talk', shape: 'atomic' },
  /** `sampleId/personId/word` → who has seen a sample under which light, and who approved it. */
  sampleWords: { document: 'talk', shape: 'atomic' },
  /** A suggestion's key → who declined it, of which pool (suggestions.ts). */
  declinedSuggestions: { document: 'talk', shape: 'atomic' },
  /** `personId/key of the number` → yes, maybe or no to a thing of the collection (collection.ts). */
  collectionWords: { document: 'talk', shape: 'atomic' },
  /** `ground/digest` → who declined that way to arrange a pool on a surface (declined-arrangements.ts). */
  declined: { document: 'talk', shape: 'atomic' },
  /** `objectId` → {value?, storage?, contact?, price?} and edits; never in another document. */
  values: { document: 'private', shape: 'table' },
  signatures: { document: 'record', shape: 'atomic' },
  versions: { document: 'record', shape: 'atomic' },
  /** `stateId` → a kept state of the hang: its name and digest; the state itself is fetched by its digest. */
  states: { document: 'record', shape: 'atomic' },
  /** `pieceId|digest` → a caution that somebody competent accepted as it stood. */
  acceptances: { document: 'record', shape: 'atomic' },
  /** `personId` → everyone who has, or had, a seat here. */
  people: { document: 'record', shape: 'atomic' },
} as const satisfies Record<string, { document: DocumentName; shape: 'table' | 'atomic' }>;

export type RootName = keyof typeof ROOTS;

export interface PrivateFacts {
  readonly value?: string;
  readonly storage?: string;
  readonly contact?: string;
  readonly price?: string;
  readonly removed?: boolean;
}

export function pieceIdOf(objectId: ObjectId, n: number): PieceId {
  return `${objectId}#${n}`;
}

export function objectOfPiece(pieceId: PieceId): ObjectId {
  const cut = pieceId.lastIndexOf('#');
  return cut < 0 ? pieceId : pieceId.slice(0, cut);
}

export function pieceNumberOf(pieceId: PieceId): number {
  return Number(pieceId.slice(pieceId.lastIndexOf('#') + 1));
}

export function carrierOn(pieceId: PieceId, level: number): string {
  return `carrier:${pieceId}/${level}`;
}

/** The carrier and level named by `on`, or null when it is not a carrier. */
export function carrierOf(on: string): { readonly pieceId: PieceId; readonly level: number } | null {
  if (!on.startsWith('carrier:')) return null;
  const cut = on.lastIndexOf('/');
  return { pieceId: on.slice('carrier:'.length, cut), level: Number(on.slice(cut + 1)) };
}

export function openingOf(on: string): OpeningId | null {
  return on.startsWith('opening:') ? on.slice('opening:'.length) : null;
}

/** Room and side of a surface, or null for the layout floor and whatever is no surface of a room. */
export function surfaceParts(surface: SurfaceId): { readonly roomId: RoomId; readonly side: string } | null {
  const cut = surface.indexOf(':');
  if (cut < 0 || surface.startsWith('carrier:') || surface.startsWith('opening:')) return null;
  return { roomId: surface.slice(0, cut), side: surface.slice(cut + 1) };
}
