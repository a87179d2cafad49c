/** Beside the wall on trial: a heading with what it comes to in a line, and all of it one press behind. */
import type { ReactNode } from 'react';
import { Store, useStore } from '../selection.ts';
import './desk-fold.css';

export type FoldName = 'lights' | 'bounce' | 'words' | 'strictness';

const open = new Store<ReadonlySet<FoldName>>(new Set());

export function unfold(name: FoldName): void {
  open.set(new Set([...open.get(), name]));
}

interface FoldProps {
  readonly name: FoldName;
  readonly heading: string;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}

export function DeskFold({ name, heading, summary, children }: FoldProps) {
  const isOpen = useStore(open).has(name);
  const turn = (): void => {
    const next = new Set(open.get());
    if (!next.delete(name)) next.add(name);
    open.set(next);
  };
  return (
    <section className="desk-fold" aria-label={heading}>
      <h2>
        <button type="button" className="bare" aria-expanded={isOpen} onClick={turn}>
          <span aria-hidden="true">{isOpen ? '−' : '+'} </span>
          {heading}
        </button>
      </h2>
      <div className="desk-fold-summary t1">{summary}</div>
      {isOpen ? <div className="desk-fold-all">{children}</div> : null}
    </section>
  );
}
