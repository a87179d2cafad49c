/** Open remarks on the stage: their author's ring beside the thing; pressed, the thread opens where it stands. */
import { isUnread, threadsOf } from '@enfilade/shared/remarks';
import { useCallback, useEffect, useRef, useSyncExternalStore } from 'react';
import { usePreferences } from '../preferences.ts';
import { choose, trial, useStore } from '../selection.ts';
import { openCaption } from '../shell/media.ts';
import { RingShapes } from '../shell/ring.tsx';
import type { StageMachine } from '../stage/stage-machine.ts';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { type RemarkMark, RING_PX, remarkMarksOf } from './remark-marks.ts';
import { openRemark } from './remark-open.ts';
import { aboutText } from './remark-words.ts';
import './remark-rings.css';

/** Rings keep up with a scale at once, and with what changes in the show within this (ms). */
const REST_MS = 150;

export function RemarkRings({ machine }: { readonly machine: StageMachine }) {
  const { documents, presence, layerId } = useShow();
  useRestingRoots(REST_MS, 'remarks', 'readMarks', 'people', 'places', 'pieces', 'objects');
  useStore(trial);
  const scene = useStore(machine.sceneNow);
  const scale = useSyncExternalStore(machine.shownAt.subscribe, () => machine.shownAt.get().scale);
  const lifted = useSyncExternalStore(machine.liftedShown.subscribe, () => [...machine.liftedShown.get()].join());
  const held = useSyncExternalStore(
    useCallback((tell) => presence.subscribe(tell), [presence]),
    () =>
      presence
        .everyoneIn(layerId)
        .flatMap((other) => other.presence.selected ?? [])
        .join(),
  );
  const threads = threadsOf(documents);
  if (scene === null || threads.length === 0) return null;
  const marks = remarkMarksOf(scene, threads, scale, {
    lifted: new Set(lifted.split(',')),
    held: new Set(held.split(',')),
  });
  return marks.map((mark) => <RemarkRing key={mark.key} mark={mark} />);
}

function RemarkRing({ mark }: { readonly mark: RemarkMark }) {
  const { documents, judgements, me, presence } = useShow();
  const { unit } = usePreferences();
  const { threads, about, spot } = mark;
  const unread = threads.filter((thread) => isUnread(documents, thread, me.person.id));
  const first = unread[0] ?? threads[0];
  if (first === undefined) return null;
  const { name, by } = first.remark;
  const count = threads.length === 1 ? `Remark of ${name}` : `${threads.length} remarks`;
  const words = `${count} on ${aboutText(judgements, about, unit)}${unread.length > 0 ? ', not read' : ''}`;
  const [left, top] = [Math.round(mark.x), Math.round(mark.y)];
  return (
    <>
      {spot === null ? null : (
        <Spot x={Math.round(spot.x)} y={Math.round(spot.y)} toX={left} toY={top} ink={mark.ink} />
      )}
      <div className="remark-ring" style={{ left, top }}>
        <svg width="1" height="1" aria-hidden="true">
          <RingShapes name={name} pattern={presence.ringOf(by)} radiusPx={RING_PX} />
          {unread.length > 0 ? (
            <>
              <path d="M-15.5 -10V10" stroke="#f6f6f6" strokeWidth={6} />
              <path d="M-15.5 -9V9" stroke="#111" strokeWidth={4} />
            </>
          ) : null}
          {threads.length > 1 ? (
            <g transform="translate(9 9)">
              <rect x={-6} y={-6.5} width={12} height={13} fill="#111" stroke="#f6f6f6" />
              <text y={3.8} textAnchor="middle" className="remark-ring-count">
                {threads.length}
              </text>
            </g>
          ) : null}
        </svg>
        <button
          type="button"
          className="bare"
          // By keys it is come to through its work's card, its wall's caption and the list of remarks.
          tabIndex={-1}
          aria-label={words}
          title={words}
          onClick={() => {
            openRemark.set(first.id);
            if (about.kind === 'piece') choose([about.pieceId]);
            else openCaption();
          }}
        />
      </div>
    </>
  );
}

interface SpotProps {
  readonly x: number;
  readonly y: number;
  /** The ring it belongs to. */
  readonly toX?: number;
  readonly toY?: number;
  readonly ink: 'white' | 'black';
}

/** A spot: a small cross, and a line to its ring. */
export function Spot({ x, y, toX = x, toY = y, ink }: SpotProps) {
  const [dx, dy] = [toX - x, toY - y];
  const far = Math.hypot(dx, dy);
  const lead = far > 20 ? `M${(dx / far) * 4} ${(dy / far) * 4}L${dx * (1 - 12 / far)} ${dy * (1 - 12 / far)}` : '';
  const path = `M-6 0H6M0 -6V6${lead}`;
  return (
    <svg
      className={`remark-spot remark-spot-${ink}`}
      style={{ left: x, top: y }}
      width="1"
      height="1"
      aria-hidden="true"
    >
      <path className="remark-spot-under" d={path} />
      <path className="remark-spot-over" d={path} />
    </svg>
  );
}

/** A board that moves with the drawing: what stands on it is placed in px of the drawing. */
export function StageBoard({
  machine,
  children,
}: {
  readonly machine: StageMachine;
  readonly children: React.ReactNode;
}) {
  const board = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const follow = () => {
      const { x, y } = machine.shownAt.get();
      if (board.current !== null) board.current.style.transform = `translate(${x}px, ${y}px)`;
    };
    follow();
    return machine.shownAt.subscribe(follow);
  }, [machine]);
  return (
    <div className="talk-stage">
      <div ref={board} className="talk-board">
        {children}
      </div>
    </div>
  );
}
