/** In the fold-out each wall is captioned in the corner beside it: its name, its paint, its vignettes, what is lost. */
import { lrvText } from '@enfilade/shared/paint-records';
import type { SurfaceId } from '@enfilade/shared/schema';
import { capital, shortSurfaceName } from '@enfilade/shared/surface-names';
import { type CSSProperties, useEffect } from 'react';
import { ReadingCounts, readingsOn } from '../cards/reading-counts.tsx';
import { vignettesOf } from '../cards/vignettes-on.ts';
import { StateMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { toAddress } from '../view-address.ts';
import { wallsCaptioned } from './captioned.ts';
import { boxInDrawing, type ScenePanel } from './panels.ts';
import type { Scene } from './scene.ts';
import type { StageMachine } from './stage-machine.ts';
import { textWidthPx } from './text-width.ts';
import './wall-captions.css';

/** A corner of this many CSS px each way takes a whole caption; of this many, a wall's name. */
const WHOLE_PX = 112;
const NAME_PX = 34;
const NAME_WIDTH_PX = 90;
const OFF_PX = 12;
const LINE_PX = 17;
const TOP_PX = 8;
/** Name and paint. */
const HEAD_PX = 24 + LINE_PX;
/** What stands before a vignette's words. */
const MARK_PX = 20;
/** The scale bar stands in the corner of the right wall. */
const SCALE_BAR_PX = 30;

interface Props {
  readonly machine: StageMachine;
  readonly scene: Scene;
  readonly scale: number;
}

export function WallCaptions({ machine, scene, scale }: Props) {
  useRestingRoots(150, 'paints', 'deck', 'rooms');
  const walls = scene.frame.panels.filter(({ kind }) => kind === 'wall');
  const corner = (walls[0]?.heightMm ?? 0) * scale;
  // By the scale at which the whole is seen, so that the column does not change while a hand zooms.
  const whole = (walls[0]?.heightMm ?? 0) * machine.viewport.fittedScale >= WHOLE_PX;
  useEffect(() => {
    wallsCaptioned.set(whole);
    return () => wallsCaptioned.set(false);
  }, [whole]);
  if (corner < NAME_PX) return null;
  const inWhole = whole && corner >= WHOLE_PX - 12;
  return walls.map((panel) => (
    <section
      key={panel.surface}
      className={`wall-caption wall-caption-${panel.side}`}
      style={placeOf(panel, scale, inWhole ? widthOf(panel, corner) : NAME_WIDTH_PX, inWhole)}
    >
      <WallCaption
        surface={panel.surface}
        lines={inWhole ? linesFor(panel, corner) : -1}
        widthPx={widthOf(panel, corner)}
      />
    </section>
  ));
}

/** The head wall's caption has the board beyond the corner too. */
function widthOf(panel: ScenePanel, corner: number): number {
  return corner - OFF_PX + (panel.side === 'head' ? 90 : 0);
}

/** How many lines a corner has beneath a wall's name and paint. */
function linesFor(panel: ScenePanel, corner: number): number {
  const free = corner - HEAD_PX - TOP_PX - (panel.side === 'right' ? SCALE_BAR_PX : 0);
  return Math.max(0, Math.floor(free / LINE_PX));
}

/** Round the plan like a wheel: each wall has the corner it comes to first. Drawing px. */
function placeOf(panel: ScenePanel, scale: number, width: number, whole: boolean): CSSProperties {
  const box = boxInDrawing(panel, {
    xMm: panel.widthMm / 2,
    yMm: panel.heightMm / 2,
    widthMm: panel.widthMm,
    heightMm: panel.heightMm,
  });
  const [left, top] = [Math.round(box.X * scale), Math.round(box.Y * scale)];
  const [right, bottom] = [Math.round((box.X + box.width) * scale), Math.round((box.Y + box.height) * scale)];
  switch (panel.side) {
    case 'head':
      return { left: right + OFF_PX, top: top - 4, width };
    case 'right':
      return { left: left + 7, top: bottom + 8, width };
    case 'foot':
      return { left: left - OFF_PX - width, top: bottom, width, translate: '0 -100%' };
    default:
      return whole
        ? { left, top: top - 8, width, translate: '0 -100%' }
        : { left: right - 4 - width, top: top - 4, width, translate: '0 -100%', textAlign: 'right' };
  }
}

interface CaptionProps {
  readonly surface: SurfaceId;
  /** How many there is room for; -1: for the wall's name alone. */
  readonly lines: number;
  readonly widthPx: number;
}

function WallCaption({ surface, lines, widthPx }: CaptionProps) {
  const { documents, judgements } = useShow();
  const name = capital(shortSurfaceName(documents, surface));
  const address = toAddress({ sheet: 'wall', surface });
  if (lines < 0) {
    return (
      <h2 className="wall-caption-small">
        <a href={address}>{name}</a>
      </h2>
    );
  }
  const paint = judgements.paintOf(surface);
  const here = vignettesOf(judgements).flatMap(({ id, vignette, surface: on }, index) => {
    if (on !== surface) return [];
    const state = judgements.standingOf(id)?.state ?? 'drafted';
    const text = `${index + 1} ${vignette.name}, ${state}`;
    return [{ id, state, text, lines: Math.ceil((textWidthPx(text, 12, 'sans') + 4) / (widthPx - MARK_PX)) }];
  });
  const lost = readingsOn(judgements, surface).has('lost') ? 1 : 0;
  const shown = fitting(here, lines - lost);
  return (
    <>
      <h2>
        <a href={address}>{name}</a>
      </h2>
      {paint === null ? (
        <p className="t1">no paint yet</p>
      ) : (
        <p className="t1">
          {paint.name}, LRV {lrvText(paint)}
        </p>
      )}
      {shown.map(({ id, state, text }) => (
        <p key={id} className="t1 wall-caption-vignette">
          <StateMark state={state} sizePx={11} />
          <span>{text}</span>
        </p>
      ))}
      {shown.length < here.length ? <p className="t1">and {here.length - shown.length} more</p> : null}
      <ReadingCounts surface={surface} only="lost" />
    </>
  );
}

/** As many as there are lines for, one kept back to tell of the rest. */
function fitting<T extends { readonly lines: number }>(all: readonly T[], lines: number): readonly T[] {
  const sum = (some: readonly T[]) => some.reduce((total, one) => total + one.lines, 0);
  if (sum(all) <= lines) return all;
  let shown = all.length;
  while (shown > 0 && sum(all.slice(0, shown)) > lines - 1) shown -= 1;
  return all.slice(0, shown);
}
