/** What this browser has kept of a seat, thrown away: the seat is another's now, or nobody's. */

/** Every store and cache that bears the seat's id; whatever cannot be reached is left. */
export async function forgetSeat(seatId: string): Promise<void> {
  const stores = (await globalThis.indexedDB?.databases?.().catch(() => [])) ?? [];
  for (const { name } of stores) if (name?.includes(seatId)) indexedDB.deleteDatabase(name);
  for (const key of Object.keys(globalThis.localStorage ?? {})) if (key.includes(seatId)) localStorage.removeItem(key);
  const caches = globalThis.caches;
  const names = (await caches?.keys().catch(() => [])) ?? [];
  await Promise.all(
    names.filter((name) => name.includes(seatId)).map((name) => caches.delete(name).catch(() => false)),
  );
}
