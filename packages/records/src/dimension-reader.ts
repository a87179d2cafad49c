/** Walks the tokens of a dimension text and gathers parts, quantity, weight and what could not be understood. */
import type {
  DimensionIssue,
  DimensionIssueKind,
  DimensionPart,
  DimensionReading,
  Measure,
} from './dimension-reading.ts';
import { type Axis, KG_PER, type LengthUnit, MM_PER, type Token, twoReadings } from './measure-tokens.ts';

/** One figure of a group such as `24 1/2 x 36 in.`, its axis and unit where they are written. */
interface Figure {
  axis: Axis | null;
  value: number;
  max: number | null;
  unit: LengthUnit | null;
  written: string;
}

const EXTENTS: Readonly<Record<string, string>> = {
  overall: 'overall',
  object: 'overall',
  total: 'overall',
  confirmed: 'overall',
  unconfirmed: 'overall',
  framed: 'framed',
  frame: 'framed',
  unframed: 'unframed',
  image: 'image',
  sheet: 'sheet',
  paper: 'sheet',
  sight: 'sight',
  mount: 'mount',
  mat: 'mount',
  plate: 'plate',
  platemark: 'plate',
  support: 'support',
  canvas: 'support',
  panel: 'support',
  base: 'base',
  lid: 'lid',
  rim: 'rim',
  shade: 'shade',
  drop: 'drop',
  repeat: 'repeat',
  display: 'displayed',
  displayed: 'displayed',
  block: 'block',
  seat: 'seat',
};
const FILLERS = new Set(
  'of and the a an at to in with without or is size sizes dimension dimensions measure measures measurement part parts open closed'.split(
    ' ',
  ),
);
const ORDER: readonly Axis[] = ['height', 'width', 'depth'];

type Draft = { extent: string } & { [axis in Axis]?: Measure };

export class DimensionReader {
  private readonly tokens: readonly Token[];
  private readonly toleranceMm: number;
  private at = 0;
  private extent = 'overall';
  private words: string[] = [];
  private axis: Axis | null = null;
  private alternative = false;
  private last: { part: Draft; axes: Axis[] } | null = null;
  private readonly parts: Draft[] = [];
  private readonly issues: DimensionIssue[] = [];
  private readonly about: { -readonly [key in keyof DimensionReading]?: DimensionReading[key] } = {};

  constructor(tokens: readonly Token[], toleranceMm: number) {
    this.tokens = tokens;
    this.toleranceMm = toleranceMm;
  }

  read(): Omit<DimensionReading, 'written'> {
    while (this.at < this.tokens.length) this.step();
    this.dropWords();
    return { ...this.about, parts: this.parts as DimensionPart[], issues: this.issues };
  }

  private peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  private step(): void {
    const token = this.peek() as Token;
    switch (token.kind) {
      case 'number':
        this.number();
        return;
      case 'axis':
        this.axisWord(token.axis);
        return;
      case 'word':
        this.word(token.text);
        return;
      case 'open':
        this.alternative = this.last !== null;
        break;
      case 'close':
        this.alternative = false;
        if (this.peek(1)?.kind !== 'colon') this.labelLast();
        break;
      case 'colon':
        this.label();
        break;
      case 'end':
        this.dropWords();
        this.last = null;
        this.alternative = false;
        break;
      case 'comma':
        if (!this.labelGoesOn()) this.dropWords();
        break;
      default:
        this.notUnderstood(token.kind === 'by' ? '×' : token.kind);
    }
    this.at += 1;
  }

