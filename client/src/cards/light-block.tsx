/** A sensitive work's light: how sensitive, how much is planned on it, and how much of its year's budget the show takes. */
import { type LightOfPiece, lightOf, lightOn, openDaysOf, planLight, readLight } from '@enfilade/shared/light-plan';
import type { PieceId } from '@enfilade/shared/schema';
import { useRoots, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { CardGroup } from './card-group.tsx';
import { dayText } from './day-text.ts';
import { luxFrom } from './lux-from.ts';
import { TypedField } from './typed-field.tsx';

export function LightBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const show = useShow();
  const { judgements, documents } = show;
  useRoots('lights', 'limits', 'settings');
  const light = lightOf(judgements, pieceId);
  if (light === null || judgements.where.placeOf(pieceId) === null) return null;
  const frozen = !show.may('rooms');
  const own = documents.get('lights', pieceId);
  const there = lightOn(judgements, pieceId);
  return (
    <CardGroup name="Light" brief={briefOf(light)}>
      <TypedField
        label={own?.lux === undefined ? 'Lux, as on its wall' : 'Lux, its own'}
        text={own?.lux === undefined ? (there === null ? null : String(there.lux)) : String(own.lux)}
        frozen={frozen}
        take={(typed) =>
          luxFrom(typed, (lux) =>
            act(
              show,
              planLight(documents, pieceId, lux),
              lux === null ? 'lit as its wall is' : `${lux} lux planned on it`,
            ),
          )
        }
      />
      <TypedField
        label="Lux read on it"
        text={own?.read === undefined ? null : String(own.read.lux)}
        absent="not read"
        frozen={frozen}
        {...(own?.read === undefined
          ? {}
          : { hint: `${own.read.by}, ${dayText(own.read.on)}; goes before what is planned` })}
        take={(typed) =>
          luxFrom(typed, (lux) => {
            const on = new Date().toISOString().slice(0, 10);
            const read = lux === null ? null : { lux, by: show.me.person.name, on };
            return act(
              show,
              readLight(documents, pieceId, read),
              lux === null ? 'reading taken away' : `${lux} lux read on it`,
            );
          })
        }
      />
      {linesOf(light, openDaysOf(judgements), there?.from === 'read' ? ', as read' : '').map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className="t1 q">After CIE 157; a conservator decides, and the lender’s terms go before.</p>
    </CardGroup>
  );
}

/** 'R3, 2.7 years in one', 'class not known'. */
function briefOf({ read, budget }: LightOfPiece): string {
  const lightClass = read.lightClass ?? 'class not known';
  return budget === null ? lightClass : `${lightClass}, ${shareText(budget.years)}`;
}

/** '2.7 years’ light', '84 % of a year’s light'. */
export function shareText(years: number): string {
  return years > 1 ? `${years.toFixed(1)} years’ light` : `${Math.round(years * 100)} % of a year’s light`;
}

function linesOf({ read, exposure, budget }: LightOfPiece, days: number | null, asRead: string): string[] {
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
    lines.push(`${open} open days of ${hoursPerDay} h at ${lux} lux${asRead}: ${dose} lux hours.`);
  }
  if (budget !== null) {
    const most = budget.limits.luxHoursAYear.toLocaleString('en-GB');
    lines.push(`A year’s budget is ${most} lux hours, at ${budget.limits.lux} lux at most.`);
    if (budget.over)
      lines.push(`It is spent after ${budget.lastsDays} open days: rotate it, swap it, or lower the light.`);
  }
  return lines;
}
