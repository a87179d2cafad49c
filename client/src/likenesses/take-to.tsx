/** Takes what was found to a wall or the layout floor, in hand: there it is hung, arranged, gathered. */
import { everyWall } from '@enfilade/shared/colour-desk';
import { LAYOUT_FLOOR, type PieceId } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';
import { useState } from 'react';
import { choose } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';

/** The wall chosen last, so that set after set goes to the same one. */
let chosen: string = LAYOUT_FLOOR;

export function TakeTo({ pieceIds }: { readonly pieceIds: readonly PieceId[] }) {
  const { documents, judgements } = useShow();
  useRoots('rooms');
  const walls = everyWall(judgements);
  const [surface, setSurface] = useState(chosen);
  const take = (): void => {
    go(surface === LAYOUT_FLOOR ? { sheet: 'layout' } : { sheet: 'wall', surface });
    choose(pieceIds);
    say(`${pieceIds.length} in hand`);
  };
  return (
    <p className="take-to">
      <label>
        <span className="t1">Take {pieceIds.length === 1 ? 'it' : `the ${pieceIds.length}`} in hand to</span>
        <select
          value={surface}
          onChange={({ target }) => {
            chosen = target.value;
            setSurface(target.value);
          }}
        >
          <option value={LAYOUT_FLOOR}>the layout floor</option>
          {walls.map((wall) => (
            <option key={wall} value={wall}>
              {surfaceName(documents, wall)}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="act" onClick={take}>
        Take there
      </button>
    </p>
  );
}
