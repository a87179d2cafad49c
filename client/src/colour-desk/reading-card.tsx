/** Why a cell says what it says: patch beside patch, a word, a reason; figures and the paints it carries on a press away. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { type DeskWork, deskCellOf, WORST_FIRST } from '@enfilade/shared/colour-desk';
import { hueNoteOf } from '@enfilade/shared/hue-notes';
import { lampNameOf } from '@enfilade/shared/lamps';
import { surfaceName } from '@enfilade/shared/surface-names';
import { type KeyboardEvent, useState } from 'react';
import { ReadingFigures } from '../cards/reading-block.tsx';
import { choose, useStore } from '../selection.ts';
import { ReadingMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';
import { useDeskLight } from './desk-light.tsx';
import type { DeskRow } from './desk-table.ts';
import { paintFrom, useTrialOn } from './desk-trial.ts';
import { wishes, wishFor } from './wishes.ts';
import './reading-card.css';

interface CardProps {
  readonly row: DeskRow;
  readonly work: DeskWork;
  readonly fold: () => void;
}

export function ReadingCard({ row, work, fold }: CardProps) {
  const { documents } = useShow();
  const { judgements, look, lamp } = useDeskLight();
  const tried = useTrialOn(row.wall.surface);
  const [figures, setFigures] = useState(false);
  const wish = useStore(wishes).get(work.id)?.wish;
  const paint =
    row.kind === 'trial' ? tried : paintFrom(documents, row.kind === 'wall' ? row.wall.paint.id : row.paintId);
  const lab = paint === null ? null : look(paint);
  const cell = lab === null ? null : deskCellOf(judgements, work, lab);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    fold();
  };
  if (paint === null || lab === null || cell === null) {
    return (
      <section className="desk-card card" aria-label={`How ${work.title} reads`}>
        <h2>{work.title}</h2>
        <p className="cap">
          {paint === null ? 'Nothing is tried on this wall yet.' : 'Without a picture, how it reads is not known.'}
        </p>
      </section>
    );
  }
  const { reading } = cell;
  const words = WORST_FIRST.filter((word) => cell.counts[word] > 0);
  const { surface } = work;
  const note = hueNoteOf(judgements, cell.pieceId, lab);
  return (
    <section className="desk-card card reading" aria-label={`How ${work.title} reads`} onKeyDown={onKeyDown}>
      <div className="reading-pair" aria-hidden="true">
        <i style={{ background: hexFromLabD65(reading.patch) }} />
        <i style={{ background: hexFromLabD65(lab) }} />
      </div>
      <p className="reading-names">
        <span>its {reading.patchName}</span>
        <span>
          {paint.name}
          {row.kind === 'wall' ? '' : ', on trial'}
        </span>
      </p>
      <h2>{work.title}</h2>
      <p className="word">
        <ReadingMark word={reading.word} sizePx={16} />
        <span className="reading-word">
          {reading.word} on {row.wall.roomName}, {row.wall.wallName}
        </span>
      </p>
      {words.length < 2 ? null : (
        <p className="t1">
          The worst of its {work.pieces.length}: {words.map((word) => `${cell.counts[word]} ${word}`).join(', ')}. This
          is {judgements.nameOf(cell.pieceId)}.
        </p>
      )}
      <p className="reading-reason">{reading.reason}</p>
      {note === null ? null : <p className="reading-note t1">{note}</p>}
      {lamp === 'D65' ? null : <p className="t1">Seen under {lampNameOf(lamp)}.</p>}
      <p className="desk-card-commands t1">
        {(['let carry', 'keep quiet'] as const).map((asked) => (
          <button
            key={asked}
            type="button"
            className={wish === asked ? 'cmd on' : 'cmd'}
            aria-pressed={wish === asked}
            onClick={() => wishFor(work, asked)}
          >
            {asked === 'let carry' ? 'let it carry' : 'keep it quiet'}
          </button>
        ))}
        <button type="button" aria-expanded={figures} onClick={() => setFigures(!figures)}>
          {figures ? 'fold the figures away' : 'figures'}
        </button>
        {surface === null ? null : (
          <button
            type="button"
            aria-label={`Go to it on its wall: ${surfaceName(documents, surface)}`}
            onClick={() => {
              go({ sheet: 'wall', surface });
              // The page lets go of what is held when it leaves a sheet; this is held from then on.
              setTimeout(() => choose([cell.pieceId]));
            }}
          >
            go to it
          </button>
        )}
        <button type="button" onClick={fold}>
          fold away
        </button>
      </p>
      {figures ? <ReadingFigures reading={reading} /> : null}
    </section>
  );
}
