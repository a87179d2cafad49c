/** What every importer answers: a table as a checklist has it, with where each row and its pictures come from. */

/** A picture that the source names. It is fetched by whoever may call addresses, and only where a person asked. */
export interface PictureSource {
  readonly address: string;
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** Base address of an image service (IIIF Image API) that gives other sizes; null where there is none. */
  readonly service: string | null;
}

export interface ImportIssue {
  /** Path in the source: 'manifest', 'canvas 3', 'canvas 3, picture 1'. */
  readonly where: string;
  /** A sentence for a person. */
  readonly what: string;
  readonly value: string;
}

export interface ImportedTable {
  /** The headings, then a row for each object, as `checklistRowsFrom` takes them; [] where nothing could be read. */
  readonly cells: readonly (readonly string[])[];
  /** Of each row after the headings: where it stands in the source. */
  readonly places: readonly string[];
  readonly pictures: readonly (readonly PictureSource[])[];
  readonly issues: readonly ImportIssue[];
}

/** One object before its table is made: what is said of it under which headings, in order. */
export interface ImportedObject {
  readonly place: string;
  readonly said: readonly (readonly [heading: string, text: string])[];
  readonly pictures: readonly PictureSource[];
}

/** Brings objects that say different things under common headings, in the order first met; what is said twice is joined. */
export function tableFrom(objects: readonly ImportedObject[], issues: readonly ImportIssue[]): ImportedTable {
  const headings = new Map<string, number>();
  for (const { said } of objects)
    for (const [heading] of said) if (!headings.has(heading)) headings.set(heading, headings.size);
  const rows = objects.map(({ said }) => {
    const row = Array.from({ length: headings.size }, (): string[] => []);
    for (const [heading, text] of said) row[headings.get(heading) as number]?.push(text);
    return row.map((texts) => [...new Set(texts)].join('; '));
  });
  return {
    cells: objects.length === 0 ? [] : [[...headings.keys()], ...rows],
    places: objects.map(({ place }) => place),
    pictures: objects.map(({ pictures }) => pictures),
    issues,
  };
}
