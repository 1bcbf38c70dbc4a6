// The worker of a desk, which ends that of a pressed site which was once served at this address. Such a one would show
// its own pages in the place of those that the author saves.

addEventListener('install', () => skipWaiting());

addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) {
    await caches.delete(name);
  }
  await registration.unregister();
  for (const client of await clients.matchAll({ type: 'window', includeUncontrolled: true })) {
    await client.navigate(client.url).catch(() => {}); // a page that was left
  }
})()));
