/** Between two states side by side, the hang at the left and the proposal at the right: drawn by a hand, or by the arrows. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { Store, useStore } from '../selection.ts';
import './divider.css';

/** Where it stands across the stage, 0 to 1. */
export const dividerAt = new Store(0.5);

const STEP = 0.02;

interface DividerProps {
  /** What stands at its left and at its right. */
  readonly left?: string;
  readonly right?: string;
  /** Where it is kept. */
  readonly store?: Store<number>;
  /** False where both sides are named elsewhere. */
  readonly named?: boolean;
}

export function Divider({ left = 'the hang', right = 'the proposal', store = dividerAt, named = true }: DividerProps) {
  const at = useStore(store);
  const put = (to: number): void => store.set(Math.min(0.98, Math.max(0.02, to)));
  const own = useRef<HTMLDivElement>(null);
  const drag = (event: PointerEvent<HTMLDivElement>): void => {
    const box = own.current?.parentElement?.getBoundingClientRect();
    if (box === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    put((event.clientX - box.left) / box.width);
  };
  const press = (event: KeyboardEvent): void => {
    const far = event.shiftKey ? 5 : 1;
    const next = {
      ArrowLeft: at - STEP * far,
      ArrowDown: at - STEP * far,
      ArrowRight: at + STEP * far,
      ArrowUp: at + STEP * far,
      Home: 0,
      End: 1,
    }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    put(next);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule cannot hold its grip and its words
    <div
      ref={own}
      className="divider"
      role="separator"
      aria-orientation="vertical"
      aria-label={`Between ${left}, at its left, and ${right}`}
      aria-valuenow={Math.round(at * 100)}
      aria-valuemin={2}
      aria-valuemax={98}
      tabIndex={0}
      style={{ left: `${at * 100}%` }}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={drag}
      onKeyDown={press}
    >
      <i aria-hidden="true" />
      {named ? (
        <>
          <span className="divider-word divider-left t1" aria-hidden="true">
            {left}
          </span>
          <span className="divider-word divider-right t1" aria-hidden="true">
            {right}
          </span>
        </>
      ) : null}
    </div>
  );
}
