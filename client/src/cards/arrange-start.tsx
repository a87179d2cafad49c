/** From a wall, with nothing selected: which things to arrange on it. */
import type { PieceId, SurfaceId } from '@enfilade/shared/schema';
import { BEFORE_IT_MM } from '@enfilade/shared/whereabouts';
import { useEffect, useState } from 'react';
import { choose, choosing, selection, useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { arrangeThese } from './arrange-asked.ts';
import type { VignetteHere } from './vignettes-on.ts';
import './arrange-start.css';

interface StartProps {
  readonly surface: SurfaceId;
  readonly here: readonly VignetteHere[];
}

export function ArrangeStart({ surface, here }: StartProps) {
  const show = useShow();
  const { judgements } = show;
  const [open, setOpen] = useState(false);
  const one = useStore(choosing);
  useEffect(() => () => choosing.set(false), []);
  if (!show.may('hang')) return null;
  if (one) return <ChosenOneByOne />;
  const seen = judgements
    .elevationOf(surface)
    .filter(({ held, standOffMm }) => held === undefined && standOffMm <= BEFORE_IT_MM);
  const pieces = (some: typeof seen): PieceId[] => some.map(({ pieceId }) => pieceId);
  const hung = pieces(seen.filter(({ direct }) => direct));
  const standing = pieces(seen.filter(({ direct }) => !direct));
  const groups: { readonly name: string; readonly pieceIds: readonly PieceId[] }[] = [
    { name: 'all that hangs on this wall', pieceIds: hung },
    { name: 'all that stands before it', pieceIds: standing },
    ...here.map(({ vignette, members }) => ({ name: `those of ${vignette.name}`, pieceIds: members })),
  ];
  const chooseSome = (): void => {
    choose([]);
    choosing.set(true);
    say('Choose them one by one');
  };
  return (
    <div className="arrange-start">
      <button type="button" className="t1" aria-expanded={open} onClick={() => setOpen(!open)}>
        arrange…<span className="spoken"> on this wall</span>
      </button>
      {open ? (
        <>
          <p className="t1">Which things? You then see several ways to lay them out; none is applied unasked.</p>
          <ul>
            {groups.map(({ name, pieceIds }) =>
              pieceIds.length < 2 ? null : (
                <li key={name}>
                  <button type="button" className="t1" onClick={() => arrangeThese(pieceIds)}>
                    {name}: {pieceIds.length}
                  </button>
                </li>
              ),
            )}
            <li>
              <button type="button" className="t1" onClick={chooseSome}>
                choose them, on the rail or on the wall
              </button>
            </li>
          </ul>
        </>
      ) : null}
    </div>
  );
}

/** Each press takes one more, or leaves it out again: no key has to be held. */
function ChosenOneByOne() {
  const { length } = useStore(selection);
  return (
    <div className="arrange-start">
      <p className="t1">
        Press what is to be arranged, on the rail or on the wall; pressed again it is left out.{' '}
        <span role="status">{length === 0 ? 'None is chosen yet.' : `${length} chosen.`}</span>
      </p>
      <p className="caption-commands">
        <button type="button" disabled={length < 2} onClick={() => arrangeThese(selection.get())}>
          arrange {length < 2 ? 'them' : `the ${length}`}…
        </button>
        <button type="button" onClick={() => choosing.set(false)}>
          leave it
        </button>
      </p>
    </div>
  );
}
