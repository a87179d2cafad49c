/** What a person sets for their own screen, behind one word in the head. */
import { useEffect, useRef, useState } from 'react';
import { useStore } from '../selection.ts';
import { OwnSettings } from './own-settings.tsx';
import { seenBy } from './seen-by.tsx';

export function MyView() {
  const [open, setOpen] = useState(false);
  const { eye } = useStore(seenBy);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const away = (event: Event): void => {
      if (!place.current?.contains(event.target as Node)) setOpen(false);
    };
    const foldAway = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      place.current?.querySelector('button')?.focus();
    };
    addEventListener('pointerdown', away);
    addEventListener('focusin', away);
    addEventListener('keydown', foldAway);
    return () => {
      removeEventListener('pointerdown', away);
      removeEventListener('focusin', away);
      removeEventListener('keydown', foldAway);
    };
  }, [open]);
  return (
    <div className="my-view" ref={place}>
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        My screen{eye === 'usual' ? '' : `, seen ${eye}`}
      </button>
      {open ? (
        <div className="my-view-sheet card">
          <OwnSettings />
        </div>
      ) : null}
    </div>
  );
}
