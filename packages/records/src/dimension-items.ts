/** One segment of a dimension text (a line, or what a semicolon closes) as chains of figures and the labels among them. */
import { type Label, labelFrom } from './dimension-labels.ts';
import { type Chain, chainAt } from './measure-chains.ts';
import { isMark, type Token } from './measure-tokens.ts';

export interface LabelItem {
  readonly kind: 'label';
  readonly label: Label;
  readonly tokens: readonly Token[];
  /** Closed by a colon: it heads what follows. */
  readonly colon: boolean;
  /** In brackets right after figures. */
  readonly bracketed: boolean;
}
export type Item =
  | LabelItem
  | { readonly kind: 'chain'; readonly chain: Chain; readonly written: string }
  | { readonly kind: 'bracket'; readonly items: readonly Item[]; readonly written: string }
  | { readonly kind: 'comma' | 'alternative' };

const DEEPEST = 3;

/** Tokens parted at line ends and at semicolons that stand in no brackets; each with the number of its line. */
export function segmentsOf(tokens: readonly Token[]): { readonly tokens: readonly Token[]; readonly line: number }[] {
  const segments: { tokens: Token[]; line: number }[] = [{ tokens: [], line: 0 }];
  let depth = 0;
  let line = 0;
  for (const token of tokens) {
    if (isMark(token, '(')) depth += 1;
    if (isMark(token, ')')) depth = Math.max(0, depth - 1);
    const ends = isMark(token, '\n');
    if (ends) [depth, line] = [0, line + 1];
    if (ends || (depth === 0 && isMark(token, ';'))) segments.push({ tokens: [], line });
    else segments.at(-1)?.tokens.push(token);
  }
  return segments;
}

/** `text` is what `tokens` are tokens of; `others`: letters of German and French name dimensions. */
export function itemsFrom(tokens: readonly Token[], text: string, others: boolean, depth = 0): Item[] {
  const items: Item[] = [];
  let pending: Token[] = [];
  const flush = (colon = false, bracketed = false): void => {
    if (pending.length === 0) return;
    const label = labelFrom(pending, text, others);
    items.push({ kind: 'label', label, tokens: pending, colon, bracketed });
    pending = [];
  };
  let at = 0;
  while (at < tokens.length) {
    const token = tokens[at] as Token;
    at += 1;
    if (token.kind === 'figure' && !isMark(tokens[at], ':')) {
      flush();
      const chain = chainAt(tokens, at - 1, others);
      at = chain.next;
      items.push({ kind: 'chain', chain, written: text.slice(token.start, tokens[at - 1]?.end) });
    } else if (token.kind !== 'mark') pending.push(token);
    else if (token.mark === ':') {
      mergeListed(items, pending);
      if (pending.length > 0) flush(true);
      else closeLast(items);
    } else if (token.mark === '(' || token.mark === '[') {
      const close = depth < DEEPEST ? closingOf(tokens, at - 1) : null;
      if (close === null) continue;
      const inside = tokens.slice(at, close);
      const headed = isMark(tokens[close + 1], ':');
      const written = text.slice(token.start, tokens[close]?.end ?? text.length);
      if (!headed && inside.some(({ kind }) => kind === 'figure')) {
        flush();
        items.push({ kind: 'bracket', items: itemsFrom(inside, text, others, depth + 1), written });
      } else if (inside.length > 0) {
        const after = pending.length === 0 && !headed && /chain|bracket/.test(items.at(-1)?.kind ?? '');
        if (after) {
          pending = [...inside];
          flush(false, true);
        } else pending.push(...tokens.slice(at - 1, close + 1));
      }
      at = close + 1;
    } else if (token.mark === ',' || token.mark === ';') {
      flush();
      items.push({ kind: 'comma' });
    } else if (/[/=|]/.test(token.mark) && pending.length === 0) items.push({ kind: 'alternative' });
    else if (!/[.)\]]/.test(token.mark) && (token.mark !== '-' || pending.length > 0)) pending.push(token);
  }
  flush();
  return items;
}

/** `support, secondary:` is one label: what stood before the comma joins what the colon closes. */
function mergeListed(items: Item[], pending: Token[]): void {
  const [label, comma] = items;
  if (items.length !== 2 || pending.length === 0 || label?.kind !== 'label' || comma?.kind !== 'comma') return;
  items.length = 0;
  pending.unshift(...label.tokens);
}

/** `image, each:` with each already taken out: the colon closes the label before the comma. */
function closeLast(items: Item[]): void {
  const at = items.findLastIndex(({ kind }) => kind !== 'comma');
  const label = items[at];
  if (label?.kind === 'label') items[at] = { ...label, colon: true };
}

function closingOf(tokens: readonly Token[], from: number): number {
  let depth = 0;
  for (let at = from; at < tokens.length; at += 1) {
    const token = tokens[at];
    if (isMark(token, '(') || isMark(token, '[')) depth += 1;
    if (isMark(token, ')') || isMark(token, ']')) depth -= 1;
    if (depth === 0) return at;
  }
  return tokens.length;
}

/** Whether labels stand before their figures or after: `framed 30 x 40 cm` or `30 x 40 cm framed`. */
export function styleOf(items: readonly Item[]): 'before' | 'after' | null {
  if (items[0]?.kind === 'label') return 'before';
  const last = items.findLast(({ kind }) => kind !== 'comma');
  return last?.kind === 'label' && !last.colon ? 'after' : null;
}

/** True where a label is of the figures before it. */
export function trails(items: readonly Item[], at: number, item: LabelItem, style: 'before' | 'after' | null): boolean {
  const isFigures = (other: Item | undefined) => other?.kind === 'chain' || other?.kind === 'bracket';
  const heads = isFigures(items[at + 1]);
  if (!heads) return true;
  if (!isFigures(items[at - 1])) return false;
  return style === 'after' || (item.bracketed && style !== 'before');
}
