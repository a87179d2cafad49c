/** The colour desk: walls down, works across, a paint on trial, and what would come of it. */
import type { DeskPool, DeskWall, WallOrder, WorkOrder } from '@enfilade/shared/colour-desk';
import { deskCellOf } from '@enfilade/shared/colour-desk';
import { lampNameOf } from '@enfilade/shared/lamps';
import { surfaceName } from '@enfilade/shared/surface-names';
import { useEffect, useId, useRef, useState } from 'react';
import { BounceBlock } from '../colour-desk/bounce-block.tsx';
import { DeskDeck } from '../colour-desk/desk-deck.tsx';
import { unfold } from '../colour-desk/desk-fold.tsx';
import { DeskGrid } from '../colour-desk/desk-grid.tsx';
import { type Across, deskLayout, layOut } from '../colour-desk/desk-layout.ts';
import { DeskLights, type SeenUnder, seenUnder, useDeskLight, useLights } from '../colour-desk/desk-light.tsx';
import { type DeskTable, useDeskTable } from '../colour-desk/desk-table.ts';
import { deskWall, held } from '../colour-desk/desk-trial.ts';
import { type At, GROUPS_ROW, HEADS_ROW, WALL_COLUMN } from '../colour-desk/grid-keys.ts';
import { LightsBlock } from '../colour-desk/lights-block.tsx';
import { usePaintShown } from '../colour-desk/paint-shown.ts';
import { PictureFilters } from '../colour-desk/picture-filters.tsx';
import { ReadingCard } from '../colour-desk/reading-card.tsx';
import { StrictnessBlock } from '../colour-desk/strictness-block.tsx';
import { TrialTaken } from '../colour-desk/trial-taken.tsx';
import { useDeck } from '../colour-desk/use-deck.ts';
import { WallSplit } from '../colour-desk/wall-split.tsx';
import { WordsBlock } from '../colour-desk/words-block.tsx';
import { useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { useFold } from '../shell/media.ts';
import { SeenByChoice } from '../shell/seen-by-choice.tsx';
import { useShow } from '../sync/hooks.ts';
import './colour-desk.css';

export function ColourDesk() {
  return (
    <DeskLights>
      <PictureFilters />
      <Desk />
    </DeskLights>
  );
}

function Desk() {
  const { documents, presence, pictures } = useShow();
  const { judgements } = useDeskLight();
  const table = useDeskTable();
  const deck = useDeck();
  const chosen = useStore(deskWall);
  const holding = useStore(held);
  const [active, setActive] = useState<At>({ row: '', column: '' });
  const [opened, setOpened] = useState<At | null>(null);
  const fold = useFold();
  const begun = useRef(false);
  const walls = table.rows.filter(({ kind }) => kind === 'wall');
  const wall = (walls.find((row) => row.wall.surface === chosen) ?? walls[0])?.wall;

  // It opens on a work that is lost on its wall, saying why, once it is known how works read.
  useEffect(() => {
    if (begun.current || pictures.version === 0 || wall === undefined) return;
    begun.current = true;
    const lost = table.works.find((work) => {
      const paint = work.surface === null ? null : judgements.paintOf(work.surface);
      return paint !== null && deskCellOf(judgements, work, paint.lab)?.reading.word === 'lost';
    });
    const surface = deskWall.get() ?? lost?.surface ?? wall.surface;
    deskWall.set(surface);
    if (lost?.surface !== surface || lost === undefined) setActive({ row: surface, column: WALL_COLUMN });
    else {
      setActive({ row: surface, column: lost.id });
      setOpened({ row: surface, column: lost.id });
    }
  });
  // One under the other, what was asked for stands below the table and the deck.
  const asked = opened === null || fold !== 'narrow' || active.row === '' ? null : `${opened.row}|${opened.column}`;
  const wasAsked = useRef(asked);
  useEffect(() => {
    if (asked !== null && wasAsked.current !== null && asked !== wasAsked.current) {
      document.querySelector('.desk-card')?.scrollIntoView({ block: 'nearest' });
    }
    wasAsked.current = asked;
  }, [asked]);
  // What I hold on trial others see while I am at the desk.
  useEffect(() => presence.say({ trialPaints: [...holding] }), [presence, holding]);
  useEffect(() => () => presence.say({ trialPaints: null }), [presence]);

  if (wall === undefined) {
    return (
      <div className="desk-empty">
        <h1>Colour desk</h1>
        <p className="cap">
          No wall is painted yet. Face a wall and press the word beneath its caption, <i className="it">Paint</i>: it
          stands here then, and every work beside it.
        </p>
      </div>
    );
  }

  const openedRow = opened === null ? undefined : table.rows.find(({ key }) => key === opened.row);
  const openedColumn = table.columnsOf(openedRow ?? null).find(({ key }) => key === opened?.column);
  const work = openedColumn?.kind === 'work' ? openedColumn.work : null;
  const take = (surface: string): void => {
    deskWall.set(surface);
    say(`Paints are tried on ${surfaceName(documents, surface)}.`);
  };
  const press = (at: At): void => {
    const column = table
      .columnsOf(table.rows.find(({ key }) => key === at.row) ?? null)
      .find(({ key }) => key === at.column);
    if (at.row === GROUPS_ROW || column?.kind === 'group') {
      if (column === undefined) return;
      const { group } = column;
      const folded = table.folded(group);
      layOut({ folds: new Map(deskLayout.get().folds).set(group.id, !folded) });
      setActive({ row: at.row, column: folded ? (group.works[0]?.id ?? at.column) : `group ${group.id}` });
      return;
    }
    const row = table.rows.find(({ key }) => key === at.row);
    if (at.row === HEADS_ROW) setOpened({ row: wall.surface, column: at.column });
    else if (at.column === WALL_COLUMN) {
      if (row !== undefined) take(row.wall.surface);
    } else {
      const again = opened?.row === at.row && opened.column === at.column;
      setOpened(again ? null : at);
      const paint = row?.kind === 'wall' ? row.wall.paint : null;
      const cell =
        again || paint === null || column?.kind !== 'work' ? null : deskCellOf(judgements, column.work, paint.lab);
      if (cell !== null)
        say(`${column?.kind === 'work' ? column.work.title : ''}: ${cell.reading.word}. ${cell.reading.reason}`);
      if (row !== undefined && !again) deskWall.set(row.wall.surface);
    }
  };
  const foldCard = (): void => {
    const back = opened;
    setOpened(null);
    if (back === null) return;
    document.querySelector<HTMLElement>(`[data-at="${CSS.escape(`${back.row}|${back.column}`)}"]`)?.focus();
  };

  return (
    <div className="desk">
      <DeskBar table={table} />
      <DeskGrid table={table} active={active} setActive={setActive} opened={opened} press={press} fold={foldCard} />
      <aside className="desk-side" aria-label="The wall on trial">
        {openedRow === undefined || work === null ? null : <ReadingCard row={openedRow} work={work} fold={foldCard} />}
        <WallSplit wall={wall} deck={deck} version={table.version} />
        <TrialTaken wall={wall} version={table.version} />
        <OfPaint wall={wall} table={table} />
        <StrictnessBlock version={table.version} />
      </aside>
      <DeskDeck wall={wall} deck={deck} work={work} works={table.works} version={table.version} />
    </div>
  );
}

/** What is said of the paint on trial, or of the wall's own: under two lights, on white mounts, and beneath words. */
function OfPaint({ wall, table }: { readonly wall: DeskWall; readonly table: DeskTable }) {
  const paint = usePaintShown(wall);
  if (paint === null) return null;
  return (
    <>
      <LightsBlock wall={wall} paint={paint} works={table.works} version={table.version} />
      <BounceBlock wall={wall} paint={paint} version={table.version} />
      <WordsBlock paint={paint} />
    </>
  );
}

/** What stands across, in which order, and the walls' order; under which lamp, and with whose eyes. */
function DeskBar({ table }: { readonly table: DeskTable }) {
  const { documents } = useShow();
  const id = useId();
  const { across, works, walls } = useStore(deskLayout);
  const value = typeof across === 'string' ? across : `vignette ${across.vignetteId}`;
  const choose = (chosen: string): void => {
    const pool: Across = chosen.startsWith('vignette ')
      ? { vignetteId: chosen.slice(9) }
      : (chosen as 'own' | DeskPool);
    layOut({ across: pool, folds: new Map() });
  };
  const vignettes = [...documents.all('vignettes')].sort(([, a], [, b]) => (a.order < b.order ? -1 : 1));
  return (
    <div className="desk-bar">
      <h1>Colour desk</h1>
      <span>
        <label htmlFor={id}>Across </label>
        <select id={id} value={value} onChange={(event) => choose(event.target.value)}>
          <option value="own">each wall’s own works</option>
          <option value="hung">all works that hang, on every wall</option>
          <option value="not hung">works that hang on no wall</option>
          <option value="all">the whole checklist</option>
          {vignettes.map(([key, { name }]) => (
            <option key={key} value={`vignette ${key}`}>
              {name}
            </option>
          ))}
        </select>
      </span>
      <Choice<WorkOrder>
        name="Works by"
        value={works}
        options={['wall', 'number', 'worst']}
        take={(order) => layOut({ works: order, folds: new Map() })}
      />
      <Choice<WallOrder>
        name="Walls by"
        value={walls}
        options={['room', 'worst']}
        take={(order) => layOut({ walls: order })}
      />
      {table.own || table.groups.length < 2 ? null : (
        <button
          type="button"
          onClick={() => {
            const some = table.groups.some((group) => !table.folded(group));
            layOut({ folds: new Map(table.groups.map((group) => [group.id, some])) });
          }}
        >
          {table.groups.some((group) => !table.folded(group)) ? 'take all together' : 'open all'}
        </button>
      )}
      <LampBar />
      <SeenByChoice className="desk-choice" />
      <span className="desk-bar-about">
        Outlined: hangs there now.
        {table.bare.length === 0
          ? ''
          : ` ${table.bare.length} ${table.bare.length === 1 ? 'wall has' : 'walls have'} no paint.`}
      </span>
    </div>
  );
}

function LampBar() {
  const under = useStore(seenUnder);
  const { now, waiting } = useLights();
  const going = under !== 'daylight' && waiting > 0;
  return (
    <span className="desk-lamp-bar">
      <Choice<SeenUnder>
        name="Seen under"
        value={under}
        options={['daylight', 'gallery', 'studio']}
        take={(chosen) => {
          seenUnder.set(chosen);
          say(chosen === 'daylight' ? 'Seen under daylight.' : `Seen under the light of the ${chosen}.`);
        }}
      />
      <button
        type="button"
        aria-label="lamps… of the gallery and of my studio"
        onClick={() => {
          unfold('lights');
          setTimeout(() => {
            const block = document.querySelector('.lamp-choices');
            block?.scrollIntoView({ block: 'nearest' });
            block?.querySelector<HTMLElement>('select:enabled')?.focus();
          });
        }}
      >
        lamps…
      </button>
      {going ? <span role="status">working out the colours of works there…</span> : null}
      {!going && under !== 'daylight' ? <span className="it">{lampNameOf(now.lamp)}</span> : null}
    </span>
  );
}

function Choice<T extends string>(props: {
  readonly name: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly take: (value: T) => void;
}) {
  return (
    <fieldset className="desk-choice">
      <legend>{props.name}</legend>
      {props.options.map((option) => (
        <button
          key={option}
          type="button"
          className={option === props.value ? 'cmd on' : 'cmd'}
          aria-pressed={option === props.value}
          onClick={() => props.take(option)}
        >
          {option}
        </button>
      ))}
    </fieldset>
  );
}
