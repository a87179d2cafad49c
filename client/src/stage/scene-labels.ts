/** The works' labels on a drawing's walls, where the show has them there: kept, so that only what changed is painted anew. */
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId } from '@enfilade/shared/schema';
import type { WallLabel } from '@enfilade/shared/wall-labels';
import { boxInDrawing, type SceneFrame, type ScenePanel } from './panels.ts';
import type { Rect } from './scene-items.ts';

export interface SceneLabel extends Rect {
  readonly panel: ScenePanel;
  readonly label: WallLabel;
}

const NONE: readonly SceneLabel[] = [];

export class SceneLabels {
  shown: readonly SceneLabel[] = NONE;
  private lists: readonly (readonly WallLabel[])[] = [];
  private away: ReadonlySet<PieceId> = new Set();

  /** Reads the walls' labels again, without those of pieces that are elsewhere just now; what looks different then. */
  read(judgements: Judgements, frame: SceneFrame, away: ReadonlySet<PieceId>): Rect[] {
    const on = judgements.setting('labelsOnWalls') === true;
    if (!on && this.shown.length === 0) return [];
    const walls = on ? frame.panels.filter(({ kind }) => kind === 'wall') : [];
    const lists = walls.map(({ surface }) => judgements.labelBoxesOn(surface));
    // Mostly nothing changed: a hand that moves asks at every frame.
    if (sameMembers(away, this.away) && sameItems(lists, this.lists)) return [];
    this.away = new Set(away);
    this.lists = lists;
    const next = walls.flatMap((panel, n) =>
      (lists[n] ?? [])
        .filter(({ pieces }) => !pieces.some((pieceId) => away.has(pieceId)))
        .map((label) => sceneLabel(panel, label)),
    );
    const [before, after] = [new Map(this.shown.map(keyed)), new Map(next.map(keyed))];
    this.shown = next;
    return [
      ...[...before].flatMap(([key, was]) => (after.has(key) ? [] : [was])),
      ...[...after].flatMap(([key, is]) => (before.has(key) ? [] : [is])),
    ];
  }

  within(rect: Rect): SceneLabel[] {
    return this.shown.filter(
      ({ minX, minY, maxX, maxY }) => minX < rect.maxX && maxX > rect.minX && minY < rect.maxY && maxY > rect.minY,
    );
  }
}

function sceneLabel(panel: ScenePanel, label: WallLabel): SceneLabel {
  const { X, Y, width, height } = boxInDrawing(panel, label);
  return { panel, label, minX: X, minY: Y, maxX: X + width, maxY: Y + height };
}

function keyed(one: SceneLabel): readonly [string, SceneLabel] {
  const { panel, label } = one;
  return [`${panel.surface} ${label.xMm} ${label.yMm} ${label.widthMm} ${label.heightMm} ${label.text}`, one];
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, n) => item === b[n]);
}

function sameMembers<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  return a.size === b.size && [...a].every((item) => b.has(item));
}
