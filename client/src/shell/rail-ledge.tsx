/** The ledge things lie on: as long as all of them, with only what is in sight in the page; arrows go along it. */
import type { PieceId } from '@enfilade/shared/schema';
import { type MouseEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { RailItem } from './rail-item.tsx';
import type { Unplaced } from './unplaced.ts';

const CELL_PX = 98;
const ROW_PX = 124;

interface LedgeProps {
  readonly items: readonly Unplaced[];
  readonly total: number;
  readonly raised: boolean;
  readonly unit: 'cm' | 'in';
  readonly chosen: readonly PieceId[];
  readonly press: (item: Unplaced, event: MouseEvent) => void;
  readonly place: (item: Unplaced) => void;
  readonly carry: (left: readonly PieceId[], item: Unplaced, event: globalThis.PointerEvent) => void;
}

export function RailLedge(props: LedgeProps) {
  const { items, raised } = props;
  const holder = useRef<HTMLDivElement>(null);
  const [scroll, setScroll] = useState(0);
  const [box, setBox] = useState({ width: 1000, height: ROW_PX });
  const [stop, setStop] = useState(0);

  useEffect(() => {
    const node = holder.current;
    if (node === null) return;
    const watch = new ResizeObserver(() => setBox({ width: node.clientWidth, height: node.clientHeight }));
    watch.observe(node);
    return () => watch.disconnect();
  }, []);

  const columns = raised ? Math.max(1, Math.floor(box.width / CELL_PX)) : items.length;
  const rows = raised ? Math.ceil(items.length / columns) : 1;
  const first = raised ? Math.floor(scroll / ROW_PX) * columns : Math.floor(scroll / CELL_PX);
  const seen = raised ? (Math.ceil(box.height / ROW_PX) + 1) * columns : Math.ceil(box.width / CELL_PX) + 2;
  const from = Math.max(0, first - (raised ? 0 : 2));
  const chosenSet = useMemo(() => new Set(props.chosen), [props.chosen]);
  const tabStop = stop >= from && stop < from + seen ? stop : from;

  const step = useCallback(
    (position: number, by: number): void => {
      const node = holder.current;
      const next = Math.min(items.length - 1, Math.max(0, position + by));
      if (node === null) return;
      setStop(next);
      if (!raised) {
        const left = next * CELL_PX;
        if (left < node.scrollLeft) node.scrollLeft = left;
        else if (left + CELL_PX > node.scrollLeft + node.clientWidth) {
          node.scrollLeft = left + CELL_PX - node.clientWidth;
        }
      } else {
        const top = Math.floor(next / columns) * ROW_PX;
        if (top < node.scrollTop || top + ROW_PX > node.scrollTop + node.clientHeight) node.scrollTop = top;
      }
      requestAnimationFrame(() =>
        requestAnimationFrame(() => node.querySelector<HTMLElement>(`[data-position="${next}"]`)?.focus()),
      );
    },
    [items.length, raised, columns],
  );

  if (items.length === 0 && props.total > 0) {
    return <p className="rail-none cap">Nothing unplaced is called that. Take a word away.</p>;
  }
  return (
    <div
      ref={holder}
      className="rail-ledge"
      onScroll={(event) => setScroll(raised ? event.currentTarget.scrollTop : event.currentTarget.scrollLeft)}
      onWheel={(event) => {
        if (!raised && event.deltaX === 0) event.currentTarget.scrollLeft += event.deltaY;
      }}
    >
      <ul
        className="rail-list"
        aria-label="Unplaced records"
        style={{ width: raised ? '100%' : Math.max(items.length * CELL_PX, box.width), height: rows * ROW_PX }}
      >
        {items.slice(from, from + seen).map((item, index) => {
          const position = from + index;
          return (
            <RailItem
              key={item.objectId}
              item={item}
              unit={props.unit}
              leftPx={(position % columns) * CELL_PX}
              topPx={Math.floor(position / columns) * ROW_PX}
              chosen={item.left.some((id) => chosenSet.has(id))}
              tabStop={position === tabStop}
              position={position}
              total={items.length}
              press={props.press}
              place={props.place}
              carry={props.carry}
              step={step}
            />
          );
        })}
      </ul>
    </div>
  );
}
