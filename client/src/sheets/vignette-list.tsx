/** The vignette list as paper: what stands where, of what, from whom, and whose word it has; now, or as it was frozen. */
import type { Version } from '@enfilade/shared/protocol';
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { toVignetteCsv } from '@enfilade/shared/vignette-csv';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { ComparedLists } from './compared-lists.tsx';
import { download, fileNameOf } from './download.ts';
import { FreezeList } from './freeze-list.tsx';
import { FrozenPaper } from './frozen-paper.tsx';
import { rowNow } from './listed-rows.tsx';
import { PapersNav } from './papers-nav.tsx';
import { draftText, VersionStamp } from './stamp-block.tsx';
import { type ListNow, useDraftRows, useListNow } from './use-list.ts';
import { VersionsPart } from './versions-part.tsx';
import { VignetteTable } from './vignette-table.tsx';
import { changeWordsOf, momentText, stateText } from './vignette-words.ts';
import './vignette-list.css';

interface VignetteListProps {
  /** A frozen version to look at; without it the list as it stands. */
  readonly version?: number | undefined;
  /** What it is compared with; null: the list as it stands. */
  readonly against?: number | null | undefined;
}

export function VignetteList({ version, against }: VignetteListProps) {
  const now = useListNow();
  const numbered = (number: number | null | undefined): Version | undefined =>
    now.versions.find((one) => one.number === number);
  const frozen = numbered(version);
  const other = numbered(against);
  if (version === undefined) return <ListAsItStands now={now} />;
  const gone = frozen === undefined ? version : typeof against === 'number' && other === undefined ? against : null;
  return (
    <div className="papers">
      <PapersNav paper="vignettes">
        {gone === null ? (
          <button type="button" className="act main" onClick={() => print()}>
            Print
          </button>
        ) : null}
        <a href="#vignettes">the list as it stands</a>
      </PapersNav>
      <div>
        <VersionsPart now={now} version={version} against={against} />
        {frozen === undefined || gone !== null ? (
          <p className="cap vl-empty">Version {gone} is not of the vignette list.</p>
        ) : against === undefined ? (
          <FrozenPaper version={frozen} now={now} />
        ) : (
          <ComparedLists before={frozen} after={other ?? null} now={now} />
        )}
      </div>
    </div>
  );
}

function ListAsItStands({ now }: { readonly now: ListNow }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const { rows, digest, versions } = now;
  const title = judgements.setting('title') || DEFAULT_SETTINGS.title;
  const words = changeWordsOf(judgements, unit);
  const [newest] = versions;
  const stands = newest?.digest === digest ? newest : undefined;
  const differing = useDraftRows(now);
  const tolerance = `${lengthText(judgements.setting('toleranceMm'), unit)} ${unit}`;
  const draft = newest === undefined ? 'not frozen yet' : draftText(newest, differing, tolerance);
  const pieces = rows.reduce((sum, row) => sum + row.members.reduce((all, member) => all + member.pieces, 0), 0);
  return (
    <div className="papers">
      <PapersNav paper="vignettes">
        {rows.length === 0 ? null : (
          <>
            <FreezeList now={now} draft={draft} />
            <button type="button" className="act" onClick={() => print()}>
              Print
            </button>
            <button
              type="button"
              onClick={() =>
                download(
                  `${fileNameOf(title)}-vignettes.csv`,
                  toVignetteCsv(rows, (row) => stateText(row, words)),
                  'text/csv;charset=utf-8',
                )
              }
            >
              as CSV
            </button>
          </>
        )}
      </PapersNav>
      <div>
        <VersionsPart now={now} />
        <article className="vl-paper" aria-label="Vignette list">
          <header className="vl-head">
            <h1>Vignette list</h1>
            <p className="vl-show">
              <span className="serif t4">{title}</span>
              <br />
              {judgements.setting('museum')}
            </p>
            {stands === undefined ? (
              <p className="vl-stamp">
                <b className="b">Draft</b>
                <br />
                {newest === undefined ? null : (
                  <>
                    {draft}
                    <br />
                  </>
                )}
                as it stands {momentText(new Date())}
              </p>
            ) : (
              <VersionStamp version={stands} />
            )}
          </header>
          {rows.length === 0 ? (
            <p className="vl-empty cap">
              No vignette yet. On a wall or on the layout floor take several things, then gather them into a vignette;
              it is listed here from then on.
            </p>
          ) : (
            <VignetteTable rows={rows.map((row) => rowNow(row, words, stands !== undefined))} />
          )}
          <footer className="vl-foot">
            {rows.length} {rows.length === 1 ? 'vignette' : 'vignettes'}, {pieces} {pieces === 1 ? 'piece' : 'pieces'}.{' '}
            {stands === undefined ? `Draft: ${draft}, it may change. ` : 'A later version makes this list void. '}
            {title}, printed {momentText(new Date())}.
          </footer>
        </article>
      </div>
    </div>
  );
}

export default VignetteList;
