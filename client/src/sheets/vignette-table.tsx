/** The rows of the vignette list, as it stands or as it was frozen. */

import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { ReactNode } from 'react';

export interface ListedRow {
  readonly id: string;
  readonly number: number;
  readonly name: ReactNode;
  readonly intent: string;
  /** Empty while nothing of it is placed. */
  readonly where: readonly {
    readonly text: string;
    readonly paint: { readonly name: string; readonly lab: LabD65 } | null;
  }[];
  readonly focal: { readonly name: string; readonly number: string } | null;
  readonly members: readonly { readonly text: string; readonly numbers: string; readonly unplaced: string }[];
  readonly from: readonly string[];
  readonly state: ReactNode;
}

export function VignetteTable({ rows }: { readonly rows: readonly ListedRow[] }) {
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
          <Row key={row.id} row={row} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ row }: { readonly row: ListedRow }) {
  return (
    <tr>
      <td className="vl-number">{row.number}</td>
      <td>
        <span className="vl-name">{row.name}</span>
        {row.intent === '' ? null : <span className="vl-intent">{row.intent}</span>}
      </td>
      <td>
        {row.where.length === 0 ? 'not placed yet' : null}
        {row.where.map(({ text, paint }) => (
          <span key={text} className="vl-where">
            {text}
            {paint === null ? null : (
              <span className="vl-paint">
                <i style={{ background: hexFromLabD65(paint.lab) }} />
                {paint.name}
              </span>
            )}
          </span>
        ))}
      </td>
      <td>
        {row.focal === null ? null : (
          <span className="vl-focal">
            {row.focal.name} <Numbers text={row.focal.number} />
          </span>
        )}
        <ul className="vl-members">
          {row.members.map(({ text, numbers, unplaced }) => (
            <li key={`${text} ${numbers}`}>
              {text} <Numbers text={numbers} />
              {unplaced === '' ? null : <span>, {unplaced}</span>}
            </li>
          ))}
        </ul>
      </td>
      <td>
        <ul className="vl-members">
          {row.from.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </td>
      <td>{row.state}</td>
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
