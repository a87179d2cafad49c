/** An arrangement asked for: the wish in the show's words, the task the engines work on, and what they answer. */
import type { AroundTask } from '@enfilade/arrangement/around-task';
import type { HaloTask } from '@enfilade/arrangement/halo-task';
import type { HangTask } from '@enfilade/arrangement/hang-task';
import type { HangKind } from '@enfilade/arrangement/hangs';
import type { MassTask, StandingThing } from '@enfilade/arrangement/mass-task';
import type { PlinthTask } from '@enfilade/arrangement/plinth-group';
import type { LabD65 } from '@enfilade/colour/lab';
import type { RoomShape, WallSide } from '@enfilade/space/room';
import type { ArrangementTerm } from './arrangement-terms.ts';
import type { PieceId, Place, SurfaceId } from './schema.ts';

export const ARRANGE_KINDS = ['halo', 'salon', 'line', 'double', 'pendants', 'massed', 'carrier', 'plinths'] as const;
export type ArrangeKind = (typeof ARRANGE_KINDS)[number];

/** What a person asks for. Small enough to travel through presence. */
export interface ArrangeWish {
  readonly kind: ArrangeKind;
  readonly pieceIds: readonly PieceId[];
  /** The wall they are to hang on, or the floor they are to stand on; of what is massed, where its carrier is seen. */
  readonly surface: SurfaceId;
  /** The least gap (mm). */
  readonly gapMm: number;
  /** What they are hung round, or the middle of. */
  readonly focal?: PieceId;
  /** 0 even … 1 loose; of a halo. */
  readonly looseness?: number;
  /** What they are massed on, or composed round. */
  readonly carrier?: PieceId;
  /** The level they are massed on; all of the carrier's unless given. */
  readonly level?: number;
}

/** A level things are massed on. */
export interface MassLevel extends Omit<MassTask, 'things'> {
  readonly level: number;
}

/** What a task is about beside what its engine needs. */
interface Asked {
  readonly wish: ArrangeWish;
  /** What the answers depend on beside the settings: the pool and the surface. Another pool or wall has another one. */
  readonly ground: string;
}

export type HaloEngineTask = Omit<HaloTask, 'progress' | 'seed'>;
export type HangEngineTask = Omit<HangTask, 'progress' | 'seed' | 'difference'>;

export interface HaloAsked extends Asked {
  readonly kind: 'halo';
  /** In the order of the engine's pieces. */
  readonly pieceIds: readonly PieceId[];
  readonly focal: PieceId;
  /** Where the focal work hangs, or will. */
  readonly focalPlace: Place;
  readonly engine: HaloEngineTask;
  /** The same wall with the focal work as its last piece, for the measures all hangs share. */
  readonly wall: HangEngineTask;
  /** By piece of `wall`; null where no colours are known. */
  readonly colours: readonly (LabD65 | null)[];
}

export interface HangAsked extends Asked {
  readonly kind: HangKind;
  readonly pieceIds: readonly PieceId[];
  readonly wall: HangEngineTask;
  readonly colours: readonly (LabD65 | null)[];
}

export interface MassAsked extends Asked {
  readonly kind: 'massed';
  readonly carrier: PieceId;
  readonly pieceIds: readonly PieceId[];
  readonly things: readonly StandingThing[];
  /** The lowest first. */
  readonly levels: readonly MassLevel[];
}

export interface CarrierAsked extends Asked {
  readonly kind: 'carrier';
  readonly carrier: PieceId;
  /** Where it stands or hangs, or will. */
  readonly carrierPlace: Place;
  readonly on: readonly PieceId[];
  readonly around: readonly PieceId[];
  readonly above: readonly PieceId[];
  /** Of what stands around: with its back to this wall. */
  readonly room: RoomShape;
  readonly side: WallSide;
  readonly engine: AroundTask;
}

export interface PlinthsAsked extends Asked {
  readonly kind: 'plinths';
  readonly pieceIds: readonly PieceId[];
  /** What is put on one of them, in its middle. */
  readonly loads: readonly (readonly [PieceId, Place])[];
  readonly engine: PlinthTask;
}

export type ArrangeTask = HaloAsked | HangAsked | MassAsked | CarrierAsked | PlinthsAsked;

/** One way to arrange them, with its measured terms. */
export interface Arrangement {
  /** Of its places: two ways with one digest are the same way. */
  readonly digest: string;
  readonly name: string;
  readonly places: readonly (readonly [PieceId, Place])[];
  /** Found no room: taken off the surface if they were on it. */
  readonly unplaced: readonly PieceId[];
  readonly terms: readonly ArrangementTerm[];
}

/** What is wrong with a wish: nothing can be arranged, and why. */
export interface NotPossible {
  readonly why: string;
}
