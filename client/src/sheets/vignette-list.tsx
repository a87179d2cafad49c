/** The vignette list as paper: what stands where, of what, from whom, and whose word it has. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { Version } from '@enfilade/shared/protocol';
import { DEFAULT_SETTINGS, LAYOUT_FLOOR, surfaceParts } from '@enfilade/shared/schema';
import {
  memberText,
  sourceTexts,
  toVignetteCsv,
  type VignetteListRow,
  type VignetteWhere,
  vignetteListOf,
} from '@enfilade/shared/vignette-list';
import { isWallSide } from '../cards/surface-names.ts';
import { usePreferences } from '../preferences.ts';
import { StateMark } from '../shell/marks.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { download, fileNameOf } from './download.ts';
import { PapersNav } from './papers-nav.tsx';
import { VignetteState } from './vignette-state.tsx';
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
          <Table rows={rows} words={words} />
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

function Table({ rows, words }: { rows: readonly VignetteListRow[]; words: ReturnType<typeof changeWordsOf> }) {
  return (
    <table className="vl-table">
      <thead>
        <tr>
          <th scope="col">no.</th>
          <th scope="col">vignette and intent</th>
          <th scope="col">room and wall, its colour</th>
          <th scope="col">focal work, members</th>
          <th scope="col">where from</th>
          <th scope="col">state</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.id} row={row} words={words} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ row, words }: { row: VignetteListRow; words: ReturnType<typeof changeWordsOf> }) {
  const at = addressOf(row.where[0]);
  const others = row.members.filter(({ objectNumber }) => objectNumber !== row.focal?.objectNumber);
  return (
    <tr>
      <td className="vl-number">{row.number}</td>
      <td>
        <span className="vl-name">{at === null ? row.name : <a href={at}>{row.name}</a>}</span>
        {row.intent === '' ? null : <span className="vl-intent">{row.intent}</span>}
      </td>
      <td>
        {row.where.length === 0 ? 'not placed yet' : null}
        {row.where.map((where) => (
          <span key={where.surface} className="vl-where">
            {where.room === null ? where.on : `${where.room}, ${where.on}`}
            {where.paint === null ? null : (
              <span className="vl-paint">
                <i style={{ background: hexFromLabD65(where.paint.lab) }} />
                {where.paint.name}
              </span>
            )}
          </span>
        ))}
      </td>
      <td>
        {row.focal === null ? null : (
          <span className="vl-focal">
            {row.focal.name} <span className="vl-no">{row.focal.objectNumber}</span>
          </span>
        )}
        <ul className={others.length > MANY ? 'vl-members vl-many' : 'vl-members'}>
          {(row.focal === null ? row.members : others).map((member) => (
            <li key={member.objectId}>
              {memberText(member)} <span className="vl-no">{member.objectNumber}</span>
              {member.placed < member.pieces ? (
                <span className="vl-no">
                  {member.placed === 0 ? ', not placed' : `, ${member.pieces - member.placed} not placed`}
                </span>
              ) : null}
            </li>
          ))}
        </ul>
      </td>
      <td>
        <ul className="vl-members">
          {sourceTexts(row.members).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </td>
      <td>
        <VignetteState row={row} words={words} mark={<StateMark state={row.standing.state} />} />
      </td>
    </tr>
  );
}

/** More members than these are set as one text, so that a row stays on its page. */
const MANY = 6;

function addressOf(where: VignetteWhere | undefined): string | null {
  if (where === undefined) return null;
  if (where.surface === LAYOUT_FLOOR) return toAddress({ sheet: 'layout' });
  const parts = surfaceParts(where.surface);
  if (parts === null) return null;
  return isWallSide(parts.side)
    ? toAddress({ sheet: 'wall', surface: where.surface })
    : toAddress({ sheet: 'room', roomId: parts.roomId });
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