  /** `diam. of base 4 3/4`: the axis waits for its figure; `20 cm high`: it belongs to the figure before. */
  private axisWord(axis: Axis): void {
    this.at += 1;
    let next = this.peek();
    if (next?.kind === 'colon') {
      this.at += 1;
      next = this.peek();
    }
    const of = next?.kind === 'word' && next.text === 'of' ? this.peek(1) : undefined;
    if (of?.kind === 'word') {
      this.extent = EXTENTS[of.text] ?? of.text;
      this.at += 2;
      this.axis = axis;
      return;
    }
    const [only] = this.last?.axes ?? [];
    if (next?.kind !== 'number' && this.last !== null && this.last.axes.length === 1 && only !== undefined) {
      const measure = this.last.part[only];
      if (only !== axis && measure !== undefined && this.last.part[axis] === undefined) {
        delete this.last.part[only];
        this.last.part[axis] = measure;
        this.last.axes = [axis];
        this.forget('one measure only');
      }
      return;
    }
    if (next?.kind === 'number') this.axis = axis;
    else this.notUnderstood(axis);
  }

  private word(text: string): void {
    this.at += 1;
    if (/^(approx|approximately|about|ca|c|circa|~)$/.test(text)) this.about.approximate = true;
    else if (/^(irregular|irreg)$/.test(text)) this.about.irregular = true;
    else if (/^(variable|vary|varies|various)$/.test(text)) this.about.variable = true;
    else if (text === 'unconfirmed') {
      this.about.approximate = true;
      this.words.push(text);
    } else if (text === 'each' || text === 'per') this.about.perItem = true;
    else if (text === 'pair') this.about.quantity = 2;
    else if (text === '/' || text === '=' || text === '|') this.alternative = this.last !== null;
    else this.words.push(text);
  }

  /** True at the comma of `image, each:`. */
  private labelGoesOn(): boolean {
    let ahead = 1;
    while (this.peek(ahead)?.kind === 'word') ahead += 1;
    return this.words.length > 0 && ahead > 1 && this.peek(ahead)?.kind === 'colon';
  }

  /** A label ends in a colon: `framed:`, `a:`, `with lid:`. */
  private label(): void {
    const words = this.words.filter((word) => !/^(of|dimensions?|sizes?)$/.test(word));
    this.words = [];
    if (words.length === 0) return;
    const known = words.map((word) => EXTENTS[word]).find((extent) => extent !== undefined);
    this.extent = words.length === 1 || known === 'framed' ? (known ?? words.join(' ')) : words.join(' ');
    this.last = null;
  }

  /** `(framed)` after figures says what they were. */
  private labelLast(): void {
    const known = this.words.map((word) => EXTENTS[word]).find((extent) => extent !== undefined);
    if (known === undefined || this.last === null) return;
    this.words = [];
    if (!this.parts.some(({ extent }) => extent === known)) this.last.part.extent = known;
  }

  private number(): void {
    const setOf = this.words.at(-1) === 'of' && this.words.includes('set');
    const token = this.peek() as Token & { kind: 'number' };
    const next = this.peek(1);
    if (setOf && next?.kind !== 'unit' && next?.kind !== 'by') {
      this.about.quantity = token.value;
      this.words = [];
      this.at += 1;
      return;
    }
    if (next?.kind === 'weight') {
      this.at += 2;
      this.words = this.words.filter((word) => !/^(weight|weighs|wt)$/.test(word));
      if (twoReadings(token.written, next.unit)) {
        const what = `${token.written} may be thousands or a decimal; neither is taken.`;
        this.issue('not understood', 'weight', what, token.written);
        return;
      }
      const kg = round(token.value * KG_PER[next.unit]);
      if (this.about.weight === undefined) this.about.weight = { value: token.value, unit: next.unit, kg };
      else if (Math.abs(this.about.weight.kg - kg) > 0.05 + 0.02 * kg) {
        this.issue(
          'systems disagree',
          'weight',
          `Two weights are stated: ${this.about.weight.kg} kg and ${kg} kg.`,
          token.written,
        );
      }
      return;
    }
    const figures = this.group();
    if (this.alternative && this.last !== null) this.compare(figures);
    else this.place(figures);
  }

