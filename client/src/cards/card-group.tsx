/** A part of a card behind its heading: one press opens it, and it stays open from one card to the next. */
import { type ReactNode, useEffect, useRef } from 'react';
import { Store, useStore } from '../selection.ts';
import './card-group.css';

const opened = new Store<ReadonlySet<string>>(new Set());

/** The part that is wanted in view, until it is. */
const wanted = new Store<string | null>(null);

/** Opens a part of the card from elsewhere on it, and goes there. */
export function goToGroup(name: string): void {
  opened.set(new Set(opened.get()).add(name));
  wanted.set(name);
}

interface CardGroupProps {
  readonly name: string;
  /** What it says while folded: the one thing most often looked up in it. */
  readonly brief: ReactNode;
  readonly children: ReactNode;
}

export function useGroup(name: string): readonly [open: boolean, toggle: () => void] {
  const open = useStore(opened).has(name);
  const toggle = (): void => {
    const next = new Set(opened.get());
    if (!next.delete(name)) next.add(name);
    opened.set(next);
  };
  return [open, toggle];
}

export function CardGroup({ name, brief, children }: CardGroupProps) {
  const [open, toggle] = useGroup(name);
  const section = useRef<HTMLElement>(null);
  const asked = useStore(wanted) === name;
  useEffect(() => {
    if (!asked) return;
    wanted.set(null);
    section.current?.scrollIntoView({ block: 'nearest' });
    section.current?.querySelector<HTMLElement>('.card-group-head button')?.focus();
  }, [asked]);
  return (
    <section className="card-group" aria-label={name} ref={section}>
      <hr className="rule" />
      <h3 className="card-group-head">
        <button type="button" aria-expanded={open} onClick={toggle}>
          {name}
        </button>
        {open ? null : <span className="card-group-brief">{brief}</span>}
      </h3>
      {open ? <div className="card-group-fields">{children}</div> : null}
    </section>
  );
}
