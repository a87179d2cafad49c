/** A piece on a wall: height, distances, gaps to what is nearest, and where its hooks go. */

import type { Box } from '@enfilade/arrangement/boxes';
import type { NeighbourGaps } from '@enfilade/arrangement/neighbour-gaps';
import { outerBoxOf } from '@enfilade/shared/aligning';
import * as commands from '@enfilade/shared/commands';
import type { Judgements } from '@enfilade/shared/judgements';
import { objectOfPiece, type PieceId, type Place, pieceNumberOf } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { act, placeAnew } from './acting.ts';
import { moveForGap, type Side } from './gap-moves.ts';
import { LengthField } from './length-field.tsx';
import { MakingRoomToggle } from './making-room-toggle.tsx';
import { InOrOn, useOpeningUnder } from './opening-place.tsx';
import { TurnField } from './turn-field.tsx';

interface WallPlaceProps {
  readonly pieceId: PieceId;
  readonly at: Place;
  readonly frozen: boolean;
}

interface Neighbour {
  readonly name: string;
  readonly box: Box;
}

/** What gaps are measured to: the other things hanging there, openings and fixtures; each with its name. */
function neighboursOf(judgements: Judgements, pieceId: PieceId, surface: string): Neighbour[] {
  const load = new Set([pieceId, ...judgements.where.loadOf(pieceId)]);
  const pieces = judgements
    .elevationOf(surface)
    .filter((seen) => !load.has(seen.pieceId))
    .map((seen) => ({ name: nameBeside(judgements, pieceId, seen.pieceId), box: outerBoxOf(seen, seen.turnDegrees) }));
  const openings = judgements.openingsOn(surface).map((box) => ({ name: box.opening.name || box.opening.kind, box }));
  const fixtures = judgements.fixturesOn(surface).map((box) => ({ name: box.kind, box }));
  return [...pieces, ...openings, ...fixtures];
}

/** Within one record the number of the piece says enough. */
function nameBeside(judgements: Judgements, pieceId: PieceId, other: PieceId): string {
  return objectOfPiece(pieceId) === objectOfPiece(other) ? `piece ${pieceNumberOf(other)}` : judgements.nameOf(other);
}

const EDGES: Record<Side, string> = { left: 'left corner', right: 'right corner', above: 'ceiling', below: 'floor' };

export function WallPlace({ pieceId, at, frozen }: WallPlaceProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  const size = judgements.sizeOf(pieceId);
  const wall = judgements.where.wallOf(at[0]);
  const under = useOpeningUnder(pieceId, at);
  if (size === null || wall === null) return null;
  const box = outerBoxOf({ xMm: at[1], yMm: at[2], widthMm: size.widthMm, heightMm: size.heightMm }, at[4] / 100);
  const neighbours = neighboursOf(judgements, pieceId, at[0]);
  const gaps = judgements.gapsAround(
    at[0],
    box,
    neighbours.map((one) => one.box),
  );
  const hooks = judgements.hooksOf(pieceId);
  const floor = wall.floorAt(at[1]);
  const centreLine = judgements.setting('centreLineMm');
  const move = (xMm: number, yMm: number, name: string): void => {
    const to: Place = [at[0], xMm, yMm, at[3], at[4]];
    act(show, () => commands.place(documents, new Map([[pieceId, to]]), name), `Done: ${name}`);
  };
  return (
    <>
      <LengthField
        label="Centre height"
        stepper
        mm={at[2]}
        frozen={frozen}
        first
        mostMm={wall.heightMm}
        take={(mm) => placeAnew(show, pieceId, at, { yMm: mm })}
        {...(Math.abs(floor) >= 1 ? { hint: `${lengthText(at[2] - floor, unit)} from the floor here` } : {})}
      />
      <LengthField
        label="From left corner"
        stepper
        mm={at[1] - box.widthMm / 2}
        frozen={frozen}
        mostMm={Math.max(0, wall.lengthMm - box.widthMm)}
        take={(mm) => placeAnew(show, pieceId, at, { xMm: mm + box.widthMm / 2 })}
      />
      {gaps === null ? null : <GapFields {...{ pieceId, at, frozen, gaps, neighbours }} />}
      <div className="typed-row">
        <TurnField pieceId={pieceId} at={at} frozen={frozen} />
        <LengthField
          label="Stand-off"
          mm={at[3]}
          frozen={frozen}
          leastMm={0}
          mostMm={2000}
          take={(mm) => placeAnew(show, pieceId, at, { liftMm: mm })}
        />
      </div>
      {hooks === null || hooks.hardware?.hooks === 0 ? null : hooks.known ? (
        <HookLines fromLaserMm={hooks.fromLaserMm} points={hooks.points} unit={unit} />
      ) : (
        <div className="typed-field">
          <span className="typed-label">Hook</span>
          <span className="typed-value typed-frozen unk">not known</span>
          <span className="typed-hint">{hooks.missing}</span>
        </div>
      )}
      {frozen ? null : <MakingRoomToggle />}
      {frozen || under === null ? null : (
        <InOrOn
          kind={under.kind}
          inside={false}
          over={() => {
            const name = `put ${judgements.nameOf(pieceId)} in the ${under.kind}`;
            act(show, () => commands.place(documents, new Map([[pieceId, under.place]]), name), `In the ${under.kind}`);
          }}
        />
      )}
      {frozen ? null : (
        <p className="object-commands">
          <button type="button" onClick={() => move(at[1], centreLine, 'hang on the centre line')}>
            hang on the centre line
          </button>
          <button type="button" onClick={() => move(wall.lengthMm / 2, at[2], 'centre on the wall')}>
            centre on the wall
          </button>
        </p>
      )}
    </>
  );
}

