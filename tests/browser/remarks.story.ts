import { expect, type Seat, test } from './museum.ts';

const OIL = 'The valley from Tallow Hill';
const QUESTION = 'It drowns in this green. Could it hang a hand lower?';

async function faceEastWall({ page }: Seat): Promise<void> {
  await page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await expect(page.getByRole('heading', { name: 'Sixty impressions' })).toBeVisible();
}

/** What the head counts as not read. */
async function unreadOf({ page }: Seat): Promise<number> {
  const words = await page.getByRole('link', { name: /^Remarks/ }).textContent();
  return Number(/^Remarks (\d+)$/.exec(words ?? '')?.[1] ?? 0);
}

const cardOf = ({ page }: Seat) => page.getByRole('article', { name: `Card of ${OIL}` });

test('story: a question asked by name on a work is counted, gone to, answered, settled and reopened', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator');
  await faceEastWall(isolde);
  await dov.page.getByRole('link', { name: 'Layout floor' }).click();
  const unread = await unreadOf(dov);

  await isolde.page.getByRole('button', { name: 'All on this wall, as a list' }).click();
  await isolde.page.getByRole('listitem').getByRole('button', { name: OIL, exact: true }).press('Enter');
  await cardOf(isolde).getByRole('button', { name: 'remark…' }).click();
  await cardOf(isolde).getByRole('textbox', { name: 'A remark on' }).fill(QUESTION);
  await cardOf(isolde).getByRole('combobox', { name: 'Ask' }).selectOption({ label: 'Dov Castellane, curator' });
  await cardOf(isolde).getByLabel('by', { exact: true }).fill('2026-05-20');
  await cardOf(isolde).getByRole('button', { name: 'say it' }).click();
  await expect(cardOf(isolde).getByText(QUESTION)).toBeVisible();

  // Elsewhere in the building Dov is told; what waits names him, and the list takes him there.
  await expect.poll(() => unreadOf(dov)).toBe(unread + 1);
  await dov.page.getByRole('link', { name: /^Remarks/ }).click();
  await dov.page.getByRole('button', { name: /^asked of me/ }).click();
  const listed = dov.page.getByRole('article', { name: 'Remark of Isolde Fennimarsh' }).filter({ hasText: QUESTION });
  await expect(listed).toContainText('Asks Dov Castellane, by 20 May');
  const thread = cardOf(dov).getByRole('article', { name: 'Remark of Isolde Fennimarsh' });
  await listed.getByRole('button', { name: 'go there' }).click();
  await expect(thread).toBeFocused();
  await dov.page.getByRole('link', { name: /^Waiting/ }).click();
  await dov.page.getByRole('button', { name: 'go there: Answer Isolde Fennimarsh' }).click();
  await expect(thread).toBeFocused();
  await thread.getByRole('button', { name: 'answer' }).click();
  await thread.getByRole('textbox', { name: 'Answer' }).fill('Twelve centimetres lower then.');
  await thread.getByRole('button', { name: 'answer' }).click();
  await expect(thread).toContainText('Asked Dov Castellane');
  await expect.poll(() => unreadOf(dov)).toBeLessThanOrEqual(unread);

  // Isolde reads it where she asked, and settles it; its ring goes from the wall.
  const hers = cardOf(isolde).getByRole('article', { name: 'Remark of Isolde Fennimarsh' });
  await expect(hers).toContainText('Twelve centimetres lower then.');
  const ring = dov.page.getByRole('button', { name: `Remark of Isolde Fennimarsh on ${OIL}` });
  await expect(ring).toBeVisible();
  await hers.getByRole('button', { name: 'settled' }).click();
  await expect(ring).toHaveCount(0);
  await expect(cardOf(dov).getByText('One remark, settled')).toBeVisible();

  // Reopened, it stands on the wall again, and a press on its ring opens it.
  await cardOf(dov).getByRole('button', { name: '1 settled' }).click();
  await thread.getByRole('button', { name: 'reopen' }).click();
  await dov.page.keyboard.press('Escape');
  await faceEastWall(dov);
  await dov.page.getByRole('button', { name: /^Wheel Room, east wall/ }).click();
  await dov.page.getByRole('button', { name: /^Dye House, east wall/ }).click();
  await ring.click();
  await expect(thread).toBeFocused();
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});

test('story: a spot is typed or pressed, remarked on, ringed on wall and fold-out, and opened by its ring', async ({
  museum,
  browser,
}) => {
  const isolde = await museum.enter(browser, 'guest artist');
  const dov = await museum.enter(browser, 'curator');
  await faceEastWall(isolde);
  await faceEastWall(dov);
  const say = async (text: string): Promise<void> => {
    await isolde.page.getByRole('textbox', { name: 'A remark on this spot' }).fill(text);
    await isolde.page.getByRole('button', { name: 'say it' }).click();
    await expect(isolde.page.getByRole('article', { name: 'Remark of' }).filter({ hasText: text })).toBeVisible();
  };

  // Typed; beyond the wall it is refused with the wall's size, and nothing typed is lost.
  await isolde.page.getByRole('button', { name: 'remark on a spot…' }).click();
  const across = isolde.page.getByRole('textbox', { name: 'From left corner, cm' });
  await across.fill('1200');
  await isolde.page.getByRole('textbox', { name: 'Up, cm' }).fill('30');
  await isolde.page.getByRole('button', { name: 'this spot' }).click();
  await expect(isolde.page.getByRole('alert').filter({ hasText: 'Dye House, east wall: it is' })).toBeVisible();
  await across.fill('60');
  await isolde.page.getByRole('button', { name: 'this spot' }).click();
  await say('The plaster is soft here.');

  // Pressed, on the very place.
  await isolde.page.getByRole('button', { name: 'remark on a spot…' }).click();
  const at = await isolde.page.evaluate(() => {
    const { enfiladeProbe } = window as unknown as {
      enfiladeProbe: { toScreen(surface: string, x: number, y: number): { x: number; y: number } };
    };
    return enfiladeProbe.toScreen('dye:head', 3000, 3300);
  });
  await isolde.page.mouse.click(at.x, at.y);
  await expect(isolde.page.getByText(/at 300\.\d across, 330\.\d up$/)).toBeVisible();
  await say('Light falls here until noon.');

  // Dov sees both; the ring of each opens its thread in the caption, and that is its reading.
  const soft = dov.page.getByRole('button', { name: /at 60\.0 across, 30\.0 up/ });
  await expect(soft).toHaveAccessibleName(
    'Remark of Isolde Fennimarsh on Dye House, east wall, at 60.0 across, 30.0 up, not read',
  );
  await soft.click();
  await expect(dov.page.getByRole('article', { name: 'Remark of' }).filter({ hasText: 'plaster' })).toBeFocused();
  await expect(soft).toHaveAccessibleName(/30\.0 up$/);
  await dov.page.getByRole('button', { name: 'Dye House, fold-out' }).click();
  await expect(soft).toBeVisible();
  await soft.click();
  await expect(dov.page.getByRole('article', { name: 'Remark of' }).filter({ hasText: 'plaster' })).toBeFocused();
  expect([...isolde.errors, ...dov.errors]).toEqual([]);
});
