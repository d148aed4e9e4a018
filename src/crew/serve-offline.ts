/** Keeps the page on the phone when it was opened from an address: nothing is asked for afterwards. */
export function serveOffline(): void {
  if (!document.documentElement.hasAttribute('data-served')) return;
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker
    .register('./sw.js', { scope: './' })
    .then(() => navigator.serviceWorker.ready)
    .then(() => document.documentElement.setAttribute('data-offline', 'ready'))
    // Without it the page still works while it is open; a reload then needs the connection.
    .catch(() => document.documentElement.setAttribute('data-offline', 'refused'));
}
