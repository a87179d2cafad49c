/** One way to arrange: its picture, what it does, its measured terms, who else tries it, and what can be done with it. */
import { takenDown } from '@enfilade/shared/arrange-acts';
import type { Arrangement, ArrangeTask } from '@enfilade/shared/arrange-task';
import { termText, wayText } from '@enfilade/shared/arrangement-words';
import { capital } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { useMemo } from 'react';
import { usePreferences } from '../preferences.ts';
import { useFold } from '../shell/media.ts';
import { Ring } from '../shell/ring.tsx';
import { useShow } from '../sync/hooks.ts';
import type { Other } from '../sync/presence-room.ts';
import { ArrangedThumb } from './arranged-thumb.tsx';

/** On a tablet three stand beside each other too. */
const THUMB_PX = { wide: { widthPx: 320, heightPx: 160 }, tablet: { widthPx: 228, heightPx: 114 } } as const;

interface CardProps {
  readonly task: ArrangeTask;
  readonly way: Arrangement;
  readonly version: number;
  /** It is being tried here. */
  readonly on: boolean;
  /** Who else tries it. */
  readonly lookers: readonly Other[];
  readonly tryOn: () => void;
  readonly putBack: () => void;
  /** Null where this person may not. */
  readonly take: (() => void) | null;
  readonly decline: (() => void) | null;
}

export function CandidateCard({ task, way, version, on, lookers, tryOn, putBack, take, decline }: CardProps) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for where things are
  const away = useMemo(() => takenDown(judgements, task, way), [judgements, task, way, version]);
  const terms = way.terms.map((term) => termText(term, (mm) => lengthText(mm, unit)));
  const name = capital(way.name);
  return (
    <li className={on ? 'candidate candidate-on' : 'candidate'}>
      <ArrangedThumb {...{ task, way, away, version }} {...THUMB_PX[useFold() === 'tablet' ? 'tablet' : 'wide']} />
      <h3>{name}</h3>
      <p className="candidate-way">{wayText(way.name)}</p>
      {lookers.map(({ clientId, person, ring }) => (
        <p key={clientId} className="candidate-looker t1">
          <Ring name={person.name} pattern={ring} radiusPx={8} /> {person.name} tries this one
        </p>
      ))}
      <p className="candidate-acts">
        {on ? (
          <>
            {take === null ? null : (
              <button type="button" className="act main" onClick={take}>
                Take it
              </button>
            )}
            <button type="button" className="act" onClick={putBack}>
              Put back
            </button>
          </>
        ) : (
          <button type="button" className="act" aria-label={`Try it: ${name}`} onClick={tryOn}>
            Try it
          </button>
        )}
        {decline === null ? null : (
          <button type="button" className="act" aria-label={`Decline: ${name}`} onClick={decline}>
            Decline
          </button>
        )}
      </p>
      <p className="t1">{terms.join(' ')}</p>
    </li>
  );
}
