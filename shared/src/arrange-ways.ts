/** Ways to do what a task asks, worked out by the engines: pure and slow, so it is called in a worker. */
import { halo } from '@enfilade/arrangement/halo';
import { haloCandidates } from '@enfilade/arrangement/halo-candidates';
import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import { describedHang } from '@enfilade/arrangement/hang-described';
import type { HangTask } from '@enfilade/arrangement/hang-task';
import { hang, waysOf } from '@enfilade/arrangement/hangs';
import { MASS_WAYS } from '@enfilade/arrangement/massed';
import { massedLevels } from '@enfilade/arrangement/massed-levels';
import type { Spot } from '@enfilade/arrangement/nearest-free';
import { plinthGroups } from '@enfilade/arrangement/plinth-group';
import { trueToName } from '@enfilade/arrangement/true-to-name';
import { deltaE2000 } from '@enfilade/colour/differences';
import type { ArrangeTask, HaloAsked, HangAsked, HangEngineTask, MassAsked, PlinthsAsked } from './arrange-task.ts';
import { type Arrangement, arrangementFrom, looksLike, type Sizes } from './arranged.ts';
import { arrangedAround } from './arranged-around.ts';
import { termsOfHang, termsOfMass, termsOfPlinths } from './arrangement-terms.ts';
import { carrierOn, type PieceId, type Place } from './schema.ts';

/** So many are offered beside each other. */
const OFFERED = 3;
/** Asked again, a hang is tried with so much more air between; only a massed one has dice of its own. */
const AIR = [1, 1.5, 2.2, 3] as const;

export interface Asking {
  /** 1, and one more each time others are asked for. */
  readonly round: number;
  /** Digests of what was shown before or declined: these are not offered. */
  readonly away: ReadonlySet<string>;
  /** Told of each way as soon as it is known to be offered. */
  readonly found: (arrangement: Arrangement) => void;
  /** Told how far it is, 0 … 1. */
  readonly progress: (share: number) => void;
}

/** Up to three ways that differ visibly, none of those that stay away; told one by one as they are found. */
export function arrangementsOf(task: ArrangeTask, asking: Asking): readonly Arrangement[] {
  const kept: Arrangement[] = [];
  const sizes = sizesOf(task);
  const leaving: Arrangement[] = [];
  const offer = (arrangement: Arrangement): void => {
    if (kept.length === OFFERED || asking.away.has(arrangement.digest)) return;
    if (kept.some((other) => looksLike(arrangement, other, sizes))) return;
    kept.push(arrangement);
    asking.found(arrangement);
  };
  for (const arrangement of waysFor(task, asking)) {
    // A way that leaves something out waits for those that hold all.
    if (arrangement.unplaced.length === 0) offer(arrangement);
    else if (worthOffering(task, arrangement)) leaving.push(arrangement);
    if (kept.length === OFFERED) break;
  }
  const lost = ({ unplaced }: Arrangement) => unplaced.reduce((sum, id) => sum + (sizes.get(id) ?? 0), 0);
  for (const arrangement of leaving.sort((a, b) => lost(a) - lost(b))) offer(arrangement);
  return kept;
}

/** A way that leaves most out is none, and one pendant is no pair. */
function worthOffering({ kind }: ArrangeTask, { places, unplaced }: Arrangement): boolean {
  return kind !== 'pendants' && places.length >= unplaced.length;
}

function waysFor(task: ArrangeTask, asking: Asking): Iterable<Arrangement> {
  switch (task.kind) {
    case 'halo':
      return halosOf(task, asking);
    case 'massed':
      return massesOf(task);
    case 'plinths':
      return plinthsOf(task, asking.round);
    case 'carrier':
      return arrangedAround(task);
    default:
      return hangsOf(task, asking);
  }
}

function* hangsOf(task: HangAsked, { progress }: Asking): Generator<Arrangement> {
  const names = waysOf(task.kind);
  for (const [attempt, air] of AIR.entries()) {
    for (const [turn, name] of names.entries()) {
      const engine = engineOf(task.wall, task.colours, attempt + 1);
      const found = hang(name, {
        ...engine,
        gapMm: engine.gapMm * air,
        progress: (done, of) => {
          progress((attempt + (turn + done / of) / names.length) / AIR.length);
          return true;
        },
      });
      const hung = task.wall.pieces.flatMap((piece, i) => {
        const at = found.places[i];
        return at ? [{ ...piece, ...at }] : [];
      });
      if (!trueToName(name, hung, engine.gapMm * air)) continue;
      yield arrangementFrom({
        name: attempt === 0 ? name : `${name}, ${attempt === 1 ? 'more air' : 'much air'}`,
        places: placesOn(task.wish.surface, task.pieceIds, found.places),
        // What is pinned stays without being told to.
        stays: task.pieceIds.filter((_, i) => task.wall.pieces[i]?.pinnedAt !== undefined),
        of: task.pieceIds,
        terms: termsOfHang(found, task.wall.centreLineMm),
      });
    }
  }
}

