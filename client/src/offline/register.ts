/** Sets the service worker up where a browser may have one: over TLS, or on the machine itself. */

/** Whether this browser can open the show and keep its work without a connection. */
export function canKeep(): boolean {
  return isSecureContext && 'serviceWorker' in navigator && 'indexedDB' in globalThis;
}

export function registerWorker(): void {
  if (!canKeep() || !import.meta.env.PROD) return;
  // After the first picture: keeping the shell must not compete with showing it.
  const later = globalThis.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 2000));
  later(() => {
    navigator.serviceWorker.register('/service-worker.js', { type: 'module' }).catch(() => {
      // A certificate that is not trusted, or storage that is off: the page works, but only with a connection.
    });
  });
}
