/** What a column's heading states for all its cells: the unit, and the order of the figures. */

const UNITS = /(?:[([,;:]|\bin\b|\s)\s*(cm|mm|m|inches|in|ft|kg|kgs|lbs?|g)\.?\s*[)\]]?\s*$/i;
const ORDER = /\b([hwdl]|height|width|depth|length)((?:\s*(?:[x×*]|by)\s*(?:[hwdl]|height|width|depth|length)\b)+)/i;
const FIGURE = /^\d[\d.,\s/½¼¾⅛⅜⅝⅞-]*(?:in\.?|inches|["″]|cm|mm|m)?$/i;

/** `Weight (kg)` states kg; '' where a heading states no unit. */
export function unitStatedBy(heading: string): string {
  const unit = UNITS.exec(heading.trim())?.[1]?.toLowerCase() ?? '';
  // A last word "in", "m" or "g" is a unit only in brackets or after a comma.
  if (/^(in|m|g)$/.test(unit) && !/[([,;]\s*(in|m|g)\.?\s*[)\]]?\s*$/i.test(heading.trim())) return '';
  return unit;
}

/**
 * The cell with what the heading states written out: `30 x 40` under `Dimensions (W × H, cm)` is `W 30 × H 40 cm`. The cell's
 * own units and words come first. Null when the heading states an order that the cell cannot be read in.
 */
export function withStated(cell: string, heading: string): string | null {
  const order = orderStatedBy(heading);
  const usual = order.every((name, i) => name === 'HWD'[i]);
  let text = cell;
  if (order.length > 0 && !usual && !/\b[hwdl]\b|height|width|depth|length|diam|Ø/i.test(cell)) {
    const [outside = '', ...rest] = cell.split('(');
    const tail = /(?:in\.?|inches|"|cm|mm|m)?\s*$/i.exec(outside)?.[0] ?? '';
    const figures = outside.slice(0, outside.length - tail.length).split(/\s*[x×]\s*/i);
    const plain = figures.length <= order.length && figures.every((figure) => FIGURE.test(figure.trim()));
    if (!plain) return /\d/.test(cell) ? null : cell;
    const second = rest.length > 0 ? `(${rest.join('(')}` : '';
    text = `${figures.map((figure, i) => `${order[i]} ${figure.trim()}`).join(' × ')} ${tail.trim()} ${second}`.trim();
  }
  const unit = unitStatedBy(heading);
  const bare = !/[a-z"'″′”’]/i.test(text.replace(/\b[hwdl]\b\.?/gi, '').replace(/[x×]/gi, ''));
  return unit !== '' && bare && /\d\s*$/.test(text) ? `${text.trim()} ${unit}` : text;
}

function orderStatedBy(heading: string): string[] {
  const found = ORDER.exec(heading);
  if (found === null) return [];
  return found[0]
    .split(/[x×*]|\bby\b/i)
    .map((word) => (word.trim()[0] ?? '').toUpperCase())
    .map((letter) => (letter === 'L' ? 'W' : letter));
}
