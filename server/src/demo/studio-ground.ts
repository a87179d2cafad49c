/** A drawn thing as it is photographed: on paper or cloth, the light falling off, a soft shadow at its foot. */
import sharp from 'sharp';
import { diceFrom } from './drawing/ink.ts';

/** Grey or white paper, as in a studio; a lender's buff cloth. */
export type StudioGround = 'grey' | 'white' | 'cloth';

/** sRGB where the light is fullest. */
const LIGHT: Readonly<Record<StudioGround, readonly [number, number, number]>> = {
  grey: [178, 178, 176],
  white: [236, 236, 234],
  cloth: [208, 182, 138],
};

/** PNG without alpha from PNG with alpha; `seed` sets how wide the paper is about it, and how the light falls. */
export async function onStudioGround(cut: Uint8Array, seed: string, ground: StudioGround): Promise<Buffer> {
  const { width, height } = await sharp(cut).metadata();
  const dice = diceFrom([...seed].reduce((sum, letter) => sum * 31 + (letter.codePointAt(0) ?? 0), 7) % 1_000_003);
  const margin = Math.round(Math.max(width, height) * (0.09 + 0.07 * dice()));
  const [w, h] = [width + 2 * margin, height + 2 * margin];
  const [x, y] = [Math.round(35 + 30 * dice()), Math.round(25 + 20 * dice())];
  const lit = `rgb(${LIGHT[ground].join()})`;
  const dim = `rgb(${LIGHT[ground].map((channel) => channel - 14).join()})`;
  const paper = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}"><defs><radialGradient id="l" cx="${x}%" cy="${y}%" r="95%"><stop offset="0" stop-color="${lit}"/><stop offset="1" stop-color="${dim}"/></radialGradient></defs><rect width="${w}" height="${h}" fill="url(#l)"/></svg>`;
  const soft = Math.max(2, margin * 0.16);
  const shadow = await sharp(cut)
    .ensureAlpha()
    .linear([0, 0, 0, 0.28], [0, 0, 0, 0])
    .extend({ top: margin, bottom: margin, left: margin, right: margin, background: { r: 0, g: 0, b: 0, alpha: 0 } })
    .blur(soft)
    .png()
    .toBuffer();
  return sharp(Buffer.from(paper))
    .composite([
      { input: shadow, left: 0, top: 0 },
      { input: Buffer.from(cut), left: margin, top: margin },
    ])
    .removeAlpha()
    .png({ compressionLevel: 3 })
    .toBuffer();
}
