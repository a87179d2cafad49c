/** What is said of a photograph: its ground, the cut-out's sureness, and how far its colours are to be believed. */
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { CutOutFact } from '@enfilade/shared/protocol';

/** Own words for a confidence of 0..1: without a target in the picture it is no better than good. */
const GOOD = 0.75;
const FAIR = 0.5;

export function beliefOf(confidence: number): 'good' | 'fair' | 'poor' {
  return confidence >= GOOD ? 'good' : confidence >= FAIR ? 'fair' : 'poor';
}

export function shareText(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}

/** What of it is shown, and how sure that is. Absent: derived before grounds were looked for. */
export function cutText(cutOut: CutOutFact | undefined): string {
  if (cutOut === undefined) return 'All of it is shown.';
  const { how, choice, confidence, doubts } = cutOut;
  if (choice === 'leave out') {
    if (how !== 'left out') return 'Its ground was to be left out, but nothing stands out from it: all of it is shown.';
    return `By a person’s word its ground is left out; its outline is ${shareText(confidence)} sure.`;
  }
  if (choice === 'keep') return 'By a person’s word its ground is kept.';
  if (choice === 'whole') return 'By a person’s word it is taken whole.';
  if (how === 'transparent') return 'It came cut out.';
  if (how === 'left out') return `Its studio ground was left out, ${shareText(confidence)} sure.`;
  if (doubts.length > 0) return 'What in it is ground is not sure enough, so all of it is shown.';
  return `No studio ground was found in it, ${shareText(confidence)} sure: all of it is shown.`;
}

/** The same in two or three words. */
export function briefOf(cutOut: CutOutFact | undefined): string {
  if (cutOut?.how === 'transparent') return 'came cut out';
  if (cutOut?.how === 'left out')
    return cutOut.choice ? 'ground left out' : `ground left out, ${shareText(cutOut.confidence)}`;
  return cutOut?.choice === 'keep' ? 'ground kept' : 'whole';
}

/** What a word on the ground changed of the reading; nothing where it has no wall. */
export function effectText(now: ReadingWord | null, found: ReadingWord | null): string {
  if (now === null || found === null) return '';
  if (now === found) return `On its wall it reads as before: ${now}.`;
  return `On its wall it reads ${now}; as it was found it would read ${found}.`;
}
