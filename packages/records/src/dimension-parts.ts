/** Chains with their extents become parts; what units, orders and repetitions leave open becomes issues. */
import { agree, measureFrom } from './dimension-measures.ts';
import type { Axis, DimensionIssue, DimensionIssueKind, DimensionPart, Measure } from './dimension-reading.ts';
import type { ChainFigure, ReadChain } from './measure-chains.ts';
import { isMetric } from './measure-units.ts';

type Draft = { extent: string } & { [axis in Axis]?: Measure };
interface Open {
  readonly part: Draft;
  readonly segment: number;
  /** Each of its figures has its dimension written. */
  readonly named: boolean;
}

const ORDER: readonly Axis[] = ['height', 'width', 'depth'];
/** Of the whole, whatever part was spoken of before. */
const OF_THE_WHOLE: readonly Axis[] = ['drop', 'repeat'];

/** Parts in the order of the text, height × width × depth where no words say otherwise (CCO 2006, 3.2.1). */
export function partsFrom(
  reads: readonly ReadChain[],
  toleranceMm: number,
): { readonly parts: DimensionPart[]; readonly issues: DimensionIssue[] } {
  spreadUnits(reads);
  const drafts = new Drafts(toleranceMm);
  for (const read of reads) drafts.add(read);
  return { parts: drafts.open.map(({ part }) => part as DimensionPart), issues: drafts.issues };
}

/**
 * `H 30, W 40; D 20 cm`: in a list of single, named figures of one part, on one line, the unit that closes it is meant for
 * all. Chains and labelled parts (`framed: 30 x 40; unframed: 20 x 30 cm`) are not such a list: registrars write them in
 * different units too, so theirs is asked for.
 */
function spreadUnits(reads: readonly ReadChain[]): void {
  for (let at = reads.length - 2; at >= 0; at -= 1) {
    const [read, next] = [reads[at] as ReadChain, reads[at + 1] as ReadChain];
    const [figure, other] = [read.figures[0] as ChainFigure, next.figures[0] as ChainFigure];
    const single = read.figures.length === 1 && next.figures.length === 1;
    const named = figure.axis !== null && other.axis !== null && figure.axis !== other.axis;
    if (single && named && read.line === next.line && read.extent === next.extent) figure.unit ??= other.unit;
  }
}

class Drafts {
  readonly open: Open[] = [];
  readonly issues: DimensionIssue[] = [];
  private readonly toleranceMm: number;

  constructor(toleranceMm: number) {
    this.toleranceMm = toleranceMm;
  }

  add(read: ReadChain): void {
    const named = read.figures.every(({ axis }) => axis !== null);
    const axes = this.axesOf(read.figures);
    const extent = this.extentOf(read, named);
    const measures = read.figures.map((figure, i) =>
      this.measure(read, i, figure, `${extent} ${axes[i] ?? ''}`.trim()),
    );
    const known = this.open.findLast(({ part }) => part.extent === extent);
    const clash = axes.some((axis) => axis !== null && known?.part[axis] !== undefined);
    if (known !== undefined && clash && this.saidAgain(known.part, axes, measures, read)) return;
    const joins = known !== undefined && !clash && (known.segment === read.segment || (named && known.named));
    // `55 x 55 mm, 4 mm`: a lone figure after a whole chain is of something that is not said.
    const loose = known?.segment === read.segment && read.figures.length === 1 && !named;
    if (loose) {
      const what = `It is not said what ${read.written} is of; it is left out.`;
      this.tell('not understood', extent, what, read.written);
      return;
    }
    const part: Draft = joins ? known.part : { extent };
    if (!joins) this.begin(part, known, read, named);
    for (const [i, axis] of axes.entries()) {
      if (axis !== null) part[axis] = measures[i] as Measure;
      else
        this.tell(
          'not understood',
          extent,
          `It is not said which measure ${read.figures[i]?.figure.written} is.`,
          read.written,
        );
    }
    if (!named && (read.figures.length === 1 || axes.includes('diameter'))) {
      const what = 'Only one figure is stated, and not of what; it is taken as the height.';
      this.tell('one measure only', extent, what, read.written);
    }
  }

