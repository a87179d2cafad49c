/** Which columns a scrolled box shows, whole or in part, and a few more on either side. */
import { type RefObject, useLayoutEffect, useState } from 'react';

const BEYOND = 2;

export function useColumnsInSight(
  box: RefObject<HTMLElement | null>,
  { headPx, columnPx }: { readonly headPx: number; readonly columnPx: number },
  count: number,
): readonly [from: number, to: number] {
  const [range, setRange] = useState<readonly [number, number]>([0, 24]);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const look = (): void => {
      const from = Math.max(0, Math.floor(element.scrollLeft / columnPx) - BEYOND);
      const to = Math.min(count, Math.ceil((element.scrollLeft + element.clientWidth - headPx) / columnPx) + BEYOND);
      setRange((known) => (known[0] === from && known[1] === to ? known : [from, to]));
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    element.addEventListener('scroll', look, { passive: true });
    return () => {
      observer.disconnect();
      element.removeEventListener('scroll', look);
    };
  }, [box, headPx, columnPx, count]);
  return range;
}
