/** A picture with the colours it shares with another in full, and all else of it faint: where the echo is. */
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import type { Swatch } from '@enfilade/grouping/records';
import { useEffect, useRef } from 'react';
import { usePictures, useShow } from '../sync/hooks.ts';

// Common practice, no source: nearer than the first (in CIELAB) a pixel is seen as of the swatch, which is the mean of many;
// farther than the second as of another, and faint. Between, it fades, so that no edge is drawn that is not there.
const OF_SWATCH = 12;
const OF_ANOTHER = 22;
const FAINT = 0.16;

interface SharedColourProps {
  readonly sha256: string;
  readonly swatches: readonly Swatch[];
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Decorative: the colours are named and shown beneath it. */
export function SharedColour({ sha256, swatches, widthPx, heightPx }: SharedColourProps) {
  const { pictures } = useShow();
  usePictures();
  const canvas = useRef<HTMLCanvasElement>(null);
  const address = pictures.urlOf(sha256, 256);
  useEffect(() => {
    let left = false;
    const image = new Image();
    image.onload = () => {
      const drawing = left ? null : canvas.current?.getContext('2d', { willReadFrequently: true });
      if (!drawing) return;
      const { width, height } = drawing.canvas;
      drawing.clearRect(0, 0, width, height);
      drawing.drawImage(image, 0, 0, width, height);
      const pixels = drawing.getImageData(0, 0, width, height);
      fade(pixels.data, swatches);
      drawing.putImageData(pixels, 0, 0);
    };
    image.src = address;
    return () => {
      left = true;
    };
  }, [address, swatches]);
  const density = Math.min(2, globalThis.devicePixelRatio || 1);
  return (
    <canvas
      ref={canvas}
      width={Math.round(widthPx * density)}
      height={Math.round(heightPx * density)}
      style={{ width: widthPx, height: heightPx }}
    />
  );
}

function fade(data: Uint8ClampedArray, swatches: readonly Swatch[]): void {
  for (let at = 0; at < data.length; at += 4) {
    const { L, a, b } = labD65FromSrgb(data[at]!, data[at + 1]!, data[at + 2]!);
    const apart = swatches.reduce((least, s) => Math.min(least, Math.hypot(s.L - L, s.a - a, s.b - b)), OF_ANOTHER);
    const other = Math.max(0, (apart - OF_SWATCH) / (OF_ANOTHER - OF_SWATCH));
    data[at + 3] = data[at + 3]! * (1 - other * (1 - FAINT));
  }
}
