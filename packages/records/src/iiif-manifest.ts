/** A IIIF manifest (Presentation 3 and 2.1) as a table of objects with their pictures. Source: iiif.io/api/presentation. */
import {
  type ImportedObject,
  type ImportedTable,
  type ImportIssue,
  type PictureSource,
  tableFrom,
} from './imported-table.ts';
import { type JsonObject, listOf, objectOf, sizeOf, textOf } from './json-values.ts';

/** Heading, text, and the property it stands in. */
type Said = readonly [heading: string, text: string, path: string];

const MOST_CANVASES = 5000;
const MM_PER_UNIT: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4 };

/**
 * `json` is a parsed manifest. One object for the manifest with all its canvases' pictures; where it has no metadata but
 * each canvas has, one for each of them. Words come in `language` where they can. Never throws: what is no manifest has no rows.
 */
export function iiifTableFrom(json: unknown, language = 'en'): ImportedTable {
  const issues: ImportIssue[] = [];
  const tell = (where: string, what: string, value: string): void => {
    issues.push({ where, what, value });
  };
  const manifest = objectOf(json);
  const type = textOf(manifest?.type) || textOf(manifest?.['@type']).replace(/^sc:/, '');
  if (manifest === null || type !== 'Manifest') {
    const what =
      type === 'Collection' ? 'This is a collection: bring in its manifests one by one.' : 'This is no IIIF manifest.';
    tell('file', what, type);
    return tableFrom([], issues);
  }
  const canvases = canvasesOf(manifest);
  if (canvases.length > MOST_CANVASES) tell('manifest', `Only the first ${MOST_CANVASES} canvases are read.`, '');
  const read = canvases.slice(0, MOST_CANVASES).map((canvas, i): ImportedObject => {
    const place = `canvas ${i + 1}`;
    return { place, said: saidOf(canvas, language), pictures: picturesOf(canvas, place, tell) };
  });
  const described = canvases.every((canvas) => listOf(canvas.metadata).length > 0);
  if (canvases.length > 1 && described && listOf(manifest.metadata).length === 0) return tableFrom(read, issues);
  const sizes = canvases.length === 1 ? physicalSize(canvases[0] as JsonObject) : [];
  const said = [...saidOf(manifest, language), ...sizes];
  const pictures = read.flatMap((object) => object.pictures);
  if (pictures.length === 0) tell('manifest', 'No picture is named in it.', '');
  return tableFrom([{ place: 'manifest', said, pictures }], issues);
}

/** An address of about so many pixels across; the full picture where no service can give it (Image API 2 and 3, level 1). */
export function pictureAddressOf({ address, service, widthPx, heightPx }: PictureSource, longestPx: number): string {
  if (!(longestPx >= 1)) throw new RangeError(`longestPx is ${longestPx}; it must be at least 1`);
  const longest = Math.max(widthPx ?? 0, heightPx ?? 0);
  if (service === null || widthPx === null || longest <= longestPx) return address;
  return `${service}/full/${Math.max(1, Math.round((widthPx * longestPx) / longest))},/0/default.jpg`;
}

function canvasesOf(manifest: JsonObject): JsonObject[] {
  const [sequence] = listOf(manifest.sequences);
  const items = listOf(manifest.items).length > 0 ? listOf(manifest.items) : listOf(objectOf(sequence)?.canvases);
  return items.map(objectOf).filter((canvas) => canvas !== null);
}

/** Title, metadata, summary, credit, rights and address under their headings. */
function saidOf(resource: JsonObject, language: string): Said[] {
  const statement = objectOf(resource.requiredStatement);
  const pairs: Said[] = [['Title', wordsOf(resource.label, language), 'label']];
  for (const entry of listOf(resource.metadata)) {
    const pair = objectOf(entry);
    if (pair === null) continue;
    const heading = wordsOf(pair.label, language);
    pairs.push([heading, wordsOf(pair.value, language), `metadata “${heading}”`]);
  }
  pairs.push(
    ['Notes', wordsOf(resource.summary ?? resource.description, language), 'summary'],
    ['Credit line', wordsOf(statement?.value ?? resource.attribution, language), 'requiredStatement'],
    ['Rights', textOf(resource.rights) || wordsOf(resource.license, language), 'rights'],
    ['IIIF', textOf(resource.id) || textOf(resource['@id']), 'id'],
  );
  return pairs.filter(([heading, text]) => heading !== '' && text !== '');
}

