/** The rows of the vignette list. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { likeMembersOf } from '@enfilade/shared/like-members';
import { LAYOUT_FLOOR, surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { sourceTexts, type VignetteListRow, type VignetteWhere } from '@enfilade/shared/vignette-list';
import { StateMark } from '../shell/marks.tsx';
import { toAddress } from '../view-address.ts';
import { VignetteState } from './vignette-state.tsx';
import type { changeWordsOf } from './vignette-words.ts';

export function VignetteTable({
  rows,
  words,
}: {
  rows: readonly VignetteListRow[];
  words: ReturnType<typeof changeWordsOf>;
}) {
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
  const lines = likeMembersOf(row.members, row.focal?.pieceId ?? null);
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
            {row.focal.name} <Numbers text={row.focal.objectNumber} />
          </span>
        )}
        <ul className="vl-members">
          {lines.map(({ text, numbers, unplaced, members }) => (
            <li key={members[0]?.objectId}>
              {text} <Numbers text={numbers} />
              {unplaced > 0 ? (
                <span>
                  , {members.length === 1 && unplaced === members[0]?.pieces ? 'not placed' : `${unplaced} not placed`}
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

/** Object numbers, parted at their commas alone. */
function Numbers({ text }: { readonly text: string }) {
  return text.split(/(?<=[,;]) /).map((part, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text, in its order
    <span key={index} className="vl-no">
      {index === 0 ? '' : ' '}
      <span className="vl-kept">{part}</span>
    </span>
  ));
}

function addressOf(where: VignetteWhere | undefined): string | null {
  if (where === undefined) return null;
  if (where.surface === LAYOUT_FLOOR) return toAddress({ sheet: 'layout' });
  const parts = surfaceParts(where.surface);
  if (parts === null) return null;
  return isWallSide(parts.side)
    ? toAddress({ sheet: 'wall', surface: where.surface })
    : toAddress({ sheet: 'room', roomId: parts.roomId });
}
