/** Each vignette's bracket outside its wall, with its number and name; pressed, its pieces are selected. */
import type { VignetteId } from '@enfilade/shared/schema';
import { useLayoutEffect } from 'react';
import type { VignetteHere } from '../cards/vignettes-on.ts';
import { choose, selection, useStore } from '../selection.ts';
import { StateMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { type Bracket, labelSpanOf, rowsOf } from './brackets.ts';
import type { ScenePanel } from './panels.ts';
import type { Scene } from './scene.ts';
import type { StageMachine } from './stage-machine.ts';
import { textWidthPx } from './text-width.ts';
import { BRACKET_ROW_PX } from './viewport.ts';
import './vignette-brackets.css';

/** Shorter than this a bracket is a speck; its vignette is still in the caption and the list (CSS px). */
const LEAST_PX = 22;
const LABEL_PX = 15;
const MOST_LABEL_PX = 230;
/** Beyond so many rows a bracket says only its number. */
const MOST_ROWS = 3;
/** Between the wall's edge and the bracket. */
const OFF_PX = 6;
const SIDE_LABEL_PX = 88;
/** The bracket and its name across. */
const LANE_PX = 25;
/** The mark of its state before its number, with what parts them. */
const MARK_PX = { size: 10, across: 17 } as const;

interface Props {
  readonly machine: StageMachine;
  readonly scene: Scene;
  readonly scale: number;
  readonly brackets: readonly Bracket[];
  readonly vignettes: ReadonlyMap<VignetteId, VignetteHere & { readonly number: number }>;
}

export function VignetteBrackets({ machine, scene, scale, brackets, vignettes }: Props) {
  const chosen = useStore(selection);
  const { judgements } = useShow();
  const shown = brackets.flatMap((bracket) => {
    const about = vignettes.get(bracket.id);
    const [from, to] = [Math.round(bracket.fromMm * scale), Math.round(bracket.toMm * scale)];
    return about === undefined || to - from < LEAST_PX ? [] : [{ bracket, about, from, to }];
  });
  const placed = scene.frame.panels.flatMap((panel) => {
    const on = shown.filter(({ bracket }) => bracket.surface === panel.surface);
    // Names stay along their wall, from its one end to its other.
    const limits = { from: startOf(panel) * scale, to: (startOf(panel) + panel.widthMm) * scale };
    const labels = on.map(({ about, bracket, from, to }) => {
      if (bracket.edge === 'left' || bracket.edge === 'right') return { from, to: Math.max(to, from + 20) };
      const width = Math.min(MOST_LABEL_PX, textWidthPx(`${about.number}  ${about.vignette.name}`, LABEL_PX, 'serif'));
      return labelSpanOf({ from, to }, width + MARK_PX.across + 8, limits);
    });
    const spans = labels.map((label, i) => ({
      from: Math.min(label.from, on[i]?.from ?? 0),
      to: Math.max(label.to, on[i]?.to ?? 0),
    }));
    const rows = rowsOf(spans, 10);
    return on.map((one, i) => ({ ...one, label: labels[i] ?? one, row: rows[i] ?? 0 }));
  });
  const rows = scene.frame.sheet === 'wall' ? Math.min(MOST_ROWS, Math.max(0, ...placed.map(({ row }) => row + 1))) : 0;
  useLayoutEffect(() => machine.setBracketRows(rows), [machine, rows]);

  return placed
    .filter(({ row }) => row < MOST_ROWS)
    .map(({ bracket, about, from, to, label, row }) => {
      const { edge } = bracket;
      const members = about.members;
      const state = judgements.standingOf(bracket.id)?.state ?? 'drafted';
      const all = members.length > 0 && members.length === chosen.length && members.every((id) => chosen.includes(id));
      const at = Math.round(bracket.atMm * scale);
      const upright = edge === 'left' || edge === 'right';
      const off = OFF_PX + row * (upright ? 26 : BRACKET_ROW_PX);
      // The button is the bracket and the lane of its name.
      const box =
        edge === 'above'
          ? { left: from, top: at - off - LANE_PX, width: to - from, height: LANE_PX }
          : edge === 'below'
            ? { left: from, top: at + off, width: to - from, height: LANE_PX }
            : edge === 'left'
              ? { left: at - off - LANE_PX, top: from, width: LANE_PX, height: to - from }
              : { left: at + off, top: from, width: LANE_PX, height: to - from };
      return (
        <button
          key={`${bracket.id}@${bracket.surface}`}
          type="button"
          className={`bare bracket bracket-${edge}`}
          style={box}
          aria-pressed={all}
          aria-label={`Vignette ${about.number}, ${about.vignette.name}, ${state}: select its ${members.length} pieces`}
          onClick={() => choose(members)}
        >
          <i aria-hidden="true" />
          <span
            aria-hidden="true"
            style={
              upright
                ? { maxWidth: row === 0 ? SIDE_LABEL_PX : 20 }
                : { left: label.from - from, width: label.to - label.from }
            }
          >
            <StateMark state={state} sizePx={MARK_PX.size} />
            <b>{about.number}</b> {upright && row > 0 ? null : about.vignette.name}
          </span>
        </button>
      );
    });
}

/** Drawing X of a level panel's left end as it is seen. */
function startOf(panel: ScenePanel): number {
  return panel.rotationDegrees === 180 ? panel.origin.X - panel.widthMm : panel.origin.X;
}
