import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const EAST = 'dye:head';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

interface Probe {
  surfaceRectOf(surface: string): Rect | null;
  toScreen(surface: string, xMm: number, yMm: number): { readonly x: number; readonly y: number } | null;
}

async function face({ page }: Seat, wall: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${wall}`) }).click();
}

const wallOf = ({ page }: Seat, surface: string): Promise<Rect | null> =>
  page.evaluate(
    (id) => (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe?.surfaceRectOf(id) ?? null,
    surface,
  );

const spotOf = ({ page }: Seat, xMm: number, yMm: number): Promise<{ x: number; y: number } | null> =>
  page.evaluate(
    ([x, y]) =>
      (window as unknown as { enfiladeProbe: Probe }).enfiladeProbe.toScreen('dye:head', x as number, y as number),
    [xMm, yMm],
  );

const stageOf = ({ page }: Seat) => page.getByRole('application');

test('story: Dov goes along with Isolde from wall to wall and nearer, until his own hand lets him go', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator', { viewport: { width: 1280, height: 800 } });
  await face(isolde, 'Dye House, east wall');
  await dov.page.getByRole('button', { name: 'go along' }).click();
  await expect(isolde.page.getByText('Dov Castellane goes along with you')).toBeVisible();
  await expect(dov.page).toHaveURL(/#wall\/dye:head$/);

  // What she looks at fills his smaller window as it fills hers: the same middle, as large as it goes.
  await stageOf(isolde).focus();
  for (const key of ['+', '+', '+', 'ArrowRight', 'ArrowRight']) await isolde.page.keyboard.press(key);
  const shareOf = async (seat: Seat): Promise<number> => {
    const wall = await wallOf(seat, EAST);
    const box = await stageOf(seat).boundingBox();
    if (wall === null || box === null) return Number.NaN;
    // Where the window's middle (between caption and card) lies along the wall, in hundredths of it.
    const middle = box.x + (262 + box.width - 274) / 2;
    return Math.round(((middle - wall.x) / wall.width) * 100);
  };
  await expect.poll(async () => (await shareOf(dov)) - (await shareOf(isolde))).toBe(0);
  const near = await wallOf(dov, EAST);
  expect(near?.width).toBeGreaterThan(900);

  await face(isolde, 'Counting Room, east wall');
  await expect(dov.page).toHaveURL(/#wall\/counting:head$/);

  // His own hand.
  await stageOf(dov).focus();
  await dov.page.keyboard.press('-');
  await expect(dov.page.getByText('You go your own way').first()).toBeVisible();
  await expect(isolde.page.getByText('Dov Castellane goes along with you')).toHaveCount(0);
  await face(isolde, 'Wheel Room, east wall');
  await expect(isolde.page).toHaveURL(/#wall\/wheel:head$/);
  await expect(dov.page).toHaveURL(/#wall\/counting:head$/);
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});

test('story: where Isolde points is seen by whoever faces that wall, by hand and by keys, until Escape', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator', { viewport: { width: 1280, height: 800 } });
  for (const seat of [isolde, dov]) await face(seat, 'Dye House, east wall');
  const seen = dov.page.locator('.pointer-seen');
  const at = async (): Promise<[number, number]> => {
    const box = await seen.boundingBox();
    return [box?.x ?? Number.NaN, box?.y ?? Number.NaN];
  };
  /** How far (px) her pointer is from a spot of the wall in his window. */
  const missBy = async (xMm: number, yMm: number): Promise<number> => {
    const [x, y] = await at();
    const spot = await spotOf(dov, xMm, yMm);
    return Math.round(Math.hypot(x - (spot?.x ?? 0), y - (spot?.y ?? 0)));
  };

  await isolde.page.getByRole('button', { name: 'point', exact: true }).click();
  const hand = await spotOf(isolde, 2000, 3000);
  await isolde.page.mouse.move(hand?.x ?? 0, hand?.y ?? 0, { steps: 3 });
  await expect(seen).toContainText('Isolde Fennimarsh');
  await expect.poll(() => missBy(2000, 3000)).toBeLessThanOrEqual(2);

  await stageOf(isolde).focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await isolde.page.keyboard.press(key);
  await expect.poll(() => missBy(2200, 2900)).toBeLessThanOrEqual(2);

  // Nobody who faces another wall is shown it; coming back, he sees it again.
  await face(dov, 'Counting Room, east wall');
  await expect(seen).toHaveCount(0);
  await face(dov, 'Dye House, east wall');
  await expect(seen).toHaveCount(1);
  await stageOf(isolde).press('Escape');
  await expect(seen).toHaveCount(0);
  await expect(isolde.page.getByRole('button', { name: 'point', exact: true })).toHaveAttribute(
    'aria-pressed',
    'false',
  );
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});

test('story: what changed while Dov was away is told at the door and walked through, wall by wall, once', async ({
  museum,
  browser,
}) => {
  const first = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  const notice = first.page.getByRole('region', { name: 'Changed since you were last here' });
  await face(isolde, 'Dye House, east wall');
  await isolde.page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  const list = isolde.page.getByRole('listitem');
  const lower = async (name: string): Promise<void> => {
    await list.getByRole('button', { name, exact: true }).press('Enter');
    const height = isolde.page.getByRole('textbox', { name: /^Centre height/ });
    const before = Number(await height.inputValue());
    await height.fill((before - 12).toFixed(1));
    await height.press('Enter');
    await expect(height).toHaveValue((before - 12).toFixed(1));
    await expect(isolde.page.getByText(/^Saved/).first()).toBeVisible();
  };
  // Seen as it happens: no news to whoever is here.
  await lower(OIL);
  await expect(notice).toHaveCount(0);
  await first.context.close();

  // In the night: a work lowered further, another put back, a wall painted.
  await lower(OIL);
  await list.getByRole('button', { name: 'Cloth-printing blocks, piece 16', exact: true }).press('Enter');
  await isolde.page.getByRole('button', { name: 'put back' }).click();
  await face(isolde, 'Counting Room, east wall');
  await isolde.page.getByRole('button', { name: /^Paint:/ }).click();
  await isolde.page.getByRole('button', { name: /^River chalk, LRV/ }).click();
  await expect(isolde.page.getByText(/^Saved/).first()).toBeVisible();

  const dov = await museum.enter(browser, 'curator');
  const band = dov.page.getByRole('region', { name: 'Changed since you were last here' });
  await expect(band).toContainText('3 things changed since you were here');
  await band.getByRole('button', { name: 'walk through them' }).click();
  const words: string[] = [];
  for (let step = 1; step <= 3; step++) {
    await expect(band).toContainText(`${step} of 3`);
    words.push(`${new URL(dov.page.url()).hash} ${await band.textContent()}`);
    if (step < 3) await band.getByRole('button', { name: 'next' }).click();
  }
  const said = words.join('\n');
  expect(said).toMatch(/#wall\/dye:head .*Isolde Fennimarsh moved The valley from Tallow Hill/s);
  expect(said).toMatch(/#wall\/dye:head .*Isolde Fennimarsh put Cloth-printing blocks, piece 16 back/s);
  expect(said).toMatch(/#wall\/counting:head .*Isolde Fennimarsh painted .*River chalk/s);
  await band.getByRole('button', { name: 'seen' }).click();
  await expect(band).toHaveCount(0);

  // Told once.
  await expect(dov.page.getByText(/^Saved/).first()).toBeVisible();
  await dov.page.reload();
  await expect(dov.page.getByText(/^Saved/).first()).toBeVisible();
  await dov.page.getByRole('link', { name: 'History' }).click();
  await expect(dov.page.getByRole('heading', { name: 'History' })).toBeVisible();
  await expect(band).toHaveCount(0);
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});

test('story: a page left open is nobody’s visit: what changed meanwhile is told at the first hand on it', async ({
  museum,
  browser,
}) => {
  const dov = await museum.enter(browser, 'curator');
  const isolde = await museum.enter(browser, 'guest artist');
  const band = dov.page.getByRole('region', { name: 'Changed since you were last here' });
  await face(dov, 'Dye House, east wall');
  // Dov goes home; his page stays on.
  await dov.page.clock.setSystemTime(new Date(Date.now() + 9 * 3_600_000));
  await face(isolde, 'Counting Room, east wall');
  await isolde.page.getByRole('button', { name: /^Paint:/ }).click();
  await isolde.page.getByRole('button', { name: /^River chalk, LRV/ }).click();
  await face(isolde, 'Dye House, east wall');
  await isolde.page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  await isolde.page.getByRole('listitem').getByRole('button', { name: OIL, exact: true }).press('Enter');
  await isolde.page.getByRole('textbox', { name: /^Centre height/ }).fill('140');
  await isolde.page.getByRole('textbox', { name: /^Centre height/ }).press('Enter');
  await expect(isolde.page.getByText(/^Saved/).first()).toBeVisible();
  await expect(band).toHaveCount(0);
  await dov.page.mouse.move(700, 400);
  await expect(band).toContainText('2 things changed since you were here');
  await band.getByRole('button', { name: 'seen' }).click();
  await dov.page.mouse.move(700, 420);
  await expect(band).toHaveCount(0);
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});