  /** `[axis] figure [unit] (× [axis] figure [unit])*`; a figure without a unit takes the next one written in the group. */
  private group(): Figure[] {
    const figures: Figure[] = [];
    for (;;) {
      const token = this.peek();
      if (token?.kind !== 'number') break;
      this.at += 1;
      const figure: Figure = {
        axis: this.axis,
        value: token.value,
        max: token.max ?? null,
        unit: null,
        written: token.written,
      };
      this.axis = null;
      this.unitOf(figure);
      const after = this.peek();
      if (figure.axis === null && after?.kind === 'axis' && this.peek(1)?.kind !== 'number') {
        figure.axis = after.axis;
        this.at += 1;
      } else if (
        figure.axis === null &&
        after?.kind === 'open' &&
        this.peek(1)?.kind === 'axis' &&
        this.peek(2)?.kind === 'close'
      ) {
        figure.axis = (this.peek(1) as Token & { kind: 'axis' }).axis;
        this.at += 3;
      }
      figures.push(figure);
      if (!this.goesOn()) break;
    }
    let unit: LengthUnit | null = null;
    for (const figure of figures.toReversed()) {
      unit = figure.unit ?? unit;
      figure.unit = unit;
    }
    return figures;
  }

  /** The unit after a figure; feet and the inches after them are one figure. */
  private unitOf(figure: Figure): void {
    const unit = this.peek();
    if (unit?.kind !== 'unit') return;
    this.at += 1;
    figure.unit = unit.unit;
    const inches = this.peek();
    const inchUnit = this.peek(1);
    if (unit.unit !== 'ft' || inches?.kind !== 'number' || inchUnit?.kind !== 'unit' || inchUnit.unit !== 'in') return;
    this.at += 2;
    figure.value = figure.value * 12 + inches.value;
    figure.unit = 'in';
    figure.written += ` ft ${inches.written} in`;
  }

  /** True, and past the sign, when another figure of the same group follows. */
  private goesOn(): boolean {
    const sign = this.peek();
    if (sign?.kind !== 'by' && sign?.kind !== 'comma') return false;
    let ahead = 1;
    let axis: Axis | null = null;
    const next = this.peek(1);
    if (next?.kind === 'axis') {
      axis = next.axis;
      ahead = 2;
    }
    if (this.peek(ahead)?.kind !== 'number') return false;
    if (sign.kind === 'comma' && (axis === null || this.alternative)) return false;
    this.axis = axis;
    this.at += ahead;
    return true;
  }

  private place(figures: readonly Figure[]): void {
    const part = this.partFor();
    const taken = new Set(figures.map(({ axis }) => axis));
    const free = ORDER.filter((axis) => !taken.has(axis));
    const axes: Axis[] = [];
    for (const figure of figures) {
      const axis = figure.axis ?? free.shift();
      const measure = this.measureOf(figure, `${part.extent} ${axis ?? ''}`.trim());
      if (axis === undefined) this.notUnderstood(figure.written);
      else if (part[axis] !== undefined) this.saidTwice(part, axis, measure, figure);
      else {
        part[axis] = measure;
        axes.push(axis);
      }
    }
    if (figures.length === 1 && figures[0]?.axis === null && axes.length === 1) {
      this.issue(
        'one measure only',
        part.extent,
        'Only one figure is stated, and not of what; it is taken as the height.',
        figures[0].written,
      );
    }
    this.last = { part, axes };
  }

  private partFor(): Draft {
    const words = this.words.map((word) => EXTENTS[word]).filter((extent) => extent !== undefined);
    if (words.length > 0) {
      this.extent = words.at(-1) as string;
      this.words = [];
    }
    const known = this.parts.find(({ extent }) => extent === this.extent);
    if (known !== undefined) return known;
    const part: Draft = { extent: this.extent };
    this.parts.push(part);
    if (part.extent === 'sight') {
      this.issue('sight size', 'sight', 'Sight size: what shows within the frame, not the outer edge.', 'sight');
    }
    return part;
  }

