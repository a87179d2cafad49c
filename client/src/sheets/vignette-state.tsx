/** The state of a vignette as the list tells it: its mark and word, who signed and when, and what changed since. */

import { type ChangeWords, changeText } from '@enfilade/shared/change-sentences';
import type { VignetteListRow } from '@enfilade/shared/vignette-list';
import type { ReactNode } from 'react';
import { dayText } from '../cards/day-text.ts';

interface VignetteStateProps {
  readonly row: VignetteListRow;
  readonly words: ChangeWords;
  readonly mark: ReactNode;
}

export function VignetteState({ row: { standing }, words, mark }: VignetteStateProps) {
  return (
    <>
      <span className="word vl-state">
        {mark}
        {standing.state}
      </span>
      <ul className="vl-members">
        {standing.signatures.map(({ personId, name, role, at, changes }) => (
          <li key={personId}>
            {changes.length === 0 ? 'signed off by' : 'was signed by'} {name}, {role}, {dayText(at)}
          </li>
        ))}
        {standing.changes.length === 0 ? null : (
          <li>
            <b className="b">since then:</b> {changeText(standing.changes, words)}
          </li>
        )}
        {standing.waitingFor.length === 0 ? null : <li>waiting for {standing.waitingFor.join(', ')}</li>}
      </ul>
    </>
  );
}
