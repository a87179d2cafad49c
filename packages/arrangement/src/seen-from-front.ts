/** A thing's silhouette as seen level from the front: where it stands across, how far back, from which height to which. */
export interface Silhouette {
  readonly leftMm: number;
  readonly rightMm: number;
  /** Of its front face, from the front edge; the smaller one stands before the larger. */
  readonly frontMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
}

/**
 * The share (0 … 1) of each silhouette that nothing before it covers, seen level from the front without perspective:
 * exact for upright rectangles. A riser hides nothing; what stands on it does.
 */
export function seenShares(things: readonly Silhouette[]): number[] {
  return things.map((thing) => {
    const before = things.filter(
      (other) =>
        other !== thing &&
        other.frontMm < thing.frontMm &&
        other.leftMm < thing.rightMm &&
        other.rightMm > thing.leftMm,
    );
    const cuts = [thing.leftMm, thing.rightMm, ...before.flatMap(({ leftMm, rightMm }) => [leftMm, rightMm])]
      .filter((x) => x >= thing.leftMm && x <= thing.rightMm)
      .sort((a, b) => a - b);
    let hidden = 0;
    for (let i = 1; i < cuts.length; i++) {
      const [from, to] = [cuts[i - 1]!, cuts[i]!];
      if (to <= from) continue;
      const over = before.filter(({ leftMm, rightMm }) => leftMm < to && rightMm > from);
      hidden += (to - from) * coveredMm(thing, over);
    }
    const whole = (thing.rightMm - thing.leftMm) * (thing.topMm - thing.bottomMm);
    return whole === 0 ? 1 : 1 - hidden / whole;
  });
}

/** How much of a thing's height the others cover together. */
function coveredMm(thing: Silhouette, over: readonly Silhouette[]): number {
  const spans = over
    .map(({ bottomMm, topMm }) => [Math.max(bottomMm, thing.bottomMm), Math.min(topMm, thing.topMm)] as const)
    .filter(([low, high]) => high > low)
    .sort((a, b) => a[0] - b[0]);
  let [covered, upTo] = [0, -Infinity];
  for (const [low, high] of spans) {
    covered += Math.max(0, high - Math.max(low, upTo));
    upTo = Math.max(upTo, high);
  }
  return covered;
}
