/**
 * XML in pieces, by a parser that knows no entities but the five of XML itself: a document type's own are never expanded and
 * nothing outside the file is ever asked for.
 */
import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { NotImported } from './importer.ts';

export interface XmlHandlers {
  /** Names without their prefixes. */
  readonly open: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly text: (text: string) => void;
  readonly close: (name: string) => void;
}

const PIECE = 1 << 20;
const DEEPEST = 200;

/** Null where it was read to its end; else where it breaks off, as a clause: 'line 12, column 3'. */
export async function parseXml(
  text: string,
  handlers: XmlHandlers,
  tell: (share: number) => void,
): Promise<string | null> {
  const parser = new SaxesParser({ xmlns: false, position: true });
  let broken: string | null = null;
  let depth = 0;
  parser.on('error', () => {
    broken ??= `line ${parser.line}, column ${parser.column}`;
  });
  parser.on('opentag', ({ name, attributes }: SaxesTagPlain) => {
    depth += 1;
    if (depth > DEEPEST)
      throw new NotImported(`Its elements lie more than ${DEEPEST} deep in one another; nobody’s records do.`);
    if (broken === null) handlers.open(local(name), plain(attributes));
  });
  parser.on('text', (said) => {
    if (broken === null) handlers.text(said);
  });
  parser.on('cdata', (said) => {
    if (broken === null) handlers.text(said);
  });
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    if (broken === null) handlers.close(local(name));
  });
  for (let at = 0; at < text.length && broken === null; at += PIECE) {
    parser.write(text.slice(at, at + PIECE));
    tell(Math.min(1, (at + PIECE) / text.length));
  }
  if (broken === null) parser.close();
  return broken;
}

function local(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

function plain(attributes: Readonly<Record<string, string>>): Record<string, string> {
  const own: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) own[local(name)] ??= value;
  return own;
}

/** The text of an XML file by its byte order mark or its own word; UTF-8 where it says nothing. */
export function xmlTextFrom(bytes: Uint8Array): string {
  const marked =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
  const head = new TextDecoder('windows-1252').decode(bytes.subarray(0, 200));
  const said = /^<\?xml[^>]*encoding=["']([\w.-]+)["']/.exec(head)?.[1] ?? 'utf-8';
  try {
    return new TextDecoder(marked ?? said).decode(bytes);
  } catch {
    throw new NotImported(`It says it is written in “${said}”, which cannot be read here; save it as UTF-8.`);
  }
}
