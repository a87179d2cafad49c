/** Sockets, thermostats, call points, exit signs: what hangs near them must leave them their margin. */
import type { WallBox } from './openings.ts';

export interface Fixture {
  readonly id: string;
  readonly kind: string;
  readonly surface: string;
  /** Centre. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Margin on every side, from its edge. */
  readonly clearMm: number;
}

export interface TooNear {
  readonly id: string;
  readonly kind: string;
  /** Between the edges, the larger of across and up; 0 where they touch or overlap. */
  readonly gapMm: number;
  readonly clearMm: number;
}

/** The boxes of a surface that nothing may cover: each fixture grown by its margin (mm, centre). */
export function boxesToKeepClear(surface: string, fixtures: readonly Fixture[]): readonly WallBox[] {
  return fixtures
    .filter((fixture) => fixture.surface === surface)
    .map(({ id, kind, xMm, yMm, widthMm, heightMm, clearMm }) => ({
      id,
      kind,
      xMm,
      yMm,
      widthMm: widthMm + 2 * clearMm,
      heightMm: heightMm + 2 * clearMm,
    }));
}

/** The fixtures of a surface whose margin a box enters, nearest first (mm). Touching the margin is keeping clear. */
export function tooNearOf(
  surface: string,
  box: Pick<WallBox, 'xMm' | 'yMm' | 'widthMm' | 'heightMm'>,
  fixtures: readonly Fixture[],
): readonly TooNear[] {
  return fixtures
    .filter((fixture) => fixture.surface === surface)
    .map((fixture) => ({ fixture, gapMm: gapBetween(box, fixture) }))
    .filter(({ fixture, gapMm }) => gapMm < fixture.clearMm)
    .sort((a, b) => a.gapMm - b.gapMm)
    .map(({ fixture, gapMm }) => ({
      id: fixture.id,
      kind: fixture.kind,
      gapMm: Math.max(0, gapMm),
      clearMm: fixture.clearMm,
    }));
}

/** The larger of the two gaps, so that the answer agrees with the grown box: corners are kept clear squarely. */
function gapBetween(
  a: Pick<WallBox, 'xMm' | 'yMm' | 'widthMm' | 'heightMm'>,
  b: Pick<WallBox, 'xMm' | 'yMm' | 'widthMm' | 'heightMm'>,
): number {
  const across = Math.abs(a.xMm - b.xMm) - (a.widthMm + b.widthMm) / 2;
  const up = Math.abs(a.yMm - b.yMm) - (a.heightMm + b.heightMm) / 2;
  return Math.max(across, up);
}
