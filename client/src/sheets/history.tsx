/** The show's past: states that were kept, to look at or bring back, and who did what, when. */
import { type FormEvent, useState } from 'react';
import { dayText } from '../cards/day-text.ts';
import { lengthText, usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { Ring } from '../shell/ring.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { deedSentence, piecesOfDeed } from '../talk/deed-sentences.ts';
import { viewOfSurface } from '../talk/remark-words.ts';
import { useHistoryPages } from '../talk/use-history.ts';
import { go } from '../view-address.ts';
import { KeptStates } from './kept-states.tsx';
import './history.css';
import './talk-pages.css';

export function HistoryPage() {
  const version = useRoots(
    'places',
    'paints',
    'vignettes',
    'memberOf',
    'objects',
    'rooms',
    'proposals',
    'remarks',
    'states',
  );
  return (
    <div className="talk-page history">
      <header className="talk-head">
        <h1>History</h1>
      </header>
      <div className="history-columns">
        <section aria-label="Kept states">
          <h2>Kept states</h2>
          <p className="t1">
            The hang is kept by itself at each sign-off and as each day found it. Look at a state on its walls, compare
            it, bring it back whole or one vignette of it; bringing back is one act, and one undo takes it back.
          </p>
          <KeepForm />
          <KeptStates />
        </section>
        <section aria-label="Who did what">
          <h2>Who did what</h2>
          <Deeds version={version} />
        </section>
      </div>
    </div>
  );
}

function KeepForm() {
  const show = useShow();
  const [name, setName] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  if (!show.may('talk')) return null;
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const answer = await show.send('keep-state', { name });
    setTrouble(answer.ok ? null : answer.what);
    if (!answer.ok) return;
    say(`The hang is kept as ${name}`);
    setName('');
  };
  return (
    <form className="history-keep" onSubmit={(event) => void keep(event)}>
      <label>
        <span className="t1">Keep the hang as it stands, as</span>
        <input value={name} maxLength={120} onChange={(event) => setName(event.target.value)} />
      </label>
      <button type="submit" disabled={name.trim() === ''}>
        keep
      </button>
      {trouble === null ? null : (
        <p className="t1 b" role="alert">
          {trouble}
        </p>
      )}
    </form>
  );
}

function Deeds({ version }: { readonly version: number }) {
  const show = useShow();
  const { unit } = usePreferences();
  const { deeds, older, trouble, more } = useHistoryPages(version);
  const { judgements } = show;
  const words = { judgements, length: (mm: number) => `${lengthText(mm, unit)} ${unit}` };
  const days = new Map<string, (typeof deeds)[number][]>();
  for (const deed of deeds) {
    const day = dayText(deed.at);
    days.set(day, [...(days.get(day) ?? []), deed]);
  }
  return (
    <>
      {trouble === null ? null : <p className="t1 b">{trouble}</p>}
      {deeds.length === 0 && trouble === null ? (
        <p className="cap">Nothing has been changed since the show was made.</p>
      ) : null}
      {[...days].map(([day, list]) => (
        <section key={day} aria-label={day}>
          <h3 className="it">{day}</h3>
          <ol className="history-deeds">
            {list.map((deed) => {
              const pieces = piecesOfDeed(deed.changes);
              const surface = pieces.map((id) => judgements.where.surfaceOf(id)).find((on) => on !== null);
              const view = surface ? viewOfSurface(surface) : null;
              return (
                <li key={deed.n}>
                  <Ring name={deed.name} pattern={show.presence.ringOf(deed.personId)} radiusPx={9.5} />
                  <span>
                    {deed.name} {deedSentence(deed, words)},{' '}
                    <time dateTime={deed.at}>
                      {new Date(deed.at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}
                    </time>
                  </span>
                  {view === null ? null : (
                    <button
                      type="button"
                      onClick={() => {
                        go(view);
                        choose(pieces.filter((id) => judgements.where.placeOf(id) !== null));
                      }}
                    >
                      go there
                    </button>
                  )}
                </li>
              );
            })}
          </ol>
        </section>
      ))}
      {older ? (
        <button type="button" onClick={more}>
          older
        </button>
      ) : null}
    </>
  );
}

export default HistoryPage;
