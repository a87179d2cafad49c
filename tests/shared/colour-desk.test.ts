import type { LabD65 } from '@enfilade/colour/lab';
import { readingOn } from '@enfilade/colour/reading';
import {
  compareReadings,
  countsOf,
  deskCellOf,
  deskWallsOf,
  deskWorksOf,
  groupsOf,
  layerOfPaint,
  wallsInOrder,
} from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const VERDIGRIS: LabD65 = { L: 33, a: -25, b: -4 };
const WELD: LabD65 = { L: 80, a: -2, b: 60 };

/** Pictures of one colour each, by their hash. */
const COLOURS: Readonly<Record<string, LabD65>> = {
  green: { L: 35, a: -22, b: -3 },
  red: { L: 45, a: 60, b: 35 },
  yellow: { L: 78, a: 0, b: 58 },
};

function factsOf(sha256: string): ImageFacts | undefined {
  const lab = COLOURS[sha256];
  if (lab === undefined) return undefined;
  const swatches = [{ lab, share: 1 }];
  const cell = { page: 0, index: 0 };
  return {
    sha256,
    widthPx: 9,
    heightPx: 9,
    body: swatches,
    edge: swatches,
    opaqueShare: 1,
    engine: 'test',
    cell,
  };
}

/** The oil (green) and two blocks (red, green) on verdigris; the hanging (red) on weld; the trap (yellow) nowhere. */
function desk() {
  const { documents, history } = sampleShow();
  history.perform(commands.repaint('dye:right', 'weld'));
  for (const [id, picture] of [
    ['oil', 'green'],
    ['hanging', 'red'],
    ['blocks', 'red'],
    ['trap', 'yellow'],
  ] as const) {
    history.perform({ name: 'picture', changes: [{ root: 'objects', key: `${id}/picture`, value: picture }] });
  }
  history.perform({ name: 'picture', changes: [{ root: 'pieces', key: 'blocks#2/picture', value: 'green' }] });
  const places = new Map<string, Place>([
    ['blocks#2', ['dye:head', 900, 1500, 0, 0]],
    ['blocks#1', ['dye:head', 3000, 1500, 0, 0]],
    ['oil#1', ['dye:head', 2000, 1500, 0, 0]],
    ['hanging#1', ['dye:right', 2000, 1500, 0, 0]],
    ['bench#1', ['dye:head', 5000, 300, 0, 0]],
  ]);
  history.perform(commands.place(documents, places));
  return { documents, history, judgements: new Judgements(documents, { get: factsOf }) };
}

