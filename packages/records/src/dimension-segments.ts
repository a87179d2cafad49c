/** Gives each chain of figures its label, its second stated system and its unit; what stays over is told. */
import { type Item, itemsFrom, type LabelItem, segmentsOf, styleOf, trails } from './dimension-items.ts';
import { headFigures, isBare, isPartLetter, type Label } from './dimension-labels.ts';
import type { DimensionIssue, DimensionIssueKind, Weight } from './dimension-reading.ts';
import type { ChainFigure, ReadChain } from './measure-chains.ts';
import type { Token } from './measure-tokens.ts';
import { isLength } from './measure-units.ts';
import { repeatedBy } from './second-system.ts';
import { weightFrom } from './weight-reading.ts';

const WEIGHT = /^(?:gross |net )?(?:weight|wt|weighs|mass|gewicht|poids)\b/i;

export class SegmentReader {
  readonly reads: ReadChain[] = [];
  readonly issues: DimensionIssue[] = [];
  weight: Weight | null = null;
  private segment = 0;
  private line = 0;
  /** A label alone on its line heads the next. */
  private carried: Label | null = null;
  private headsLines = false;

  constructor(tokens: readonly Token[], text: string, others: boolean) {
    for (const { tokens: own, line } of segmentsOf(tokens)) {
      this.line = line;
      const items = itemsFrom(own, text, others);
      if (items.some(({ kind }) => kind === 'chain' || kind === 'bracket')) {
        const heading = this.carried;
        this.carried = null;
        this.walk(items, heading);
      } else this.alone(items);
      this.segment += 1;
    }
    if (this.carried !== null) this.notUnderstood(this.carried);
  }

  private walk(items: readonly Item[], from: Label | null): void {
    let heading = from;
    /** What the next chain takes from labels: extents of a heading stay, dimensions and units are for one chain. */
    let ahead: { readonly label: Label; readonly headed: boolean } | null = from && { label: from, headed: true };
    let last: ReadChain | null = null;
    const style = styleOf(items);
    for (const [at, item] of items.entries()) {
      if (item.kind === 'label') {
        if (item.colon) {
          if (ahead !== null && !ahead.headed) this.leftOver(ahead.label);
          if (item.label.extent !== null || item.label.axes.length === 0) heading = item.label;
          ahead = { label: item.label, headed: true };
        } else if (last !== null && trails(items, at, item, style)) this.trail(last, item.label);
        else if (ahead !== null && isBare(item.label)) continue;
        else {
          // `Frame: H 30 cm`: the heading stays, the dimension is for the next figures.
          if (ahead !== null && ahead.label !== heading) this.leftOver(ahead.label);
          ahead = { label: item.label, headed: false };
        }
      } else if (item.kind === 'chain') {
        last = this.chain(item.chain.figures, item.written, heading, ahead, items[at - 1]);
        ahead = null;
      } else if (item.kind === 'bracket') this.bracket(item.items, item.written);
    }
    if (ahead === null) return;
    if (ahead.headed) this.carried = ahead.label;
    else this.leftOver(ahead.label);
  }

  /** A segment without figures: a heading of what follows, or a word about what went before (`61 x 91 cm; unframed`). */
  private alone(items: readonly Item[]): void {
    for (const item of items) {
      if (item.kind !== 'label' || isBare(item.label)) continue;
      const last = this.reads.at(-1);
      this.headsLines ||= last === undefined && item.label.extent?.known === true;
      if (item.colon || (this.headsLines && item.label.extent?.known)) this.carried = item.label;
      else if (last !== undefined) this.trail(last, item.label);
      else this.notUnderstood(item.label);
    }
  }

  private chain(
    figures: readonly ChainFigure[],
    written: string,
    heading: Label | null,
    ahead: { readonly label: Label; readonly headed: boolean } | null,
    before: Item | undefined,
  ): ReadChain | null {
    const units = new Set(figures.map(({ unit }) => unit));
    const [unit] = units;
    if (unit !== undefined && unit !== null && !isLength(unit) && units.size === 1) {
      if (ahead !== null && !ahead.headed && !WEIGHT.test(ahead.label.text)) this.leftOver(ahead.label);
      const { weight, issue } = weightFrom(figures, unit, written, this.weight);
      this.weight = weight;
      if (issue !== undefined) this.issues.push(issue);
      return null;
    }
    if ([...units].some((other) => other !== null && !isLength(other))) {
      this.tell('not understood', 'text', `“${written}” mixes lengths and weights; it is kept as written.`, written);
      return null;
    }
    const extent = this.extentFor(figures, heading, ahead);
    if (ahead !== null && !headFigures(figures, ahead.label)) this.notUnderstood(ahead.label);
    const previous = this.reads.at(-1);
    const alternative = before?.kind === 'alternative';
    const alike = extent === null || extent === previous?.extent;
    if (previous !== undefined && alike && this.repeats([previous], figures, alternative)) return previous;
    const read: ReadChain = { figures, written, segment: this.segment, line: this.line, extent, second: null };
    this.reads.push(read);
    return read;
  }

