/** What a hand has stayed with: for what need not keep up with one that goes along the deck. */
import { useEffect, useState } from 'react';

/** So long it has stayed there, ms. */
const REST_MS = 180;

export function useRested<T>(value: T): T {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), REST_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return rested;
}
