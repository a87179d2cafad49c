/** The words the proposal's sentences are made of, from the show and in the person's unit. */

import type { Judgements } from '@enfilade/shared/judgements';
import { lrvText } from '@enfilade/shared/paint-records';
import { carrierOf, openingOf } from '@enfilade/shared/schema';
import { mayWrite, ROLES } from '@enfilade/shared/seats';
import { onName, shortSurfaceName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import type { Unit } from '../preferences.ts';
import type { EffectWords } from './effect-sentences.ts';
import type { InProposal } from './in-proposal.ts';
import type { MoveWords } from './move-sentences.ts';

export function wordsOf({ hang, shown, moves }: InProposal, unit: Unit): MoveWords & EffectWords {
  const { judgements, documents } = shown;
  const nameOf = (pieceId: string): string => judgements.nameOf(pieceId);
  return {
    nameOf,
    titleOf: (pieceId) => judgements.objectOf(pieceId)?.title ?? 'a record that is gone',
    onName: (on) => shortOn(judgements, on),
    onNameWhole: (on) => onName(judgements, on),
    vignetteName: (id) =>
      documents.get('vignettes', id)?.name ??
      hang.documents.get('vignettes', id)?.name ??
      namedInMoves(moves, id) ??
      'a vignette that is gone',
    lrvOf: (id) => {
      const paint = documents.get('deck', id);
      return paint === undefined ? null : lrvText(paint);
    },
    paintName: (id) => documents.get('deck', id)?.name ?? 'a paint that is gone',
    length: (mm) => lengthText(mm, unit),
    gapMm: judgements.setting('gapMm'),
  };
}

function shortOn(judgements: Judgements, on: string): string {
  if (carrierOf(on) !== null || openingOf(on) !== null) return onName(judgements, on);
  return shortSurfaceName(judgements.documents, on);
}

/** A vignette that a proposal gathered is named by the proposal even once nothing else knows it. */
function namedInMoves(moves: InProposal['moves'], id: string): string | undefined {
  for (const { facts } of moves) {
    const base = facts.find(({ root, key }) => root === 'vignettes' && key === id)?.to;
    if (typeof base === 'object' && base !== null && 'name' in base) return String(base.name);
  }
  return undefined;
}

/** 'The lead, the curator or the preparator may take it.' */
export function whoMayTake(artistProposesOnly: boolean): string {
  const roles = ROLES.filter((role) => mayWrite(role, 'hang', { artistProposesOnly })).map((role) => `the ${role}`);
  const last = roles.pop() ?? 'nobody';
  const list = roles.length === 0 ? last : `${roles.join(', ')} or ${last}`;
  return `${list.charAt(0).toUpperCase()}${list.slice(1)} may take it.`;
}

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** 'five', '41'. */
export function countText(count: number): string {
  return NUMBERS[count] ?? String(count);
}
