/** A vignette's state told whole, on screen and in the CSV. */

import { type ChangeWords, changeText } from '@enfilade/shared/change-sentences';
import type { Judgements } from '@enfilade/shared/judgements';
import { onName } from '@enfilade/shared/surface-names';
import type { VignetteListRow } from '@enfilade/shared/vignette-list';
import { lengthText } from '@enfilade/space/lengths';
import { dayText } from '../cards/day-text.ts';
import type { Unit } from '../preferences.ts';

export function changeWordsOf(judgements: Judgements, unit: Unit): ChangeWords {
  return {
    nameOf: (pieceId) => judgements.nameOf(pieceId),
    surfaceName: (on) => onName(judgements, on),
    length: (mm) => `${lengthText(mm, unit)} ${unit}`,
    onOf: (pieceId) => judgements.documents.get('places', pieceId)?.[0] ?? null,
    recordOf: (pieceId) => {
      const object = judgements.objectOf(pieceId);
      return object === undefined ? null : { title: object.title || object.number, count: object.count };
    },
  };
}

/** '9 May 2026, 14:02'. */
export function momentText(date: Date): string {
  return `${dayText(date.toISOString())}, ${date.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}`;
}

/** 'changed since: … ; signed by Dov Castellane, curator, 9 May 2026; waiting for guest artist'. */
export function stateText({ standing }: VignetteListRow, words: ChangeWords): string {
  const parts: string[] = [standing.state];
  for (const { name, role, at, changes } of standing.signatures) {
    const since =
      changes.length === 0 ? '' : `, changed since: ${changeText(changes, words, Number.POSITIVE_INFINITY)}`;
    parts.push(`signed off by ${name}, ${role}, ${dayText(at)}${since}`);
  }
  if (standing.waitingFor.length > 0) parts.push(`waiting for ${standing.waitingFor.join(', ')}`);
  return parts.join('; ');
}
