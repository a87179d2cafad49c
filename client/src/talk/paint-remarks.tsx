/** Remarks on a wall's paint, in the deck's drawer instead of the chips. */
import { threadsOf } from '@enfilade/shared/remarks';
import type { PaintId } from '@enfilade/shared/schema';
import { useEffect, useState } from 'react';
import { useStore } from '../selection.ts';
import { useHang, useRoots } from '../sync/hooks.ts';
import { openRemark } from './remark-open.ts';
import { RemarksBlock } from './remarks-block.tsx';
import './paint-remarks.css';

interface PaintRemarksHere {
  readonly open: boolean;
  readonly setOpen: (open: boolean) => void;
  /** Open threads. */
  readonly count: number;
}

/** Whether they are shown: asked for here, or because one of them is to be seen. */
export function usePaintRemarks(paintId: PaintId | null): PaintRemarksHere {
  const { documents } = useHang();
  useRoots('remarks');
  const toBeSeen = useStore(openRemark);
  const [open, setOpen] = useState(false);
  const threads = threadsOf(documents).filter(
    ({ remark: { about } }) => about.kind === 'paint' && about.paintId === paintId,
  );
  const asked = threads.some(({ id }) => id === toBeSeen);
  useEffect(() => {
    if (asked) setOpen(true);
  }, [asked]);
  return { open, setOpen, count: threads.filter(({ remark }) => !remark.settled).length };
}

export function PaintRemarksCommand({ name, remarks }: { readonly name: string; readonly remarks: PaintRemarksHere }) {
  const hang = useHang();
  const { open, setOpen, count } = remarks;
  if (count === 0 && !hang.may('talk')) return null;
  const words = count === 0 ? `remark on ${name}…` : `${count === 1 ? 'one remark' : `${count} remarks`} on ${name}`;
  return (
    <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
      {open ? 'back to the chips' : words}
    </button>
  );
}

export function PaintRemarks({ id, name }: { readonly id: PaintId; readonly name: string }) {
  return (
    <div className="paint-remarks">
      <RemarksBlock about={{ kind: 'paint', paintId: id }} what={name} />
    </div>
  );
}
