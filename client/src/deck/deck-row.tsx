/** One paint of the deck: its patch, what is known of it, where it hangs; open, what can be done with it. */
import type { Lrv } from '@enfilade/colour/paints';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import * as commands from '@enfilade/shared/commands';
import { beyondScreenText, howMeasured } from '@enfilade/shared/paint-records';
import type { SampleStanding } from '@enfilade/shared/samples';
import type { Paint, PaintId, SurfaceId } from '@enfilade/shared/schema';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { useShow } from '../sync/hooks.ts';
import { LRV_WORDS, labText, onText, samplesText } from './deck-words.ts';
import { PaintFacts } from './paint-facts.tsx';
import { SampleBlock } from './sample-block.tsx';
import { SampleMark } from './sample-mark.tsx';

export interface DeckEntry {
  readonly id: PaintId;
  readonly paint: Paint;
  readonly lrv: Lrv;
  readonly surfaces: readonly SurfaceId[];
  readonly samples: readonly SampleStanding[];
}

export function DeckRow({ entry, open, toggle }: { entry: DeckEntry; open: boolean; toggle: () => void }) {
  const { documents } = useShow();
  const { id, paint, lrv, surfaces, samples } = entry;
  const beyond = beyondScreenText(paint.lab);
  const said = samplesText(samples, surfaces.length > 0);
  return (
    <>
      <tr className={open ? 'deck-row deck-row-open' : 'deck-row'} id={`paint-${id}`}>
        <td className="deck-row-patch">
          <i style={{ background: hexFromLabD65(paint.lab) }} />
        </td>
        <th scope="row">
          <button type="button" className="deck-row-name" aria-expanded={open} onClick={toggle}>
            {paint.name}
          </button>
          <span className="t1">{[paint.code, paint.sheen].filter(Boolean).join(', ')}</span>
          {beyond === null ? null : <span className="t1 deck-row-beyond">{beyond}</span>}
        </th>
        <td className="deck-row-lrv">
          <span className="deck-row-head">LRV </span>
          <b className="b">{Math.round(lrv.lrv)}</b> <span className="t1">{LRV_WORDS[lrv.basis]}</span>
        </td>
        <td className="deck-row-how">
          <span>{howMeasured(paint)}</span>
          {paint.measured ? <span className="t1">{paint.measured}</span> : null}
        </td>
        <td>{surfaces.length === 0 ? '' : onText(documents, surfaces)}</td>
        <td>
          {said === '' ? null : (
            <span className="word">
              <SampleMark state={samples[0]?.state ?? 'none'} />
              {said}
            </span>
          )}
        </td>
      </tr>
      {open ? (
        <tr className="deck-row-more">
          <td colSpan={6}>
            <OpenPaint entry={entry} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

function OpenPaint({ entry }: { readonly entry: DeckEntry }) {
  const show = useShow();
  const [correcting, setCorrecting] = useState(false);
  const { id, paint, surfaces } = entry;
  return (
    <div className="deck-open">
      <div className="deck-open-facts">
        <i className="deck-open-patch" style={{ background: hexFromLabD65(paint.lab) }} />
        <p>
          Shown: {labText(paint.lab)}, D65/2°
          {paint.measuredLab ? (
            <span className="t1">
              Measured: {labText(paint.measuredLab)}, {paint.measuredLab.illuminant}/{paint.measuredLab.observer}
            </span>
          ) : null}
          {paint.instrument ? <span className="t1">{paint.instrument}</span> : null}
        </p>
        {show.may('checklist') ? (
          <p className="sample-commands">
            <button type="button" aria-expanded={correcting} onClick={() => setCorrecting(!correcting)}>
              correct it…<span className="spoken"> {paint.name}</span>
            </button>
            {surfaces.length === 0 ? (
              <button
                type="button"
                onClick={() => act(show, commands.remove('deck', id, paint.name), `${paint.name} is out of the deck`)}
              >
                take it out of the deck<span className="spoken">: {paint.name}</span>
              </button>
            ) : null}
          </p>
        ) : null}
      </div>
      <SampleBlock paintId={id} name={paint.name} />
      {correcting ? (
        <PaintFacts
          paint={paint}
          leave={() => setCorrecting(false)}
          take={(facts) => {
            if (act(show, commands.correctPaint(id, facts), `${facts.name} is corrected`)) setCorrecting(false);
          }}
        />
      ) : null}
    </div>
  );
}
