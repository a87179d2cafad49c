/** Beside the wall: what the proposal would do beyond its own moves, in words with marks. */
import { effectsOf } from '@enfilade/shared/proposal-effects';
import type { RootName } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { useEffect, useMemo, useState } from 'react';
import { usePreferences } from '../preferences.ts';
import { CautionMark, ReadingMark, StateMark } from '../shell/marks.tsx';
import { usePictures, useRoots } from '../sync/hooks.ts';
import { useAddress, viewFrom } from '../view-address.ts';
import { type EffectLine, effectLines } from './effect-sentences.ts';
import type { InProposal } from './in-proposal.ts';
import { stateOf } from './open-proposals.ts';
import { GapMark } from './proposal-mark.tsx';
import { wordsOf } from './proposal-words.ts';
import { showPieces } from './where-move.ts';
import './proposal-effects.css';

/** Worked out once things have rested so long (ms): never while a hand moves them. */
const REST_MS = 250;

const ROOTS_READ = [
  'proposed',
  'places',
  'paints',
  'vignettes',
  'memberOf',
  'objects',
  'pieces',
  'deck',
  'rooms',
  'openings',
  'fixtures',
  'signatures',
  'settings',
] as const satisfies readonly RootName[];

export function ProposalEffects({ inside }: { readonly inside: InProposal }) {
  const { unit } = usePreferences();
  const view = viewFrom(useAddress());
  const version = useRoots(...ROOTS_READ);
  const pictures = usePictures();
  const rested = useRested(`${inside.id}|${version}|${pictures}`);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was read is told by its rested version
  const lines = useMemo(() => {
    const { hang, shown, moves } = inside;
    const effects = effectsOf(hang.judgements, shown.judgements, moves, {
      length: (mm) => `${lengthText(mm, unit)} ${unit}`,
      weight: (kg) => `${Number(kg.toFixed(1))} kg`,
    });
    return effectLines(effects, wordsOf(inside, unit));
  }, [rested, unit, inside.hang, inside.shown]);
  if (stateOf(inside.proposal) !== 'open') return null;
  return (
    <section className="proposal-effects" aria-label="What it does">
      <h2>What it does</h2>
      {lines.length === 0 ? (
        <p className="t1">Nothing beyond its moves: no reading, no gap, no caution, no signature changes.</p>
      ) : (
        <ul>
          {lines.map((line) => (
            <li key={line.mark.kind + line.about + line.rest}>
              <Mark of={line.mark} />
              <p className="t1">
                {line.pieces.length === 0 ? (
                  <i className="it">{line.about}</i>
                ) : (
                  <button type="button" className="it" onClick={() => showPieces(inside, line.pieces, view)}>
                    {line.about}
                  </button>
                )}
                {line.rest}
              </p>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Mark({ of }: { readonly of: EffectLine['mark'] }) {
  if (of.kind === 'reading') return <ReadingMark word={of.word} sizePx={14} />;
  if (of.kind === 'caution') return <CautionMark sizePx={14} />;
  if (of.kind === 'gap') return <GapMark />;
  return <StateMark state="changed since" sizePx={12} />;
}

function useRested(key: string): string {
  const [rested, setRested] = useState(key);
  useEffect(() => {
    const timer = setTimeout(() => setRested(key), REST_MS);
    return () => clearTimeout(timer);
  }, [key]);
  return rested;
}
