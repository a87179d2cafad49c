/** Every caution of the show in one list, by what it is about: of which piece, whom to ask, who accepted it. */
import { CAUTION_SUBJECTS, type CautionSubject } from '@enfilade/practice/accepting';
import { DEFERRAL } from '@enfilade/practice/cautions';
import { acceptingOf, acceptorsText, type StandingCaution, standingCautionsOf } from '@enfilade/shared/accepted';
import { isInShow } from '@enfilade/shared/piece-cautions';
import { useMemo, useState } from 'react';
import { cautionWordsIn } from '../cards/caution-words.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { alikeOf } from './alike.ts';
import { AlikeCautions } from './alike-cautions.tsx';
import { PracticeLimits } from './practice-limits.tsx';
import './talk-pages.css';
import './cautions.css';

/** The whole show is read for this page: it keeps up within this, ms. */
const REST_MS = 250;
const SUBJECTS: readonly CautionSubject[] = ['load and hanging', 'ways and exits', 'light and materials', 'loans'];

export function Cautions() {
  const { judgements, documents, me } = useShow();
  const { unit } = usePreferences();
  // biome-ignore format: one list
  const version = useRestingRoots(REST_MS, 'objects', 'pieces', 'places', 'rooms', 'openings', 'fixtures', 'loans', 'lights', 'limits', 'settings', 'acceptances', 'labelSides');
  const [mine, setMine] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  const all = useMemo(
    () =>
      [...documents.all('places').keys()]
        .filter((pieceId) => isInShow(judgements.where.placeOf(pieceId)))
        .sort()
        .flatMap((pieceId) => standingCautionsOf(judgements, pieceId, cautionWordsIn(unit))),
    [documents, judgements, unit, version],
  );
  const forMe = all.filter((one) => one.accepted === null && acceptingOf(one.caution, me.person.role) !== null);
  const shown = mine ? forMe : all;
  return (
    <div className="talk-page cautions-page">
      <header className="talk-head">
        <h1>Cautions</h1>
        <p className="cap">
          {headText(all)} {DEFERRAL}
        </p>
        <nav aria-label="Which cautions">
          <button type="button" className={mine ? 'cmd on' : 'cmd'} aria-pressed={mine} onClick={() => setMine(!mine)}>
            only mine to accept {forMe.length}
          </button>
        </nav>
      </header>
      {SUBJECTS.map((subject) => {
        const own = shown.filter(({ caution }) => CAUTION_SUBJECTS[caution.kind] === subject);
        const [first] = own;
        if (first === undefined) return null;
        return (
          <section key={subject} className="caution-subject" aria-label={subject}>
            <div>
              <h2 className="it">{subject}</h2>
              <p className="t1">for {acceptorsText(first.caution)} to accept</p>
            </div>
            <ol>
              {alikeOf(own).map((alike) => (
                <AlikeCautions key={alike.key} alike={alike} />
              ))}
            </ol>
          </section>
        );
      })}
      <PracticeLimits />
    </div>
  );
}

function headText(all: readonly StandingCaution[]): string {
  if (all.length === 0) return 'Nothing is known to be amiss with what is placed; that is no promise.';
  const open = all.filter(({ accepted }) => accepted === null).length;
  const count = `${all.length} ${all.length === 1 ? 'caution' : 'cautions'} on what is placed`;
  return open === 0 ? `${count}, each accepted as it stands.` : `${count}; ${open} nobody has accepted.`;
}

export default Cautions;
