/** A halo asked for: what the engine is given, and which pieces its answers are about. */
import type { HaloTask as EngineTask } from '@enfilade/arrangement/halo-task';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';

export interface HaloTask {
  readonly wall: SurfaceId;
  readonly focal: PieceId;
  /** Where the focal work hangs, or will. */
  readonly focalPlace: Place;
  /** In the order of the engine's pieces. */
  readonly pieceIds: readonly PieceId[];
  readonly engine: Omit<EngineTask, 'progress'>;
}
