/** The limits cautions go by, each with its ground: read by all, edited by the lead for the museum's own jurisdiction. */
import type { LimitName } from '@enfilade/practice/practice-profile';
import * as commands from '@enfilade/shared/commands';
import { KNOWN_PROFILES, practiceProfileOf, setLimit, startingProfileOf } from '@enfilade/shared/practice-limits';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { limitWords } from './limit-words.ts';

const OTHER = 'another: begin from the first';

export function PracticeLimits() {
  const show = useShow();
  const { documents, me, judgements } = show;
  useRoots('limits', 'settings');
  const [open, setOpen] = useState(false);
  const profile = practiceProfileOf(documents);
  const edits = me.person.role === 'lead' && show.may('rooms') && show.may('hang');
  const jurisdiction = judgements.setting('jurisdiction');
  const own = documents.all('limits').size;
  const known = KNOWN_PROFILES.map((one) => one.jurisdiction);
  return (
    <section className="limits" aria-label="Limits gone by">
      <div className="limits-head">
        <h2 className="it">Limits gone by</h2>
        <p>
          {profile.jurisdiction}
          {own === 0 ? '' : `, ${own} of the museum’s own`}
        </p>
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? 'fold them' : edits ? 'see and edit them' : 'see them'}
        </button>
      </div>
      {open ? (
        <>
          <p className="t1">
            What local code, a contract or a conservator says goes before any of these.{' '}
            {edits ? '' : 'The lead edits them.'}
          </p>
          <p>
            <label>
              <input
                type="checkbox"
                checked={judgements.setting('labelsOnWalls') === true}
                disabled={!edits}
                onChange={(event) =>
                  act(show, commands.setSetting('labelsOnWalls', event.target.checked), 'labels and wall space set')
                }
              />{' '}
              Labels on the walls: drawn, and nothing is arranged over the place beside a work where its label goes
            </label>
          </p>
          {edits ? (
            <p>
              <label>
                Jurisdiction{' '}
                <select
                  value={known.includes(jurisdiction) ? jurisdiction : OTHER}
                  onChange={(event) =>
                    act(show, commands.setSetting('jurisdiction', event.target.value), 'jurisdiction set')
                  }
                >
                  {[...known, ...(known.includes(jurisdiction) ? [] : [OTHER])].map((name) => (
                    <option key={name}>{name}</option>
                  ))}
                </select>
              </label>
            </p>
          ) : null}
          <table>
            <thead>
              <tr>
                <th scope="col">Limit</th>
                <th scope="col">Value</th>
                <th scope="col">On what ground</th>
                <th scope="col">
                  <span className="spoken">Back to the jurisdiction’s</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {(Object.keys(profile.limits) as LimitName[]).map((name) => (
                <LimitRow key={name} name={name} edits={edits} />
              ))}
            </tbody>
          </table>
        </>
      ) : null}
    </section>
  );
}

function LimitRow({ name, edits }: { readonly name: LimitName; readonly edits: boolean }) {
  const show = useShow();
  const { documents } = show;
  const { value, source } = practiceProfileOf(documents).limits[name];
  const { label, unit } = limitWords(name);
  const [typed, setTyped] = useState<{ readonly value?: string; readonly source?: string }>({});
  const edited = documents.get('limits', name) !== undefined;
  const settle = (): void => {
    const next = Number((typed.value ?? String(value)).replace(',', '.'));
    const ground = (typed.source ?? source).trim();
    const sound = next > 0 && next < 1e9 && ground !== '';
    // A figure of one's own stands on one's own ground: the standard's name would vouch for what it does not say.
    const changed = next !== value || ground !== source;
    const honest = next === value || ground !== startingSource(show, name) ? ground : 'the museum’s own';
    setTyped({});
    if (sound && changed) act(show, setLimit(name, { value: next, source: honest }), `${label}: ${next}`);
  };
  if (!edits) {
    return (
      <tr>
        <th scope="row">{label}</th>
        <td className="b">
          {value} {unit}
        </td>
        <td>{source}</td>
        <td />
      </tr>
    );
  }
  return (
    <tr>
      <th scope="row">
        {label}
        {unit === '' ? '' : `, ${unit}`}
      </th>
      <td>
        <input
          aria-label={label}
          inputMode="decimal"
          value={typed.value ?? String(value)}
          onChange={(event) => setTyped({ ...typed, value: event.target.value })}
          onKeyDown={(event) => event.key === 'Enter' && settle()}
          onBlur={settle}
        />
      </td>
      <td>
        <input
          aria-label={`Ground of ${label}`}
          value={typed.source ?? source}
          onChange={(event) => setTyped({ ...typed, source: event.target.value })}
          onKeyDown={(event) => event.key === 'Enter' && settle()}
          onBlur={settle}
        />
      </td>
      <td>
        {edited ? (
          <button type="button" onClick={() => act(show, setLimit(name, null), `${label} as the jurisdiction has it`)}>
            back<span className="spoken"> to the jurisdiction’s: {label}</span>
          </button>
        ) : null}
      </td>
    </tr>
  );
}

function startingSource({ judgements }: ReturnType<typeof useShow>, name: LimitName): string {
  return startingProfileOf(judgements.setting('jurisdiction')).limits[name].source;
}
