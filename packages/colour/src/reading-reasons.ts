import { colourFamilyOf, colourNameOf } from './colour-words.ts';
import type { LabD65 } from './lab.ts';
import { type Field, type Measures, WITHIN } from './measures.ts';
import type { ReadingThresholds, ReadingWord } from './reading-thresholds.ts';

// A field smaller than this is not named: nobody would point at it.
const ACCENT = 0.05;

/** What a reason is made from. */
export interface ReadingFacts {
  readonly word: ReadingWord;
  readonly wall: LabD65;
  readonly bodyFields: readonly Field[];
  readonly edgeFields: readonly Field[];
  readonly body: Measures;
  readonly edge: Measures;
  readonly shareWithin10: number;
  readonly rimWithin10: number;
  readonly thresholds: ReadingThresholds;
  /** Whether the edge is a frame's. */
  readonly framed: boolean;
}

/** One or two sentences, in a curator's words and without figures, that say why a work reads as it does. */
export function reasonOf(facts: ReadingFacts): string {
  const reason = aboutEdgeOf(facts);
  return facts.framed ? reason.replaceAll(/\bedge\b/g, 'frame') : reason;
}

function aboutEdgeOf(facts: ReadingFacts): string {
  switch (facts.word) {
    case 'lost':
      return lostReasonOf(facts);
    case 'weak':
      return weakReasonOf(facts);
    case 'holds':
      return holdsReasonOf(facts);
    case 'carries':
      return `It stands clear of the wall${differencePhraseOf(facts.body)}. ${edgePhraseOf(facts)}`;
  }
}

/** A share, 0..1, in words: "nearly all", "two thirds", "half" … */
export function fractionWordsOf(share: number): string {
  if (share >= 0.985) return 'all';
  if (share >= 0.88) return 'nearly all';
  if (share >= 0.71) return 'three quarters';
  if (share >= 0.585) return 'two thirds';
  if (share >= 0.42) return 'half';
  if (share >= 0.29) return 'a third';
  if (share >= 0.18) return 'a quarter';
  return share >= 0.08 ? 'a small part' : 'a trace';
}

function lostReasonOf({ wall, bodyFields, edge, shareWithin10, thresholds }: ReadingFacts): string {
  const opening = `${capitalOf(fractionWordsOf(shareWithin10))} of it is ${wallsOwn(wall)}`;
  const far = bodyFields.filter((field) => field.deltaE >= thresholds.carriesEdge && field.share >= ACCENT);
  return `${opening}, and the edge ${likenessPhraseOf(edge, wall)}. ${partingOf(far)}`;
}

function partingOf(far: readonly Field[]): string {
  const names = [...new Set(far.map((field) => colourNameOf(field.lab)))];
  if (names.length === 0) return 'Nothing parts them.';
  if (names.length === 1) return `Only the ${names[0]} parts them.`;
  return names.length === 2
    ? `Only the ${names[0]} and the ${names[1]} part them.`
    : 'Only its smaller fields part them.';
}

function weakReasonOf({ wall, bodyFields, edgeFields, body, edge, shareWithin10, thresholds }: ReadingFacts): string {
  const edgeName = colourNameOf(edgeFields[0]!.lab);
  const mainName = colourNameOf(bodyFields[0]!.lab);
  if (shareWithin10 > thresholds.weakShare) {
    const opening = `${capitalOf(fractionWordsOf(shareWithin10))} of it is ${wallsOwn(wall)}`;
    if (edge.deltaE >= thresholds.carriesEdge) {
      const parting = shareWithin10 >= 0.585 ? 'Only the' : 'What keeps it from the wall is the';
      return `${opening}. ${parting} ${edgeName} edge${shareWithin10 >= 0.585 ? ' parts them' : ''}.`;
    }
    return `${opening}, and the edge ${likenessPhraseOf(edge, wall)}.`;
  }
  if (edge.deltaE < thresholds.weakEdge) {
    const inside =
      body.deltaE < thresholds.weakMean
        ? `The ${mainName} inside it is not far off either.`
        : `What stands off is the ${farthestNameOf(bodyFields)} inside it.`;
    return `The ${edgeName} edge melts into the wall's ${colourNameOf(wall)}. ${inside}`;
  }
  return `It stays near the wall's ${colourNameOf(wall)}${differencePhraseOf(body)}. ${edgePhraseOf({ edge, edgeFields, thresholds })}`;
}

function holdsReasonOf(facts: ReadingFacts): string {
  const { wall, edge, body, shareWithin10, rimWithin10, thresholds } = facts;
  const opening = `It stands off the wall${differencePhraseOf(body)}`;
  if (shareWithin10 >= thresholds.carriesShare) {
    return `${opening}, though ${fractionWordsOf(shareWithin10)} of it is ${wallsOwn(wall)}. ${edgePhraseOf(facts)}`;
  }
  if (rimWithin10 >= thresholds.carriesRim) {
    return `${opening}. Along ${fractionWordsOf(rimWithin10)} of its length the edge is ${wallsOwn(wall)}.`;
  }
  if (edge.deltaE < thresholds.carriesEdge) return `${opening}. ${edgePhraseOf(facts)}`;
  return `${opening}. The edge is clean, and there is a little distance to spare, not much.`;
}

function wallsOwn(wall: LabD65): string {
  return `the wall's own ${colourFamilyOf(wall)}`;
}

function farthestNameOf(fields: readonly Field[]): string {
  return colourNameOf(fields.reduce((most, field) => (field.deltaE > most.deltaE ? field : most)).lab);
}

/** How an edge that does not part the work from its wall is like it; follows "the edge". */
function likenessPhraseOf(edge: Measures, wall: LabD65): string {
  if (edge.deltaE < WITHIN / 2) return 'is the same';
  if (Math.abs(edge.deltaL) >= 12) return edge.deltaL > 0 ? 'is only somewhat lighter' : 'is only somewhat darker';
  if (wall.L < 45) return 'is as dark';
  return wall.L >= 70 ? 'is as pale' : 'is no lighter and no darker';
}

function edgePhraseOf({
  edge,
  edgeFields,
  thresholds,
}: Pick<ReadingFacts, 'edge' | 'edgeFields' | 'thresholds'>): string {
  const name = colourNameOf(edgeFields[0]!.lab);
  if (edge.deltaE >= thresholds.carriesEdge) return `Its ${name} edge is clean.`;
  return edge.deltaE >= thresholds.lostEdge
    ? `Its ${name} edge is soft against it.`
    : `Its ${name} edge is close to it.`;
}

/** What sets the area mean apart, ", lighter and of another hue": steps a visitor sees first, else the small ones. */
function differencePhraseOf({ deltaL, deltaC, deltaH }: Measures): string {
  const parts: string[] = [];
  if (Math.abs(deltaL) >= 20) parts.push(deltaL > 0 ? 'much lighter' : 'much darker');
  else if (Math.abs(deltaL) >= 7) parts.push(deltaL > 0 ? 'somewhat lighter' : 'somewhat darker');
  if (deltaH !== undefined && Math.abs(deltaH) >= 60) parts.push('of another hue');
  if (Math.abs(deltaC) >= 15) parts.push(deltaC > 0 ? 'stronger in colour' : 'quieter in colour');
  if (parts.length === 0) return ', by its several colours more than by any one';
  const last = parts.pop()!;
  return `, ${parts.length > 0 ? `${parts.join(', ')} and ${last}` : last}`;
}

function capitalOf(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
