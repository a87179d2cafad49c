/** Whether somebody sits before this page: a page left open over night is nobody's visit. */
import { useEffect, useRef } from 'react';

/** Without a hand or a key for so long, nobody is here (ms). */
const AWAY_MS = 15 * 60_000;

let lastHand = Date.now();

export function isHere(): boolean {
  return !document.hidden && Date.now() - lastHand < AWAY_MS;
}

/** Told at the first hand or key after somebody was away from an open page. */
export function useComingBack(back: () => void): void {
  const tell = useRef(back);
  tell.current = back;
  useEffect(() => {
    const hand = (): void => {
      const away = Date.now() - lastHand >= AWAY_MS;
      lastHand = Date.now();
      if (away) tell.current();
    };
    const kinds = ['pointermove', 'pointerdown', 'keydown'] as const;
    for (const kind of kinds) addEventListener(kind, hand, { capture: true, passive: true });
    return () => {
      for (const kind of kinds) removeEventListener(kind, hand, { capture: true });
    };
  }, []);
}
