/** Several things of one wall or of the layout floor: one height, one upright, equal gaps; each is one step of undo. */
import type { AlignedBy } from '@enfilade/arrangement/align';
import { type Aligning, boxOn, lineUp, spaceOut } from '@enfilade/shared/aligning';
import type { PieceId, SurfaceId } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import './align-tools.css';

const HEIGHTS = ['tops', 'centres', 'feet'] as const satisfies readonly AlignedBy[];
const UPRIGHTS = ['lefts', 'middles', 'rights'] as const satisfies readonly AlignedBy[];
const AXES = ['across', 'up'] as const;

interface AlignToolsProps {
  readonly pieceIds: readonly PieceId[];
  readonly surface: SurfaceId;
  /** What is typed on the card as the gap between them. */
  readonly gapMm: number;
}

export function AlignTools({ pieceIds, surface, gapMm }: AlignToolsProps) {
  const show = useShow();
  const { judgements } = show;
  const { unit } = usePreferences();
  const [said, setSaid] = useState<string | null>(null);
  const here = pieceIds.filter((pieceId) => boxOn(judgements, pieceId, surface) !== null).length;
  if (here < 2) return null;

  const perform = (made: Aligning, done: string): void => {
    const issue = made.issues[0];
    if (made.changes.length === 0) {
      setSaid(
        issue === undefined
          ? null
          : `Not done: ${issue.what.replace(/, by so many mm$/, '')} by ${lengthText(Number(issue.value), unit)}.`,
      );
      return;
    }
    if (!act(show, made, done)) return;
    const over = made.issues.filter(({ what }) => what === 'stands over another').length;
    setSaid(
      over === 0 ? null : `${over === 1 ? 'One' : over} of them now ${over === 1 ? 'stands' : 'stand'} over another.`,
    );
  };
  const line = (by: AlignedBy): void => {
    const made = lineUp(judgements, surface, pieceIds, by);
    perform(made, `${by} lined up at ${lengthText(made.mm, unit)}`);
  };
  const space = (axis: (typeof AXES)[number], how: 'fixed ends' | 'fixed gap'): void => {
    const made = spaceOut(
      judgements,
      surface,
      pieceIds,
      axis,
      how === 'fixed ends' ? { kind: how } : { kind: how, gapMm },
    );
    perform(made, `equal gaps of ${lengthText(made.mm, unit)} ${axis}`);
  };
  return (
    <div className="align-tools">
      <fieldset>
        <legend>One height</legend>
        {HEIGHTS.map((by) => (
          <button key={by} type="button" aria-label={`${by} at one height`} onClick={() => line(by)}>
            {by}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend>One upright</legend>
        {UPRIGHTS.map((by) => (
          <button key={by} type="button" aria-label={`${by} on one upright`} onClick={() => line(by)}>
            {by}
          </button>
        ))}
      </fieldset>
      {here < 3 ? null : (
        <fieldset>
          <legend>Equal gaps</legend>
          {AXES.map((axis) => (
            <button
              key={axis}
              type="button"
              aria-label={`equal gaps ${axis}, between the outermost`}
              onClick={() => space(axis, 'fixed ends')}
            >
              {axis}
            </button>
          ))}
        </fieldset>
      )}
      <fieldset>
        <legend>Gaps of {lengthText(gapMm, unit)}</legend>
        {AXES.map((axis) => (
          <button
            key={axis}
            type="button"
            aria-label={`gaps of ${lengthText(gapMm, unit)} ${axis}`}
            onClick={() => space(axis, 'fixed gap')}
          >
            {axis}
          </button>
        ))}
      </fieldset>
      {said === null ? null : (
        <p className="t1 b" role="alert">
          {said}
        </p>
      )}
    </div>
  );
}
