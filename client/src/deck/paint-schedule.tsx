/** The paint schedule: what each paint takes in area, coats, primer and litres, when a wall may be hung, what paper or cloth it takes. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import {
  type CoveringOrder,
  finishSurface,
  type PaintedSurface,
  type PaintRow,
  paintScheduleOf,
} from '@enfilade/shared/paint-schedule';
import { surfaceName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { act } from '../cards/acting.ts';
import { dayText } from '../cards/day-text.ts';
import { usePreferences } from '../preferences.ts';
import { PapersNav } from '../sheets/papers-nav.tsx';
import '../sheets/paper.css';
import { CautionMark } from '../shell/marks.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { CoveringForm } from './covering-form.tsx';
import './paint-schedule.css';
import './samples.css';

export function PaintSchedulePage() {
  const { judgements } = useShow();
  useRoots('deck', 'paints', 'rooms', 'openings', 'finishes', 'limits', 'settings');
  const { rows, lastCoatBy } = paintScheduleOf(judgements);
  return (
    <div className="papers">
      <PapersNav paper="paint-schedule">
        <button type="button" className="act main" onClick={() => print()}>
          Print
        </button>
        <a href={toAddress({ sheet: 'cautions' })}>limits gone by</a>
      </PapersNav>
      <article className="samples-sheet">
        <p className="t1">
          {judgements.setting('title')}, {judgements.setting('museum')}; {dayText(new Date().toISOString())}
        </p>
        <h1>Paint schedule</h1>
        <p className="t1">
          {lastCoatBy === null
            ? 'The hang has no day yet, so none can be told for the last coat.'
            : `Last coat on by ${dayText(lastCoatBy.preferred)}, at the latest ${dayText(lastCoatBy.latest)}. `}
          Litres as coats over area, bought in one batch with what the limits add. The maker’s tin and a sample board go
          before; a conservator’s word on drying goes before these days.
        </p>
        {rows.length === 0 ? <p className="cap">No wall has a paint yet.</p> : null}
        {rows.map((row) => (
          <PaintPart key={row.paintId} row={row} />
        ))}
      </article>
    </div>
  );
}

function PaintPart({ row }: { readonly row: PaintRow }) {
  const { paint, plan, areaM2, paintLitres, primerLitres, touchUpLitres } = row;
  return (
    <section className="schedule-paint" aria-label={paint.name}>
      <h2>
        <i className="schedule-patch" style={{ background: hexFromLabD65(paint.lab) }} />
        <a href={toAddress({ sheet: 'deck', paintId: row.paintId })}>{paint.name}</a>
        <span className="t1">{[paint.code, paint.sheen].filter(Boolean).join(', ')}</span>
      </h2>
      {areaM2 === 0 ? null : (
        <p>
          <b className="b">{litres(paintLitres)}</b> of paint in {plan.coats} coats
          {primerLitres > 0 ? (
            <>
              {' '}
              over <b className="b">{litres(primerLitres)}</b> of {plan.primer} primer in{' '}
              {plan.primerCoats === 1 ? 'one coat' : `${plan.primerCoats} coats`}
            </>
          ) : null}{' '}
          on {areaM2.toFixed(1)} m²; {litres(touchUpLitres)} more kept for touching up. {plan.why}
        </p>
      )}
      <table className="samples-table">
        <thead>
          <tr>
            <th scope="col">Wall</th>
            <th scope="col">Area, m²</th>
            <th scope="col">Last coat</th>
            <th scope="col">Hang not before</th>
          </tr>
        </thead>
        <tbody>
          {row.surfaces.map((one) => (
            <SurfaceRow key={one.surface} one={one} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function SurfaceRow({ one }: { readonly one: PaintedSurface }) {
  const show = useShow();
  const { surface, areaM2, lastCoat, hangFrom, tooSoon, covering } = one;
  const name = surfaceName(show.documents, surface);
  return (
    <tr>
      <th scope="row">
        <a href={toAddress({ sheet: 'wall', surface })}>{name}</a>
        {covering === null ? null : <CoveringText order={covering} />}
        {show.may('rooms') && show.judgements.where.wallOf(surface) !== null ? (
          <div className="t1">
            <CoveringForm surface={surface} name={name} />
          </div>
        ) : null}
      </th>
      <td>{areaM2.toFixed(1)}</td>
      <td>
        {covering !== null ? (
          'not painted'
        ) : show.may('rooms') ? (
          <input
            type="date"
            aria-label={`Last coat on ${name}`}
            value={lastCoat ?? ''}
            onChange={(event) =>
              act(show, finishSurface(surface, { lastCoat: event.target.value }), 'last coat written down')
            }
          />
        ) : lastCoat === null ? (
          'not painted yet'
        ) : (
          dayText(lastCoat)
        )}
      </td>
      <td>
        {hangFrom === null ? '' : `${dayText(hangFrom.earliest)}, better ${dayText(hangFrom.preferred)}`}
        {tooSoon ? (
          <span className="schedule-soon">
            <CautionMark /> the hang begins before. Ask the conservator.
          </span>
        ) : null}
      </td>
    </tr>
  );
}

function CoveringText({ order }: { readonly order: CoveringOrder }) {
  const { unit } = usePreferences();
  const { covering, strips, stripMm, rolls, clothMm, trouble } = order;
  const length = (mm: number): string => `${lengthText(mm, unit)} ${unit}`;
  if (trouble !== null)
    return (
      <span className="t1">
        {covering.name}: {trouble}.
      </span>
    );
  const take =
    rolls > 0 ? `${rolls} ${rolls === 1 ? 'roll' : 'rolls'}` : `${(clothMm / 1000).toFixed(1)} m off the bolt`;
  const repeat = covering.repeatMm > 0 ? `, repeat ${length(covering.repeatMm)}` : '';
  return (
    <span className="t1">
      {covering.name}: {take}, {strips} strips of {length(stripMm)}
      {repeat}; one batch
    </span>
  );
}

function litres(figure: number): string {
  return `${figure.toFixed(1)} l`;
}
