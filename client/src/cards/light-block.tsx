/** A sensitive work's light: how sensitive, how much is planned on it, and how much of its year's budget the show takes. */
import { type LightOfPiece, lightOf, openDaysOf, planLight, plannedLuxOf } from '@enfilade/shared/light-plan';
import type { PieceId } from '@enfilade/shared/schema';
import { useRoots, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { CardGroup } from './card-group.tsx';
import { TypedField } from './typed-field.tsx';

export function LightBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const show = useShow();
  const { judgements, documents } = show;
  useRoots('lights', 'limits', 'settings');
  const light = lightOf(judgements, pieceId);
  if (light === null || judgements.where.placeOf(pieceId) === null) return null;
  const frozen = !show.may('rooms');
  const own = documents.get('lights', pieceId)?.lux;
  const lux = plannedLuxOf(judgements, pieceId);
  return (
    <CardGroup name="Light" brief={briefOf(light)}>
      <TypedField
        label={own === undefined ? 'Lux, as on its wall' : 'Lux, its own'}
        text={lux === null ? null : String(lux)}
        frozen={frozen}
        take={(typed) => {
          if (typed === '') return set(null);
          const figure = Number(typed.replace(/\s*(lux|lx)$/i, ''));
          return figure > 0 && figure <= 100_000 ? set(figure) : 'a number of lux above 0; empty: as on its wall';
        }}
      />
      {linesOf(light, openDaysOf(judgements)).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className="t1 q">After CIE 157; a conservator decides, and the lender’s terms go before.</p>
    </CardGroup>
  );

  function set(figure: number | null): string | null {
    const said = figure === null ? 'lit as its wall is' : `${figure} lux planned on it`;
    return act(show, planLight(pieceId, figure), said) ? null : 'cannot be set just now';
  }
}

/** 'R3, 2.7 years in one', 'class not known'. */
function briefOf({ read, budget }: LightOfPiece): string {
  const lightClass = read.lightClass ?? 'class not known';
  return budget === null ? lightClass : `${lightClass}, ${shareText(budget.years)}`;
}

function shareText(years: number): string {
  return years > 1 ? `${years.toFixed(1)} years’ light` : `${Math.round(years * 100)} % of a year’s light`;
}

function linesOf({ read, exposure, budget }: LightOfPiece, days: number | null): string[] {
  const because = read.because.length === 0 ? '' : `: ${[...new Set(read.because)].join(', ')}`;
  const lines = [
    read.lightClass === null ? 'What it is made of says no light class.' : `Class ${read.lightClass}${because}.`,
  ];
  if (read.askConservator) lines.push('Ask the conservator: its record does not settle it.');
  if (exposure === null)
    lines.push(days === null ? 'The show’s days are not set.' : 'No light is planned where it is.');
  else {
    const { lux, hoursPerDay, days: open } = exposure;
    const dose = (lux * hoursPerDay * open).toLocaleString('en-GB');
    lines.push(`${open} open days of ${hoursPerDay} h at ${lux} lux: ${dose} lux hours.`);
  }
  if (budget !== null) {
    const most = budget.limits.luxHoursAYear.toLocaleString('en-GB');
    lines.push(`A year’s budget is ${most} lux hours, at ${budget.limits.lux} lux at most.`);
    if (budget.over)
      lines.push(`It is spent after ${budget.lastsDays} open days: rotate it, swap it, or lower the light.`);
  }
  return lines;
}
