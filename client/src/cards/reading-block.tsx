/** How a work reads on its wall: patch beside patch, a word and a reason; the figures stand one press behind. */
import type { Reading } from '@enfilade/colour/reading';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { hueNoteOf } from '@enfilade/shared/hue-notes';
import type { PieceId } from '@enfilade/shared/schema';
import { useState } from 'react';
import { paintTrial, useStore } from '../selection.ts';
import { ReadingMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { goToGroup } from './card-group.tsx';
import './reading-block.css';

export function ReadingBlock({ pieceId, surface }: { readonly pieceId: PieceId; readonly surface: string }) {
  const { judgements } = useShow();
  const tried = useStore(paintTrial);
  const trial = tried?.surface === surface ? tried : null;
  const [figures, setFigures] = useState(false);
  const paint = judgements.paintOf(surface);
  const reading = judgements.readingOf(pieceId, trial?.lab);
  const wall = trial?.lab ?? paint?.lab;
  if (wall === undefined) return <p className="reading-none">The wall has no paint yet, so nothing is said of it.</p>;
  if (reading === null) {
    return <p className="reading-none">Without a picture, how it reads on this wall is not known.</p>;
  }
  const note = hueNoteOf(judgements, pieceId, wall);
  return (
    <div className="reading">
      <div className="reading-pair" aria-hidden="true">
        <i style={{ background: hexFromLabD65(reading.patch) }} />
        <i style={{ background: hexFromLabD65(wall) }} />
      </div>
      <p className="reading-names">
        <span>its {reading.patchName}</span>
        <span>
          {trial?.name ?? paint?.name}
          {trial === null ? '' : ', on trial'}
        </span>
      </p>
      <p className="word">
        <ReadingMark word={reading.word} sizePx={16} />
        <span className="reading-word">{reading.word} on this wall</span>
      </p>
      <p className="reading-reason">{reading.reason}</p>
      {note === null ? null : <p className="t1">{note}</p>}
      <p className="reading-more t1">
        <button type="button" aria-expanded={figures} onClick={() => setFigures(!figures)}>
          {figures ? 'fold the figures away' : 'figures'}
        </button>
        <button type="button" onClick={() => goToGroup('Frame')}>
          its frame
        </button>
        <button type="button" onClick={() => goToGroup('Photograph')}>
          its photograph
        </button>
      </p>
      {figures ? <ReadingFigures reading={reading} /> : null}
    </div>
  );
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(1)}`;
}

/** Differences of body, edge and weakest edge from the wall. */
export function ReadingFigures({ reading }: { readonly reading: Reading }) {
  const rows = [
    ['body to wall', reading.body],
    ['edge to wall', reading.edge],
    ['weakest edge', reading.weakestEdge],
  ] as const;
  return (
    <table className="reading-figures">
      <caption>
        Differences from the wall, from the picture and the paint as recorded. Advice, no ruling: a screen is no proof.
      </caption>
      <thead>
        <tr>
          <td />
          <th scope="col">
            ΔE<sub>00</sub>
          </th>
          <th scope="col">ΔL*</th>
          <th scope="col">ΔC*</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, measures]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="b">{measures.deltaE.toFixed(1)}</td>
            <td>{signed(measures.deltaL)}</td>
            <td>{signed(measures.deltaC)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">within 10 of the wall</th>
          <td colSpan={3}>{Math.round(reading.shareWithin10 * 100)} % of it</td>
        </tr>
      </tbody>
    </table>
  );
}
