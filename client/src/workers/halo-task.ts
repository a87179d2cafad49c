/** A halo asked for: what the engine is given, and which pieces its answers are about. */
import type { HaloTask as EngineTask, HaloCandidate } from '@enfilade/arrangement/halo-task';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';

export interface HaloTask {
  readonly wall: SurfaceId;
  readonly focal: PieceId;
  /** Where the focal work hangs, or will. */
  readonly focalPlace: Place;
  /** In the order of the engine's pieces. */
  readonly pieceIds: readonly PieceId[];
  /** The looseness is the person's wish; candidates other than the first may differ from it. */
  readonly engine: Omit<EngineTask, 'progress' | 'seed'>;
}

/** What the worker is asked: a task, where its dice start, and what was shown before and is not to be shown again. */
export interface HaloQuestion {
  readonly engine: HaloTask['engine'];
  readonly seed: number;
  readonly exclude: readonly Pick<HaloCandidate, 'places'>[];
}
