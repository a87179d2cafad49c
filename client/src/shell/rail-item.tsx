/** One record on the rail: its picture on the ledge, a scale bar, its size, and how many pieces are left. */
import type { PieceId } from '@enfilade/shared/schema';
import { sizeText } from '@enfilade/space/lengths';
import { type KeyboardEvent, type MouseEvent, memo, type PointerEvent } from 'react';
import type { Unit } from '../preferences.ts';
import { FramedPicture } from './framed-picture.tsx';
import type { Unplaced } from './unplaced.ts';

const TALL_PX = 56;
const WIDE_PX = 78;
/** A scale bar is one of these lengths (mm), by the length of the thing. */
const BARS_MM: readonly (readonly [overMm: number, barMm: number])[] = [
  [1400, 1000],
  [500, 500],
  [160, 100],
  [0, 50],
];

interface RailItemProps {
  readonly item: Unplaced;
  readonly unit: Unit;
  readonly leftPx: number;
  readonly topPx: number;
  readonly chosen: boolean;
  readonly tabStop: boolean;
  /** Shown as being somewhere in the whole list. */
  readonly position: number;
  readonly total: number;
  readonly press: (item: Unplaced, event: MouseEvent) => void;
  readonly place: (item: Unplaced) => void;
  readonly carry: (pieceIds: readonly PieceId[], item: Unplaced, event: globalThis.PointerEvent) => void;
  readonly step: (position: number, by: number) => void;
}

export const RailItem = memo(function RailItem(props: RailItemProps) {
  const { item, unit, chosen } = props;
  const aspect = item.widthMm > 0 && item.heightMm > 0 ? item.widthMm / item.heightMm : 1;
  const high = Math.min(TALL_PX, WIDE_PX / aspect);
  const wide = high * aspect;
  const size = item.sizeKnown ? sizeText(item.heightMm, item.widthMm, null, unit) : 'size not known';
  const left = item.left.length;
  const pieces = item.count > 1 ? `${left} of ${item.count} pieces left` : '';
  const label = [item.title, item.number, size, pieces].filter((part) => part !== '').join(', ');
  const barMm = BARS_MM.find(([over]) => Math.max(item.heightMm, item.widthMm) > over)?.[1] ?? 50;
  const barPx = (barMm / Math.max(1, item.heightMm)) * high;

  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    if (event.button !== 0) return;
    const from = { x: event.clientX, y: event.clientY };
    const touch = event.pointerType !== 'mouse';
    const target = event.currentTarget;
    const stop = (): void => {
      target.removeEventListener('pointermove', move);
      target.removeEventListener('pointerup', stop);
      target.removeEventListener('pointercancel', stop);
    };
    const move = (now: globalThis.PointerEvent): void => {
      const dx = Math.abs(now.clientX - from.x);
      const up = from.y - now.clientY;
      // A finger going along scrolls the rail; going up it takes the thing off the ledge.
      if (touch ? up > 10 && up > dx : Math.hypot(dx, up) > 5) {
        stop();
        props.carry(item.left, item, now);
      }
    };
    target.addEventListener('pointermove', move);
    target.addEventListener('pointerup', stop);
    target.addEventListener('pointercancel', stop);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: 1, ArrowUp: -1, PageDown: 10, PageUp: -10 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      props.step(props.position, by);
    } else if (event.key === 'Enter') {
      event.preventDefault();
      props.place(item);
    }
  };

  return (
    <li
      className="rail-item"
      style={{ left: props.leftPx, top: props.topPx }}
      aria-setsize={props.total}
      aria-posinset={props.position + 1}
    >
      <button
        type="button"
        className={`bare rail-thing${chosen ? ' rail-chosen' : ''}`}
        aria-label={label}
        aria-pressed={chosen}
        title={item.title}
        data-position={props.position}
        tabIndex={props.tabStop ? 0 : -1}
        onPointerDown={onPointerDown}
        onKeyDown={onKeyDown}
        onClick={(event) => props.press(item, event)}
        onDoubleClick={() => props.place(item)}
      >
        <span className={`rail-picture${item.sizeKnown && item.certain ? '' : ' unk'}`}>
          <FramedPicture pieceId={item.left[0] as PieceId} widthPx={wide} heightPx={high} />
          {item.count > 1 ? (
            <span className="rail-count" aria-hidden="true">
              {left}
            </span>
          ) : null}
        </span>
        <span className="rail-bar" style={{ width: item.sizeKnown ? Math.min(92, barPx) : 0 }} />
        <span className="rail-size">{size}</span>
      </button>
    </li>
  );
});
