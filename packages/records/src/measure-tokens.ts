/** A dimension text made plain (plain-measure-text.ts) as tokens: figures, units, words, times signs, marks. */
import { isLength, type Unit, unitNamed } from './measure-units.ts';

interface Span {
  readonly start: number;
  readonly end: number;
}

export type Figure = Span & {
  readonly kind: 'figure';
  readonly value: number;
  readonly written: string;
  /** What the figure is if its mark parts thousands, where it may (`1,250`); `value` takes the mark for a decimal one. */
  readonly thousands?: number;
};
export type UnitToken = Span & { readonly kind: 'unit'; readonly unit: Unit };
/** In lower case, without a closing full stop. */
export type Word = Span & { readonly kind: 'word'; readonly word: string };
export type Mark = Span & { readonly kind: 'mark'; readonly mark: string };
export type Times = Span & { readonly kind: 'times' };
export type Token = Figure | UnitToken | Word | Mark | Times;

// 1,234.5 and 1.234,5 and 1,234,567 can be read one way only. No figure of a size has more than nine digits.
const PLAIN = String.raw`\d{1,3}(?:,\d{3}){1,2}\.\d{1,6}|\d{1,3}(?:\.\d{3}){1,2},\d{1,6}|\d{1,3}(?:,\d{3}){2}|\d{1,3}(?:\.\d{3}){2}|\d{1,9}(?:[.,]\d{1,17})?|\.\d{1,17}`;
const FIGURE = new RegExp(
  String.raw`(\d{1,9})(?: | ?- ?)(\d{1,4}) ?\/ ?(\d{1,4})(?!\d)|(\d{1,4}) ?\/ ?(\d{1,4})(?!\d)|(?:${PLAIN})(?!\d)`,
  'y',
);
const DIGITS = /\d+/y;
const WORD = /[\p{L}\p{M}]+\.?/uy;
const DENOMINATORS = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64]);

/** Tokens in the order of the text; feet with inches, metres with centimetres, pounds with ounces come as one figure. */
export function measureTokens(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const sign = text[at] as string;
    const found = sign === ' ' ? null : (figureAt(text, at) ?? wordAt(text, at));
    const after = tokens.at(-1)?.kind === 'figure';
    if (found?.kind === 'word') tokens.push(...splitWord(found, after));
    else if (found) tokens.push(found);
    else if (sign !== ' ') tokens.push(markOf(sign, at, after));
    at = found?.end ?? at + 1;
  }
  return joined(tokens);
}

/** True when `token` is this mark. */
export function isMark(token: Token | undefined, mark: string): boolean {
  return token?.kind === 'mark' && token.mark === mark;
}

function figureAt(text: string, at: number): Figure | Word | null {
  FIGURE.lastIndex = at;
  const found = FIGURE.exec(text);
  if (found === null) {
    DIGITS.lastIndex = at;
    const run = DIGITS.exec(text)?.[0];
    return run === undefined ? null : { kind: 'word', word: run, start: at, end: at + run.length };
  }
  const [run, whole, over, under, top, bottom] = found;
  const figure = (value: number, length: number): Figure => ({
    kind: 'figure',
    value,
    written: text.slice(at, at + length),
    start: at,
    end: at + length,
  });
  // Not a fraction after all (62 / 24): only the first figure, and the rest by itself.
  if (whole !== undefined) {
    const part = fractionOf(over, under);
    return part === null ? figure(Number(whole), whole.length) : figure(Number(whole) + part, run.length);
  }
  if (top !== undefined) {
    const part = fractionOf(top, bottom);
    return part === null ? figure(Number(top), top.length) : figure(part, run.length);
  }
  const decimal = run.replace(',', '.');
  const marks = run.replace(/\d/g, '');
  if (marks.length > 1) {
    const [thousands, last] = [marks[0] as string, marks.at(-1) as string];
    const plain = run.replaceAll(thousands, '');
    return figure(Number(thousands === last ? plain : plain.replace(last, '.')), run.length);
  }
  if (!/^[1-9]\d{0,2}[.,]\d{3}$/.test(run)) return figure(Number(decimal), run.length);
  return { ...figure(Number(decimal), run.length), thousands: Number(run.replace(/[.,]/, '')) };
}

