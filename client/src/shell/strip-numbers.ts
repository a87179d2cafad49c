/** Where the lines of what waits lead in the building, and their numbers as a wall has room for them. Pure. */
import type { Judgements } from '@enfilade/shared/judgements';
import type { SurfaceId } from '@enfilade/shared/schema';
import type { RemarkAbout } from '@enfilade/shared/talk';
import type { WaitingLine } from '@enfilade/shared/waiting';

/** The surface a line leads to; null where it leads to a page or to what has no place. */
export function surfaceOfLine(
  { goes }: WaitingLine,
  judgements: Judgements,
  surfaceAbout: (about: RemarkAbout) => SurfaceId | null,
): SurfaceId | null {
  switch (goes.kind) {
    case 'vignette':
      return goes.surface;
    case 'remark':
      return 'surface' in goes.about ? goes.about.surface : surfaceAbout(goes.about);
    case 'pieces': {
      const [first] = goes.pieceIds;
      return first === undefined ? null : judgements.where.surfaceOf(first);
    }
    case 'proposal':
      return surfaceAbout({ kind: 'proposal', proposalId: goes.proposalId });
    case 'paint':
      return surfaceAbout({ kind: 'paint', paintId: goes.paintId });
    case 'loans':
    case 'cautions':
      return null;
  }
}

/** '3', '2 3', '1 4 6', '1–4', '1 2 6…': as many as three, runs drawn together. */
export function numbersText(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([from, to]) => (to - from < 2 ? range(from, to).map(String) : [`${from}–${to}`]));
  return words.length <= 3 ? words.join(' ') : `${words.slice(0, 3).join(' ')}…`;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}
