/** The sheet of tracing paper over the stage: what goes in dashes, what comes with its number; it follows the camera. */
import type { Judgements } from '@enfilade/shared/judgements';
import { useEffect, useId, useMemo, useRef, useSyncExternalStore } from 'react';
import { useStore } from '../selection.ts';
import { boxInDrawing } from '../stage/panels.ts';
import type { SceneItem, SceneLookup } from '../stage/scene-items.ts';
import type { StageMachine } from '../stage/stage-machine.ts';
import { usePictures } from '../sync/hooks.ts';
import type { InProposal } from './in-proposal.ts';
import { stateOf } from './open-proposals.ts';
import { type Ghost, tracingOf } from './tracing-marks.ts';
import './tracing.css';

interface Props {
  readonly machine: StageMachine;
  readonly inside: InProposal;
}

export function Tracing({ machine, inside }: Props) {
  const scene = useStore(machine.sceneNow);
  const scale = useSyncExternalStore(machine.shownAt.subscribe, () => machine.shownAt.get().scale);
  const pictures = usePictures();
  const maskId = useId();
  const board = useRef<HTMLDivElement>(null);
  const drawn = scene !== null;
  useEffect(() => {
    if (!drawn) return;
    const follow = () => {
      const { x, y } = machine.shownAt.get();
      if (board.current !== null) board.current.style.transform = `translate(${x}px, ${y}px)`;
    };
    follow();
    return machine.shownAt.subscribe(follow);
  }, [machine, drawn]);
  const { entries, hang, proposal } = inside;
  const ended = stateOf(proposal) !== 'open';
  const frame = scene?.frame ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: sizes come with the pictures' facts
  const marks = useMemo(
    () =>
      frame === null
        ? null
        : tracingOf(frame, entries, { hang: lookupOf(hang.judgements), laid: machine.resting, ended }),
    [frame, entries, hang, machine, ended, pictures],
  );
  if (marks === null || frame === null) return null;
  const wall = frame.sheet === 'wall' ? frame.panels.find(({ kind }) => kind === 'wall') : undefined;
  const spots = spread(
    marks.tags.map((tag) => ({
      ...tag,
      left: Math.round(tag.X * scale) + (tag.onWall ? 14 : -10),
      top: Math.round(tag.Y * scale) + (tag.onWall ? 14 : -10),
    })),
  );
  return (
    <div className="tracing" aria-hidden="true">
      <div ref={board} className="tracing-board">
        <svg width="1" height="1" aria-hidden="true">
          {wall === undefined ? null : <Sheet {...boxOf(wall, scale)} />}
          <mask id={maskId} maskUnits="userSpaceOnUse" x={-FAR_PX} y={-FAR_PX} width={2 * FAR_PX} height={2 * FAR_PX}>
            <rect x={-FAR_PX} y={-FAR_PX} width={2 * FAR_PX} height={2 * FAR_PX} fill="#fff" />
            {marks.comes.map((item) => (
              <rect key={item.key} {...rectOf(item, scale)} fill="#000" />
            ))}
          </mask>
          <g mask={`url(#${maskId})`}>
            {marks.ghosts.map((ghost) => (
              <GhostShape key={ghost.key} ghost={ghost} scale={scale} />
            ))}
          </g>
        </svg>
        {spots.map(({ key, number, left, top }) => (
          <b key={key} className="tracing-tag" style={{ left, top }}>
            {number}
          </b>
        ))}
      </div>
    </div>
  );
}

function lookupOf(judgements: Judgements): SceneLookup {
  const { where } = judgements;
  return {
    placeOf: (id) => where.placeOf(id),
    sizeOf: (id) => where.sizeOf(id),
    levelsOf: (id) => where.levelsOf(id),
    roomOf: (surface) => where.roomOf(surface),
    openingOf: (id) => judgements.documents.get('openings', id) ?? null,
    pictureOf: (id) => judgements.pictureIdOf(id),
    nameOf: (id) => judgements.nameOf(id),
    frameOf: (id) => judgements.drawnFrameOf(id),
  };
}

function GhostShape({ ghost, scale }: { readonly ghost: Ghost; readonly scale: number }) {
  const { item, crossed } = ghost;
  const [w, h] = [item.widthMm * scale, item.heightMm * scale];
  const path = `M${-w / 2} ${-h / 2}h${w}v${h}h${-w}z`;
  const cross = `M${-w / 2} ${-h / 2}L${w / 2} ${h / 2}M${w / 2} ${-h / 2}L${-w / 2} ${h / 2}`;
  return (
    <g
      className={`ghost ghost-${item.panel.ink}`}
      transform={`translate(${item.X * scale} ${item.Y * scale}) rotate(${item.rotationDegrees})`}
    >
      <path className="ghost-under" d={path} />
      <path className="ghost-over" d={path} />
      {crossed && Math.min(w, h) > 16 ? <path className="ghost-cross" d={cross} /> : null}
    </g>
  );
}

function boxOf(panel: Parameters<typeof boxInDrawing>[0], scale: number) {
  const { widthMm, heightMm } = panel;
  const box = boxInDrawing(panel, { xMm: widthMm / 2, yMm: heightMm / 2, widthMm, heightMm });
  return { x: box.X * scale, y: box.Y * scale, w: box.width * scale, h: box.height * scale };
}

/** The sheet's edge and its tapes: only its margin is milky, nothing tints a work or a paint. */
function Sheet({ x, y, w, h }: { readonly x: number; readonly y: number; readonly w: number; readonly h: number }) {
  const out = 8;
  return (
    <g className="tracing-sheet">
      <path
        fillRule="evenodd"
        d={`M${x - out} ${y - out}h${w + 2 * out}v${h + 2 * out}h${-w - 2 * out}zM${x} ${y}v${h}h${w}v${-h}z`}
      />
      {[
        [x, y, -45],
        [x + w, y, 45],
        [x, y + h, 45],
        [x + w, y + h, -45],
      ].map(([cx, cy, turn]) => (
        <rect
          key={`${cx} ${cy}`}
          className="tracing-tape"
          x={-20}
          y={-7}
          width={40}
          height={14}
          transform={`translate(${cx} ${cy}) rotate(${turn})`}
        />
      ))}
    </g>
  );
}

/** Farther than any drawing reaches at any scale. */
const FAR_PX = 60_000;

function rectOf(item: SceneItem, scale: number) {
  const [width, height] = [item.widthMm * scale, item.heightMm * scale];
  const transform = `translate(${item.X * scale} ${item.Y * scale}) rotate(${item.rotationDegrees})`;
  return { x: -width / 2, y: -height / 2, width, height, transform };
}

const TAG_PX = 21;

/** Numbers that would lie on one another stand side by side. */
function spread<T extends { readonly left: number; readonly top: number }>(tags: readonly T[]): T[] {
  const placed: T[] = [];
  for (const tag of tags) {
    let left = tag.left;
    while (placed.some((other) => Math.abs(other.left - left) < TAG_PX && Math.abs(other.top - tag.top) < TAG_PX)) {
      left += TAG_PX + 1;
    }
    placed.push({ ...tag, left });
  }
  return placed;
}
