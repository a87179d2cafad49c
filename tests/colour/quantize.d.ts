// npm quantize (MMCQ), the peer of the palette test, ships without types.
declare module 'quantize' {
  export default function quantize(
    pixels: [number, number, number][],
    colours: number,
  ): { palette(): [number, number, number][] };
}
