/** A small true picture of an arrangement: the wall as faced, the carrier from its front, or the floor in plan. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { outerBoxOf } from '@enfilade/shared/aligning';
import type { Arrangement, ArrangeTask } from '@enfilade/shared/arrange-task';
import type { HangLayer } from '@enfilade/shared/hang-layer';
import { TURN_OF_BACK } from '@enfilade/shared/in-openings';
import { Judgements } from '@enfilade/shared/judgements';
import { carrierOf, type Json, type PieceId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { useMemo } from 'react';
import { Picture } from '../shell/picture.tsx';
import { useShow } from '../sync/hooks.ts';
import './wall-thumb.css';

interface Shown {
  readonly pieceId: PieceId;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDegrees: number;
}

interface Sight {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lowestMm: number;
  readonly shown: readonly Shown[];
  readonly ground: string;
  /** Seen from above: things are drawn as their outlines. */
  readonly plan: boolean;
}

interface ThumbProps {
  readonly task: ArrangeTask;
  readonly way: Arrangement;
  readonly away: readonly PieceId[];
  readonly widthPx: number;
  readonly heightPx: number;
  /** Rises when what it is a picture of changes. */
  readonly version: number;
}

export function ArrangedThumb({ task, way, away, widthPx, heightPx, version }: ThumbProps) {
  const { judgements, documents, pictures } = useShow();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents say
  const sight = useMemo(() => {
    const laid = documents.laidOver(layerOf(way, away));
    const made = sightOf(new Judgements(laid, pictures), task);
    laid.close();
    return made;
  }, [documents, pictures, task, way, away, version]);
  if (sight === null) return null;
  const scale = Math.min(widthPx / sight.widthMm, heightPx / sight.heightMm);
  const arranged = new Set(way.places.map(([pieceId]) => pieceId));
  const surface = task.kind === 'plinths' || task.kind === 'massed' ? null : task.wish.surface;
  const at = (box: { xMm: number; yMm: number; widthMm: number; heightMm: number }) => ({
    left: (box.xMm - box.widthMm / 2) * scale,
    bottom: (box.yMm - sight.lowestMm - box.heightMm / 2) * scale,
    width: box.widthMm * scale,
    height: box.heightMm * scale,
  });
  return (
    <div
      className={sight.plan ? 'wall-thumb wall-thumb-plan' : 'wall-thumb'}
      aria-hidden="true"
      style={{ width: sight.widthMm * scale, height: sight.heightMm * scale, background: sight.ground }}
    >
      {(surface === null ? [] : judgements.openingsOn(surface)).map((box) => (
        <i key={box.id} className="wall-thumb-opening" style={at(box)} />
      ))}
      {(surface === null ? [] : judgements.fixturesOn(surface)).map((box) => (
        <i key={box.id} className="wall-thumb-fixture" style={at(box)} />
      ))}
      {sight.shown.map((one) => {
        const sha256 = sight.plan ? null : judgements.pictureIdOf(one.pieceId);
        const { widthMm, heightMm } = one;
        const style = { ...at(outerBoxOf(one, 0)), rotate: `${one.turnDegrees}deg` };
        if (sha256 === null)
          return (
            <span
              key={one.pieceId}
              className={arranged.has(one.pieceId) ? 'wall-thumb-new' : 'wall-thumb-grey'}
              style={style}
            />
          );
        return (
          <span key={one.pieceId} style={style}>
            <Picture
              sha256={sha256}
              widthPx={widthMm * scale}
              heightPx={heightMm * scale}
              small={widthMm * scale < 56 && heightMm * scale < 56}
            />
          </span>
        );
      })}
    </div>
  );
}

