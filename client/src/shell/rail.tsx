/** The unplaced, along the foot: equal pictures on a ledge, found by words and sizes, taken onto the wall. */
import type { PieceId } from '@enfilade/shared/schema';
import { type MouseEvent, useCallback, useDeferredValue, useMemo, useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose, choosing, selection, useStore } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { RailLedge } from './rail-ledge.tsx';
import { found, type Sorting, searchFrom, sorted } from './rail-search.ts';
import { carryOntoStage, placeOnStage } from './stage-hand.ts';
import { type Unplaced, useUnplaced } from './unplaced.ts';
import './rail.css';

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
    if (!(event.shiftKey || event.ctrlKey || event.metaKey || choosing.get())) {
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
              placeholder={`find: copper, 1868, under ${unit === 'cm' ? '30 cm' : '12 in'}`}
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
