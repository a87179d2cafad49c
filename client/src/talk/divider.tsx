/** Between the hang at the left and the proposal at the right: drawn by a hand, or moved by the arrows. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { Store, useStore } from '../selection.ts';

/** Where it stands across the stage, 0 to 1. */
export const dividerAt = new Store(0.5);

const STEP = 0.02;

function put(at: number): void {
  dividerAt.set(Math.min(0.98, Math.max(0.02, at)));
}

/** `right`: what stands at its right. */
export function Divider({ right = 'the proposal' }: { readonly right?: string }) {
  const at = useStore(dividerAt);
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
      aria-label={`Between the hang, at its left, and ${right}`}
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
      <span className="divider-word divider-left t1" aria-hidden="true">
        the hang
      </span>
      <span className="divider-word divider-right t1" aria-hidden="true">
        {right}
      </span>
    </div>
  );
}
