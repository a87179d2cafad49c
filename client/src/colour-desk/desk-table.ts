/** What stands down and across on the desk, from the show and from how this person has it laid out. */
import type { DeskGroup, DeskWall, DeskWork } from '@enfilade/shared/colour-desk';
import { deskWallsOf, deskWorksOf, groupsOf, wallsInOrder } from '@enfilade/shared/colour-desk';
import { lampNameOf } from '@enfilade/shared/lamps';
import type { PaintId, RootName, SurfaceId } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { useStore } from '../selection.ts';
import { usePictures } from '../sync/hooks.ts';
import type { Other } from '../sync/presence-room.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { deskLayout } from './desk-layout.ts';
import { useDeskLight } from './desk-light.tsx';
import { deskWall, held, useOthersHere } from './desk-trial.ts';

export type DeskColumn =
  | { readonly kind: 'work'; readonly key: string; readonly work: DeskWork; readonly group: DeskGroup }
  | { readonly kind: 'group'; readonly key: string; readonly group: DeskGroup };

export type DeskRow =
  | { readonly kind: 'wall'; readonly key: string; readonly wall: DeskWall }
  | { readonly kind: 'trial'; readonly key: string; readonly wall: DeskWall }
  | {
      readonly kind: 'theirs';
      readonly key: string;
      readonly wall: DeskWall;
      readonly other: Other;
      readonly paintId: PaintId;
    };

export interface DeskTable {
  readonly rows: readonly DeskRow[];
  readonly bare: readonly SurfaceId[];
  readonly groups: readonly DeskGroup[];
  readonly folded: (group: DeskGroup) => boolean;
  readonly columnsOf: (row: DeskRow | null) => readonly DeskColumn[];
  readonly widest: number;
  readonly works: readonly DeskWork[];
  readonly own: boolean;
  /** Changes with whatever a cell is made of. */
  readonly version: string;
}

/** More columns than these are folded by wall, but for the wall one works on. */
const OPEN_COLUMNS = 60;
/** The table keeps up with a moving hand within this, ms. */
const REST_MS = 200;
const ROOTS_READ = [
  'rooms',
  'places',
  'paints',
  'deck',
  'objects',
  'pieces',
  'pictureCuts',
  'vignettes',
  'memberOf',
  'settings',
] as const satisfies readonly RootName[];

export function useDeskTable(): DeskTable {
  const { judgements, lamp } = useDeskLight();
  const roots = useRestingRoots(REST_MS, ...ROOTS_READ);
  const pictures = usePictures();
  const layout = useStore(deskLayout);
  const chosen = useStore(deskWall);
  const holding = useStore(held);
  const others = useOthersHere();
  const version = `${roots} ${pictures} ${lampNameOf(lamp)}`;
  const { across, works: order, folds } = layout;
  const own = across === 'own';

  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the judgements say
  const { walls, bare } = useMemo(() => deskWallsOf(judgements), [judgements, version]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same
  const works = useMemo(
    () => deskWorksOf(judgements, across === 'own' ? 'hung' : across),
    [judgements, version, across],
  );
  // What hangs nowhere is read on the wall one works on.
  const elsewhere = walls.find(({ surface }) => surface === chosen)?.paint.lab ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same
  const groups = useMemo(
    () => groupsOf(judgements, works, order, elsewhere),
    [judgements, version, works, order, elsewhere],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same
  const ordered = useMemo(
    () => wallsInOrder(judgements, walls, works, layout.walls),
    [judgements, version, walls, works, layout.walls],
  );
  return useMemo(() => {
    const folded = (group: DeskGroup): boolean =>
      !own &&
      order !== 'number' &&
      (folds.get(group.id) ?? (works.length > OPEN_COLUMNS && group.surface !== chosen && group.word !== 'lost'));
    const all = groups.flatMap((group): DeskColumn[] =>
      folded(group)
        ? [{ kind: 'group', key: `group ${group.id}`, group }]
        : group.works.map((work) => ({ kind: 'work', key: work.id, work, group })),
    );
    const bySurface = new Map<SurfaceId, DeskColumn[]>();
    if (own) {
      for (const column of all) {
        const surface = column.kind === 'work' ? column.work.surface : null;
        if (surface !== null) bySurface.set(surface, [...(bySurface.get(surface) ?? []), column]);
      }
    }
    const columnsOf = (row: DeskRow | null): readonly DeskColumn[] =>
      !own ? all : row === null ? [] : (bySurface.get(row.wall.surface) ?? []);
    const widest = own ? Math.max(0, ...[...bySurface.values()].map(({ length }) => length)) : all.length;
    const rows = ordered.flatMap((wall): DeskRow[] => {
      const { surface } = wall;
      const rows: DeskRow[] = [{ kind: 'wall', key: surface, wall }];
      if (surface === chosen || holding.has(surface)) rows.push({ kind: 'trial', key: `trial ${surface}`, wall });
      for (const other of others) {
        for (const [on, paintId] of other.presence.trialPaints ?? []) {
          if (on === surface && judgements.documents.get('deck', paintId) !== undefined) {
            rows.push({ kind: 'theirs', key: `theirs ${other.clientId} ${surface}`, wall, other, paintId });
          }
        }
      }
      return rows;
    });
    return { rows, bare, groups, folded, columnsOf, widest, works, own, version };
  }, [judgements, groups, ordered, bare, works, own, order, folds, chosen, holding, others, version]);
}
