import { expect, type Museum, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';

async function faceEastWall(seat: Seat): Promise<void> {
  await seat.page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(seat.page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
}

async function both(museum: Museum, browser: Parameters<Museum['enter']>[0]): Promise<[Seat, Seat]> {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  await faceEastWall(dov);
  await faceEastWall(isolde);
  return [dov, isolde];
}

test('story: repaint, read, sign off, lose the server, move a piece 5 cm, changed since, print: both see each step', async ({
  museum,
  browser,
}) => {
  const [dov, isolde] = await both(museum, browser);
  await expect(isolde.page.getByRole('list', { name: 'Here now' })).toContainText('Dov Castellane');

  // The oil view is lost on the verdigris, and the card says why.
  await dov.page.getByRole('listitem').getByRole('button', { name: OIL, exact: true }).press('Enter');
  await expect(dov.page.getByText('lost on this wall')).toBeVisible();

  // Repainted weld it carries; the other browser's wall is repainted too.
  await dov.page.getByRole('button', { name: /^Paint: Verdigris, deep/ }).click();
  await dov.page.getByRole('button', { name: /^Weld, LRV/ }).click();
  await expect(dov.page.getByText('carries on this wall')).toBeVisible();
  await expect(isolde.page.getByRole('button', { name: /^Paint: Weld/ })).toBeVisible();
  await dov.page.getByRole('button', { name: /^Undo: / }).click();
  await expect(isolde.page.getByRole('button', { name: /^Paint: Verdigris, deep/ })).toBeVisible();

  // Signed off as it stands, witnessed by the server.
  await dov.page.getByRole('button', { name: 'sign off as it stands' }).click();
  await expect(isolde.page.getByRole('region', { name: 'Sixty impressions' })).toContainText('Dov Castellane');

  // The server is killed; Dov goes on; what he did is said to be kept in the page, not saved.
  await museum.kill();
  await expect(dov.page.getByText(/^No connection/).first()).toBeVisible();
  await dov.page
    .getByRole('listitem')
    .getByRole('button', { name: 'Cloth-printing blocks, piece 16', exact: true })
    .press('Enter');
  const along = dov.page.getByRole('textbox', { name: /^From left corner/ });
  const before = Number(await along.inputValue());
  await along.fill((before + 5).toFixed(1));
  await along.press('Enter');
  await expect(dov.page.getByText(/^Saved/)).toHaveCount(0);
  await museum.open();
  await expect(dov.page.getByText(/^Saved/).first()).toBeVisible({ timeout: 30_000 });

  // Both are told what differs from what was signed.
  for (const { page } of [dov, isolde]) {
    const caption = page.getByRole('region', { name: 'Sixty impressions' });
    await expect(caption).toContainText(/changed since/i, { timeout: 30_000 });
    await expect(caption).toContainText(/moved 5\.0/);
  }

  // The printed sheet carries a version; the same facts printed again keep it.
  const print = async (): Promise<{ name: string; head: string }> => {
    const { origin, pathname } = new URL(dov.page.url());
    const base = `${origin}${pathname.replace(/\/$/, '')}`;
    const answer = await dov.page.request.get(`${base}/paper/elevation.pdf?surface=dye:head`);
    expect(answer.status()).toBe(200);
    return {
      name: answer.headers()['content-disposition'] ?? '',
      head: (await answer.body()).subarray(0, 5).toString(),
    };
  };
  const first = await print();
  expect(first.head).toBe('%PDF-');
  expect(first.name).toMatch(/-v1\.pdf/);
  expect((await print()).name).toBe(first.name);
  expect(dov.errors).toEqual([]);
  expect(isolde.errors).toEqual([]);
});

test('story: a drag in one browser is seen in the other while it goes on, and settles alike in both', async ({
  museum,
  browser,
}) => {
  const [dov, isolde] = await both(museum, browser);
  interface Rect {
    x: number;
    y: number;
    width: number;
    height: number;
  }
  const rectOf = (seat: Seat, id: string): Promise<Rect> =>
    seat.page.evaluate(
      (piece) =>
        (window as unknown as { enfiladeProbe: { screenRectOf(id: string): Rect } }).enfiladeProbe.screenRectOf(piece),
      id,
    );
  /** How far down its wall it hangs, in thousandths of the wall's height: a wider head makes a wall smaller. */
  const downWall = async (seat: Seat, id: string): Promise<number> => {
    const wall = await seat.page.evaluate(() =>
      (window as unknown as { enfiladeProbe: { surfaceRectOf(on: string): Rect } }).enfiladeProbe.surfaceRectOf(
        'dye:head',
      ),
    );
    return (((await rectOf(seat, id)).y - wall.y) / wall.height) * 1000;
  };
  const oil = await dov.page.evaluate(() => 'oil-1#1');
  const from = await rectOf(dov, oil);
  const elsewhere = await rectOf(isolde, oil);
  await dov.page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await dov.page.mouse.down();
  await dov.page.mouse.move(from.x + from.width / 2 - 20, from.y + from.height / 2 - 60, { steps: 4 });
  await dov.page.mouse.move(from.x + from.width / 2 - 20, from.y + from.height / 2 - 90, { steps: 4 });
  // Still in the hand: nothing is written, and the other sees it on its way.
  await expect.poll(async () => (await rectOf(isolde, oil)).y).toBeLessThan(elsewhere.y - 40);
  await dov.page.mouse.up();
  // Within a px of either screen.
  await expect.poll(async () => Math.abs((await downWall(isolde, oil)) - (await downWall(dov, oil)))).toBeLessThan(4);
  expect((await rectOf(dov, oil)).y).toBeLessThan(from.y - 60);
  await dov.page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(async () => Math.round((await rectOf(isolde, oil)).y - elsewhere.y)).toBe(0);
});

test('story: a viewer reads everything and can change nothing; the artist never holds a value', async ({
  museum,
  browser,
}) => {
  const viewer = await museum.enter(browser, 'viewer');
  await faceEastWall(viewer);
  await viewer.page.getByRole('listitem').getByRole('button', { name: OIL, exact: true }).press('Enter');
  await expect(viewer.page.getByText('lost on this wall')).toBeVisible();
  await expect(viewer.page.getByRole('button', { name: 'sign off as it stands' })).toHaveCount(0);
  await expect(viewer.page.getByRole('link', { name: 'Bring in' })).toHaveCount(0);
  const isolde = await museum.enter(browser, 'guest artist');
  const status = await isolde.page.evaluate(
    () =>
      new Promise<string>((done) => {
        const base = location.pathname.replace(/\/$/, '');
        const socket = new WebSocket(`ws://${location.host}${base}/doc/private`);
        socket.onopen = () => done('opened');
        socket.onerror = () => done('refused');
      }),
  );
  expect(status).toBe('refused');
});
