/** What changed since people signed, told whole: who signed the same is told together. */
import { type ChangeWords, changeSentences } from '@enfilade/shared/change-sentences';
import type { VignetteStanding } from '@enfilade/shared/judgements';
import { capital } from '@enfilade/shared/surface-names';

export interface Overtaken {
  readonly names: string;
  readonly sentences: readonly string[];
}

export function overtakenIn({ signatures }: VignetteStanding, words: ChangeWords): readonly Overtaken[] {
  const bySentences = new Map<string, { names: string[]; sentences: string[] }>();
  for (const { name, changes } of signatures) {
    if (changes.length === 0) continue;
    const sentences = changeSentences(changes, words);
    const key = sentences.join('\n');
    const known = bySentences.get(key) ?? { names: [], sentences };
    known.names.push(name);
    bySentences.set(key, known);
  }
  return [...bySentences.values()].map(({ names, sentences }) => ({ names: listed(names), sentences }));
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** So many are read at a glance; the rest is one press behind. */
const AT_A_GLANCE = 3;

/** The sentences as one text; beyond a few the rest can be opened. */
export function ToldSentences({ sentences }: { readonly sentences: readonly string[] }) {
  const all = sentences.length <= AT_A_GLANCE + 1;
  const first = all ? sentences : sentences.slice(0, AT_A_GLANCE);
  return (
    <>
      {capital(first.join('; '))}
      {all ? null : (
        <details className="told-rest">
          <summary>and {sentences.length - AT_A_GLANCE} more</summary>
          <ul>
            {sentences.slice(AT_A_GLANCE).map((sentence) => (
              <li key={sentence}>{capital(sentence)}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
