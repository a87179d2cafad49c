/** Along the foot: the moves of the proposal one is in, to be taken, left, settled; and its end. */
import { useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { GroupCard, GroupList } from './group-card.tsx';
import type { InProposal } from './in-proposal.ts';
import { MoveCard } from './move-card.tsx';
import { ProposalAnswer } from './proposal-answer.tsx';
import { wordsOf } from './proposal-words.ts';
import './proposal-foot.css';

export function ProposalFoot({ inside }: { readonly inside: InProposal }) {
  const { unit } = usePreferences();
  const [opened, setOpened] = useState<string | null>(null);
  const words = wordsOf(inside, unit);
  const { entries } = inside;
  const group = entries.find(({ id, moves }) => id === opened && moves.length > 1);
  return (
    <section className="proposal-foot" aria-label="The proposal’s moves">
      <ProposalAnswer inside={inside} />
      <div className="proposal-moves">
        {entries.length === 0 ? (
          <p className="cap proposal-none">
            No move yet. Drag things, bring them from the unplaced, paint the wall, gather a vignette: each lands here,
            and the hang stays as it is.
          </p>
        ) : (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be scrolled by keys
          <ul className="move-cards" aria-label="Moves" tabIndex={0}>
            {entries.map((entry) => {
              const [only] = entry.moves;
              if (only === undefined) return null;
              return entry.moves.length === 1 ? (
                <MoveCard key={entry.id} inside={inside} move={only} number={entry.number} words={words} />
              ) : (
                <GroupCard
                  key={entry.id}
                  inside={inside}
                  entry={entry}
                  words={words}
                  open={entry.id === opened}
                  toggle={() => setOpened(entry.id === opened ? null : entry.id)}
                />
              );
            })}
          </ul>
        )}
        {group === undefined ? null : <GroupList inside={inside} entry={group} words={words} />}
      </div>
    </section>
  );
}
