import { VIGNETTE_STATES } from '@enfilade/shared/judgements';
import { RING_PATTERNS } from '@enfilade/shared/presence';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { CautionMark, ReadingMark, StateMark } from '../../../client/src/shell/marks.tsx';
import { Ring } from '../../../client/src/shell/ring.tsx';

const rings = RING_PATTERNS.map((pattern) =>
  renderToStaticMarkup(createElement(Ring, { name: 'Isolde Fennimarsh', pattern })),
);
const readings = (['lost', 'weak', 'holds', 'carries'] as const).map((word) =>
  renderToStaticMarkup(createElement(ReadingMark, { word })),
);
const states = VIGNETTE_STATES.map((state) => renderToStaticMarkup(createElement(StateMark, { state })));
const all = [...rings, ...readings, ...states, renderToStaticMarkup(createElement(CautionMark))];

/** Hex colours used, each as its three channels. */
function channelsIn(markup: string): number[][] {
  return [...markup.matchAll(/#([0-9a-f]{6}|[0-9a-f]{3})\b/gi)].map(([, digits = '']) => {
    const full = digits.length === 3 ? [...digits].map((d) => d + d).join('') : digits;
    return [0, 2, 4].map((at) => Number.parseInt(full.slice(at, at + 2), 16));
  });
}

describe('marks are told by shape', () => {
  test('law: no two people’s rings, readings or states are drawn alike', () => {
    for (const group of [rings, readings, states]) expect(new Set(group).size).toBe(group.length);
  });

  test('law: no mark carries a hue', () => {
    for (const markup of all) {
      for (const [r, g, b] of channelsIn(markup)) {
        expect(g).toBe(r);
        expect(b).toBe(r);
      }
      expect(markup).not.toMatch(/opacity|rgb|hsl|(fill|stroke)="(red|green|blue|orange|yellow)/);
    }
  });

  test('law: every mark is hidden from listeners, for its word stands beside it', () => {
    for (const markup of all) expect(markup).toContain('aria-hidden="true"');
  });

  test('story: a ring holds initials while its person can be reached, and only its pattern when not', () => {
    const here = renderToStaticMarkup(createElement(Ring, { name: 'Isolde Fennimarsh', pattern: 'dashed' }));
    const away = renderToStaticMarkup(
      createElement(Ring, { name: 'Isolde Fennimarsh', pattern: 'dashed', blank: true }),
    );
    expect(here).toContain('>IF<');
    expect(away).not.toContain('IF');
    expect(away).toContain('stroke-dasharray');
  });
});
