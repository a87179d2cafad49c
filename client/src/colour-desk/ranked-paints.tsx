/** The paints that do best what is asked, unlike each other, each with every work's word; the reason in words. */
import { isInScreenGamut } from '@enfilade/colour/paints';
import { rankPaints } from '@enfilade/colour/rank-paints';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { DeskWall, DeskWork } from '@enfilade/shared/colour-desk';
import { answersOf, wallsBeside, wishedWorksOf } from '@enfilade/shared/paint-wishes';
import { useMemo, useState } from 'react';
import { useStore } from '../selection.ts';
import { ReadingMark } from '../shell/marks.tsx';
import { useDeskLight } from './desk-light.tsx';
import { held, moving } from './desk-trial.ts';
import type { DeckChip } from './use-deck.ts';
import { type Limits, lightnessFrom, NO_LIMITS, WishForm } from './wish-form.tsx';
import { wishes } from './wishes.ts';
import './ranked-paints.css';

/** ΔE00 from which two walls are plainly of two paints, and to which they are near. Common practice, no source. */
const PLAINLY = 15;
const NEAR = 25;
const MOST = 12;
/** More works than these are counted on a chip. */
const NAMED = 3;

interface RankedProps {
  readonly wall: DeskWall;
  readonly deck: readonly DeckChip[];
  readonly works: readonly DeskWork[];
  readonly version: string;
  readonly toggle: (chip: DeckChip) => void;
}

export function RankedPaints({ wall, deck, works, version, toggle }: RankedProps) {
  const { judgements } = useDeskLight();
  const asked = useStore(wishes);
  const under = useStore(moving);
  const holding = useStore(held).get(wall.surface);
  const [limits, setLimits] = useState<Limits>(NO_LIMITS);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the judgements say
  const ranked = useMemo(() => {
    const lightness = lightnessFrom(limits);
    const list = [...asked.values()];
    const { wished, owners } = wishedWorksOf(judgements, list);
    if (wished.length === 0 || lightness === null) return null;
    const next = wallsBeside(wall.surface).flatMap((surface) => judgements.paintOf(surface)?.lab ?? []);
    const bound = { any: {}, unlike: { least: PLAINLY }, near: { most: NEAR } }[limits.beside];
    const beside = limits.beside === 'any' ? [] : next.map((lab) => ({ lab, ...bound }));
    const thresholds = judgements.readingThresholds();
    const seen = deck.map((chip) => ({ lab: chip.seen, chip }));
    const { top, leftOut } = rankPaints(seen, wished, { lightness, beside, thresholds, most: MOST });
    return { leftOut, top: top.map((one) => ({ ...one, answers: answersOf(one, list, owners) })) };
  }, [judgements, version, asked, limits, deck, wall.surface]);
  const here = works.filter(({ surface }) => surface === wall.surface);
  const out = ranked === null ? 0 : ranked.leftOut.lightness + ranked.leftOut.beside;
  return (
    <div className="ranked">
      <WishForm
        here={here}
        limits={limits}
        setLimits={setLimits}
        leftOut={out === 0 ? null : `${out} of ${deck.length} paints are left out by these bounds.`}
      />
      {ranked === null ? null : ranked.top.length === 0 ? (
        <p className="cap">No paint of the deck is within these bounds.</p>
      ) : (
        <ol
          className="ranked-list"
          aria-label="Paints that do it best, unlike each other"
          onPointerLeave={() => moving.set(null)}
        >
          {ranked.top.map(({ paint: { chip: paint }, answers, reason }, index) => {
            const isHeld = holding === paint.id;
            const tried = under?.id === paint.id || (under === null && isHeld);
            return (
              <li key={paint.id}>
                <button
                  type="button"
                  className={`bare ranked-paint${tried ? ' ranked-tried' : ''}`}
                  aria-pressed={isHeld}
                  onPointerEnter={(event) => {
                    if (event.pointerType !== 'touch') moving.set(paint);
                  }}
                  onFocus={(event) => {
                    if (event.currentTarget.matches(':focus-visible')) moving.set(paint);
                  }}
                  onBlur={() => moving.set(null)}
                  onClick={() => toggle(paint)}
                >
                  <i className="ranked-patch" style={{ background: hexFromLabD65(paint.seen) }} />
                  <span className="ranked-name">
                    <b className="b">{index + 1}</b> {paint.name}
                    {isInScreenGamut(paint.seen) ? null : <span className="b"> beyond this screen</span>}
                    <span>{isHeld ? ' held' : paint.id === wall.paint.id ? ' now' : ''}</span>
                  </span>
                  {answers.slice(0, NAMED).map(({ work, reading }) => (
                    <span key={work.id} className="ranked-word" title={reading.reason}>
                      <ReadingMark word={reading.word} sizePx={11} />
                      <span>
                        {reading.word}: <i className="it">{work.title}</i>
                      </span>
                    </span>
                  ))}
                  <span className="ranked-reason">
                    {answers.length > NAMED ? `and ${answers.length - NAMED} more. ` : ''}
                    {reason}
                  </span>
                </button>
              </li>
            );
          })}
        </ol>
      )}
    </div>
  );
}
