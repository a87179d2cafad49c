/** Ways to compose wall, furniture and load as one, as places. */
import { aroundCarrier } from '@enfilade/arrangement/around-carrier';
import { planFromWall } from '@enfilade/space/room';
import type { Arrangement, CarrierAsked } from './arrange-task.ts';
import { arrangementFrom } from './arranged.ts';
import type { ArrangementTerm } from './arrangement-terms.ts';
import { TURN_OF_BACK } from './in-openings.ts';
import { carrierOn, type PieceId, type Place, surfaceParts } from './schema.ts';

/** As asked for; asked again, with more air over the load and beside it. */
const AIR = [1, 1.6, 2.4] as const;

export function* arrangedAround(task: CarrierAsked): Generator<Arrangement> {
  const { engine, carrier, room, side, wish } = task;
  const floor = `${surfaceParts(wish.surface)?.roomId}:floor`;
  for (const air of AIR) {
    for (const found of aroundCarrier({ ...engine, gapMm: engine.gapMm * air, overMm: 100 * air })) {
      const places: [PieceId, Place][] = [[carrier, task.carrierPlace]];
      task.on.forEach((pieceId, i) => {
        const at = found.on[i];
        if (at) places.push([pieceId, [carrierOn(carrier, 0), at.xMm, at.yMm, at.liftMm, 0]]);
      });
      task.around.forEach((pieceId, i) => {
        const at = found.around[i];
        if (!at) return;
        const spot = planFromWall(room, side, at.xMm, (engine.around[i]?.depthMm ?? 0) / 2);
        places.push([pieceId, [floor, Math.round(spot.xMm), Math.round(spot.yMm), 0, TURN_OF_BACK[side] * 100]]);
      });
      task.above.forEach((pieceId, i) => {
        const at = found.above[i];
        if (at) places.push([pieceId, [wish.surface, at.xMm, at.yMm, 0, 0]]);
      });
      const { measures } = found;
      const terms: ArrangementTerm[] = [
        { kind: 'balance', x: measures.balanceX },
        { kind: 'void', mm: measures.largestVoidMm },
        ...(measures.overLoadMm === null ? [] : [{ kind: 'over the load', mm: measures.overLoadMm } as const]),
        { kind: 'outline', ...measures.outline },
        ...(found.unplaced > 0 ? [{ kind: 'no room', count: found.unplaced } as const] : []),
      ];
      yield arrangementFrom({
        name: air === 1 ? found.name : `${found.name}, more air`,
        places,
        stays: [],
        of: [...task.on, ...task.around, ...task.above],
        terms,
      });
    }
  }
}
