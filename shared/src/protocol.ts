/**
 * What travels between a seat and the server.
 *
 * Sockets speak the y-websocket protocol, one socket a document:
 *   ws  /seat/<seatId>/doc/<documentName>?schema=<n>&epoch=<n>&role=<role>
 *                                                  subprotocol `enfilade.1` (a stock provider sends neither)
 *   frame := varuint(0) sync | varuint(1) awareness | varuint(3) queryAwareness          (y-protocols)
 *          | varuint(120) varuint(n)        server → our clients: the first n update-bearing frames of this socket
 *                                           (sync step 2 and update) are in the log
 *          | varuint(121) varstring(JSON)   server → our clients: a Notice
 *          | varuint(122) varuint(clientId) our clients → server, first of all: the Yjs client id this page writes under
 * A client id is one person's for good: claimed by the hello, or by a stock provider's first presence or first write.
 * Acknowledgement counts frames, because deletes leave the state vector unchanged.
 */
import type { CautionKind } from '@enfilade/practice/caution';
import type { PictureCut } from './picture-cuts.ts';
import type { Person, Role } from './seats.ts';

export const SUBPROTOCOL = 'enfilade.1';
/** What a page was made for, in its socket's address: another schema or epoch is closed before a frame is taken. */
export const HELLO_SCHEMA = 'schema';
export const HELLO_EPOCH = 'epoch';
/** The role the page was opened under: another one now, and the page is closed before it sends what it did meanwhile. */
export const HELLO_ROLE = 'role';
export const MESSAGE_SYNC = 0;
export const MESSAGE_AWARENESS = 1;
export const MESSAGE_QUERY_AWARENESS = 3;
export const MESSAGE_ACKNOWLEDGED = 120;
export const MESSAGE_NOTICE = 121;
export const MESSAGE_HELLO = 122;

/** Coded reasons a socket is closed with. */
export const CLOSE = {
  malformed: 4400,
  /** The seat was taken back, or its end has come: what this page holds is discarded. */
  notAdmitted: 4401,
  notAllowed: 4403,
  olderSchema: 4409,
  /** The seat's role is another one now: what this page holds is discarded, and fetched anew under the new role. */
  roleChanged: 4410,
  /** The show was restored from a copy since: what this client holds must not come back. */
  otherEpoch: 4412,
  tooLarge: 4413,
  tooFast: 4429,
  goingAway: 1001,
} as const;

export type Notice =
  /** The log cannot be written: nothing is accepted anywhere until `writable`. */
  | { readonly kind: 'read-only'; readonly reason: string }
  | { readonly kind: 'writable' }
  /** A write by a seat that may not write this document: dropped, never stored. */
  | { readonly kind: 'refused'; readonly reason: string }
  /** The document nears the size it may have: said once, before anything is refused. */
  | { readonly kind: 'nearly full'; readonly reason: string };

/** `GET /seat/<seatId>/me` */
export interface Me {
  readonly seatId: string;
  readonly person: Person;
  readonly schemaVersion: number;
  /** Rises at a restore from backup, so that clients do not bring the future back. */
  readonly epoch: number;
}

/** One swatch of a picture: CIELAB D65 and its share of the area (0..1). */
export interface SwatchFact {
  readonly lab: { readonly L: number; readonly a: number; readonly b: number };
  readonly share: number;
}

/**
 * What the server derived once from a picture's bytes, kept under its hash and the engine's version.
 * `GET /seat/<id>/images/facts` → ImageFacts[]; `POST /seat/<id>/images?name=<file name>` (the bytes) → ImageFacts.
 * `GET /seat/<id>/images/<key>/{256,1024}.webp`; `GET /seat/<id>/images/atlas/<page>.webp?cells=<n>`.
 * `GET /seat/<id>/images/<key>/facts` → ImageFacts, deriving a person's cut of the picture where it is not yet made.
 */
export interface ImageFacts {
  /** Its key: the SHA-256 of its bytes, and a person's word on its ground where this is cut by it (picture-cuts.ts). */
  readonly sha256: string;
  /** Of what is shown of it, in the pixels of the file: a ground that was left out is cut off round the thing. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly body: readonly SwatchFact[];
  readonly edge: readonly SwatchFact[];
  /** Share of the picture that is not transparent, 0..1. */
  readonly opaqueShare: number;
  readonly engine: string;
  /** How many pictures its file holds (TIFF), where more than one: the first is taken. */
  readonly pages?: number;
  /** Absent, as is what follows, as long as an earlier engine's facts stand. */
  readonly cutOut?: CutOutFact;
  /** The outline of what is opaque, whatever its size: of the thing where `cutOut` says its ground is left out. */
  readonly silhouette?: SilhouetteFact;
  /** How far the photograph's colours are to be believed, 0..1, and why not, in sentences. */
  readonly photograph?: { readonly confidence: number; readonly doubts: readonly string[] };
  /** Where its 64 px miniature sits: page of ATLAS_COLUMNS × ATLAS_COLUMNS cells, fitted and centred in its cell. */
  readonly cell: { readonly page: number; readonly index: number };
}

/** Width over height of its box, the part of the box it fills (0..1), and eight magnitudes that no turning changes. */
export interface SilhouetteFact {
  readonly aspect: number;
  readonly fill: number;
  readonly outline: readonly number[];
}

