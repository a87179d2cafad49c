import type { LabD65 } from '@enfilade/colour/lab';
import { hueNoteOf } from '@enfilade/shared/hue-notes';
import { Judgements } from '@enfilade/shared/judgements';
import type { ImageFacts } from '@enfilade/shared/protocol';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const RED: LabD65 = { L: 50, a: 45, b: 30 };

describe('what rests on hue alone', () => {
  test('law: a red on a green as light as it is noted, on a dark wall it is not, and of a work without a picture nothing is', () => {
    const { documents, history } = sampleShow();
    history.perform({ name: 'picture', changes: [{ root: 'objects', key: 'oil/picture', value: 'red' }] });
    const swatches = [{ lab: RED, share: 1 }];
    const size = { widthPx: 9, heightPx: 9, opaqueShare: 1, engine: 'test', cell: { page: 0, index: 0 } };
    const facts: ImageFacts = { sha256: 'red', ...size, body: swatches, edge: swatches };
    const judgements = new Judgements(documents, new Map([['red', facts]]));
    expect(hueNoteOf(judgements, 'oil#1', { L: 50, a: -40, b: 34 })).toContain('by hue alone');
    expect(hueNoteOf(judgements, 'oil#1', { L: 14, a: 0, b: 0 })).toBeNull();
    expect(hueNoteOf(judgements, 'hanging#1', { L: 50, a: -40, b: 34 })).toBeNull();
  });
});
