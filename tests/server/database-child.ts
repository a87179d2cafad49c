/** Binds everything a query might hold, for a parent that sees whether the process lives through it. */
import { openDatabase, toParameter } from '@enfilade/server/database';
import fc from 'fast-check';

const [path = '', seed = '1'] = process.argv.slice(2);
const { query } = openDatabase(path);

const anything = fc.oneof(
  fc.boolean(),
  fc.constant(null),
  fc.constant(undefined),
  fc.double(),
  fc.integer(),
  fc.maxSafeInteger(),
  fc.bigInt(),
  fc.string({ unit: 'binary' }),
  fc.date({ noInvalidDate: true }),
  fc.uint8Array(),
  fc.uint8Array().map((bytes) => Buffer.from(bytes)),
  fc.uint8Array().map((bytes) => bytes.buffer),
  fc.uint8Array({ minLength: 4 }).map((bytes) => bytes.subarray(1, 3)),
  fc.float32Array(),
  fc.anything({ withDate: true, withTypedArray: true, withBigInt: true }),
);

let row = 0;
await fc.assert(
  fc.asyncProperty(anything, async (value) => {
    let bound: ReturnType<typeof toParameter>;
    try {
      bound = toParameter(value);
    } catch (error) {
      if (error instanceof RangeError) return;
      throw error;
    }
    row += 1;
    const bytes = value as Uint8Array;
    await query
      .insertInto('snapshots')
      .values({ document: `row ${row}`, seq: row, bytes })
      .execute()
      .catch(refused(bound));
    await query
      .selectFrom('updates')
      .selectAll()
      .where('document', '=', value as string)
      .execute();
    const kept = await query.selectFrom('snapshots').select('bytes').where('seq', '=', row).executeTakeFirst();
    if (bound === null) return;
    const back: unknown = kept?.bytes;
    const same =
      bound instanceof Uint8Array
        ? back instanceof Uint8Array && Buffer.compare(bound, back) === 0
        : typeof bound === 'string'
          ? typeof back === 'string' && back === Buffer.from(bound, 'utf8').toString('utf8')
          : Number(back) === Number(bound);
    if (!same) throw new Error(`${String(bound)} came back as ${String(back)}`);
  }),
  { seed: Number(seed), numRuns: 1500 },
);
process.stdout.write(`lived through ${row}\n`);

/** A column that takes no null may refuse one; nothing else may be refused. */
function refused(bound: unknown): (error: unknown) => void {
  return (error) => {
    if (bound !== null) throw error;
  };
}
