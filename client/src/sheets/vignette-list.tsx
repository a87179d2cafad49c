/** The vignette list as paper: what stands where, of what, from whom, and whose word it has. */
import type { Version } from '@enfilade/shared/protocol';
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { toVignetteCsv } from '@enfilade/shared/vignette-csv';
import { vignetteListOf } from '@enfilade/shared/vignette-list';
import { usePreferences } from '../preferences.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { download, fileNameOf } from './download.ts';
import { PapersNav } from './papers-nav.tsx';
import { VignetteTable } from './vignette-table.tsx';
import { changeWordsOf, momentText, stateText } from './vignette-words.ts';
import './vignette-list.css';

export function VignetteList() {
  const show = useShow();
  useRoots(
    'vignettes',
    'memberOf',
    'places',
    'objects',
    'paints',
    'deck',
    'rooms',
    'signatures',
    'settings',
    'versions',
  );
  const { unit } = usePreferences();
  const { judgements, documents } = show;
  const rows = vignetteListOf(judgements);
  const title = judgements.setting('title') || DEFAULT_SETTINGS.title;
  const words = changeWordsOf(judgements, unit);
  const version = newestOf([...documents.all('versions').values()]);
  const pieces = rows.reduce((sum, row) => sum + row.members.reduce((all, member) => all + member.pieces, 0), 0);
  return (
    <div className="papers">
      <PapersNav paper="vignettes">
        {rows.length === 0 ? null : (
          <>
            <button type="button" className="act main" onClick={() => print()}>
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
      <article className="vl-paper" aria-label="Vignette list">
        <header className="vl-head">
          <h1>Vignette list</h1>
          <p className="vl-show">
            <span className="serif t4">{title}</span>
            <br />
            {judgements.setting('museum')}
          </p>
          <p className="vl-stamp">
            <b className="b">{version === null ? 'Draft' : `Version ${version.number}`}</b>
            <br />
            {version === null ? `as it stands ${momentText(new Date())}` : momentText(new Date(version.at))}
          </p>
        </header>
        {rows.length === 0 ? (
          <p className="vl-empty cap">
            No vignette yet. On a wall or on the layout floor take several things, then gather them into a vignette; it
            is listed here from then on.
          </p>
        ) : (
          <VignetteTable rows={rows} words={words} />
        )}
        <footer className="vl-foot">
          {rows.length} {rows.length === 1 ? 'vignette' : 'vignettes'}, {pieces} {pieces === 1 ? 'piece' : 'pieces'}.{' '}
          {version === null ? 'Draft: not frozen, it may change. ' : 'A later version makes this list void. '}
          {title}, printed {momentText(new Date())}.
        </footer>
      </article>
    </div>
  );
}

/** The newest frozen version of the list; null while none has been frozen. */
function newestOf(versions: readonly Version[]): Version | null {
  return versions
    .filter(({ what }) => what.startsWith('vignette list'))
    .reduce<Version | null>(
      (newest, version) => (newest === null || version.number > newest.number ? version : newest),
      null,
    );
}

export default VignetteList;
