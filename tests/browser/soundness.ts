/** What axe-core finds on a page, and whether it is pushed sideways, at the sizes people have before them. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

type Weight = 'minor' | 'moderate' | 'serious' | 'critical';

interface Axe {
  run(
    within: string,
    options: { readonly resultTypes: readonly string[]; readonly preload: boolean },
  ): Promise<{ violations: { id: string; impact: Weight; nodes: { target: string[] }[] }[] }>;
}

/** A desk, a tablet, and the desk at twice its size. */
export const SIZES = [
  [1440, 900],
  [1024, 768],
  [720, 450],
] as const;

/** What axe-core finds within what is named, by rule and place; of any weight unless some are named. */
export async function foundIn(page: Page, within = 'main', weights?: readonly Weight[]): Promise<string[]> {
  // Through the debugger, since the page's own policy takes no foreign script.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async (place) => {
    const { axe } = window as unknown as { axe: Axe };
    // Nothing is fetched once more: styles, which no rule on by default reads; sounds, of which there are none.
    return (await axe.run(place, { resultTypes: ['violations'], preload: false })).violations;
  }, within);
  return found
    .filter(({ impact }) => weights === undefined || weights.includes(impact))
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}

/** Nothing pushes the page sideways. */
export async function expectUpright(page: Page, what: string): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(sideways, what).toBeLessThanOrEqual(0);
}

/** One page made as large as each of the sizes after another: laid out anew before it is looked at. */
export async function atSizes(
  page: Page,
  sizes: readonly (readonly [number, number])[],
  look: (width: number) => Promise<void>,
): Promise<void> {
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 100))));
    await look(width);
  }
}
