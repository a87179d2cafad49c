/** Several things on the faced wall: hung in a line with one gap, or brought to its middle as they are. */
import { line } from '@enfilade/arrangement/line';
import { boxOn } from '@enfilade/shared/aligning';
import * as commands from '@enfilade/shared/commands';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { centredMoveOf } from './gap-moves.ts';
import { hangable, leftToRight } from './hang-targets.ts';

interface LineToolsProps {
  readonly pieceIds: readonly PieceId[];
  readonly wall: SurfaceId;
  readonly gapMm: number;
}

export function LineTools({ pieceIds, wall, gapMm }: LineToolsProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  const [wrong, setWrong] = useState<string | null>(null);
  const surface = judgements.where.wallOf(wall);
  if (surface === null) return null;
  const inLine = (): void => {
    const order = leftToRight(judgements, hangable(judgements, pieceIds), wall);
    const made = line({
      surfaceWidthMm: surface.lengthMm,
      centreLineMm: judgements.setting('centreLineMm'),
      widthsMm: order.map((pieceId) => judgements.sizeOf(pieceId)?.widthMm ?? 0),
      gapMm,
    });
    const issue = made.issues[0];
    setWrong(
      issue === undefined
        ? null
        : `Longer than the wall by ${lengthText(Number(issue.value), unit)}: take a smaller gap or fewer.`,
    );
    if (issue !== undefined) return;
    const places = new Map<PieceId, Place>(
      order.map((pieceId, index) => {
        const at = made.places[index] ?? { xMm: 0, yMm: 0 };
        const lift =
          judgements.where.placeOf(pieceId)?.[0] === wall ? (judgements.where.placeOf(pieceId)?.[3] ?? 0) : 0;
        return [pieceId, [wall, at.xMm, at.yMm, lift, 0]];
      }),
    );
    act(show, () => commands.place(documents, places, 'hang in a line'), `${order.length} hung in a line`);
  };
  const centred = (): void => {
    const here = pieceIds.flatMap((pieceId) => {
      const box = boxOn(judgements, pieceId, wall);
      return box === null ? [] : [{ pieceId, box }];
    });
    const dxMm = centredMoveOf(
      here.map(({ box }) => box),
      surface.lengthMm / 2,
    );
    const made = () => ({
      ...commands.move(
        documents,
        here.map(({ pieceId }) => pieceId),
        { dxMm, dyMm: 0 },
      ),
      name: 'centre the group on the wall',
    });
    act(show, made, 'the group is centred on the wall');
  };
  const anyHere = pieceIds.some((pieceId) => boxOn(judgements, pieceId, wall) !== null);
  return (
    <>
      <p className="object-commands">
        <button type="button" onClick={inLine}>
          hang in a line
        </button>
        {anyHere ? (
          <button type="button" onClick={centred}>
            centre the group on the wall
          </button>
        ) : null}
      </p>
      {wrong === null ? null : (
        <p className="t1 b" role="alert">
          {wrong}
        </p>
      )}
    </>
  );
}
