/** The greys and letters the canvas draws with, read from the page's own tokens so that both always agree. */
export interface Tones {
  readonly board: string;
  readonly onBoard: string;
  readonly onBoard2: string;
  readonly lineBoard: string;
  readonly section: string;
  readonly slab: string;
  readonly card: string;
  readonly bare: string;
  readonly stand: string;
  readonly sans: string;
  readonly serif: string;
}

export function tonesFrom(element: Element): Tones {
  const style = getComputedStyle(element);
  const token = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
  return {
    board: token('--board', '#9e9e9e'),
    onBoard: token('--on-board', '#111'),
    onBoard2: token('--on-board-2', '#1c1c1c'),
    lineBoard: token('--line-board', '#525252'),
    section: token('--L35', '#525252'),
    slab: token('--L80', '#c6c6c6'),
    card: token('--L97', '#f6f6f6'),
    bare: token('--L92', '#e8e8e8'),
    stand: '#b1b1b1',
    sans: token('--sans', 'sans-serif'),
    serif: token('--serif', 'serif'),
  };
}

export function ink(on: 'white' | 'black'): string {
  return on === 'white' ? '#fff' : '#000';
}

/** The other one, for the thin edge that keeps a mark seen on whatever lies behind it. */
export function counterInk(on: 'white' | 'black'): string {
  return on === 'white' ? '#000' : '#fff';
}