/** What of a photograph was taken for the thing. */
export interface CutOutFact {
  /** `transparent`: it came cut out. `left out`: its ground was. `whole`: all of it is shown. */
  readonly how: 'transparent' | 'left out' | 'whole';
  /** How sure that is, 0..1; 1 where a person said so. */
  readonly confidence: number;
  /** What speaks against it, in sentences. */
  readonly doubts: readonly string[];
  /** The person's word it is by. */
  readonly choice?: PictureCut;
}

/**
 * `POST /seat/<id>/manifests` (a IIIF manifest) and `POST /seat/<id>/manifests/fetch` ({address}) → ManifestAnswer; then
 * `POST /seat/<id>/manifests/<manifest>/pictures/<row>/<n>`, rows and pictures from 0 as the manifest's table has them →
 * ImageFacts.
 */
export interface ManifestAnswer {
  readonly id: string;
  readonly text: string;
}

/**
 * `GET /seat/<id>/bundle` → the whole show as a zip; `POST /seat/<id>/bundle` (such a zip, into an empty show) → this.
 * `GET /seat/<id>/manifest.json` → the checklist as a IIIF manifest.
 */
export interface BundleAnswer {
  readonly title: string;
  readonly records: number;
  readonly pictures: number;
  readonly refused: readonly { readonly fileName: string; readonly what: string }[];
}

/** One picture as sent, bytes; and as decoded, pixels. The server holds to it, the page says it beforehand. */
export const PICTURE_AT_MOST = { bytes: 120 << 20, pixels: 100_000_000 } as const;

export const ATLAS_CELL_PX = 64;
export const ATLAS_COLUMNS = 16;
export const ATLAS_CELLS = ATLAS_COLUMNS * ATLAS_COLUMNS;

/** An error answer of any HTTP path: what, where, and that nothing was lost. */
export interface Refusal {
  readonly what: string;
  readonly where: string;
}

/** `POST /seat/<id>/acts/sign-off` : refused with 409 when the digest is not what the server has committed. */
export interface SignOffRequest {
  readonly vignetteId: string;
  /** SHA-256 (hex) of the canonical form the person saw. */
  readonly digest: string;
}

/** One person's word on one vignette as it stood. Kept in `record` under `vignetteId/personId`. */
export interface Signature {
  readonly vignetteId: string;
  readonly personId: string;
  readonly name: string;
  readonly role: Role;
  /** ISO 8601, the server's clock. */
  readonly at: string;
  readonly digest: string;
  /** RFC 8785 canonical JSON of what was signed. */
  readonly canonical: string;
}

/** Cautions accepted with one word; the server holds to it. */
export const ACCEPTED_AT_ONCE = 200;

/**
 * `POST /seat/<id>/acts/accept-cautions` → Acceptance[]: all of them or none; refused with 409 when one of the digests is of
 * no caution that stands.
 */
export interface AcceptRequest {
  /** Digests are of the cautions as the person saw them (accepted.ts). */
  readonly cautions: readonly { readonly pieceId: string; readonly digest: string }[];
  readonly reason: string;
  /** The conservator on whose word a registrar accepts; empty where it is one's own. */
  readonly wordOf: string;
}

/** A caution that somebody competent accepted, as it stood. Kept in `record` under `pieceId|digest`. */
export interface Acceptance {
  readonly pieceId: string;
  readonly kind: CautionKind;
  readonly digest: string;
  /** What it said, in centimetres and kilograms. */
  readonly what: string;
  readonly reason: string;
  /** Empty where it is the person's own word. */
  readonly wordOf: string;
  readonly personId: string;
  readonly name: string;
  readonly role: Role;
  /** ISO 8601, the server's clock. */
  readonly at: string;
  /** It holds no longer: kept under `pieceId|digest|at`, with who took it back and why. */
  readonly withdrawn?: {
    readonly reason: string;
    readonly personId: string;
    readonly name: string;
    readonly role: Role;
    readonly at: string;
  };
}

/**
 * `POST /seat/<id>/acts/withdraw-acceptances` → Acceptance[], each withdrawn: all of them or none; refused with 409 when
 * one of the digests is of no caution that is accepted.
 */
export interface WithdrawRequest {
  readonly cautions: AcceptRequest['cautions'];
  readonly reason: string;
}

/** A version number rises when a list is frozen or a sheet printed. Kept in `record` under the number. */
export interface Version {
  readonly number: number;
  readonly at: string;
  readonly by: string;
  readonly what: string;
  /** Digest of the printed facts: printing the same facts again keeps the number. */
  readonly digest: string;
}

/** `POST /seat/<id>/acts/freeze-list`: the vignette list as committed; its text is `GET /seat/<id>/states/<digest>`. */
export interface FrozenAnswer {
  readonly version: Version;
  /** The newest frozen list is this very one: it keeps its number. */
  readonly again: boolean;
}

/**
 * One kept state of the hang. Kept in `record` under its id; the facts themselves, canonical JSON of
 * `{root: {key: value}}` over the hang's roots, are `GET /seat/<id>/states/<digest>`: in the document they would be read
 * by everybody at every opening.
 */
export interface KeptState {
  readonly kind: 'named' | 'signed off' | 'day' | 'restored';
  readonly name: string;
  readonly at: string;
  /** Person's name, or empty where the server kept it by itself. */
  readonly by: string;
  /** SHA-256 (hex) of the canonical facts. */
  readonly digest: string;
}

/** Someone who has, or had, a seat at the show. */
export interface SeatedPerson {
  readonly name: string;
  readonly role: Role;
  readonly gone?: boolean;
}
