/** The wall as it hangs, under two paints at once: one at the left of the divider, the one on trial at its right. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { DeskWall } from '@enfilade/shared/colour-desk';
import { beyondScreenText } from '@enfilade/shared/paint-records';
import type { PaintId } from '@enfilade/shared/schema';
import { useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { WallThumb } from '../cards/wall-thumb.tsx';
import { Store, useStore } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import { Divider } from '../talk/divider.tsx';
import { useDeskLight } from './desk-light.tsx';
import { paintFrom, useTrialOn } from './desk-trial.ts';
import { filterOf } from './picture-filters.tsx';
import type { DeckChip } from './use-deck.ts';
import './wall-split.css';

const splitAt = new Store(0.5);
const NOTHING_PLACED = new Map<string, never>();
const TALLEST_PX = 176;

interface SplitProps {
  readonly wall: DeskWall;
  readonly deck: readonly DeckChip[];
  readonly version: string;
}

export function WallSplit({ wall, deck, version }: SplitProps) {
  const { documents } = useShow();
  const now = useDeskLight();
  const { judgements, look } = now;
  const id = useId();
  const tried = useTrialOn(wall.surface);
  const at = useStore(splitAt);
  const [left, setLeft] = useState<PaintId | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another wall begins with its own paint
  useEffect(() => setLeft(null), [wall.surface]);
  const box = useRef<HTMLDivElement>(null);
  const [widthPx, setWidthPx] = useState(300);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidthPx(Math.floor(element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const beside = paintFrom(documents, left ?? wall.paint.id) ?? wall.paint;
  const shape = judgements.where.wallOf(wall.surface);
  const shown = shape === null ? 0 : Math.min(widthPx / shape.lengthMm, TALLEST_PX / shape.heightMm);
  // Only the ground changes from paint to paint, so what hangs on it is not drawn anew.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the wall shows
  const thumb = useMemo(
    () => (
      <WallThumb
        surface={wall.surface}
        places={NOTHING_PLACED}
        widthPx={widthPx}
        heightPx={TALLEST_PX}
        ground="transparent"
        filter={filterOf(now, 'now')}
      />
    ),
    [wall.surface, widthPx, version, now],
  );
  return (
    <section className="desk-split" aria-label={`${wall.roomName}, ${wall.wallName}, under two paints`}>
      <h2>
        {wall.roomName}, {wall.wallName}
      </h2>
      <div ref={box}>
        <div className="desk-split-wall" style={{ width: (shape?.lengthMm ?? 0) * shown }}>
          <div style={{ background: hexFromLabD65(look(beside)) }}>{thumb}</div>
          {tried === null ? null : (
            <>
              <div
                className="desk-split-right"
                style={{ background: hexFromLabD65(look(tried)), clipPath: `inset(0 0 0 ${at * 100}%)` }}
              >
                {thumb}
              </div>
              <Divider left={beside.name} right={`${tried.name}, on trial`} store={splitAt} named={false} />
            </>
          )}
        </div>
      </div>
      <p className="desk-split-names t1">
        <span>
          <label className="spoken" htmlFor={id}>
            Paint at the left
          </label>
          <select id={id} value={left ?? ''} onChange={(event) => setLeft(event.target.value || null)}>
            <option value="">{wall.paint.name}, as it is</option>
            {deck.map((chip) => (
              <option key={chip.id} value={chip.id}>
                {chip.name}
              </option>
            ))}
          </select>
        </span>
        <span>{tried === null ? 'No paint is on trial.' : `${tried.name}, on trial`}</span>
      </p>
      {[beside, ...(tried === null || tried.name === beside.name ? [] : [tried])].map((paint) => {
        const beyond = beyondScreenText(look(paint));
        return beyond === null ? null : (
          <p key={paint.name} className="t1">
            {paint.name} is {beyond}.
          </p>
        );
      })}
    </section>
  );
}
