/** The numbers papers are known by. They rise over all papers of a show, so that a number names one paper. */
import type { Version } from '@enfilade/shared/protocol';
import type * as Y from 'yjs';

export interface Raised {
  readonly version: Version;
  /** The newest of this paper is of these very facts: it keeps its number. */
  readonly again: boolean;
}

/** Writes the next version of a paper, durably. `write` makes one change of the record after another. */
export async function raiseVersion(
  write: (change: (record: Y.Doc) => void) => Promise<void>,
  paper: Pick<Version, 'what' | 'digest' | 'by'>,
): Promise<Raised> {
  let raised: Raised | null = null;
  await write((record) => {
    const versions = record.getMap<Version>('versions');
    let newest: Version | null = null;
    let number = 0;
    for (const version of versions.values()) {
      number = Math.max(number, version.number);
      if (version.what === paper.what && version.number > (newest?.number ?? 0)) newest = version;
    }
    if (newest?.digest === paper.digest) {
      raised = { version: newest, again: true };
      return;
    }
    const version = { number: number + 1, at: new Date().toISOString(), ...paper };
    versions.set(String(version.number), version);
    raised = { version, again: false };
  });
  // The change has run by now: `write` has written what it made.
  return raised as unknown as Raised;
}