  private extentFor(
    figures: readonly ChainFigure[],
    heading: Label | null,
    ahead: { readonly label: Label; readonly headed: boolean } | null,
  ): string | null {
    const own = ahead?.label.extent ?? null;
    if (own?.doubt !== undefined) this.tell('not understood', own.extent, own.doubt, ahead?.label.text ?? '');
    if (own !== null && (own.known || ahead?.headed || own.doubt !== undefined)) return own.extent;
    if (own !== null && ahead !== null) this.notUnderstood(ahead.label);
    const letter = ahead?.headed === true && isPartLetter(ahead.label, figures);
    return letter ? ahead.label.text.toLowerCase() : (heading?.extent?.extent ?? null);
  }

  /** Words after figures: `30 x 40 cm (W x H)`, `61 x 91 cm unframed`, `40 x 30 (cm)`. */
  private trail(read: ReadChain, label: Label): void {
    const { figures } = read;
    if (label.axes.length > 0) {
      const fits = figures.every(({ axis }) => axis === null) && (label.axes.length > 1 || figures.length === 1);
      if (fits) for (const [i, figure] of figures.entries()) figure.axis = label.axes[i] ?? null;
      if (!fits || label.axes.length !== figures.length) {
        this.notUnderstood(label);
        return;
      }
    }
    if (label.unit !== null) {
      for (const other of this.reads) {
        if (other.segment !== read.segment || other.figures.some(({ unit }) => unit !== null)) continue;
        for (const figure of other.figures) figure.unit = label.unit;
      }
    }
    if (isBare(label)) this.leftOver(label);
    if (label.extent === null) return;
    const open = read.extent === null || read.extent === 'overall' || read.extent === label.extent.extent;
    if (!label.extent.known || !open) this.notUnderstood(label);
    else read.extent = label.extent.extent;
  }

  /** Brackets with figures: the second system of what stands before, or a size of their own (`(framed: 90 x 70 cm)`). */
  private bracket(items: readonly Item[], written: string): void {
    const chains = items.flatMap((item) => (item.kind === 'chain' ? [item.chain] : []));
    const figures = chains.flatMap((chain) => chain.figures);
    const labels = items.filter((item): item is LabelItem => item.kind === 'label');
    const weights = figures.some(({ unit }) => unit !== null && !isLength(unit));
    const named = labels.some(({ label }) => label.extent !== null);
    if (weights || named) {
      this.walk(items, null);
      return;
    }
    for (const [i, item] of items.entries()) {
      const next = items[i + 1];
      if (item.kind === 'label' && next?.kind === 'chain') headFigures(next.chain.figures, item.label);
    }
    // `(6.4 x 0.3 cm)` and `(6.4, 0.3 cm)`: one unit closes all.
    const closing = figures.at(-1)?.unit ?? null;
    for (const figure of figures) figure.unit ??= closing;
    const open = this.reads.filter(({ segment, second }) => segment === this.segment && second === null);
    if (this.repeats(open, figures, true)) return;
    const what = `“${written}” does not say the figures before it again; it is kept as written.`;
    this.tell('not understood', 'text', what, written);
  }

  /** True, and noted, where `figures` state `first` again. */
  private repeats(first: readonly ReadChain[], figures: readonly ChainFigure[], sure: boolean): boolean {
    const repeated = repeatedBy(first, figures, sure);
    if (repeated === null) return false;
    let from = 0;
    for (const read of repeated.nothingNew ? [] : repeated.chains) {
      read.second = figures.slice(from, from + read.figures.length);
      from += read.figures.length;
    }
    return true;
  }

  /** Words that said nothing we know are told, not dropped. */
  private leftOver(label: Label): void {
    if (!isBare(label) || /[^\p{L}\p{M}\p{N}\s.,:()[\]'"-]/u.test(label.text)) this.notUnderstood(label);
  }

  private notUnderstood({ text, extent }: Label): void {
    if (text === '') return;
    this.tell('not understood', extent?.extent ?? 'text', `“${text}” can’t be read; it is kept as written.`, text);
  }

  private tell(kind: DimensionIssueKind, where: string, what: string, value: string): void {
    this.issues.push({ kind, where, what, value });
  }
}