/** A language map (3), a value object or a list of them (2.1), or a plain text, without its HTML. */
function wordsOf(value: unknown, language: string): string {
  const map = objectOf(value);
  if (map !== null && !('@value' in map)) {
    const chosen = map[language] ?? map.none ?? map['@none'] ?? Object.values(map)[0];
    return listOf(chosen)
      .map(plainOf)
      .filter((text) => text !== '')
      .join('; ');
  }
  const values = listOf(value).map((one) => {
    const object = objectOf(one);
    return { language: textOf(object?.['@language']), text: plainOf(object === null ? one : object['@value']) };
  });
  const own = values.filter((one) => one.language === language);
  const kept =
    own.length > 0 ? own : values.filter((one) => one.language === '' || one.language === values[0]?.language);
  return kept
    .map(({ text }) => text)
    .filter((text) => text !== '')
    .join('; ');
}

function plainOf(value: unknown): string {
  return textOf(value)
    .slice(0, 10_000)
    .replace(/<[a-z/][^<>]{0,500}>/gi, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

function picturesOf(
  canvas: JsonObject,
  place: string,
  tell: (where: string, what: string, value: string) => void,
): PictureSource[] {
  const annotations = [
    ...listOf(canvas.items).flatMap((page) => listOf(objectOf(page)?.items)),
    ...listOf(canvas.images),
  ];
  const bodies = annotations.flatMap((annotation) => {
    const { body, resource } = objectOf(annotation) ?? {};
    return listOf(body ?? resource);
  });
  return bodies.flatMap((one, i) => {
    const chosen = objectOf(one);
    // Choices offer the same picture in several lights; the first is meant unless another is asked for.
    const body = objectOf(listOf(chosen?.items)[0]) ?? objectOf(chosen?.default) ?? objectOf(chosen?.source) ?? chosen;
    const kind = textOf(body?.type) || textOf(body?.['@type']);
    if (body === null || (kind !== 'Image' && kind !== 'dctypes:Image')) return [];
    const address = textOf(body.id) || textOf(body['@id']);
    if (!isWebAddress(address)) {
      tell(`${place}, picture ${i + 1}`, 'Its address is none of the web; it is left out.', address);
      return [];
    }
    return [{ address, widthPx: sizeOf(body.width), heightPx: sizeOf(body.height), service: serviceOf(body) }];
  });
}

/** The image service where it gives sizes on demand: level 0 does not. */
function serviceOf(body: JsonObject): string | null {
  for (const one of listOf(body.service)) {
    const service = objectOf(one);
    const address = textOf(service?.id) || textOf(service?.['@id']);
    const profile = listOf(service?.profile).map(textOf).join(' ');
    if (isWebAddress(address) && /level[12]/.test(profile)) return address.replace(/\/$/, '');
  }
  return null;
}

/** Physical size by the dimension service: canvas units have none of their own. */
function physicalSize(canvas: JsonObject): Said[] {
  const [width, height] = [sizeOf(canvas.width), sizeOf(canvas.height)];
  for (const one of listOf(canvas.service)) {
    const service = objectOf(one);
    const [scale, units] = [sizeOf(service?.physicalScale), textOf(service?.physicalUnits)];
    if (width === null || height === null || scale === null || MM_PER_UNIT[units] === undefined) continue;
    const figure = (size: number) => String(Math.round(size * scale * 1000) / 1000);
    return [['Image size', `Image: ${figure(height)} x ${figure(width)} ${units}`, 'physicalScale']];
  }
  return [];
}

function isWebAddress(address: string): boolean {
  return /^https?:\/\/[^\s/]+\S*$/i.test(address) && address.length <= 4000;
}
