/** The state of a vignette as the list tells it: its mark and word, who signed and when, and what changed since. */
import type { VignetteState as State } from '@enfilade/shared/judgements';
import { capital } from '@enfilade/shared/surface-names';
import type { ReactNode } from 'react';
import { dayText } from '../cards/day-text.ts';
import type { Overtaken } from '../cards/overtaken.tsx';
import { StateMark } from '../shell/marks.tsx';

interface VignetteStateProps {
  readonly state: State;
  readonly signatures: readonly {
    readonly name: string;
    readonly role: string;
    readonly at: string;
    readonly changed: boolean;
  }[];
  readonly overtaken: readonly Overtaken[];
  readonly waitingFor: readonly string[];
  /** What can be done about it here. */
  readonly children?: ReactNode;
}

export function VignetteState({ state, signatures, overtaken, waitingFor, children }: VignetteStateProps) {
  return (
    <>
      <span className="word vl-state">
        <StateMark state={state} />
        {state}
      </span>
      <ul className="vl-members">
        {signatures.map(({ name, role, at, changed }) => (
          <li key={`${name} ${role}`}>
            {changed ? 'was signed by' : 'signed off by'} {name}, {role}, {dayText(at)}
          </li>
        ))}
        {overtaken.map(({ names, sentences }) => (
          <li key={names}>
            <b className="b">since {overtaken.length === 1 ? 'then' : `${names} signed`}:</b>{' '}
            {capital(sentences.join('; '))}
          </li>
        ))}
        {waitingFor.length === 0 ? null : <li>waiting for {waitingFor.join(', ')}</li>}
      </ul>
      {children === undefined ? null : <span className="vl-act">{children}</span>}
    </>
  );
}
