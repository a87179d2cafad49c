import { partsOf, type SpanningTree } from './spanning-tree.ts';

/** Two ways of taking groups from one density tree: the most lasting ones, and the innermost; −1 is in none. */
export interface DensityGroups {
  readonly lasting: Int32Array;
  readonly innermost: Int32Array;
}

interface Branch {
  readonly parent: number;
  readonly birth: number;
  mass: number;
  parted: boolean;
}

/**
 * The dense groups of at least `least` things in a spanning tree of mutual reachability (edges lightest first): R. Campello,
 * D. Moulavi, J. Sander, "Density-based clustering based on hierarchical density estimates", PAKDD 2013; the condensed
 * tree after L. McInnes, J. Healy, "Accelerated hierarchical density based clustering", ICDMW 2017. The whole pool is
 * never a group. RangeError when `least` is under 2.
 */
export function densityGroups(tree: SpanningTree, least: number): DensityGroups {
  if (!(least >= 2)) throw new RangeError(`densityGroups: the least size is ${least}, needs 2 or more`);
  const n = tree.weight.length + 1;
  const { left, right, size } = dendrogramOf(tree, n);
  const branches: Branch[] = [{ parent: -1, birth: 0, mass: 0, parted: false }];
  const branchOf = new Int32Array(n);
  const open: [node: number, branch: number][] = [[2 * n - 2, 0]];
  const fall = (top: number, branch: number, density: number): void => {
    const below = [top];
    for (let node = below.pop(); node !== undefined; node = below.pop()) {
      if (node >= n) {
        below.push(left[node - n]!, right[node - n]!);
        continue;
      }
      branchOf[node] = branch;
      branches[branch]!.mass += density - branches[branch]!.birth;
    }
  };
  for (let at = open.pop(); at; at = open.pop()) {
    const [node, branch] = at;
    if (node < n) {
      branchOf[node] = branch;
      continue;
    }
    const weight = tree.weight[node - n]!;
    const density = weight > 0 ? 1 / weight : 1e12;
    const sides = [left[node - n]!, right[node - n]!];
    if (sides.every((side) => size[side]! >= least)) {
      branches[branch]!.parted = true;
      for (const side of sides) {
        branches[branch]!.mass += (density - branches[branch]!.birth) * size[side]!;
        open.push([side, branches.length]);
        branches.push({ parent: branch, birth: density, mass: 0, parted: false });
      }
    } else
      for (const side of sides)
        if (size[side]! >= least) open.push([side, branch]);
        else fall(side, branch, density);
  }
  return {
    lasting: labelled(branches, branchOf, mostLasting(branches)),
    innermost: labelled(
      branches,
      branchOf,
      branches.map(({ parted }, b) => b > 0 && !parted),
    ),
  };
}

function dendrogramOf({ from, to }: SpanningTree, n: number) {
  const left = new Int32Array(n - 1);
  const right = new Int32Array(n - 1);
  const size = new Int32Array(2 * n - 1).fill(1, 0, n);
  const { partOf, parent } = partsOf(2 * n - 1);
  for (let e = 0; e < n - 1; e++) {
    const [a, b] = [partOf(from[e]!), partOf(to[e]!)];
    left[e] = a;
    right[e] = b;
    size[n + e] = size[a]! + size[b]!;
    parent[a] = n + e;
    parent[b] = n + e;
  }
  return { left, right, size };
}

/** A branch is taken when it holds more mass than the best below it together (excess of mass). */
function mostLasting(branches: readonly Branch[]): boolean[] {
  const below = new Float64Array(branches.length);
  const taken = branches.map(() => false);
  for (let b = branches.length - 1; b > 0; b--) {
    const { mass, parent, parted } = branches[b]!;
    taken[b] = !parted || below[b]! <= mass;
    below[parent]! += taken[b] ? mass : below[b]!;
  }
  return taken;
}

function labelled(branches: readonly Branch[], branchOf: Int32Array, taken: readonly boolean[]): Int32Array {
  const label = new Int32Array(branches.length).fill(-1);
  let groups = 0;
  for (const [b, { parent }] of branches.entries()) {
    if (parent >= 0 && label[parent]! >= 0) label[b] = label[parent]!;
    else if (taken[b]) label[b] = groups++;
  }
  return branchOf.map((b) => label[b]!);
}