  private measureOf(figure: Figure, where: string): Measure {
    const ambiguous = twoReadings(figure.written, figure.unit);
    if (ambiguous) {
      this.issue(
        'not understood',
        where,
        `${figure.written} may be thousands or a decimal; neither is taken.`,
        figure.written,
      );
    } else if (figure.unit === null) {
      this.issue('unit unknown', where, 'No unit. Not guessed.', figure.written);
    }
    const per = figure.unit === null || ambiguous ? null : MM_PER[figure.unit];
    return {
      value: figure.value,
      ...(figure.max === null ? {} : { maxValue: figure.max }),
      unit: figure.unit,
      mm: per === null ? null : round(figure.value * per),
      ...(figure.max === null || per === null ? {} : { maxMm: round(figure.max * per) }),
    };
  }

  /** A second stated system, figure by figure; a disagreement is asked about and the first stands. */
  private compare(figures: readonly Figure[]): void {
    const { part, axes } = this.last as { part: Draft; axes: Axis[] };
    const second = figures.map((figure) => (figure.unit === null ? null : figure.value * MM_PER[figure.unit]));
    if (figures.length !== axes.length || second.includes(null)) {
      this.issue(
        'not understood',
        part.extent,
        'The second figures do not match the first, one for one.',
        figures.map(({ written }) => written).join(' x '),
      );
      return;
    }
    for (const [index, axis] of axes.entries()) {
      const first = part[axis] as Measure;
      const other = second[index] as number;
      if (first.mm === null || Math.abs(first.mm - other) <= this.toleranceMm) continue;
      part[axis] = { ...first, conflictMm: round(other) };
      this.issue(
        'systems disagree',
        `${part.extent} ${axis}`,
        `Two stated units disagree on the ${axis}: ${first.value} ${first.unit} is ${(first.mm / 10).toFixed(1)} cm, not ${(other / 10).toFixed(1)}.`,
        figures[index]?.written ?? '',
      );
    }
  }

  private saidTwice(part: Draft, axis: Axis, measure: Measure, figure: Figure): void {
    const first = part[axis] as Measure;
    if (first.mm !== null && measure.mm !== null && Math.abs(first.mm - measure.mm) <= this.toleranceMm) return;
    if (first.unit !== null && measure.unit !== null && first.unit !== measure.unit && measure.mm !== null) {
      part[axis] = { ...first, conflictMm: measure.mm };
      this.issue(
        'systems disagree',
        `${part.extent} ${axis}`,
        `The ${axis} is stated twice and differs.`,
        figure.written,
      );
      return;
    }
    this.issue(
      'said twice',
      `${part.extent} ${axis}`,
      `A second ${axis} is stated; the first is kept.`,
      figure.written,
    );
  }

  private issue(kind: DimensionIssueKind, where: string, what: string, value: string): void {
    this.issues.push({ kind, where, what, value });
  }

  private forget(kind: DimensionIssueKind): void {
    const index = this.issues.findLastIndex((issue) => issue.kind === kind);
    if (index >= 0) this.issues.splice(index, 1);
  }

  private notUnderstood(value: string): void {
    this.issue('not understood', 'text', `“${value}” can’t be read; it is kept as written.`, value);
  }

  /** Words that said nothing we know are told, not dropped. */
  private dropWords(): void {
    const strange = this.words.filter(
      (word) => !FILLERS.has(word) && EXTENTS[word] === undefined && !/^(set|weight)$/.test(word),
    );
    if (strange.length > 0) this.notUnderstood(strange.join(' '));
    if (this.words.length > 0) this.words = [];
    if (this.axis !== null) this.notUnderstood(this.axis);
    this.axis = null;
  }
}

/** Trims the last bits of binary arithmetic. */
function round(mm: number): number {
  return Math.round(mm * 1e6) / 1e6;
}
