/** Rows of the list in the form the table prints: from the show as it stands, and from a list that was frozen. */

import { type ChangeWords, changeSentences } from '@enfilade/shared/change-sentences';
import { likeMembersOf } from '@enfilade/shared/like-members';
import { type FrozenList, type FrozenRow, frozenWordsOf } from '@enfilade/shared/list-versions';
import { LAYOUT_FLOOR, surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { sourceTexts, type VignetteListRow, type VignetteWhere } from '@enfilade/shared/vignette-list';
import { overtakenIn } from '../cards/overtaken.tsx';
import { SignOff } from '../cards/sign-off.tsx';
import { StateMark } from '../shell/marks.tsx';
import { THE_HANG, toAddress } from '../view-address.ts';
import { VignetteState } from './vignette-state.tsx';
import type { ListedRow } from './vignette-table.tsx';

/** `stamped`: the list is that of a version, so its paper says what every print of that version says. */
export function rowNow(row: VignetteListRow, words: ChangeWords, stamped: boolean): ListedRow {
  const at = addressOf(row.where[0]);
  const { standing } = row;
  const proposed = stamped && standing.state === 'proposed';
  return {
    id: row.id,
    number: row.number,
    name: at === null ? row.name : <a href={at}>{row.name}</a>,
    intent: row.intent,
    where: row.where.map(({ room, on, paint }) => ({ text: room === null ? on : `${room}, ${on}`, paint })),
    focal: row.focal === null ? null : { name: row.focal.name, number: row.focal.objectNumber },
    members: likeMembersOf(row.members, row.focal?.pieceId ?? null).map(({ text, numbers, unplaced, members }) => ({
      text,
      numbers,
      unplaced:
        unplaced === 0
          ? ''
          : members.length === 1 && unplaced === members[0]?.pieces
            ? 'not placed'
            : `${unplaced} not placed`,
    })),
    from: sourceTexts(row.members),
    state: (
      <VignetteState
        state={proposed ? 'drafted' : standing.state}
        signatures={standing.signatures.map(({ name, role, at, changes }) => {
          return { name, role, at, changed: changes.length > 0 };
        })}
        overtaken={overtakenIn(standing, words)}
        waitingFor={standing.waitingFor}
      >
        {proposed ? (
          <span className="word">
            <StateMark state="proposed" /> proposed since
          </span>
        ) : null}
        {row.members.length === 0 ? null : (
          <SignOff vignetteId={row.id} name={row.name} standing={standing} named={true} />
        )}
      </VignetteState>
    ),
  };
}

export function rowAsFrozen(row: FrozenRow, list: FrozenList, length: (mm: number) => string): ListedRow {
  const { form } = row;
  const paints = new Map<string, NonNullable<(typeof form.paints)[string]>>();
  for (const [surface, paint] of Object.entries(form.paints)) {
    if (paint !== null) paints.set((list.surfaces[surface] ?? '').toLowerCase(), paint);
  }
  const [, focal = row.focal, number = ''] = /^(.*) \(([^()]*)\)$/.exec(row.focal) ?? [];
  const overtaken = row.signatures.filter(({ changed }) => changed).at(-1)?.name;
  const sentences = changeSentences(row.changes, frozenWordsOf(row, [list], length));
  return {
    id: row.id,
    number: row.number,
    name: form.name,
    intent: form.intent,
    where: row.where === 'not placed yet' ? [] : row.where.split('; ').map((text) => ({ text, paint: paintOf(text) })),
    focal: row.focal === '' ? null : { name: focal, number },
    members: row.members.map(({ text, numbers, unplaced }) => {
      return { text, numbers, unplaced: unplaced === 0 ? '' : `${unplaced} not placed` };
    }),
    from: row.from,
    state: (
      <VignetteState
        state={row.state}
        signatures={row.signatures}
        overtaken={overtaken === undefined ? [] : [{ names: overtaken, sentences }]}
        waitingFor={row.waitingFor}
      />
    ),
  };

  function paintOf(text: string): ListedRow['where'][number]['paint'] {
    const paint = paints.get(text.toLowerCase());
    if (paint === undefined) return null;
    const [L = 0, a = 0, b = 0] = paint.lab;
    return { name: paint.name, lab: { L, a, b } };
  }
}

function addressOf(where: VignetteWhere | undefined): string | null {
  if (where === undefined) return null;
  if (where.surface === LAYOUT_FLOOR) return toAddress({ sheet: 'layout' }, THE_HANG);
  const parts = surfaceParts(where.surface);
  if (parts === null) return null;
  return isWallSide(parts.side)
    ? toAddress({ sheet: 'wall', surface: where.surface }, THE_HANG)
    : toAddress({ sheet: 'room', roomId: parts.roomId }, THE_HANG);
}
