/** The little of d3-force 3 that the bench calls; it ships no types. */
declare module 'd3-force' {
  interface Collide<N> {
    iterations(count: number): Collide<N>;
  }
  interface Pull {
    strength(value: number): Pull;
  }
  interface Simulation {
    force(name: string, force: unknown): Simulation;
    stop(): Simulation;
    tick(): Simulation;
  }
  export function forceSimulation<N>(nodes: N[]): Simulation;
  export function forceCollide<N>(radius: (node: N) => number): Collide<N>;
  export function forceX(x: number): Pull;
  export function forceY(y: number): Pull;
}
