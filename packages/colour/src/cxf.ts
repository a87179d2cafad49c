import {
  type FileIssue,
  type Origin,
  type PaintFile,
  type PaintFileOptions,
  paintFrom,
  type RawPaint,
  type RawSpectrum,
  tidy,
} from './paint-file.ts';
import type { MeasuredPaint } from './paints.ts';
import { spanIssueOf } from './wavelengths.ts';

/** XML as whichever parser gives it: local names without prefix, attributes by local name, elements and texts within. */
export interface FileElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (FileElement | string)[];
}

/** Elements of a name at any depth, in the order of the text. */
function allNamed(from: FileElement, name: string): FileElement[] {
  const found: FileElement[] = [];
  const waiting: FileElement[] = [from];
  for (let at = waiting.pop(); at; at = waiting.pop()) {
    if (at.name === name) found.push(at);
    for (const child of [...at.children].reverse()) if (typeof child !== 'string') waiting.push(child);
  }
  return found;
}

function textOf(element: FileElement | undefined): string {
  return (element?.children ?? [])
    .filter((child) => typeof child === 'string')
    .join(' ')
    .slice(0, 50_000)
    .trim();
}

const firstText = (from: FileElement | undefined, name: string): string =>
  from ? textOf(allNamed(from, name)[0]) : '';

// Where readers end. A count that ends elsewhere has lost or gained values: common practice, no source.
const USUAL_ENDS_NM = new Set([700, 730, 740, 750, 760, 770, 780, 800, 830]);

/**
 * Paints of a CxF3 file (ISO 17972) from its element tree: one for each Object with ColorValues, its ReflectanceSpectrum
 * and ColorCIELab read by the ColorSpecification they point at, which says wavelengths, illuminant and observer.
 */
export function paintsFromCxf(root: FileElement, options: PaintFileOptions): PaintFile {
  const issues: FileIssue[] = [];
  const paints: MeasuredPaint[] = [];
  const origins: Origin[] = [];
  const specifications = new Map(allNamed(root, 'ColorSpecification').map((each) => [each.attributes.Id ?? '', each]));
  const objects = allNamed(root, 'Object');
  if (objects.length === 0) issues.push({ where: options.file, what: 'No Object is in it.', value: root.name });
  for (const [i, object] of objects.entries()) {
    const name = object.attributes.Name ?? object.attributes.Id ?? '';
    const place = `object ${i + 1}${name && ` "${tidy(name)}"`}`;
    const placed = (field: string): string => `${options.file}, ${place}, ${field}`;
    const lab = allNamed(object, 'ColorCIELab')[0];
    const ofLab = specifications.get(lab?.attributes.ColorSpecification ?? '');
    const spectra = allNamed(object, 'ReflectanceSpectrum');
    const spectrum = spectra[0] && spectrumOf(spectra[0], specifications, placed, issues);
    if (spectra.length > 1) {
      const what = `It has ${spectra.length} spectra; the first is read.`;
      issues.push({
        where: placed('ReflectanceSpectrum'),
        what,
        value: spectra.map((each) => each.attributes.Name ?? '').join(', '),
      });
    }
    const raw: RawPaint = {
      name,
      ...(lab && { lab: [firstText(lab, 'L'), firstText(lab, 'A'), firstText(lab, 'B')] as const }),
      illuminant: firstText(ofLab, 'Illuminant'),
      observer: firstText(ofLab, 'Observer'),
      measured: firstText(object, 'CreationDate'),
      instrument: firstText(specifications.get(spectra[0]?.attributes.ColorSpecification ?? '') ?? ofLab, 'Model'),
      ...(spectrum && { spectrum }),
    };
    const paint = paintFrom(raw, options, placed, issues);
    if (!paint) continue;
    paints.push(paint);
    const figures = raw.lab ?? raw.spectrum?.texts ?? [];
    origins.push({ where: place, source: tidy([name, ...figures].join(' ')) });
  }
  return { paints, origins, issues };
}

function spectrumOf(
  element: FileElement,
  specifications: ReadonlyMap<string, FileElement>,
  placed: (field: string) => string,
  issues: FileIssue[],
): RawSpectrum | undefined {
  const tell = (what: string, value: string): undefined => {
    issues.push({ where: placed('ReflectanceSpectrum'), what: `${what} It is left out.`, value });
  };
  const specification = specifications.get(element.attributes.ColorSpecification ?? '');
  const range = specification && allNamed(specification, 'WavelengthRange')[0]?.attributes;
  const start = element.attributes.StartWL ?? range?.StartWL ?? '';
  const increment = range?.Increment ?? '';
  if (!/^\d{3}(?:\.0+)?$/.test(start))
    return tell('Its start wavelength (StartWL) is not given in whole nanometres.', start);
  if (!/^\d{1,2}(?:\.0+)?$/.test(increment))
    return tell('Its step (Increment of the WavelengthRange) is not given in whole nanometres.', increment);
  const [startNm, stepNm] = [Number(start), Number(increment)];
  const texts = textOf(element)
    .split(/\s+/)
    .filter((text) => text !== '');
  const endNm = startNm + (texts.length - 1) * stepNm;
  const amiss = spanIssueOf(startNm, stepNm, texts.length);
  if (amiss || !USUAL_ENDS_NM.has(endNm)) {
    return tell(
      amiss ??
        `Its ${texts.length} values from ${startNm} nm by ${stepNm} nm end at ${endNm} nm, where no reader ends.`,
      `${texts.length} values`,
    );
  }
  return { startNm, stepNm, texts, whole: 1 };
}
