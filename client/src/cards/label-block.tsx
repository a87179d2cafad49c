/** A piece's label: on which side of it, how large for its text, where it stands; what it says. */
import { labelSizeOf } from '@enfilade/practice/labels';
import { labelOn } from '@enfilade/shared/commands';
import { LABEL_WORDS, type LabelWord } from '@enfilade/shared/label-words';
import { practiceProfileOf } from '@enfilade/shared/practice-limits';
import type { PieceId } from '@enfilade/shared/schema';
import { labelTextOf, labelWordOf, type WallLabel } from '@enfilade/shared/wall-labels';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import { useId } from 'react';
import { usePreferences } from '../preferences.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { CardGroup } from './card-group.tsx';
import './label-block.css';

const SIDES: Readonly<Record<LabelWord | 'room', string>> = {
  room: 'finds room',
  right: 'right of it',
  left: 'left of it',
  below: 'below it',
  none: 'no label',
};

export function LabelBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  useRoots('labelSides', 'limits', 'settings');
  const id = useId();
  const object = judgements.objectOf(pieceId);
  const surface = judgements.where.placeOf(pieceId)?.[0];
  const wall = surface === undefined ? null : judgements.where.wallOf(surface);
  if (object === undefined || surface === undefined || wall === null) return null;
  // Labels are the show's own, not a proposal's, like pins.
  const frozen = !show.may('hang') || show.layerId !== null;
  const word = labelWordOf(judgements, pieceId);
  const label = judgements.labelBoxesOn(surface).find(({ pieces }) => pieces.includes(pieceId));
  const text = label?.text ?? labelTextOf(object);
  const { words, tooLong } = labelSizeOf(text, undefined, practiceProfileOf(documents));
  const drawn = judgements.setting('labelsOnWalls') === true;
  return (
    <CardGroup name="Label" brief={briefOf(label)}>
      <div className="typed-field">
        <label className="typed-label" htmlFor={id}>
          Stands
        </label>
        {frozen ? (
          <span id={id} className="typed-value typed-frozen">
            {SIDES[word ?? 'room']}
          </span>
        ) : (
          <select
            id={id}
            className="record-kind"
            value={word ?? 'room'}
            onChange={(event) => {
              const chosen = LABEL_WORDS.find((known) => known === event.target.value) ?? null;
              act(show, labelOn([pieceId], chosen), `Its label: ${SIDES[chosen ?? 'room']}`);
            }}
          >
            {(['room', ...LABEL_WORDS] as const).map((side) => (
              <option key={side} value={side}>
                {SIDES[side]}
              </option>
            ))}
          </select>
        )}
      </div>
      {label === undefined ? null : (
        <>
          <p className="label-text">{text}</p>
          <p>
            {sizeText(label.heightMm, label.widthMm, null, unit)}, its centre{' '}
            {lengthText(label.yMm - wall.floorAt(label.xMm), unit)} above the floor and {lengthText(label.xMm, unit)}{' '}
            from the left corner.
            {label.pieces.length > 1 ? ` One for ${label.pieces.length} pieces.` : ''}
            {tooLong ? ` ${words} words are more than visitors read.` : ''}
            {label.meets.length > 0 ? ` It lies over ${label.meets.join(', ')}.` : ''}
          </p>
        </>
      )}
      {drawn ? null : <p className="t1 q">Labels are not on the walls in this show: see the wall’s own lines.</p>}
    </CardGroup>
  );
}

function briefOf(label: WallLabel | undefined): string {
  if (label === undefined) return 'none';
  return label.meets.length > 0 ? 'without room' : SIDES[label.side];
}
