/** XML as an importer takes it from whichever parser: elements by local name, and steps through them. */

export interface XmlElement {
  /** Without its prefix: 'titleSet'. */
  readonly name: string;
  /** By local name: 'lang', 'type', 'about'. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (XmlElement | string)[];
}

/** Elements at the end of `path` ('titleWrap/titleSet'), in the order of the text. */
export function elementsAt(from: XmlElement, path: string): XmlElement[] {
  return path
    .split('/')
    .reduce(
      (found: XmlElement[], name) =>
        found.flatMap((element) =>
          element.children.filter((child): child is XmlElement => typeof child !== 'string' && child.name === name),
        ),
      [from],
    );
}

/** An element's own text with single spaces; what stands in elements within it is not its own. */
export function ownText({ children }: XmlElement): string {
  return children
    .filter((child) => typeof child === 'string')
    .join(' ')
    .slice(0, 20_000)
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * Texts of elements that say the same in several languages: those in `language`, else those of the first one's language. In
 * LIDO 1.1 a concept holds its labels in elements of its own (`term`, `prefLabel`), in 1.0 the text stands bare.
 */
export function textsOf(elements: readonly XmlElement[], language: string): string[] {
  const said = elements.flatMap((element) => {
    const labels = [...elementsAt(element, 'term'), ...elementsAt(element, 'Concept/prefLabel')];
    return labels.length > 0 ? preferred(labels, language).slice(0, 1) : [element];
  });
  return preferred(said, language)
    .map(ownText)
    .filter((text) => text !== '');
}

function preferred(elements: readonly XmlElement[], language: string): readonly XmlElement[] {
  const filled = elements.filter((element) => ownText(element) !== '');
  const own = filled.filter(({ attributes }) => attributes.lang === language);
  return own.length > 0 ? own : filled.filter(({ attributes }) => attributes.lang === filled[0]?.attributes.lang);
}
