/** The deck along the foot: moving along it tries each paint on the chosen wall; a press holds it there. */
import { isInScreenGamut } from '@enfilade/colour/paints';
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { type DeskWall, type DeskWork, deskCellOf } from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { type KeyboardEvent, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { act } from '../cards/acting.ts';
import { PaintForm } from '../cards/paint-form.tsx';
import { useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { ReadingMark } from '../shell/marks.tsx';
import { Ring } from '../shell/ring.tsx';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { useDeskLight } from './desk-light.tsx';
import { held, hold, letGo, moving, useOthersHere } from './desk-trial.ts';
import { RankedPaints } from './ranked-paints.tsx';
import type { DeckChip } from './use-deck.ts';
import '../cards/paint-drawer.css';
import './desk-deck.css';

interface DeckProps {
  readonly wall: DeskWall;
  readonly deck: readonly DeckChip[];
  /** The work whose cell is open: each paint says how it reads there. */
  readonly work: DeskWork | null;
  /** All that stands across. */
  readonly works: readonly DeskWork[];
  readonly version: string;
}

const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1, PageDown: 8, PageUp: -8 };

export function DeskDeck({ wall, deck, work, works, version }: DeckProps) {
  const show = useShow();
  const { documents } = show;
  const { judgements } = useDeskLight();
  const holding = useStore(held).get(wall.surface);
  const [onlyCarries, setOnly] = useState(false);
  const [how, setHow] = useState<'all' | 'typing' | 'ranked'>('all');
  const [at, setAt] = useState<string | null>(null);
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => () => moving.set(null), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the judgements say
  const worded = useMemo(
    () =>
      deck.map((chip) => ({
        ...chip,
        word: work === null ? null : (deskCellOf(judgements, work, chip.seen)?.reading.word ?? null),
      })),
    [judgements, version, deck, work],
  );
  const carrying = worded.filter(({ word }) => word === 'carries').length;
  const filtered = work !== null && onlyCarries && carrying > 0;
  const chips = filtered ? worded.filter(({ word }) => word === 'carries') : worded;
  const entry = chips.some(({ id }) => id === at) ? at : (chips.find(({ id }) => id === holding) ?? chips[0])?.id;
  const toggle = (chip: DeckChip): void => {
    if (holding === chip.id) {
      letGo(wall.surface);
      say('The trial is let go.');
    } else {
      hold(wall.surface, chip.id);
      say(`${chip.name} is on trial on ${wall.roomName}, ${wall.wallName}. The hang stays as it is.`);
    }
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const buttons = [...(list.current?.querySelectorAll<HTMLButtonElement>('button') ?? [])];
    const now = buttons.indexOf(document.activeElement as HTMLButtonElement);
    const step = STEPS[event.key];
    const to =
      event.key === 'Home' ? 0 : event.key === 'End' ? buttons.length - 1 : step === undefined ? null : now + step;
    if (to === null) return;
    event.preventDefault();
    const next = buttons[Math.min(buttons.length - 1, Math.max(0, to))];
    next?.focus();
    next?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  return (
    <section className="deck desk-deck" aria-label={`The deck, tried on ${wall.roomName}, ${wall.wallName}`}>
      <div className="deck-about">
        <h2>The deck</h2>
        <p className="t1">
          {deck.length} paints, darkest first, tried on {wall.roomName}, {wall.wallName}
        </p>
        <p className="deck-commands t1">
          {work === null || how !== 'all' ? null : carrying === 0 ? (
            <span>{work.title} carries on none.</span>
          ) : (
            <button
              type="button"
              className={filtered ? 'cmd on' : 'cmd'}
              aria-pressed={filtered}
              onClick={() => setOnly(!onlyCarries)}
            >
              {carrying === 1 ? 'the one' : `the ${carrying}`} it carries on
            </button>
          )}
          <button
            type="button"
            className={how === 'ranked' ? 'cmd on' : 'cmd'}
            aria-expanded={how === 'ranked'}
            onClick={() => setHow(how === 'ranked' ? 'all' : 'ranked')}
          >
            {how === 'ranked' ? 'the whole deck' : 'find paints that…'}
          </button>
          {show.may('checklist') ? (
            <button
              type="button"
              aria-expanded={how === 'typing'}
              onClick={() => setHow(how === 'typing' ? 'all' : 'typing')}
            >
              type L* a* b*
            </button>
          ) : null}
          <a href={toAddress({ sheet: 'deck', paintId: wall.paint.id })}>measurements and samples</a>
        </p>
      </div>
      {how === 'ranked' ? (
        <RankedPaints wall={wall} deck={deck} works={works} version={version} toggle={toggle} />
      ) : how === 'typing' ? (
        <PaintForm
          taking="Hold it on trial"
          notYet="Nothing is tried yet"
          tryOn={(paint) => moving.set({ id: null, ...paint })}
          take={(paint) => {
            const added = commands.addPaint(documents, paint);
            moving.set(null);
            setHow('all');
            if (act(show, added, `${paint.name} is in the deck and on trial`)) hold(wall.surface, added.id);
          }}
          leave={() => {
            moving.set(null);
            setHow('all');
          }}
        />
      ) : chips.length === 0 ? (
        <p className="cap deck-none">No paint in the deck yet.</p>
      ) : (
        <ul ref={list} className="deck-chips" onKeyDown={onKeyDown} onPointerLeave={() => moving.set(null)}>
          {chips.map((chip) => (
            <li key={chip.id}>
              <Chip
                chip={chip}
                wall={wall}
                work={work}
                isHeld={holding === chip.id}
                entry={chip.id === entry}
                reach={setAt}
                toggle={() => toggle(chip)}
              />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

interface ChipProps {
  readonly chip: DeckChip & { readonly word: ReadingWord | null };
  readonly wall: DeskWall;
  readonly work: DeskWork | null;
  readonly isHeld: boolean;
  /** Where Tab comes in. */
  readonly entry: boolean;
  readonly reach: (id: string) => void;
  readonly toggle: () => void;
}

function Chip({ chip, wall, work, isHeld, entry, reach, toggle }: ChipProps) {
  const { id, name, seen, lrv, word } = chip;
  const now = wall.paint.id === id;
  // Drawn anew only when it is come to or left, not with every other paint.
  const tried = useSyncExternalStore(moving.subscribe, () =>
    moving.get() === null ? isHeld : moving.get()?.id === id,
  );
  const others = useOthersHere();
  const theirs = others.filter(({ presence }) =>
    presence.trialPaints?.some(([surface, paintId]) => surface === wall.surface && paintId === id),
  );
  const standing = now ? 'now' : isHeld ? 'held' : tried ? 'trial' : '';
  // What is not drawn on it is said after what is.
  const said = [
    ...(word === null || work === null ? [] : [`: ${work.title}`]),
    ...theirs.map(({ person }) => `, ${person.name} tries it`),
  ].join('');
  return (
    <button
      type="button"
      className={`bare chip${tried ? ' chip-tried' : ''}`}
      aria-pressed={isHeld}
      tabIndex={entry ? 0 : -1}
      onPointerEnter={(event) => {
        if (event.pointerType !== 'touch') moving.set(chip);
      }}
      onFocus={(event) => {
        reach(id);
        if (event.currentTarget.matches(':focus-visible')) moving.set(chip);
      }}
      onBlur={() => moving.set(null)}
      onClick={toggle}
    >
      <i style={{ background: hexFromLabD65(seen) }} />
      <span className="chip-name">{name}</span>{' '}
      <span className="chip-lrv">
        <span className="spoken">LRV </span>
        <b className="b">{Math.round(lrv)}</b>
        {standing === '' ? null : <span> {standing}</span>}
      </span>{' '}
      {isInScreenGamut(seen) ? null : <span className="chip-beyond">beyond this screen </span>}
      {word === null ? null : (
        <span className="chip-word">
          <ReadingMark word={word} sizePx={11} />
          {word}
        </span>
      )}
      <span className="spoken">{said}</span>
      {theirs.length === 0 ? null : (
        <span className="chip-rings">
          {theirs.map(({ clientId, person, ring }) => (
            <Ring key={clientId} name={person.name} pattern={ring} radiusPx={8} />
          ))}
        </span>
      )}
    </button>
  );
}
