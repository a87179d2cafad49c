import { boundsOf, inside, overlaps } from '@enfilade/arrangement/boxes';
import { balanceOf, facingGaps, largestVoidMm, spreadOf } from '@enfilade/arrangement/measures';
import { gapsOf } from '@enfilade/arrangement/neighbour-gaps';
import { describe, expect, test } from 'vitest';

const box = (xMm: number, yMm: number, widthMm = 100, heightMm = 100) => ({ xMm, yMm, widthMm, heightMm });
const surface = { leftMm: 0, rightMm: 1000, bottomMm: 0, topMm: 800 };

describe('boxes', () => {
  test('law: touching is neither overlapping nor outside', () => {
    expect(overlaps(box(0, 0), box(100, 0))).toBe(false);
    expect(overlaps(box(0, 0), box(99.9, 0))).toBe(true);
    expect(overlaps(box(0, 0), box(140, 0), 40)).toBe(false);
    expect(overlaps(box(0, 0), box(139, 0), 40)).toBe(true);
    expect(inside(box(50, 750), surface)).toBe(true);
    expect(inside(box(49, 750), surface)).toBe(false);
    expect(boundsOf([box(0, 0), box(200, 50)])).toEqual(box(100, 25, 300, 150));
    expect(boundsOf([])).toBeUndefined();
  });
});

describe('measures', () => {
  test('reference: gaps of three in a row, by hand (no source)', () => {
    expect(facingGaps([box(0, 0), box(130, 20), box(300, 0)], 500).sort((a, b) => a - b)).toEqual([30, 30, 70, 70]);
    expect(facingGaps([box(0, 0), box(130, 20), box(300, 0)], 50)).toEqual([30, 30]);
    expect(spreadOf([30, 30, 70, 70])).toEqual({ meanMm: 50, cv: 0.4 });
  });

  test('reference: the void inside a square ring is as wide as the ring’s inside, by hand (no source)', () => {
    const ring = [box(500, 50, 1000), box(500, 950, 1000), box(50, 500, 100, 1000), box(950, 500, 100, 1000)];
    expect(largestVoidMm(ring)).toBeGreaterThan(770);
    expect(largestVoidMm(ring)).toBeLessThanOrEqual(800);
    expect(largestVoidMm([...ring, box(500, 500, 400, 400)])).toBeLessThan(290);
  });

  test('law: what is symmetric is balanced, and what stands to the right weighs to the right', () => {
    expect(balanceOf([box(-200, 0), box(200, 0)], { xMm: 0, yMm: 0 })).toEqual({ x: 0, y: 0 });
    expect(balanceOf([box(-200, 0), box(200, 0), box(200, 150)], { xMm: 0, yMm: 0 }).x).toBeGreaterThan(0);
  });
});

describe('gaps while dragging', () => {
  test('reference: the nearest facing thing on each side, else the edge, by hand (no source)', () => {
    const others = [box(300, 420), box(200, 400), box(500, 700), box(900, 700)];
    expect(gapsOf(box(500, 400), others, surface)).toEqual({
      left: { mm: 100, to: 0 },
      right: { mm: 450, to: 'edge' },
      above: { mm: 200, to: 2 },
      below: { mm: 350, to: 'edge' },
    });
  });

  test('story: dragged over its neighbour, it shows how far it overlaps on the side it could leave soonest', () => {
    expect(gapsOf(box(500, 400), [box(580, 410)], surface).right).toEqual({ mm: -20, to: 0 });
  });
});
