/** Paper or cloth on a wall: what it is, how wide, its repeat, its roll; typed by whoever measures the rooms. */
import { finishSurface } from '@enfilade/shared/paint-schedule';
import type { Covering, SurfaceId } from '@enfilade/shared/schema';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { LengthField } from '../cards/length-field.tsx';
import { TypedField } from '../cards/typed-field.tsx';
import { useEntity, useShow } from '../sync/hooks.ts';

const BEGUN: Covering = { name: 'Wallpaper', widthMm: 530, repeatMm: 0, rollMm: 10_050 };

export function CoveringForm({ surface, name }: { readonly surface: SurfaceId; readonly name: string }) {
  const show = useShow();
  const covering = useEntity('finishes', surface)?.covering ?? null;
  const [open, setOpen] = useState(false);
  const set = (next: Covering | null, said: string): string | null =>
    act(show, finishSurface(surface, { covering: next }), said) ? null : 'cannot be set just now';
  if (covering === null) {
    return (
      <button
        type="button"
        aria-label={`paper or cloth… on ${name}`}
        onClick={() => {
          set(BEGUN, `paper on ${name}`);
          setOpen(true);
        }}
      >
        paper or cloth…
      </button>
    );
  }
  if (!open) {
    return (
      <button type="button" aria-label={`change the paper on ${name}`} onClick={() => setOpen(true)}>
        change
      </button>
    );
  }
  return (
    <div className="covering-form">
      <TypedField
        label="Called"
        text={covering.name}
        words
        take={(typed) => set({ ...covering, name: typed }, 'name set')}
      />
      <LengthField
        label="Width"
        mm={covering.widthMm}
        leastMm={100}
        take={(widthMm) => set({ ...covering, widthMm }, 'width set')}
      />
      <LengthField
        label="Repeat"
        mm={covering.repeatMm}
        leastMm={0}
        take={(repeatMm) => set({ ...covering, repeatMm }, 'repeat set')}
      />
      <LengthField
        label="Length of a roll"
        hint="0 for cloth off a bolt"
        mm={covering.rollMm}
        leastMm={0}
        take={(rollMm) => set({ ...covering, rollMm }, 'roll set')}
      />
      <label>
        <input
          type="checkbox"
          checked={covering.halfDrop === true}
          onChange={(event) => set({ ...covering, halfDrop: event.target.checked }, 'repeat set')}
        />{' '}
        its repeat is a half-drop
      </label>
      <p>
        <button type="button" onClick={() => set(null, `nothing on ${name} but paint`)}>
          take it off
        </button>{' '}
        <button type="button" onClick={() => setOpen(false)}>
          fold
        </button>
      </p>
    </div>
  );
}
