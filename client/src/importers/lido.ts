/** LIDO 1.0 and 1.1: the records of one XML file. */
import { lidoTableFrom } from '@enfilade/records/lido-records';
import type { XmlElement } from '@enfilade/records/xml-elements';
import { bytesOf, type Importer, NotImported } from './importer.ts';
import { parseXml, xmlTextFrom } from './xml-parsing.ts';

const MOST_BYTES = 200_000_000;

interface Growing {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (Growing | string)[];
}

export const lido: Importer = {
  knows: (head, fileName) =>
    /\.(xml|lido)$/i.test(fileName) || /^[\s\ufeff]*<\?xml/.test(new TextDecoder().decode(head)),
  read: async (file, { tell }) => {
    tell('reading', null);
    const text = xmlTextFrom(await bytesOf(file, MOST_BYTES));
    const { root, broken } = await treeOf(text, (share) => tell('reading its records', share));
    const table = lidoTableFrom(root);
    const found = table.cells.length - 1;
    if (broken !== null && found < 1) throw new NotImported(`It is no well-formed XML: it breaks off at ${broken}.`);
    if (found < 1) throw new NotImported('It holds no LIDO records.');
    const many = found === 1 ? 'The record before it is' : `The ${found} records before it are`;
    const issues = [
      ...(broken === null ? [] : [{ where: 'file', what: `It breaks off at ${broken}. ${many} read.`, value: '' }]),
      ...table.issues,
    ];
    return { table: { ...table, issues }, about: 'LIDO', sheets: [], sheet: null };
  },
};

/** The file's root with its records; where it breaks off, with those records that are whole. */
async function treeOf(
  text: string,
  tell: (share: number) => void,
): Promise<{ readonly root: XmlElement; readonly broken: string | null }> {
  const top: Growing = { name: '', attributes: {}, children: [] };
  const open: Growing[] = [top];
  const broken = await parseXml(
    text,
    {
      open: (name, attributes) => {
        const element: Growing = { name, attributes, children: [] };
        open.at(-1)?.children.push(element);
        open.push(element);
      },
      text: (said) => {
        if (open.length > 1 && said.trim() !== '') open.at(-1)?.children.push(said);
      },
      close: () => open.pop(),
    },
    tell,
  );
  const root = top.children.find((child) => typeof child !== 'string') ?? top;
  // What was still open when it broke off is half a record.
  const half = new Set(open);
  const whole = (element: Growing): Growing => ({
    ...element,
    children: element.children.filter((child) => typeof child === 'string' || !half.has(child)),
  });
  return { root: broken === null ? root : half.has(root) && root.name === 'lido' ? top : whole(root), broken };
}
