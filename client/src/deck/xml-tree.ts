/** XML of a file as the plain tree of elements that the reader of CxF takes. */
import type { FileElement } from '@enfilade/colour/cxf';

/** Deeper than any colour file; a tree beyond it is no such file. */
const MAX_DEPTH = 64;

/**
 * The root of an XML text, or a sentence on why it is not read. No document type is taken, so that no entity can stand
 * for a file or for a flood of text; the browser's own parser fetches nothing.
 */
export function elementFrom(text: string): FileElement | string {
  if (/<!DOCTYPE/i.test(text)) return 'It has a document type (DOCTYPE), which is not read: a colour file needs none.';
  const parsed = new DOMParser().parseFromString(text, 'application/xml');
  const fault = parsed.getElementsByTagName('parsererror')[0];
  if (fault !== undefined || parsed.documentElement === null) {
    const at = /line (\d{1,7})/i.exec(fault?.textContent ?? '')?.[1];
    return `It is not well-formed XML${at === undefined ? '' : `, from line ${at}`}.`;
  }
  return treeOf(parsed.documentElement, 0) ?? `Its elements lie deeper than ${MAX_DEPTH} in each other.`;
}

function treeOf(element: Element, depth: number): FileElement | null {
  if (depth > MAX_DEPTH) return null;
  const children: (FileElement | string)[] = [];
  for (const node of element.childNodes) {
    if (node.nodeType === Node.TEXT_NODE || node.nodeType === Node.CDATA_SECTION_NODE) {
      const text = node.textContent ?? '';
      if (text.trim() !== '') children.push(text);
    } else if (node.nodeType === Node.ELEMENT_NODE) {
      const child = treeOf(node as Element, depth + 1);
      if (child === null) return null;
      children.push(child);
    }
  }
  const attributes = Object.fromEntries(
    [...element.attributes].map((attribute) => [attribute.localName, attribute.value]),
  );
  return { name: element.localName, attributes, children };
}
