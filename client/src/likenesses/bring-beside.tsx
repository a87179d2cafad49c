/** Brings a thing beside the one whose card is open; where there is no room it says so and offers the nearest place. */
import { type BesidePlace, placeBeside } from '@enfilade/shared/beside';
import * as commands from '@enfilade/shared/commands';
import type { PieceId } from '@enfilade/shared/schema';
import { onName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { placeOnStage } from '../shell/stage-hand.ts';
import { useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';

interface BringProps {
  readonly anchor: PieceId;
  readonly pieceId: PieceId;
  readonly name: string;
  readonly view: View;
}

export function BringBeside({ anchor, pieceId, name, view }: BringProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  /** What was found where there is no room beside it. */
  const [instead, setInstead] = useState<BesidePlace | string | null>(null);
  if (judgements.where.placeOf(anchor) === null) {
    return (
      <button type="button" aria-label={`bring it here: ${name}`} onClick={() => void placeOnStage([pieceId], view)}>
        bring it here
      </button>
    );
  }
  const put = ({ place, side, gapMm }: BesidePlace): void => {
    const where = side === null ? 'from' : `to the ${side} of`;
    const done = `${name} placed, ${lengthText(gapMm, unit)} ${where} ${judgements.nameOf(anchor)}`;
    act(show, () => commands.place(documents, new Map([[pieceId, place]]), `place ${name}`), done);
  };
  /** Found anew at each press: others move too. `anywhere`: the nearest place will do. */
  const bring = (anywhere: boolean): void => {
    const found = placeBeside(judgements, anchor, pieceId, view.sheet === 'wall' ? view.surface : null);
    if (found === null) return;
    if ('why' in found) setInstead(`${found.why}.`);
    else if (found.side === null && !anywhere) setInstead(found);
    else put(found);
  };
  return (
    <>
      <button type="button" aria-label={`bring it beside this: ${name}`} onClick={() => bring(false)}>
        bring it beside this
      </button>
      {instead === null ? null : (
        <p className="t1 bring-instead" role="status">
          {typeof instead === 'string' ? (
            `${instead} Nothing was placed.`
          ) : (
            <>
              There is no room beside it. The nearest free place is {lengthText(instead.gapMm, unit)} from it, on{' '}
              {onName(judgements, instead.place[0])}.{' '}
              <button type="button" aria-label={`put it there: ${name}`} onClick={() => bring(true)}>
                put it there
              </button>
            </>
          )}{' '}
          <button type="button" aria-label={`leave it: ${name}`} onClick={() => setInstead(null)}>
            leave it
          </button>
        </p>
      )}
    </>
  );
}
