/** The show's days and whose word a vignette needs: set by those who may write the hang, read by all. */
import * as commands from '@enfilade/shared/commands';
import { type Role, SIGNING_ROLES } from '@enfilade/shared/seats';
import { act } from '../cards/acting.ts';
import { useShow } from '../sync/hooks.ts';

const DAYS = [
  { key: 'agreeBy', label: 'Vignettes agreed by' },
  { key: 'hangBegins', label: 'Hang begins' },
  { key: 'opens', label: 'Opens' },
  { key: 'closes', label: 'Last day' },
] as const;

/** What the light on each work is reckoned with. */
const FIGURES = [
  { key: 'hoursPerDay', label: 'Hours lit a day', most: 24 },
  { key: 'daysPerWeek', label: 'Open days a week', most: 7 },
  { key: 'plannedLux', label: 'Lux planned', most: 100_000 },
] as const;

export function ShowDates() {
  const show = useShow();
  const { judgements, me } = show;
  // The guest artist may move things in the hang; the show's calendar is the museum's.
  const frozen = !show.may('hang') || me.person.role === 'guest artist';
  const signers = judgements.setting('signers');
  const toggle = (role: Role): void => {
    const next = signers.includes(role) ? signers.filter((other) => other !== role) : [...signers, role];
    act(show, commands.setSetting('signers', next), `whose word is needed: ${next.join(', ') || 'nobody’s'}`);
  };
  return (
    <section className="show-dates" aria-label="Days and words">
      <h2 className="it">Days, and whose word is needed</h2>
      <div className="show-dates-fields">
        {DAYS.map(({ key, label }) => (
          <label key={key}>
            {label}
            <input
              type="date"
              value={judgements.setting(key)}
              disabled={frozen}
              onChange={(event) => act(show, commands.setSetting(key, event.target.value))}
            />
          </label>
        ))}
        {FIGURES.map(({ key, label, most }) => (
          <label key={key}>
            {label}
            <input
              type="number"
              min={key === 'plannedLux' ? 0 : 1}
              max={most}
              defaultValue={judgements.setting(key)}
              key={judgements.setting(key)}
              disabled={frozen}
              onBlur={(event) => {
                const figure = event.target.valueAsNumber;
                const sound = figure >= Number(event.target.min) && figure <= most;
                if (sound && figure !== judgements.setting(key)) act(show, commands.setSetting(key, figure));
                else event.target.value = String(judgements.setting(key));
              }}
            />
          </label>
        ))}
        <fieldset disabled={frozen}>
          <legend>A vignette is agreed when these have signed</legend>
          {SIGNING_ROLES.map((role) => (
            <label key={role}>
              <input type="checkbox" checked={signers.includes(role)} onChange={() => toggle(role)} />
              {role}
            </label>
          ))}
        </fieldset>
      </div>
    </section>
  );
}