  private begin(part: Draft, known: Open | undefined, read: ReadChain, named: boolean): void {
    this.open.push({ part, segment: read.segment, named });
    const { extent } = part;
    if (known !== undefined) {
      this.tell('said twice', extent, `More than one ${extent} size is stated; the largest is drawn.`, read.written);
    } else if (extent === 'sight') {
      this.tell('sight size', 'sight', 'Sight size: what shows within the frame, not the outer edge.', read.written);
    }
  }

  /** `base: H. 3 cm; W. 4 cm`: named figures go on with the part before; bare ones are of the whole. */
  private extentOf(read: ReadChain, named: boolean): string {
    if (read.extent !== null) return read.extent;
    const before = this.open.at(-1);
    const whole = read.figures.some(({ axis }) => axis !== null && OF_THE_WHOLE.includes(axis));
    return named && before?.named && !whole ? before.part.extent : 'overall';
  }

  private axesOf(figures: readonly ChainFigure[]): (Axis | null)[] {
    const free = ORDER.filter((axis) => figures.every((figure) => figure.axis !== axis));
    const taken = new Set<Axis>();
    return figures.map(({ axis }) => {
      const own = axis ?? free.shift() ?? null;
      if (own === null || taken.has(own)) return null;
      taken.add(own);
      return own;
    });
  }

  private measure(read: ReadChain, at: number, figure: ChainFigure, where: string): Measure {
    const second = read.second?.[at] ?? null;
    const { measure, twoReadings } = measureFrom(figure, second, this.toleranceMm);
    const { written } = figure.figure;
    if (twoReadings) {
      this.tell('not understood', where, `${written} may be thousands or a decimal; neither is taken.`, written);
    } else if (measure.unit === null) this.tell('unit unknown', where, 'No unit. Not guessed.', written);
    if (measure.conflictMm !== undefined) this.tellConflict(measure, where, second?.figure.written ?? written);
    return measure;
  }

  /** A second chain of one extent: true where it is only the first in the other system, with what differs told. */
  private saidAgain(
    part: Draft,
    axes: readonly (Axis | null)[],
    measures: readonly Measure[],
    read: ReadChain,
  ): boolean {
    const pairs = axes.map(
      (axis, i) => [axis, axis === null ? undefined : part[axis], measures[i] as Measure] as const,
    );
    if (pairs.some(([, first]) => first === undefined)) return false;
    const agrees = pairs.map(([, first, again], i) =>
      agree(first as Measure, again, read.figures[i]?.figure.written ?? '', this.toleranceMm),
    );
    const other = pairs.every(
      ([, first, again]) => first?.unit && again.unit && isMetric(first.unit) !== isMetric(again.unit),
    );
    if (!other || (pairs.length > 1 && !agrees.includes(true))) return false;
    for (const [i, [axis, first, again]] of pairs.entries()) {
      if (axis === null || first === undefined || agrees[i] || again.mm === null) continue;
      part[axis] = { ...first, conflictMm: again.mm };
      this.tellConflict(part[axis] as Measure, `${part.extent} ${axis}`, read.figures[i]?.figure.written ?? '');
    }
    return true;
  }

  private tellConflict({ value, unit, mm, conflictMm }: Measure, where: string, written: string): void {
    const cm = (length: number | null | undefined) => ((length ?? 0) / 10).toFixed(1);
    const what = `Two stated units disagree on the ${where}: ${value} ${unit} is ${cm(mm)} cm, not ${cm(conflictMm)}.`;
    this.tell('systems disagree', where, what, written);
  }

  private tell(kind: DimensionIssueKind, where: string, what: string, value: string): void {
    this.issues.push({ kind, where, what, value });
  }
}
