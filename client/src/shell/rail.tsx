/** The unplaced, along the foot: equal pictures on a ledge, found by words and sizes, taken onto the wall. */
import type { PieceId } from '@enfilade/shared/schema';
import { type MouseEvent, useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose, selection, useStore } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { RailItem } from './rail-item.tsx';
import { found, type Sorting, searchFrom, sorted } from './rail-search.ts';
import { carryOntoStage, placeOnStage } from './stage-hand.ts';
import { type Unplaced, useUnplaced } from './unplaced.ts';
import './rail.css';

const CELL_PX = 98;
const ROW_PX = 124;
const SORTINGS: readonly Sorting[] = ['size', 'kind', 'lender'];

/** The piece that is taken first. */
function nextOf(item: Unplaced): PieceId {
  return item.left[0] as PieceId;
}

export function Rail({ view }: { readonly view: View }) {
  const show = useShow();
  const { unit } = usePreferences();
  const all = useUnplaced();
  const chosen = useStore(selection);
  const [text, setText] = useState('');
  const [sorting, setSorting] = useState<Sorting>('kind');
  const [raised, setRaised] = useState(false);
  const query = useDeferredValue(text);
  const mayPlace = show.may('hang');

  const shown = useMemo(() => {
    const search = searchFrom(query, unit);
    return sorted(
      all.filter((item) => found(search, item)),
      sorting,
    );
  }, [all, query, sorting, unit]);
  const pieces = useMemo(() => all.reduce((sum, item) => sum + item.left.length, 0), [all]);

  const press = useCallback((item: Unplaced, event: MouseEvent) => {
    const now = selection.get();
    if (!(event.shiftKey || event.ctrlKey || event.metaKey)) {
      choose([nextOf(item)]);
      return;
    }
    // A record that counts several gives one piece more with each press; the last press puts them back.
    const mine = now.filter((id) => item.left.includes(id));
    const rest = now.filter((id) => !item.left.includes(id));
    const more = item.left.find((id) => !mine.includes(id));
    choose(more === undefined ? rest : [...rest, ...mine, more]);
  }, []);
  const place = useCallback(
    (item: Unplaced) => {
      if (!mayPlace) return;
      const now = selection.get();
      const held = now.some((id) => item.left.includes(id)) ? now : [nextOf(item)];
      choose(held);
      void placeOnStage(held, view);
    },
    [mayPlace, view],
  );
  const carry = useCallback(
    (left: readonly PieceId[], item: Unplaced, event: globalThis.PointerEvent) => {
      if (!mayPlace) return;
      const now = selection.get();
      const held = now.some((id) => left.includes(id)) ? now : [nextOf(item)];
      choose(held);
      carryOntoStage(held, event);
    },
    [mayPlace],
  );

  return (
    <section className={`rail${raised ? ' rail-raised' : ''}`} aria-label="Unplaced">
      <div className="rail-about">
        <h2>Unplaced</h2>
        <p className="t1">
          {all.length === 0
            ? 'Everything has a place.'
            : `${all.length} ${all.length === 1 ? 'record' : 'records'}, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`}
        </p>
        {all.length === 0 ? null : (
          <>
            <input
              className="rail-find"
              type="search"
              value={text}
              placeholder="find: copper, 1868, under 30 cm"
              aria-label="Find among the unplaced: words, or under and over a length"
              onChange={(event) => setText(event.target.value)}
            />
            <div className="rail-sorting t1">
              {SORTINGS.map((by) => (
                <button
                  key={by}
                  type="button"
                  className={`cmd${by === sorting ? ' on' : ''}`}
                  aria-pressed={by === sorting}
                  aria-label={`sort by ${by}`}
                  onClick={() => setSorting(by)}
                >
                  {by}
                </button>
              ))}
              <button type="button" aria-expanded={raised} onClick={() => setRaised(!raised)}>
                {raised ? 'lower' : 'raise'}
              </button>
            </div>
          </>
        )}
      </div>
      <RailLedge
        items={shown}
        total={all.length}
        raised={raised}
        unit={unit}
        chosen={chosen}
        press={press}
        place={place}
        carry={carry}
      />
    </section>
  );
}

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

/** Only what is in sight is in the page. */
function RailLedge(props: LedgeProps) {
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
