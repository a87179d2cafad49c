import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { iiifTableFrom } from '@enfilade/records/iiif-manifest';
import { expect, test } from 'vitest';

test('reference: each manifest of the IIIF cookbook has its title, and as many pictures as it paints', () => {
  const folder = join(process.env.OPEN_DATA ?? '', 'iiif', 'cookbook');
  const files = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.json')) : [];
  for (const file of files) {
    const json: unknown = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    const { cells, pictures, issues } = iiifTableFrom(json);
    expect([file, cells.length, cells[0]?.[0]]).toEqual([file, 2, 'Title']);
    const painted = JSON.stringify(json).split('"motivation":"painting"').length - 1;
    expect([file, pictures.flat().length]).toEqual([file, painted]);
    expect(issues).toEqual([]);
  }
  console.log(`IIIF cookbook: ${files.length} manifests read whole.`);
});
