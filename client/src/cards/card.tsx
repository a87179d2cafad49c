/** The card of what is selected: one thing, or several. */
import { useEffect, useRef } from 'react';
import { selection, useStore } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { ObjectCard } from './object-card.tsx';
import { SelectionCard } from './selection-card.tsx';

export function Card({ view }: { readonly view: View }) {
  const { judgements } = useShow();
  useRoots('objects');
  const chosen = useStore(selection).filter((pieceId) => judgements.objectOf(pieceId) !== undefined);
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // The stage asks for the card's first field when Enter is pressed on it.
    const open = (): void => {
      holder.current?.querySelector<HTMLElement>('[data-first-field], input, button')?.focus();
    };
    addEventListener('enfilade:open-card', open);
    return () => removeEventListener('enfilade:open-card', open);
  }, []);
  const only = chosen.length === 1 ? chosen[0] : undefined;
  return (
    <div ref={holder} className="card-holder">
      {only !== undefined ? <ObjectCard key={only} pieceId={only} view={view} /> : null}
      {chosen.length > 1 ? <SelectionCard pieceIds={chosen} view={view} /> : null}
    </div>
  );
}