function GapFields(props: WallPlaceProps & { gaps: NeighbourGaps; neighbours: readonly Neighbour[] }) {
  const { pieceId, at, frozen, gaps, neighbours } = props;
  const show = useShow();
  // The left corner has its own line above; the gap on the left shows only where something stands between.
  const sides = (['left', 'right', 'below'] as const).filter((side) => side !== 'left' || gaps.left.to !== 'edge');
  return sides.map((side) => {
    const gap = gaps[side];
    const to = gap.to === 'edge' ? EDGES[side] : (neighbours[gap.to]?.name ?? 'neighbour');
    const where = gap.to === 'edge' || side !== 'below' ? '' : ' below';
    return (
      <LengthField
        key={side}
        label={gap.to === 'edge' ? `To ${to}` : `Gap to ${to}${where}`}
        mm={gap.mm}
        frozen={frozen}
        take={(mm) => {
          const { dxMm, dyMm } = moveForGap(side, gap.mm, mm);
          return placeAnew(show, pieceId, at, { xMm: at[1] + dxMm, yMm: at[2] + dyMm });
        }}
      />
    );
  });
}

function HookLines(props: {
  fromLaserMm: number;
  points: readonly { readonly xMm: number; readonly fromFloorMm: number }[];
  unit: 'cm' | 'in';
}) {
  const { fromLaserMm, points, unit } = props;
  const heights = points.map(({ fromFloorMm }) => lengthText(fromFloorMm, unit));
  const same = new Set(heights).size === 1;
  return (
    <>
      {points.length === 0 ? null : (
        <div className="typed-field">
          <span className="typed-label">{points.length === 1 ? 'Hook' : `${points.length} hooks`}, from floor</span>
          <span className="typed-value typed-frozen">{same ? heights[0] : heights.join(', ')}</span>
        </div>
      )}
      {points.length === 0 ? null : (
        <div className="typed-field">
          <span className="typed-label">{points.length === 1 ? 'Hook' : 'Hooks'}, from left corner</span>
          <span className="typed-value typed-frozen">{points.map(({ xMm }) => lengthText(xMm, unit)).join(', ')}</span>
        </div>
      )}
      <div className="typed-field">
        <span className="typed-label">{fromLaserMm < 0 ? 'Below' : 'Above'} laser line</span>
        <span className="typed-value typed-frozen">{lengthText(Math.abs(fromLaserMm), unit)}</span>
      </div>
    </>
  );
}