function fractionOf(top: string | undefined, bottom: string | undefined): number | null {
  const [over, under] = [Number(top), Number(bottom)];
  return over < under && DENOMINATORS.has(under) ? over / under : null;
}

function wordAt(text: string, at: number): Word | null {
  WORD.lastIndex = at;
  const run = WORD.exec(text)?.[0];
  if (run === undefined) return null;
  return { kind: 'word', word: run.toLowerCase().replace(/\.$/, ''), start: at, end: at + run.length };
}

/** `x`, `by`, units, and what is written without a space: `20cmx30`, `L38xB24`. */
function splitWord(found: Word, afterFigure: boolean): Token[] {
  const { word, start, end } = found;
  if (word === 'x' || word === 'by') return [{ kind: 'times', start, end }];
  if (!afterFigure) return [found];
  const unit = unitNamed(word);
  if (unit !== null) return [{ kind: 'unit', unit, start, end }];
  const before = word.endsWith('x') ? unitNamed(word.slice(0, -1)) : null;
  if (before !== null) {
    return [
      { kind: 'unit', unit: before, start, end: end - 1 },
      { kind: 'times', start: end - 1, end },
    ];
  }
  if (!/^[hwdlbtpø]?x[hwdlbtpø]?$/.test(word)) return [found];
  const [left = '', right = ''] = word.split('x');
  const at = start + left.length;
  return [
    ...(left === '' ? [] : [{ kind: 'word', word: left, start, end: at } as const]),
    { kind: 'times', start: at, end: at + 1 },
    ...(right === '' ? [] : [{ kind: 'word', word: right, start: at + 1, end } as const]),
  ];
}

function markOf(sign: string, at: number, afterFigure: boolean): Token {
  const span = { start: at, end: at + 1 };
  if (sign === '×') return { kind: 'times', ...span };
  const unit = afterFigure ? unitNamed(sign) : null;
  return unit === null ? { kind: 'mark', mark: sign, ...span } : { kind: 'unit', unit, ...span };
}

/** 5 ft. 4 in. as 64 in., 1 m 20 cm as 120 cm, 3 lb. 4 oz. as 3.25 lb. */
function joined(tokens: readonly Token[]): readonly Token[] {
  const out: Token[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at] as Token;
    const unit = tokens[at + 1];
    const dash = isMark(tokens[at + 2], '-') ? 1 : 0;
    const less = tokens[at + 2 + dash];
    const lessUnit = tokens[at + 3 + dash];
    const per =
      token.kind === 'figure' && unit?.kind === 'unit' && less?.kind === 'figure' && lessUnit?.kind === 'unit'
        ? perUnit(unit.unit, lessUnit.unit)
        : null;
    const dashed = dash === 1 && unit?.kind === 'unit' && unit.unit !== 'ft';
    if (per === null || dashed || token.kind !== 'figure' || less?.kind !== 'figure' || less.value >= per) {
      out.push(token);
      continue;
    }
    const end = less.end;
    const small = lessUnit as UnitToken;
    const value = isLength(small.unit) ? token.value * per + less.value : token.value + less.value / per;
    out.push({ kind: 'figure', value, written: `${token.written} ${less.written}`, start: token.start, end });
    out.push(isLength(small.unit) ? small : { ...small, unit: 'lb' });
    at += 3 + dash;
  }
  return out;
}

function perUnit(unit: Unit, less: Unit): number | null {
  if (unit === 'ft' && less === 'in') return 12;
  if (unit === 'm' && less === 'cm') return 100;
  return unit === 'lb' && less === 'oz' ? 16 : null;
}