/** The first as loose as was asked for, then others unlike it. */
function* halosOf(task: HaloAsked, { round, progress }: Asking): Generator<Arrangement> {
  const { looseness, ...rest } = task.engine;
  const ROUNDS = 2;
  const before: HaloCandidate[] = [];
  for (let turn = round; turn < round + ROUNDS; turn++) {
    const share = (turn - round) / ROUNDS;
    if (turn === 1) {
      const first = halo({
        ...rest,
        looseness,
        seed: 7919,
        progress: (done, of) => told(share + (0.25 * done) / of / ROUNDS),
      });
      before.push(first);
      yield arranged(first);
    }
    const others = haloCandidates(
      { ...rest, progress: (done, of) => told(share + (0.25 + (0.75 * done) / of) / ROUNDS) },
      { seed: turn, exclude: turn === 1 ? before : [...before, ...before, ...before] },
    );
    before.push(...others);
    // One more of the kind asked for would teach least beside it.
    for (const other of others) if (turn > 1 || other.name !== before[0]?.name) yield arranged(other);
  }

  function told(share: number): boolean {
    progress(share);
    return true;
  }
  function arranged(found: HaloCandidate): Arrangement {
    const places = [...found.places, { xMm: task.focalPlace[1], yMm: task.focalPlace[2] }];
    const { wall, focalPlace, focal, pieceIds } = task;
    const hung = describedHang(engineOf(wall, task.colours, 1), 'massed salon', places);
    return arrangementFrom({
      name: found.name,
      places: [[focal, focalPlace], ...placesOn(task.wish.surface, pieceIds, found.places)],
      stays: [],
      of: pieceIds,
      terms: termsOfHang(hung, wall.centreLineMm),
    });
  }
}

function* massesOf(task: MassAsked): Generator<Arrangement> {
  for (const air of AIR) {
    for (const name of MASS_WAYS) {
      const levels = massedLevels(
        name,
        task.levels.map((level) => ({ ...level, gapMm: level.gapMm * air })),
        task.things,
      );
      const places = levels.flatMap(({ things, candidate }, k) =>
        candidate.places.flatMap((at, i): (readonly [PieceId, Place])[] => {
          const on = carrierOn(task.carrier, task.levels[k]?.level ?? 0);
          const pieceId = task.pieceIds[things[i] ?? -1];
          return at === null || pieceId === undefined ? [] : [[pieceId, [on, at.xMm, at.yMm, at.liftMm, 0]]];
        }),
      );
      const terms = termsOfMass(
        levels.map(({ candidate }) => candidate),
        task.pieceIds.length - places.length,
      );
      yield arrangementFrom({
        name: air === 1 ? name : `${name}, more air`,
        places,
        stays: [],
        of: task.pieceIds,
        terms,
      });
    }
  }
}

/** A plinth of which less is seen from the entrance is hidden: no way to group them. Own rule, as on a level. */
const SEEN = 1 / 3;

/** About the middle of the floor; asked again, towards one side of it and the other. */
function* plinthsOf(task: PlinthsAsked, round: number): Generator<Arrangement> {
  const { leftMm, rightMm, bottomMm, topMm } = task.engine.floor;
  const yMm = (bottomMm + topMm) / 2;
  for (const share of [0.5, 0.32, 0.68].slice(Math.min(2, round - 1))) {
    for (const found of plinthGroups({ ...task.engine, around: { xMm: leftMm + share * (rightMm - leftMm), yMm } })) {
      // Two make a line, whatever they stand on.
      if (found.measures.leastSeen < SEEN || (found.name === 'arc' && task.pieceIds.length < 3)) continue;
      const floor = `${task.wish.surface.slice(0, task.wish.surface.indexOf(':'))}:floor`;
      yield arrangementFrom({
        name: found.name,
        places: [...placesOn(floor, task.pieceIds, found.places), ...task.loads],
        stays: [],
        of: [...task.pieceIds, ...task.loads.map(([pieceId]) => pieceId)],
        terms: termsOfPlinths(found),
      });
    }
  }
}

function engineOf(wall: HangEngineTask, colours: HangAsked['colours'], seed: number): HangTask {
  return {
    ...wall,
    seed,
    difference: (a, b) => {
      const [one, other] = [colours[a], colours[b]];
      return one && other ? deltaE2000(one, other) : undefined;
    },
  };
}

function placesOn(
  surface: string,
  pieceIds: readonly PieceId[],
  spots: readonly (Spot | null)[],
): (readonly [PieceId, Place])[] {
  return pieceIds.flatMap((pieceId, i): (readonly [PieceId, Place])[] => {
    const at = spots[i];
    return at ? [[pieceId, [surface, at.xMm, at.yMm, 0, 0]]] : [];
  });
}

function sizesOf(task: ArrangeTask): Sizes {
  const sizes = new Map<PieceId, number>();
  const take = (ids: readonly PieceId[], boxes: readonly { readonly widthMm: number; readonly heightMm: number }[]) =>
    ids.forEach((id, i) => {
      const box = boxes[i];
      if (box) sizes.set(id, (box.widthMm + box.heightMm) / 2);
    });
  if (task.kind === 'carrier') {
    take(task.on, task.engine.on);
    take(task.around, task.engine.around);
    take(task.above, task.engine.above);
  } else if (task.kind === 'plinths') take(task.pieceIds, task.engine.plinths);
  else if (task.kind === 'massed') take(task.pieceIds, task.things);
  else take(task.pieceIds, task.wall.pieces);
  return sizes;
}