/** The hang with these places, and what is taken down away. */
function layerOf(way: Arrangement, away: readonly PieceId[]): HangLayer {
  const places = new Map<string, Json>(way.places.map(([pieceId, at]) => [pieceId, at]));
  const down = new Set(away);
  return {
    over(root, under) {
      if (root !== 'places') return null;
      return {
        get: (key) => (down.has(key) ? undefined : (places.get(key) ?? under.get(key))),
        *entries() {
          for (const [key, value] of under.entries()) if (!down.has(key) && !places.has(key)) yield [key, value];
          yield* places;
        },
        observe: (tell) => under.observe(tell),
      };
    },
    changesFor() {
      throw new RangeError('what is only tried cannot be changed; take it first');
    },
  };
}

function sightOf(judgements: Judgements, task: ArrangeTask): Sight | null {
  if (task.kind === 'massed') return frontOf(judgements, task.carrier);
  if (task.kind === 'plinths') return planOf(judgements, task.wish.surface);
  const { surface } = task.wish;
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return null;
  const lab = judgements.paintOf(surface)?.lab;
  return {
    widthMm: wall.lengthMm,
    heightMm: wall.heightMm - Math.min(0, wall.floorAt(0), wall.floorAt(wall.lengthMm)),
    lowestMm: Math.min(0, wall.floorAt(0), wall.floorAt(wall.lengthMm)),
    shown: judgements.elevationOf(surface).filter(({ pieceId }) => !standsAslant(judgements, pieceId, surface)),
    ground: lab === undefined ? 'var(--L92)' : hexFromLabD65(lab),
    plan: false,
  };
}

/** What stands on a floor seen from its flank, or on something that is: drawn small it would be taken for its front. */
function standsAslant(judgements: Judgements, pieceId: PieceId, surface: SurfaceId): boolean {
  const side = surfaceParts(surface)?.side ?? '';
  let at = judgements.where.placeOf(pieceId);
  for (let steps = 0; at !== null && steps < 64; steps++) {
    const carrier = carrierOf(at[0]);
    if (carrier === null) break;
    at = judgements.where.placeOf(carrier.pieceId);
  }
  if (at === null || !at[0].endsWith(':floor') || !isWallSide(side)) return false;
  return (((at[4] / 100 - TURN_OF_BACK[side]) % 180) + 180) % 180 !== 0;
}

function planOf(judgements: Judgements, surface: SurfaceId): Sight | null {
  const floor = `${surfaceParts(surface)?.roomId}:floor`;
  const room = judgements.where.roomOf(floor);
  if (room === null) return null;
  const shown = judgements.where.planOf(floor).filter(({ held }) => held === undefined);
  return { widthMm: room.widthMm, heightMm: room.depthMm, lowestMm: 0, shown, ground: 'var(--L92)', plan: true };
}

/** A carrier with its load seen level from its front, what stands behind first. */
function frontOf(judgements: Judgements, carrier: PieceId): Sight | null {
  const size = judgements.sizeOf(carrier);
  if (size === null) return null;
  const levels = judgements.where.levelsOf(carrier);
  const load = [...judgements.where.directlyOn(carrier)].flatMap((pieceId) => {
    const at = judgements.where.placeOf(pieceId);
    const its = judgements.sizeOf(pieceId);
    if (at === null || its === null) return [];
    const foot = (levels[carrierOf(at[0])?.level ?? 0] ?? size.heightMm) + at[3];
    const box = { pieceId, xMm: at[1], yMm: foot + its.heightMm / 2, widthMm: its.widthMm, heightMm: its.heightMm };
    return [{ ...box, turnDegrees: 0, deepMm: at[2] }];
  });
  load.sort((a, b) => b.deepMm - a.deepMm);
  const { widthMm, heightMm } = size;
  const around = 0.04 * widthMm;
  const own = { pieceId: carrier, xMm: widthMm / 2, yMm: heightMm / 2, widthMm, heightMm, turnDegrees: 0 };
  const topMm = Math.max(heightMm, ...load.map((one) => one.yMm + one.heightMm / 2));
  return {
    widthMm: widthMm + 2 * around,
    heightMm: topMm + around,
    lowestMm: 0,
    shown: [own, ...load].map((one) => ({ ...one, xMm: one.xMm + around })),
    ground: 'var(--L92)',
    plan: false,
  };
}
