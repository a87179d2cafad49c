/** Paperwork: a wall's elevation and hanging schedule, as the true sheets a preparator works from. */
import { elevationSheetsOf } from '@enfilade/shared/elevation-sheet';
import type { Judgements } from '@enfilade/shared/judgements';
import { newestOf } from '@enfilade/shared/print-stamps';
import type { Version } from '@enfilade/shared/protocol';
import type { SurfaceId } from '@enfilade/shared/schema';
import type { Sheet } from '@enfilade/shared/sheet';
import { digestOf } from '@enfilade/shared/sign-off';
import { surfaceName } from '@enfilade/shared/surface-names';
import type { Stamp } from '@enfilade/shared/title-block';
import { useMemo } from 'react';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { PapersNav } from './papers-nav.tsx';
import { ScheduleTable } from './schedule-table.tsx';
import { SheetSvg } from './sheet-svg.tsx';
import { momentText } from './vignette-words.ts';
import './paper.css';

export function Paper({ surface }: { readonly surface: SurfaceId | null }) {
  const { documents, judgements } = useShow();
  useRoots('rooms', 'places');
  const chosen = surface ?? fullestWall(judgements);
  if (chosen === null) {
    return (
      <div className="papers">
        <PapersNav paper={null} />
        <p className="cap paper-empty">
          There is no room yet. <a href={toAddress({ sheet: 'measure', roomId: null })}>Measure a room</a> first; every
          wall of it then has its sheet here.
        </p>
      </div>
    );
  }
  return <WallPaper key={chosen} surface={chosen} name={surfaceName(documents, chosen)} />;
}

function WallPaper({ surface, name }: { readonly surface: SurfaceId; readonly name: string }) {
  const show = useShow();
  const { judgements, documents, base } = show;
  // biome-ignore format: one list
  const version = useRoots('rooms', 'openings', 'fixtures', 'objects', 'pieces', 'places', 'paints', 'deck', 'settings', 'versions', 'limits', 'labelSides', 'memberOf', 'vignettes');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the sheets are drawn from
  const { sheets, frozen, last } = useMemo(
    () => sheetsOf(judgements, surface, [...documents.all('versions').values()]),
    [judgements, documents, surface, version],
  );
  const looking = show.me.person.role === 'viewer';
  return (
    <div className="papers">
      <PapersNav paper={surface}>
        <a
          className="act main"
          href={`${base}/paper/elevation.pdf?surface=${encodeURIComponent(surface)}`}
          target="_blank"
          rel="noreferrer"
        >
          PDF
          <span className="spoken">
            {' '}
            of {name}, {sheets.length} {sheets.length === 1 ? 'sheet' : 'sheets'}, in a new tab
          </span>
        </a>
        <p>{stateOf(frozen, last, looking)}</p>
        <a href={toAddress({ sheet: 'wall', surface })}>back to the wall</a>
      </PapersNav>
      <div className="paper-sheets">
        <h1 className="spoken">{name}: elevation and hanging schedule</h1>
        {sheets.map((sheet) => (
          <figure key={sheet.title} className="paper-sheet">
            <SheetSvg sheet={sheet} />
          </figure>
        ))}
        <details className="paper-table">
          <summary>The same, as a table</summary>
          <ScheduleTable surface={surface} />
        </details>
      </div>
    </div>
  );
}

/** The sheets, stamped with the version these very facts were printed as; as a draft where they were not. */
function sheetsOf(
  judgements: Judgements,
  surface: SurfaceId,
  versions: readonly Version[],
): { readonly sheets: readonly Sheet[]; readonly frozen: Version | null; readonly last: Version | null } {
  const last = newestOf(versions, `elevation ${surface}`);
  const digest = last === null ? '' : digestOf(JSON.stringify(elevationSheetsOf(judgements, surface, DRAFT)));
  const frozen = last?.digest === digest ? last : null;
  const stamp: Stamp =
    frozen === null
      ? { ...DRAFT, at: momentText(new Date()) }
      : { version: frozen.number, at: momentText(new Date(frozen.at)), by: frozen.by };
  return { sheets: elevationSheetsOf(judgements, surface, stamp), frozen, last };
}

const DRAFT: Stamp = { version: 0, at: '', by: '' };

function stateOf(frozen: Version | null, last: Version | null, looking: boolean): string {
  if (frozen !== null) return `Version ${frozen.number}, ${momentText(new Date(frozen.at))}, ${frozen.by}`;
  const next = looking ? 'Its PDF is a draft too.' : 'Its PDF gets the next version number.';
  return last === null ? `Draft. ${next}` : `Draft: changed since version ${last.number}. ${next}`;
}

/** The wall with most on it, the first in order among equals; null while there is no room. */
function fullestWall(judgements: Judgements): SurfaceId | null {
  const walls = roomsInOrder(judgements.documents).flatMap((roomId) =>
    (['head', 'right', 'foot', 'left'] as const).map((side) => `${roomId}:${side}`),
  );
  let best: SurfaceId | null = null;
  let most = -1;
  for (const wall of walls) {
    const count = judgements.where.directlyOn(wall).size;
    if (count > most) {
      best = wall;
      most = count;
    }
  }
  return best;
}

export default Paper;
