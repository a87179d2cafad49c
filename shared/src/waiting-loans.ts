/** What waits of loans and of cautions: agreements, breaches of a lender's terms, what fell away, what nobody accepted yet. */
import { acceptorsOf } from '@enfilade/practice/accepting';
import { standingCautionsOf } from './accepted.ts';
import type { Judgements } from './judgements.ts';
import { lostText, vignettesAndPeople } from './loan-loss.ts';
import { dueOf, hasFallen, isCountedOn, type LentRecord, loansByLender } from './loans.ts';
import { isInShow } from './piece-cautions.ts';
import type { PieceId } from './schema.ts';
import type { Role } from './seats.ts';
import type { WaitingLine } from './waiting-line.ts';

/** Titles that are said in full; the rest are counted. */
const NAMED = 3;

/** Per lender what is not agreed, and what goes against their terms; and each placed thing whose loan fell away. */
export function loanLines(judgements: Judgements): WaitingLine[] {
  return loansByLender(judgements).flatMap(({ lender, records }): WaitingLine[] => {
    const whose = lender === '' ? 'a lender not named' : lender;
    const line = { kind: 'loan', persons: [], goes: { kind: 'loans' } } as const;
    const open = records.filter(
      ({ loan: { status } }) => !isCountedOn(status) && status !== 'returned' && !hasFallen(status),
    );
    const broken = records.filter((record) => breachesOf(judgements, record).length > 0);
    const gone = records.filter(({ loan, placed }) => hasFallen(loan.status) && placed.length > 0);
    return [
      ...gone.map(
        (record): WaitingLine => ({
          ...line,
          id: `fallen ${record.objectId}`,
          title: `Find what stands in for ${record.title}`,
          detail: fallenText(judgements, record, whose),
          lost: record.objectId,
          roles: ['curator'],
          byDay: judgements.setting('agreeBy') || null,
        }),
      ),
      ...(broken.length === 0
        ? []
        : [
            {
              ...line,
              id: `terms ${lender}`,
              title: `Settle the terms of ${whose}`,
              detail: `${broken.length} ${broken.length === 1 ? 'loan goes' : 'loans go'} against them: ${titlesText(broken)}`,
              roles: ['registrar'] as const,
              byDay: judgements.setting('hangBegins') || null,
            },
          ]),
      ...(open.length === 0
        ? []
        : [
            {
              ...line,
              id: `loans ${lender}`,
              title: `Agree ${open.length === 1 ? 'a loan' : `${open.length} loans`} with ${whose}`,
              detail: `${statusesText(open)}: ${titlesText(open)}`,
              roles: ['registrar'] as const,
              byDay: earliest(open.map(({ loan }) => dueOf(judgements, loan)?.day ?? null)),
            },
          ]),
    ];
  });
}

/** 'declined by the lender; it is still placed. High water loses its focal work. To be told: Dov Castellane.' */
function fallenText(judgements: Judgements, { objectId, loan, placed }: LentRecord, whose: string): string {
  const { vignettes, tell } = vignettesAndPeople(judgements, objectId);
  const still = placed.length === 1 ? 'it is' : `${placed.length} pieces are`;
  return [
    `${loan.status} by ${whose}; ${still} still placed`,
    ...vignettes.map(lostText),
    ...(tell.length === 0 ? [] : [`to be told: ${tell.join(', ')}`]),
  ]
    .map((text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`)
    .join('. ');
}

/** What goes against the lender's terms; that a loan is not agreed is told by its status. */
export function breachesOf(
  judgements: Judgements,
  { placed }: Pick<LentRecord, 'placed'>,
): { readonly pieceId: PieceId; readonly what: string }[] {
  return placed.flatMap((pieceId) =>
    judgements
      .cautionsOf(pieceId)
      .filter(({ kind }) => kind === 'loan terms' || kind === 'loan dates')
      .map(({ what }) => ({ pieceId, what })),
  );
}

/** One line for each role that is to look at cautions nobody has accepted; breaches of loans have lines of their own. */
export function cautionLines(judgements: Judgements): WaitingLine[] {
  const byRole = new Map<Role, { count: number; kinds: Map<string, number> }>();
  for (const pieceId of judgements.documents.all('places').keys()) {
    if (!isInShow(judgements.where.placeOf(pieceId))) continue;
    for (const { caution, accepted } of standingCautionsOf(judgements, pieceId)) {
      const role = acceptorsOf(caution.kind)[0]?.role;
      // A size or weight that is missing is recorded, not accepted.
      if (accepted !== null || role === undefined || SETTLED_ELSEWHERE.has(caution.kind)) continue;
      const own = byRole.get(role) ?? { count: 0, kinds: new Map() };
      byRole.set(role, own);
      own.count += 1;
      own.kinds.set(caution.kind, (own.kinds.get(caution.kind) ?? 0) + 1);
    }
  }
  return [...byRole].map(([role, { count, kinds }]) => ({
    id: `cautions ${role}`,
    kind: 'caution',
    title: `Look at ${count === 1 ? 'a caution' : `${count} cautions`} as ${role}`,
    detail: [...kinds]
      .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
      .slice(0, NAMED)
      .map(([kind, n]) => `${kind}${n === 1 ? '' : ` (${n})`}`)
      .join(', '),
    roles: [role],
    persons: [],
    byDay: judgements.setting('hangBegins') || null,
    goes: { kind: 'cautions' },
  }));
}

const SETTLED_ELSEWHERE: ReadonlySet<string> = new Set([
  'size not known',
  'size estimated',
  'loan not agreed',
  'loan dates',
  'loan terms',
]);

function titlesText(records: readonly LentRecord[]): string {
  const titles = records.map(({ title }) => title);
  return titles.length <= NAMED + 1
    ? titles.join(', ')
    : `${titles.slice(0, NAMED).join(', ')} and ${titles.length - NAMED} more`;
}

/** '2 requested, 1 approved'. */
function statusesText(records: readonly LentRecord[]): string {
  const counts = new Map<string, number>();
  for (const { loan } of records) counts.set(loan.status, (counts.get(loan.status) ?? 0) + 1);
  return [...counts].map(([status, count]) => `${count} ${status}`).join(', ');
}

function earliest(days: readonly (string | null)[]): string | null {
  return days.reduce((least, day) => (day !== null && (least === null || day < least) ? day : least), null);
}
