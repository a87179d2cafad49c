/** How far two ways of parting the same things agree, 1 the same, 0 as by chance (L. Hubert, P. Arabie, J. Classif. 2, 1985). */
export function agreement(one: ArrayLike<number>, other: ArrayLike<number>): number {
  const both = new Map<string, number>();
  const [ofOne, ofOther] = [new Map<number, number>(), new Map<number, number>()];
  const add = <K>(counts: Map<K, number>, key: K) => counts.set(key, (counts.get(key) ?? 0) + 1);
  for (let i = 0; i < one.length; i++) {
    add(both, `${one[i]} ${other[i]}`);
    add(ofOne, one[i]!);
    add(ofOther, other[i]!);
  }
  const pairs = (counts: Map<unknown, number>) => [...counts.values()].reduce((sum, c) => sum + (c * (c - 1)) / 2, 0);
  const expected = (pairs(ofOne) * pairs(ofOther)) / ((one.length * (one.length - 1)) / 2);
  return (pairs(both) - expected) / ((pairs(ofOne) + pairs(ofOther)) / 2 - expected);
}
