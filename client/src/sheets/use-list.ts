/** The vignette list as it stands, its digest, and how it differs from the newest that was frozen. */
import {
  differencesOf,
  type FrozenList,
  frozenDigestOf,
  frozenListOf,
  type RowDifference,
} from '@enfilade/shared/list-versions';
import { VIGNETTE_LIST, versionsOf } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import { type VignetteListRow, vignetteListOf } from '@enfilade/shared/vignette-list';
import { lengthText } from '@enfilade/space/lengths';
import { useMemo } from 'react';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { isList, useFrozenLists } from './frozen-lists.ts';

/** The list keeps up with others' hands within this, ms. */
const REST_MS = 150;

export interface ListNow {
  readonly rows: readonly VignetteListRow[];
  readonly list: FrozenList;
  readonly digest: string;
  /** Frozen versions of it, the newest first. */
  readonly versions: readonly Version[];
  /** Of all papers: the next frozen list is one more. */
  readonly highest: number;
}

export function useListNow(): ListNow {
  const { judgements, documents } = useShow();
  // biome-ignore format: one list
  const now = useRestingRoots(REST_MS, 'vignettes', 'memberOf', 'places', 'objects', 'paints', 'deck', 'rooms', 'openings', 'signatures', 'settings', 'versions', 'proposals', 'proposed');
  // biome-ignore lint/correctness/useExhaustiveDependencies: `now` stands for what the list is of
  return useMemo(() => {
    const list = frozenListOf(judgements);
    const all = [...documents.all('versions').values()];
    return {
      rows: vignetteListOf(judgements),
      list,
      digest: frozenDigestOf(list),
      versions: versionsOf(all, VIGNETTE_LIST),
      highest: all.reduce((highest, { number }) => Math.max(highest, number), 0),
    };
  }, [judgements, documents, now]);
}

/** How a reader is told of differences: in their unit, above the show's tolerance. */
export function useDifferences(): (before: FrozenList, after: FrozenList) => readonly RowDifference[] {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  return (before, after) =>
    differencesOf(before, after, judgements.setting('toleranceMm'), (mm) => `${lengthText(mm, unit)} ${unit}`);
}

/** Rows in which the list differs from the newest frozen one; null while there is none, or it is not here yet. */
export function useDraftRows({ list, digest, versions }: ListNow): number | null {
  const [newest] = versions;
  const differs = newest !== undefined && newest.digest !== digest;
  const [frozen] = useFrozenLists(differs ? newest.digest : undefined);
  const differences = useDifferences();
  return isList(frozen) ? differences(frozen, list).filter(({ kind }) => kind !== 'same').length : null;
}
