/** The list of a surface, folded away until it is asked for; for the listener it is always there. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { useState } from 'react';
import { WallList } from './wall-list.tsx';

export function ListFold({ surface, words }: { readonly surface: SurfaceId; readonly words: string }) {
  const [open, setOpen] = useState(false);
  return (
    <div className="list-fold">
      <button type="button" className="t1" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words}
      </button>
      <WallList surface={surface} open={open} />
    </div>
  );
}
