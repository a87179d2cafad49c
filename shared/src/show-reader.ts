/** What a judgement about pieces is drawn from: the part of `Judgements` that those it is made of may ask. */
import type { ShowDocuments } from './documents.ts';
import type { MuseumObject, ObjectId, PieceId, Settings } from './schema.ts';
import type { TrueSize } from './true-size.ts';
import type { Whereabouts } from './whereabouts.ts';

export interface ShowReader {
  readonly documents: ShowDocuments;
  readonly where: Whereabouts;
  setting<K extends keyof Settings>(key: K): Settings[K];
  objectOf(pieceId: PieceId): MuseumObject | undefined;
  piecesOf(objectId: ObjectId): PieceId[];
  sizeOf(pieceId: PieceId): TrueSize | null;
}