describe('colour desk', () => {
  test('story: painted walls stand down in the order of the building, and bare ones are named', () => {
    const { judgements } = desk();
    const { walls, bare } = deskWallsOf(judgements);
    expect(walls.map(({ surface, wallName, paint }) => [surface, wallName, paint.id])).toEqual([
      ['dye:head', 'east wall', 'verdigris'],
      ['dye:right', 'south wall', 'weld'],
    ]);
    expect(bare).toEqual(['dye:foot', 'dye:left']);
  });

  test('story: works stand across by wall and along it, pieces of a record together, those without colours left out', () => {
    const { judgements } = desk();
    expect(deskWorksOf(judgements, 'hung').map(({ id, pieces }) => [id, pieces])).toEqual([
      ['blocks@dye:head', ['blocks#1', 'blocks#2']],
      ['oil@dye:head', ['oil#1']],
      ['hanging@dye:right', ['hanging#1']],
    ]);
    const elsewhere = deskWorksOf(judgements, 'not hung');
    expect(elsewhere.map(({ id, pieces }) => [id, pieces.length])).toEqual([
      ['blocks@', 58],
      ['trap@', 1],
    ]);
    expect(deskWorksOf(judgements, 'all')).toHaveLength(5);
  });

  test('story: a vignette’s members are a pool of their own', () => {
    const { documents, history, judgements } = desk();
    const made = commands.gather(documents, { name: 'Green', intent: '', focal: 'oil#1' }, ['oil#1', 'trap#1']);
    history.perform(made);
    expect(deskWorksOf(judgements, { vignetteId: made.id }).map(({ id }) => id)).toEqual(['oil@dye:head', 'trap@']);
  });

  test('law: a cell says what the reading itself says; of several pieces the worst, and counts them all', () => {
    const { judgements } = desk();
    const [blocks, oil] = deskWorksOf(judgements, 'hung');
    const swatches = (name: string) => [{ lab: COLOURS[name] as LabD65, share: 1 }];
    const alone = readingOn({ body: swatches('green'), edge: swatches('green') }, VERDIGRIS);
    expect(deskCellOf(judgements, oil!, VERDIGRIS)?.reading).toEqual(alone);
    const set = deskCellOf(judgements, blocks!, VERDIGRIS);
    expect(set?.pieceId).toBe('blocks#2');
    expect(set?.reading.word).toBe('lost');
    expect(set?.counts).toEqual({ lost: 1, weak: 0, holds: 0, carries: 1 });
    // On weld the other way about: nothing of it is near.
    expect(deskCellOf(judgements, oil!, WELD)?.reading.word).toBe('carries');
  });

  test('law: sorted by worst, no work reads worse than one before it; by number they follow their numbers', () => {
    const { judgements } = desk();
    const works = deskWorksOf(judgements, 'all');
    const groups = groupsOf(judgements, works, 'worst', WELD);
    const readings = groups.flatMap((group) =>
      group.works.map((work) => {
        const own = work.surface === null ? WELD : judgements.paintOf(work.surface)!.lab;
        return deskCellOf(judgements, work, own)!.reading;
      }),
    );
    expect(readings).toHaveLength(works.length);
    for (let n = 1; n < readings.length; n++) expect(compareReadings(readings[n - 1]!, readings[n]!)).toBeLessThan(1);
    expect(groups[0]).toMatchObject({ id: 'lost', word: 'lost' });
    const [byNumber] = groupsOf(judgements, works, 'number', null);
    expect(byNumber?.works.map(({ number }) => number)).toEqual(['1902.7', '1902.7', '1931.14.3', 'F.1', 'T.1']);
  });

  test('law: grouped by wall every work is in one group, under its own wall', () => {
    const { judgements } = desk();
    const works = deskWorksOf(judgements, 'all');
    const groups = groupsOf(judgements, works, 'wall', null);
    expect(groups.flatMap((group) => group.works)).toEqual(works);
    for (const group of groups) for (const { surface } of group.works) expect(surface).toBe(group.surface);
  });

  test('story: walls by what is lost put the wall that loses most first', () => {
    const { documents, history, judgements } = desk();
    history.perform(commands.place(documents, new Map([['trap#1', ['dye:right', 4000, 1500, 0, 0] as Place]])));
    history.perform(commands.repaint('dye:head', 'weld'));
    history.perform(commands.repaint('dye:right', 'weld'));
    const { walls } = deskWallsOf(judgements);
    const works = deskWorksOf(judgements, 'hung');
    expect(wallsInOrder(judgements, walls, works, 'room').map(({ surface }) => surface)).toEqual([
      'dye:head',
      'dye:right',
    ]);
    expect(wallsInOrder(judgements, walls, works, 'worst').map(({ surface }) => surface)).toEqual([
      'dye:right',
      'dye:head',
    ]);
    const there = works.filter(({ surface }) => surface === 'dye:right');
    expect(countsOf(judgements, there, WELD)).toEqual({ lost: 1, weak: 0, holds: 0, carries: 1 });
  });

  test('law: a paint on trial is read in a layer and written nowhere', () => {
    const { documents, judgements } = desk();
    const laid = documents.laidOver(layerOfPaint('dye:head', 'weld'));
    const after = new Judgements(laid, { get: factsOf });
    expect(after.paintOf('dye:head')?.id).toBe('weld');
    expect(after.paintOf('dye:right')?.id).toBe('weld');
    expect(after.readingOf('oil#1')?.word).toBe('carries');
    expect(judgements.paintOf('dye:head')?.id).toBe('verdigris');
    expect(judgements.readingOf('oil#1')?.word).toBe('lost');
    expect(() => layerOfPaint('dye:head', 'weld').changesFor([])).toThrow(RangeError);
    laid.close();
  });
});
