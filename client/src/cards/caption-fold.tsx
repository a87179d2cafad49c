/** A part of a wall's caption behind one line: one press opens it, and it stays open from wall to wall. */
import type { ReactNode } from 'react';
import { useGroup } from './card-group.tsx';
import './caption-fold.css';

interface CaptionFoldProps {
  readonly name: string;
  /** What it says while folded. */
  readonly brief: ReactNode;
  readonly children: ReactNode;
}

export function CaptionFold({ name, brief, children }: CaptionFoldProps) {
  const [open, toggle] = useGroup(`wall ${name}`);
  return (
    <section className="caption-fold" aria-label={`${name} on this wall`}>
      <h2 className="caption-fold-head t1">
        <button type="button" aria-expanded={open} onClick={toggle}>
          {name.toLowerCase()}
        </button>{' '}
        {open ? null : <span>{brief}</span>}
      </h2>
      {open ? <div className="caption-fold-body">{children}</div> : null}
    </section>
  );
}
