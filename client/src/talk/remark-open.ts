/** The remark that is to be seen: opened and brought into view wherever its thread stands. */
import type { RemarkId } from '@enfilade/shared/talk';
import { Store } from '../selection.ts';

export const openRemark = new Store<RemarkId | null>(null);
