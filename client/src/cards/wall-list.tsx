/** Everything on a surface as a real list, in reading order, with its numbers: for the keyboard and the listener. */
import { outerBoxOf } from '@enfilade/shared/aligning';
import type { Judgements } from '@enfilade/shared/judgements';
import { LAYOUT_FLOOR, type PieceId, type SurfaceId } from '@enfilade/shared/schema';
import type { Seen } from '@enfilade/shared/whereabouts';
import { lengthText } from '@enfilade/space/lengths';
import { type MouseEvent, memo, useMemo } from 'react';
import { type Unit, usePreferences } from '../preferences.ts';
import { choose, chooseToo, choosing, selection, useStore } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import './wall-list.css';

/** What hangs, left to right as one walks along it and the upper first; then what stands before it. */
function inReadingOrder(seen: readonly Seen[]): Seen[] {
  return [...seen].sort(
    (a, b) => Number(b.direct) - Number(a.direct) || a.xMm - b.xMm || b.yMm - a.yMm || (a.pieceId < b.pieceId ? -1 : 1),
  );
}

/** All that is seen on a surface, in reading order. */
export function seenOn(judgements: Judgements, surface: SurfaceId): Seen[] {
  const wall = judgements.where.wallOf(surface) !== null;
  const seen = wall ? judgements.elevationOf(surface) : judgements.where.planOf(surface);
  return inReadingOrder(seen.filter(({ held }) => held !== 'beneath'));
}

/** One line: name, numbers, and how it reads. */
export function listLine(judgements: Judgements, seen: Seen, surface: SurfaceId, unit: Unit): string {
  const wall = judgements.where.wallOf(surface) !== null;
  // To the edges it has as it is turned, as its card has them.
  const box = outerBoxOf(seen, seen.turnDegrees);
  const left = lengthText(seen.xMm - box.widthMm / 2, unit);
  const foot = lengthText(seen.yMm - box.heightMm / 2, unit);
  const numbers = wall
    ? `centre ${lengthText(seen.yMm, unit)} high, ${left} from the left corner`
    : surface === LAYOUT_FLOOR
      ? `${left} across, its foot ${foot} up`
      : `${left} from the left, ${foot} from the entrance wall${dropText(judgements, seen, surface, unit)}`;
  const word = seen.direct && wall ? judgements.readingOf(seen.pieceId)?.word : undefined;
  const before = wall ? beforeText(seen) : seen.direct || seen.held === undefined ? '' : `${HELD[seen.held]}, `;
  return `${before}${numbers}${word === undefined ? '' : `, ${word}`}`;
}

/** On a ceiling, how far its foot hangs down. */
function dropText(judgements: Judgements, seen: Seen, surface: SurfaceId, unit: Unit): string {
  if (!surface.endsWith(':ceiling')) return '';
  const room = judgements.where.roomOf(surface);
  const foot = (room?.heightMm ?? 0) - seen.standOffMm;
  return `, its foot ${lengthText(foot, unit)} up`;
}

const HELD = { overhead: 'hangs overhead', 'in an opening': 'in an opening', beneath: 'stands beneath' } as const;

function beforeText(seen: Seen): string {
  if (seen.direct) return '';
  if (seen.held === 'in an opening') return 'in an opening, ';
  return seen.held === 'overhead' ? 'hangs from the ceiling before it, ' : 'stands before it, ';
}

export function WallList({ surface, open }: { readonly surface: SurfaceId; readonly open: boolean }) {
  const { judgements, documents } = useShow();
  const { unit } = usePreferences();
  const chosen = useStore(selection);
  const key = (['places', 'objects', 'pieces', 'paints', 'rooms'] as const).map((r) => documents.version(r)).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the versions stand for what is read
  const seen = useMemo(() => seenOn(judgements, surface), [judgements, surface, key]);
  const chosenSet = useMemo(() => new Set(chosen), [chosen]);
  if (seen.length === 0) return open ? <p className="t1">Nothing is on it.</p> : null;
  return (
    <ul className={open ? 'wall-list' : 'wall-list spoken wall-list-folded'} aria-label="All on this surface">
      {seen.map((one) => (
        <Line
          key={one.pieceId}
          pieceId={one.pieceId}
          name={judgements.nameOf(one.pieceId)}
          numbers={listLine(judgements, one, surface, unit)}
          chosen={chosenSet.has(one.pieceId)}
          reachable={open}
        />
      ))}
    </ul>
  );
}

const Line = memo(function Line(props: {
  pieceId: PieceId;
  name: string;
  numbers: string;
  chosen: boolean;
  reachable: boolean;
}) {
  const { pieceId, name, numbers, chosen, reachable } = props;
  const press = (event: MouseEvent): void => {
    if (event.shiftKey || event.ctrlKey || event.metaKey || choosing.get()) chooseToo(pieceId);
    else choose([pieceId]);
  };
  return (
    <li>
      {/* Folded away it is still in the accessibility tree, but no stop for the Tab key nobody sees. */}
      <button type="button" aria-pressed={chosen} tabIndex={reachable ? 0 : -1} onClick={press}>
        {name}
      </button>
      <span>{numbers}</span>
    </li>
  );
});
