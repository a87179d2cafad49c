/** What a person says of where a label stands. */
import { LABEL_SIDES } from '@enfilade/practice/labels';

/** On which side of its work, or that it has no label; nothing said: on the first side that has room. */
export const LABEL_WORDS = [...LABEL_SIDES, 'none'] as const;
export type LabelWord = (typeof LABEL_WORDS)[number];
